package sequence_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// FuzzSolver: any world is planned, and the plan passes the verifier, or it is
// refused with reasons. Never anything else.
func FuzzSolver(f *testing.F) {
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 4))
		world := make([]byte, 100)
		for i := range world {
			world[i] = byte(r.IntN(256))
		}
		f.Add(world)
	}
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		b, standing, d := decodeWorld(data)
		p, err := changeover.NewPlanner(b)
		if err != nil {
			if err.Error() == "" {
				t.Error("the beam is refused without a reason")
			}
			return
		}
		for i := range d.Jobs {
			solveOne(t, p, b, standing, &d.Jobs[i])
		}
		day, err := sequence.PlanDay(b, &plan.Positions{At: standing}, d)
		if err != nil {
			t.Fatalf("the beam is good for a planner and not for a day: %v", err)
		}
		if err := verify.DayOf(day, d); err != nil {
			t.Errorf("day: %v", err)
		}
	})
}

// solveOne asks for one job in each of the planner's ways.
func solveOne(t *testing.T, p *changeover.Planner, b *plan.Beam, standing []plan.Length, j *plan.Job) {
	t.Helper()
	l, c, faults := p.Best(standing, j)
	best := planned(t, b, j, standing, l, c, faults)
	l, c, faults = p.Nearest(standing, j)
	if planned(t, b, j, standing, l, c, faults) != best {
		t.Errorf("job %s: Best and Nearest disagree on whether it can be run", j.ID)
	}
}

// planned verifies a plan, or that a refusal says why; it reports which it is.
func planned(t *testing.T, b *plan.Beam, j *plan.Job, standing []plan.Length, l plan.Layout, c plan.Changeover, faults []plan.Fault) bool {
	t.Helper()
	for _, why := range plantest.Reasons(faults) {
		if why == "" {
			t.Errorf("job %s: refused with an empty reason", j.ID)
		}
	}
	if len(faults) > 0 {
		return false
	}
	if err := verify.Changeover(b, j, standing, l, c); err != nil {
		t.Error(err)
	}
	return true
}

// stream reads small numbers from bytes, zeros when they run out.
type stream []byte

// below is the next number, below n.
func (s *stream) below(n int) int {
	if len(*s) == 0 {
		return 0
	}
	b := (*s)[0]
	*s = (*s)[1:]
	return int(b) % n
}

// decodeWorld makes a beam of up to 12 holders, a standing that can be, and a day
// of up to three jobs. All lengths are a few steps of a nanometre, a 64th of an inch
// or a tenth of a millimetre.
func decodeWorld(data []byte) (*plan.Beam, []plan.Length, *plan.Day) {
	s := stream(data)
	step := []plan.Length{1, plan.Inch / 64, mm / 10}[s.below(3)]
	length := func(n int) plan.Length { return plan.Length(s.below(n)) * step }
	n := 1 + s.below(12)
	b := &plan.Beam{HolderWidth: step + length(40), Clearance: length(3), RestOverWeb: s.below(2) == 0,
		ParkClearance: length(20), PositionTolerance: length(1 + s.below(8)), Guide: plan.Guide(s.below(3)), Holders: make([]plan.Condition, n)}
	b.Drive.Kind = plan.DriveKind(s.below(3))
	for range s.below(4) {
		b.Holders[s.below(n)] = plan.Condition(s.below(4))
	}
	var at []plan.Length
	for range n {
		at = append(at, length(200))
	}
	slices.Sort(at)
	for i := range at {
		at[i] += plan.Length(i) * b.Pitch()
	}
	b.Rail = plan.Span{From: -length(50), To: at[n-1] + length(100)}
	b.Web = plan.Span{From: length(40) - 20*step, To: b.Rail.To - length(40) + 20*step}
	d := &plan.Day{Start: time.Date(2026, 3, 4, 6, 0, 0, 0, time.UTC)}
	for i := range 1 + s.below(3) {
		d.Jobs = append(d.Jobs, decodeJob(&s, b, step, i))
	}
	for range s.below(4) { // some off the web, some overlapping
		from := b.Web.From + length(250) - 20*step
		b.Bad = plan.JoinSpans(append(b.Bad, plan.Span{From: from, To: from + length(8)}))
	}
	return b, at, d
}

// decodeJob makes a job of a few entries, its web about as wide as they need.
func decodeJob(s *stream, b *plan.Beam, step plan.Length, i int) plan.Job {
	j := plan.Job{ID: fmt.Sprint("J", i), Trim: plan.Length(s.below(6)) * step, Shift: plan.ShiftRule(s.below(2)),
		Arrange: plan.Arrange(s.below(3)), Metres: float64(s.below(256)), Speed: float64(s.below(3))}
	for range 1 + s.below(3) {
		width := max(step, b.Pitch()+plan.Length(s.below(40)-1)*step)
		j.Entries = append(j.Entries, plan.Entry{Count: 1 + s.below(2), Finished: width, Width: width})
		j.Web += width * plan.Length(j.Entries[len(j.Entries)-1].Count)
	}
	if s.below(4) > 0 {
		j.Web += 2*j.Trim + plan.Length(s.below(40)-1)*step + plan.Length(s.below(2))
	}
	return j
}
