package plan_test

import (
	"testing"
	"time"

	"bide/plan"
)

// The setup that a choice may cost is what it took, rounded up to the tenths of a second that
// a file keeps, so that planned again the step costs no more than that.
func TestChoiceKeepsItsSetupInTenths(t *testing.T) {
	const tenth = 100 * time.Millisecond
	for _, took := range []time.Duration{0, 1, tenth - 1, tenth, tenth + 1, 7*time.Minute + 3*time.Millisecond} {
		s := &plan.Step{}
		s.Setup.Every = took
		if got := (&plan.Beam{}).Choose(s).Idle.Setup; got < took || got >= took+tenth || got%tenth != 0 {
			t.Errorf("%v is kept as %v", took, got)
		}
	}
}
