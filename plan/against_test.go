package plan_test

import (
	"testing"
	"time"

	"bide/plan"
)

// Which gap costs least goes by the aim, behind rules, refusals and lateness.
func TestSlipBetter(t *testing.T) {
	fewer, sooner := plan.Difference{Repositions: 3, Setup: 2 * time.Minute}, plan.Difference{Repositions: 5, Setup: time.Minute}
	late, refused := plan.Difference{LateBy: time.Second}, plan.Difference{LateBy: -time.Minute, Refused: []plan.Turn{{}}}
	for _, c := range []struct {
		a, b plan.Difference
		aim  plan.Aim
		want bool
	}{
		{fewer, sooner, plan.AimMoves, true}, {sooner, fewer, plan.AimMoves, false},
		{sooner, fewer, plan.AimMinutes, true}, {fewer, sooner, plan.AimMinutes, false},
		{sooner, late, plan.AimMoves, true}, {late, refused, plan.AimMoves, true}, {refused, late, plan.AimMoves, false},
		{fewer, fewer, plan.AimMoves, false},
	} {
		if got := c.a.Better(c.b, c.aim); got != c.want {
			t.Errorf("for %v %+v is better than %+v: %v", c.aim, c.a, c.b, got)
		}
	}
}
