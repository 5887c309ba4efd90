package ui

import (
	"testing"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/words"
	"bide/ui/setup"
)

// A job that the beam is half set up for comes before the others that wait, behind
// the one that runs: the order in which it was begun may not have been saved.
func TestHalfSetUpComesFirst(t *testing.T) {
	runs, a, half := &plan.Job{ID: "runs", State: plan.Running}, &plan.Job{ID: "A"}, &plan.Job{ID: "half"}
	done := &plan.Job{ID: "done", State: plan.Done}
	for _, c := range []struct {
		have []*plan.Job
		want string
	}{
		{[]*plan.Job{a, half}, "half A"},
		{[]*plan.Job{done, runs, a, half}, "runs half A"},
		{[]*plan.Job{half, a}, "half A"},
		{[]*plan.Job{runs, a}, "runs A"},
	} {
		got := ""
		for _, j := range draft.New(c.have, plan.AimMinutes).First("half").Jobs {
			got = words.Join(" ", got, j.ID)
		}
		if got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// A guided setup that was begun in an order which wasn't saved goes on after a restart.
func TestSetupGoesOnInAnUnsavedOrder(t *testing.T) {
	s := crowded(t)
	third := &s.Day.Jobs[2]
	s.Positions.Begun = &plan.Begun{Job: third.ID, Slits: third.Slits()}
	sc := newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	if first := sc.Jobs()[0]; first.ID != third.ID {
		t.Fatalf("%s is first, the beam is half set up for %s", first.ID, third.ID)
	}
	sc.press("w")
	if w, ok := sc.Over.(*setup.Page); !ok || w.Job.ID != third.ID {
		t.Errorf("the guided setup isn't to %s", third.ID)
	}
	if !sc.Changed() {
		t.Error("the order is another than the file's, and not said to be")
	}
}
