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

// Days on a damaged anvil, searched and planned jointly, verify and are never worse than
// listed.
func TestDaysWithBandsVerify(t *testing.T) {
	t.Parallel()
	days, planned, struck := uint64(plantest.Worlds(6, 6)), 0, 0
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 86))
		b, start, d := plantest.DrawQuickDay(r)
		whole, err := sequence.PlanDay(b, start, d)
		if err != nil {
			continue
		}
		var bands []plan.Span
		for range 8 + r.IntN(8) {
			from := plan.Length(r.IntN(1000)) * mm
			bands = append(bands, plan.Span{From: from, To: from + plan.Length(1+r.IntN(8))*mm})
		}
		b.Bad = plan.JoinSpans(bands)
		if verify.Plan(whole) != nil {
			struck++
		}
		listed, err := sequence.PlanDay(b, start, d)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		aim := plan.Aim(seed % 2)
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: aim, Rounds: 600, Seed: seed})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		joint := sequence.Jointly(context.Background(), listed, aim)
		for name, p := range map[string]*plan.DayPlan{"listed": listed, "searched": best, "joint": joint} {
			if err := verify.DayOf(p, d); err != nil {
				t.Errorf("seed %d, %s: %v", seed, name, err)
			}
		}
		if len(plan.Broken(listed.Jobs(), listed.Done)) == 0 && plantest.Worse(best.Totals, listed.Totals, aim) || plantest.Worse(joint.Totals, listed.Totals, aim) {
			t.Errorf("seed %d: searched %+v, joint %+v, listed %+v", seed, best.Totals, joint.Totals, listed.Totals)
		}
		planned += len(best.Steps())
	}
	if planned < int(days) || struck < int(days)/4 {
		t.Errorf("%d jobs planned, %d days struck by the bands", planned, struck)
	}
}
