package changeover_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
)

// Larger worlds than brute force can place, with wide windows: the planner's own
// answer for one shift, which brute force holds elsewhere, is asked for at every
// shift, and Best must find the best of them.
func TestBestAgainstEveryShift(t *testing.T) {
	t.Parallel()
	n := plantest.Worlds(4_000, 40_000)
	failed := 0
	for seed := range uint64(n) {
		w := drawWide(rand.New(rand.NewPCG(seed, 9)))
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			t.Fatalf("seed %d: %v\n%v", seed, err, w)
		}
		l, c, faults := p.Best(w.standing, &w.job)
		if err := compareOne(w.everyShift(p), l, c, faults); err != nil {
			t.Errorf("seed %d: %v\n%v", seed, err, w)
			if failed++; failed == 5 {
				t.FailNow()
			}
		}
	}
}

// everyShift asks for each shift of the window and keeps the best.
func (w *world) everyShift(p *changeover.Planner) answer {
	var best answer
	from, to := w.window()
	for shift := from; shift <= to; shift++ {
		l := lay(&w.beam, &w.job, shift)
		c, faults := p.Changeover(w.standing, l)
		a := answer{found: true, layout: l, moved: c.Repositions, parked: c.Parked, travel: c.Travel, shifted: max(shift, -shift)}
		if len(faults) > 0 || !a.better(best) {
			continue
		}
		for _, h := range c.Holders {
			a.at = append(a.at, h.At)
		}
		best = a
	}
	return best
}

// drawWide draws a world of up to eight holders a pitch of 4 to 12 apart.
func drawWide(r *rand.Rand) *world {
	w := &world{}
	b, j := &w.beam, &w.job
	pitch := plan.Length(4 + r.IntN(9))
	b.HolderWidth, b.Clearance = pitch-1, 1
	if r.IntN(2) == 0 {
		b.PositionTolerance = plan.Length(r.IntN(int(pitch+1) / 2))
	}
	n := 2 + r.IntN(7)
	b.Holders = make([]plan.Condition, n)
	if r.IntN(3) == 0 {
		b.Holders[r.IntN(n)] = drawCondition(r)
	}
	b.Rail = plan.Span{To: plan.Length(n-1)*pitch + plan.Length(r.IntN(n*int(pitch)))}
	b.RestOverWeb = r.IntN(3) > 0
	b.ParkClearance = plan.Length(r.IntN(6))
	w.standing = plantest.Places(r, n, b.Rail, pitch, 1)
	j.ID, j.Shift, j.Trim = "drawn", plan.Free, plan.Length(1+r.IntN(4))
	j.Web = 2*j.Trim + plan.Length(r.IntN(25))
	for k := range 1 + r.IntN(n-1) {
		width := pitch + plan.Length(r.IntN(int(pitch)))
		if k > 0 && j.Web+width > b.Rail.Length()+4 {
			break
		}
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: width, Width: width})
		j.Web += width
	}
	from := plan.Length(r.IntN(int(max(0, b.Rail.Length()-j.Web))+5)) - 2
	b.Web = plan.Span{From: from, To: from + j.Web + plan.Length(r.IntN(3))}
	return w
}

// Whatever the places before and after, some order of direct moves leads there: all
// orders are tried. The planner's own order goes through the verifier above.
func TestSomeOrderOfMovesAlwaysWorks(t *testing.T) {
	for seed := range uint64(2_000) {
		r := rand.New(rand.NewPCG(seed, 2))
		w := drawWorld(r)
		from, to := w.standing, drawStanding(r, &w.beam)
		if !anyOrder(w.beam.Pitch(), slices.Clone(from), to) {
			t.Fatalf("seed %d: no order leads from %v to %v with pitch %d", seed, from, to, w.beam.Pitch())
		}
	}
}

// anyOrder tries the moves in every order.
func anyOrder(pitch plan.Length, at, to []plan.Length) bool {
	if slices.Equal(at, to) {
		return true
	}
	for i, x := range to {
		low, high, old := min(at[i], x), max(at[i], x), at[i]
		free := x != old && (i == 0 || low-at[i-1] >= pitch) && (i == len(at)-1 || at[i+1]-high >= pitch)
		if !free {
			continue
		}
		at[i] = x
		done := anyOrder(pitch, at, to)
		at[i] = old
		if done {
			return true
		}
	}
	return false
}
