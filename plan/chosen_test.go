package plan_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
)

// A day whose layouts a search has chosen is planned with them, and so keeps most of
// what the search won; what can't be set, or isn't the job's, is passed over.
func TestChosenLayoutsAreKept(t *testing.T) {
	laid, plain, kept, found, days := 0, 0, 0, 0, uint64(40)
	if testing.Short() {
		days = 10
	}
	for seed := range days {
		b, start, d := drawDay(rand.New(rand.NewPCG(seed, 73)))
		best, err := plan.Search(context.Background(), b, start, d, plan.Effort{Aim: plan.AimMoves, Rounds: 3000, Seed: seed})
		if err != nil || len(best.Refused) > 0 {
			continue
		}
		next := &plan.Day{Start: d.Start, End: d.End}
		for _, s := range best.Steps {
			next.Jobs = append(next.Jobs, *s.Job)
		}
		without := settledMoves(t, b, start, next)
		for i, s := range best.Steps {
			next.Jobs[i].Chosen = &plan.Chosen{Slits: s.Layout.Slits, Shift: s.Layout.Shift}
		}
		alone, err := plan.PlanDay(b, start, next)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for i, s := range alone.Steps {
			if c := next.Jobs[i].Chosen; s.Layout.Shift != c.Shift || !slices.Equal(s.Layout.Slits, c.Slits) {
				t.Errorf("seed %d: %s is laid out otherwise than chosen", seed, s.Job.ID)
			}
			laid++
		}
		kept += settledMoves(t, b, start, next)
		plain += without
		found += best.Totals.Repositions

		for i := range next.Jobs { // another job's layout
			next.Jobs[i].Chosen = &plan.Chosen{Slits: []plan.Length{plan.Millimetre}, Shift: plan.Millimetre}
		}
		if got := settledMoves(t, b, start, next); got != without {
			t.Errorf("seed %d: layouts that the jobs don't allow change the day: %d moves, %d without", seed, got, without)
		}
	}
	t.Logf("moves: %d settled without, %d with the layouts chosen, %d found", plain, kept, found)
	if laid < 20 || kept-found > (plain-found)/2 {
		t.Errorf("moves: %d settled without, %d with the layouts chosen, %d found", plain, kept, found)
	}
}

// settledMoves plans and settles a day, verified, and counts its repositions.
func settledMoves(t *testing.T, b *plan.Beam, start *plan.Standing, d *plan.Day) int {
	t.Helper()
	alone, err := plan.PlanDay(b, start, d)
	if err != nil {
		t.Fatal(err)
	}
	day := plan.Settle(context.Background(), alone, plan.AimMoves)
	if err := plan.VerifyDay(day, d); err != nil {
		t.Error(err)
	}
	return day.Totals.Repositions
}
