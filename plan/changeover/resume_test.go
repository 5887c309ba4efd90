package changeover_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"

	"github.com/google/go-cmp/cmp"
)

// A changeover that is broken off after any of its moves goes on to the same places:
// what is left of the best plan is the best plan for what is left.
func TestResumeGoesOnAsBegun(t *testing.T) {
	resumed := 0
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 71))
		w := drawWorld(r)
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			continue
		}
		j := &w.job
		j.ID = "job"
		whole, faults := plantest.StepOf(p.Next(&plan.Positions{At: w.standing}, plan.Clock{}, j))
		if len(faults) > 0 {
			continue
		}
		now := &plan.Positions{At: slices.Clone(w.standing), Begun: &plan.Begun{Job: j.ID, Slits: whole.Layout.Slits, Shift: whole.Layout.Shift}}
		for k, m := range whole.Changeover.Moves {
			if n := changeover.Blocks(&w.beam, now.At, m); n != 0 {
				t.Fatalf("seed %d: move %d is blocked by holder %d\n%v", seed, k+1, n, w)
			}
			now.At[m.Holder-1] = m.To
			turn, stands := p.Resume(now, plan.Clock{}, j)
			rest, faults := plantest.StepOf(turn, stands)
			if len(faults) > 0 {
				t.Fatalf("seed %d: after move %d it can't go on: %s\n%v", seed, k+1, faults[0].Why(plan.Millimetres), w)
			}
			if err := verify.Changeover(&w.beam, j, now.At, rest.Layout, rest.Changeover); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			if left := whole.Changeover.Repositions - k - 1; rest.Changeover.Repositions != left {
				t.Fatalf("seed %d: after move %d there are %d more, want %d\n%v", seed, k+1, rest.Changeover.Repositions, left, w)
			}
			if diff := cmp.Diff(plantest.Ends(whole.Changeover), plantest.Ends(rest.Changeover)); diff != "" {
				t.Fatalf("seed %d: after move %d it goes elsewhere (-begun +resumed):\n%s%v", seed, k+1, diff, w)
			}
			if stands.Begun != nil {
				t.Fatalf("seed %d: what is set up is still being set up", seed)
			}
			// Centred where it can be, the job goes on as begun all the same, and another doesn't.
			if centred, _ := plantest.StepOf(p.NextCentred(now, plan.Clock{}, j)); centred.Layout.Shift != rest.Layout.Shift {
				t.Fatalf("seed %d: begun at shift %d it goes on at %d", seed, rest.Layout.Shift, centred.Layout.Shift)
			}
			other := *j
			other.ID = "other"
			centred, faults := plantest.StepOf(p.NextCentred(now, plan.Clock{}, &other))
			if l, _, none := p.Nearest(now.At, &other); len(none) != len(faults) || l.Shift != centred.Layout.Shift {
				t.Fatalf("seed %d: another job is set at shift %d, nearest to centred is %d", seed, centred.Layout.Shift, l.Shift)
			}
			resumed++
		}
	}
	if resumed < 1000 {
		t.Errorf("only %d changeovers were broken off", resumed)
	}
}

// A layout that is being set up is kept against another that takes as many moves,
// and given up where the job no longer allows it or another takes fewer.
func TestResumeKeepsTheLayout(t *testing.T) {
	mm := plan.Millimetre
	b := &plan.Beam{
		HolderWidth: 9 * mm, Clearance: mm, Rail: plan.Span{From: 0, To: 200 * mm},
		Web: plan.Span{From: 0, To: 100 * mm}, RestOverWeb: true, Holders: make([]plan.Condition, 3),
	}
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	slits := []plan.Length{20 * mm, 30 * mm}
	j := &plan.Job{ID: "job", Web: 100 * mm, Trim: 5 * mm, Shift: plan.Free, Arrange: plan.ByEntries,
		Entries: []plan.Entry{{Count: 1, Finished: slits[0], Width: slits[0]}, {Count: 1, Finished: slits[1], Width: slits[1]}}}
	// The trim is 50 mm in all: at a shift of -10 mm the cuts of 30, 20 are at 15, 45, 65.
	turned := &plan.Begun{Job: "job", Slits: []plan.Length{slits[1], slits[0]}, Shift: -10 * mm}
	at := func(places ...plan.Length) (out []plan.Length) {
		for _, x := range places {
			out = append(out, x*mm)
		}
		return out
	}
	resume := func(setting *plan.Begun, j *plan.Job, places []plan.Length) plan.Layout {
		s, faults := plantest.StepOf(p.Resume(&plan.Positions{At: places, Begun: setting}, plan.Clock{}, j))
		if len(faults) > 0 {
			t.Fatal(faults[0].Why(plan.Millimetres))
		}
		return s.Layout
	}
	// One of three is set. As listed, 20, 30, the best shift keeps one too: two moves.
	if l := resume(turned, j, at(15, 120, 140)); !slices.Equal(l.Slits, turned.Slits) || l.Shift != turned.Shift {
		t.Errorf("the layout begun is given up for slits %v, shift %v", l.Slits, l.Shift)
	}
	// The holders stand on 20, 30 already.
	if l := resume(turned, j, at(15, 35, 65)); !slices.Equal(l.Slits, slits) {
		t.Errorf("a layout that needs moves is kept against one that needs none: %v", l.Slits)
	}
	listed := *j
	listed.Arrange = plan.AsListed
	if l := resume(turned, &listed, at(15, 120, 140)); !slices.Equal(l.Slits, slits) {
		t.Errorf("a layout is kept that the job no longer allows: %v", l.Slits)
	}
	if l := resume(&plan.Begun{Job: "other"}, j, at(15, 120, 140)); !slices.Equal(l.Slits, slits) {
		t.Errorf("another job's setting changes the layout: %v", l.Slits)
	}
}

// Who is in the way, and what can't stand so, on a beam of pitch 10.
func TestBlocksAndMisplaced(t *testing.T) {
	mm := plan.Millimetre
	b := &plan.Beam{HolderWidth: 9 * mm, Clearance: mm, Rail: plan.Span{From: 0, To: 100 * mm}, Holders: make([]plan.Condition, 3)}
	at := []plan.Length{10 * mm, 30 * mm, 50 * mm}
	for _, c := range []struct {
		holder int
		to     plan.Length
		want   int
	}{{1, 20, 0}, {1, 21, 2}, {2, 20, 0}, {2, 19, 1}, {2, 40, 0}, {2, 41, 3}, {2, 90, 3}, {3, 90, 0}, {1, 0, 0}, {3, 39, 2}} {
		if got := changeover.Blocks(b, at, plan.Move{Holder: c.holder, To: c.to * mm}); got != c.want {
			t.Errorf("holder %d to %d: blocked by %d, want %d", c.holder, c.to, got, c.want)
		}
	}
	if faults := changeover.Misplaced(b, at); len(faults) > 0 {
		t.Errorf("holders that can stand so are misplaced: %s", faults[0].Why(plan.Millimetres))
	}
	for _, c := range []struct {
		at   [3]plan.Length
		want string
	}{
		{[3]plan.Length{-1, 30, 50}, "holder 1 at -1 mm is off the rail, which runs from 0 mm to 100 mm"},
		{[3]plan.Length{10, 60, 50}, "holder 3 at 50 mm is on the operator side of holder 2 at 60 mm: holders can't pass each other"},
		{[3]plan.Length{10, 19, 50}, "holders 1 and 2 at 10 mm and 19 mm would be 9 mm apart, nearer than the pitch of 10 mm"},
	} {
		faults := changeover.Misplaced(b, []plan.Length{c.at[0] * mm, c.at[1] * mm, c.at[2] * mm})
		if len(faults) != 1 || faults[0].Why(plan.Millimetres) != c.want {
			t.Errorf("%v: %d faults, want %q", c.at, len(faults), c.want)
			for _, f := range faults {
				t.Log(f.Why(plan.Millimetres))
			}
		}
	}
}

// A holder found elsewhere than thought costs no move that nobody needs: what is left is
// planned with the fewest repositions that the layout takes from what stands, by trying
// all placings; and never more than going on to the places begun would.
func TestResumeAfterAHolderIsFoundElsewhere(t *testing.T) {
	t.Parallel()
	spared, found := 0, 0
	for seed := range uint64(8000) {
		r := rand.New(rand.NewPCG(seed, 79))
		w := drawWorld(r)
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			continue
		}
		j := &w.job
		whole, faults := plantest.StepOf(p.Next(&plan.Positions{At: w.standing}, plan.Clock{}, j))
		if len(faults) > 0 {
			continue
		}
		setting := &plan.Begun{Job: j.ID, Slits: whole.Layout.Slits, Shift: whole.Layout.Shift, To: plantest.Ends(whole.Changeover)}
		now := &plan.Positions{At: slices.Clone(w.standing), Begun: setting}
		for _, m := range whole.Changeover.Moves[:r.IntN(len(whole.Changeover.Moves)+1)] {
			now.At[m.Holder-1] = m.To
		}
		n := r.IntN(len(now.At))
		now.At[n] += plan.Length(r.IntN(9) - 4)
		if len(changeover.Misplaced(&w.beam, now.At)) > 0 {
			continue
		}
		asBegun, _ := plantest.StepOf(p.Resume(now, plan.Clock{}, j))
		setting.Found = true
		rest, faults := plantest.StepOf(p.Resume(now, plan.Clock{}, j))
		var best answer
		tryPlacings(&w.beam, now.At, whole.Layout, &best)
		if len(faults) > 0 {
			if best.found {
				t.Fatalf("seed %d: it can't go on: %s\n%v", seed, faults[0].Why(plan.Millimetres), w)
			}
			continue
		}
		if err := verify.Changeover(&w.beam, j, now.At, rest.Layout, rest.Changeover); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		found++
		got := rest.Changeover.Repositions
		kept := rest.Layout.Shift == whole.Layout.Shift && slices.Equal(rest.Layout.Slits, whole.Layout.Slits)
		switch {
		case got > asBegun.Changeover.Repositions:
			t.Errorf("seed %d: %d moves, %d as begun\n%v", seed, got, asBegun.Changeover.Repositions, w)
		case kept && got != best.moved:
			t.Errorf("seed %d: %d moves, %d are enough for the layout\n%v", seed, got, best.moved, w)
		case !kept && best.found && got >= best.moved:
			t.Errorf("seed %d: another layout with %d moves, that begun takes %d\n%v", seed, got, best.moved, w)
		}
		if got < asBegun.Changeover.Repositions {
			spared++
		}
		// What is left of it leads on to the same end, move by move.
		for k, m := range rest.Changeover.Moves {
			now.At[m.Holder-1] = m.To
			again, _ := plantest.StepOf(p.Resume(now, plan.Clock{}, j))
			if left := got - k - 1; again.Changeover.Repositions != left {
				t.Fatalf("seed %d: after move %d there are %d more, want %d\n%v", seed, k+1, again.Changeover.Repositions, left, w)
			}
		}
	}
	if found < 500 || spared < 20 {
		t.Errorf("a holder was found elsewhere in %d worlds, in %d of them a move is spared", found, spared)
	}
}
