package sequence_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"

	"github.com/google/go-cmp/cmp"
)

// A changeover that was planned together with the day, and broken off after any of its
// moves, goes on to the places that it was begun for, in the day planned jointly and searched
// anew too.
func TestResumeGoesOnToThePlacesBegun(t *testing.T) {
	t.Parallel()
	resumed, days := 0, uint64(plantest.Worlds(10, 8))
	for seed := uint64(50); seed < 50+days; seed++ {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 73)))
		alone, err := sequence.PlanDay(b, start, d)
		if err != nil || len(alone.Steps()) < 2 {
			continue
		}
		first := sequence.Jointly(context.Background(), alone, plan.AimMinutes).Steps()[0]
		setting := &plan.Begun{Job: first.Job.ID, Slits: first.Layout.Slits, Shift: first.Layout.Shift, To: plantest.Ends(first.Changeover)}
		now := *start
		now.At, now.Begun = slices.Clone(start.At), setting
		p, err := changeover.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		moves := first.Changeover.Moves
		for k, m := range moves[:len(moves)/2] {
			now.At[m.Holder-1] = m.To
			rest, faults := plantest.StepOf(p.Resume(&now, plan.Clock{}, first.Job))
			if len(faults) > 0 || rest.Changeover.Repositions != len(moves)-k-1 {
				t.Fatalf("seed %d: after move %d %d are left, want %d (%d faults)", seed, k+1, rest.Changeover.Repositions, len(moves)-k-1, len(faults))
			}
			if diff := cmp.Diff(setting.To, plantest.Ends(rest.Changeover)); diff != "" {
				t.Fatalf("seed %d: after move %d it goes elsewhere (-begun +resumed):\n%s", seed, k+1, diff)
			}
			if err := verify.Changeover(b, first.Job, now.At, rest.Layout, rest.Changeover); err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			resumed++
		}
		again, err := sequence.PlanDay(b, &now, d)
		if err != nil || again.Steps()[0].Job != first.Job {
			continue
		}
		for what, day := range map[string]*plan.DayPlan{"joint": sequence.Jointly(context.Background(), again, plan.AimMoves), "searched": searchedFor(t, b, &now, d)} {
			if err := verify.DayOf(day, d); err != nil {
				t.Errorf("seed %d, %s: %v", seed, what, err)
			}
			if diff := cmp.Diff(setting.To, plantest.Ends(day.Steps()[0].Changeover)); day.Steps()[0].Job != first.Job || diff != "" {
				t.Errorf("seed %d, %s: the changeover begun isn't first as begun (%s):\n%s", seed, what, day.Steps()[0].Job.ID, diff)
			}
			kept := len(plan.Broken(again.Jobs(), again.Done)) == 0
			if what == "searched" && kept && plantest.Worse(day.Totals, again.Listed, plan.AimMinutes) {
				t.Errorf("seed %d: searched %+v, the file's order centred %+v", seed, day.Totals, again.Listed)
			}
		}
	}
	if resumed < int(days)/2 {
		t.Errorf("only %d moves resumed behind", resumed)
	}
}

// searchedFor is what a short search makes of a day.
func searchedFor(t *testing.T, b *plan.Beam, start *plan.Positions, d *plan.Day) *plan.DayPlan {
	t.Helper()
	day, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 200, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return day
}
