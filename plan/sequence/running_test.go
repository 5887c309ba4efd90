package sequence_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// A job that runs gets no moves, in whatever order of slits it was set up: the holders
// stand right for that one. Days are planned jointly, which sets many in another order than listed;
// then each of their jobs runs as it was set up, and the file knows nothing of the order.
func TestJobsRunAsTheyWereSetUp(t *testing.T) {
	t.Parallel()
	ran, other, days := 0, 0, uint64(plantest.Worlds(30, 24))
	for seed := range days {
		b, stands, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 79)))
		alone, err := sequence.PlanDay(b, stands, d)
		if err != nil || b.PositionTolerance > 0 {
			continue
		}
		joint := sequence.Jointly(context.Background(), alone, plan.AimMoves)
		for i := range joint.Steps() {
			step := joint.Steps()[i]
			stands = stands.After(step)
			j := *step.Job
			j.State = plan.Running
			p, err := sequence.PlanDay(b, stands, &plan.Day{Start: d.Start, Jobs: []plan.Job{j}})
			if err != nil || len(p.Steps()) != 1 {
				t.Fatalf("seed %d: %s isn't planned: %v", seed, j.ID, err)
			}
			if err := verify.DayOf(p, &plan.Day{Start: d.Start, Jobs: []plan.Job{j}}); err != nil {
				t.Errorf("seed %d: %v", seed, err)
			}
			if n := p.Steps()[0].Changeover.Repositions; n > 0 {
				t.Errorf("seed %d: %d moves under %s, which runs with slits %v shifted %d", seed, n, j.ID, step.Layout.Slits, step.Layout.Shift)
			}
			ran++
			if !(&plan.Job{Entries: j.Entries}).Arranges(step.Layout.Slits) {
				other++
			}
		}
	}
	if other < 5 {
		t.Errorf("of %d jobs %d run in another order than listed: too few to tell", ran, other)
	}
}

// By hand: pitch 10, slits of 20, 20 and 30 from 10 on a web of 100, any of them anywhere.
// Holders at 10, 40, 60 and 80 serve 30, 20, 20. With the one at 60 out of the way by 1 no
// order is set up, and the plan says what moves.
func TestOrderIsReadOffTheHolders(t *testing.T) {
	b := &plan.Beam{HolderWidth: 10, Rail: plan.Span{From: 0, To: 100}, Web: plan.Span{From: 0, To: 100}, RestOverWeb: true, Holders: make([]plan.Condition, 4)}
	j := plan.Job{ID: "runs", Web: 100, Trim: 5, Shift: plan.Free, Arrange: plan.AnyArrange, State: plan.Running, Metres: 1, Speed: 1,
		Entries: []plan.Entry{{Count: 2, Finished: 20, Width: 20}, {Count: 1, Finished: 30, Width: 30}}}
	for third, want := range map[plan.Length]int{60: 0, 61: 1} {
		p, err := sequence.PlanDay(b, &plan.Positions{At: []plan.Length{10, 40, third, 80}, Job: "runs"}, &plan.Day{Jobs: []plan.Job{j}})
		if err != nil || len(p.Steps()) != 1 {
			t.Fatal(err)
		}
		if got := p.Steps()[0].Changeover.Repositions; got != want && !(want == 1 && got > 0) {
			t.Errorf("third at %d: %d moves, slits %v", third, got, p.Steps()[0].Layout.Slits)
		}
		if want == 0 && p.Steps()[0].Layout.Slits[0] != 30 {
			t.Errorf("slits %v", p.Steps()[0].Layout.Slits)
		}
	}
}
