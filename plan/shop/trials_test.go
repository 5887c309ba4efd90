package shop_test

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/shop"
	"bide/plan/verify"
)

// Four drawn shops of testdata/trials: 60 to 120 holders, 8 to 24 jobs, in
// millimetres and in 64ths of an inch; in shop four two holders may not cut and
// one is stuck.
func trial(t testing.TB, name string) *shop.Shop {
	t.Helper()
	s, problems := shop.Open(filepath.Join("..", "..", "testdata", "trials", name))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s
}

// All of them plan and verify, in the order of the file and in the best one found,
// and only jobs that the beam can't run are refused: in shop four three jobs want
// 60 cuts, and 58 of its holders may cut. Without -long the large ones are left out, and the
// smallest alone is searched, for few orders.
func TestTrialsPlanAndVerify(t *testing.T) {
	for name, refused := range map[string][]string{"one": nil, "two": nil, "three": nil, "four": {"J06", "J07", "J08"}} {
		if !plantest.IsLong() && (name == "one" || name == "two") {
			continue
		}
		s := trial(t, name)
		listed, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
		if err != nil {
			t.Fatal(err)
		}
		best := listed
		if plantest.IsLong() || name == "four" {
			best, err = sequence.Search(context.Background(), s.Beam, s.Positions, s.Day, sequence.Effort{Aim: plan.AimMoves, Rounds: plantest.Worlds(40, 400), Seed: 1})
			if err != nil {
				t.Fatal(err)
			}
		}
		for what, d := range map[string]*plan.DayPlan{"listed": listed, "best": best} {
			if err := verify.DayOf(d, s.Day); err != nil {
				t.Errorf("%s, %s: %v", name, what, err)
			}
			if len(d.Refused()) != len(refused) {
				t.Errorf("%s, %s: %d jobs refused, want %v", name, what, len(d.Refused()), refused)
				continue
			}
			for i, r := range d.Refused() {
				if why := r.Faults[0].Why(s.Unit); r.Job.ID != refused[i] || !strings.Contains(why, "60 cuts") || !strings.Contains(why, "58 of the 60 holders") {
					t.Errorf("%s, %s: %s refused: %s", name, what, r.Job.ID, why)
				}
			}
		}
		if best.Totals.Repositions > listed.Totals.Repositions {
			t.Errorf("%s: best %d repositions, listed %d", name, best.Totals.Repositions, listed.Totals.Repositions)
		}
	}
}

// Default search on the trials; the marks are what a plain search of random swaps
// and insertions reached in a minute.
func BenchmarkSearchTrials(b *testing.B) {
	for _, name := range plantest.Sizes("three", "one", "two") {
		b.Run(name, func(b *testing.B) {
			s := trial(b, name)
			moves := 0
			for b.Loop() {
				d, err := sequence.Search(context.Background(), s.Beam, s.Positions, s.Day, sequence.Effort{Aim: plan.AimMoves, Seed: 1})
				if err != nil {
					b.Fatal(err)
				}
				moves = d.Totals.Repositions
			}
			b.ReportMetric(float64(moves), "moves")
		})
	}
}
