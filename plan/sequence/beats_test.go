package sequence

import (
	"math/rand/v2"
	"testing"

	"bide/plan"
)

// Fewer moves than the order listed can take prove a day better only where moves are the aim
// and nothing is late: else it must still be held against that order.
func TestOnlyMovesAreProvenBetter(t *testing.T) {
	proven := 0
	for seed := range uint64(100) {
		b, start, d := tiny(rand.New(rand.NewPCG(seed, 48)))
		listed, err := PlanDay(b, start, d)
		if err != nil || listed.Floor == nil || listed.Floor.Repositions == 0 {
			continue
		}
		proven++
		for _, c := range []struct {
			aim   plan.Aim
			moves int
			late  bool
			want  bool
		}{
			{plan.AimMoves, listed.Floor.Repositions - 1, false, true}, {plan.AimMoves, listed.Floor.Repositions, false, false},
			{plan.AimMoves, listed.Floor.Repositions - 1, true, false}, {plan.AimMinutes, listed.Floor.Repositions - 1, false, false},
		} {
			s := &search{instance: newInstance(listed, c.aim)}
			day := &plan.DayPlan{Totals: plan.Totals{Repositions: c.moves}}
			if c.late {
				day.Totals.Late = 1
			}
			if got := s.beats(day); got != c.want {
				t.Errorf("seed %d: %+v of a floor of %d: proven better %v", seed, c, listed.Floor.Repositions, got)
			}
		}
	}
	if proven < 20 {
		t.Errorf("only %d days have a floor", proven)
	}
}
