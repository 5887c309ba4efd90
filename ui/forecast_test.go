package ui

import (
	"testing"

	"bide/plan"
)

// What was worked out before is there at once, without anything asked for.
func TestUndoIsInstant(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	sc.press("j", "j", "J").settle().press("J").settle()
	for range 2 {
		sc.press("u")
		if !sc.Present.Whole() || len(sc.commands) > 0 {
			t.Fatalf("after undo %d of %d jobs are known and %d commands wait", len(sc.Present.Known), len(sc.Jobs()), len(sc.commands))
		}
	}
	if sc.press("U", "U"); !sc.Present.Whole() {
		t.Error("a redo has to be worked out again")
	}
}

// Only what comes after the first job that changes is asked for again, one job at
// a time, and then the day together.
func TestForecastStartsAtTheChange(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	n := len(sc.Jobs())
	for range n - 3 {
		sc.press("j")
	}
	sc.press("J")
	asked := 0
	for len(sc.commands) > 0 {
		if len(sc.commands) > 1 {
			t.Fatalf("%d questions are out at a time", len(sc.commands))
		}
		sc.background()
		asked++
	}
	if asked != 3+1 {
		t.Errorf("%d things were worked out again, want the last 3 jobs, and the day together", asked)
	}
}

// An answer that comes when the order has changed isn't taken for one of the new
// order, and isn't lost either.
func TestLateAnswers(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	sc.press("J") // asks for the new first job
	first := sc.Jobs()[0]
	sc.press("u", "j", "j", "J") // and now the answer is of another order
	for len(sc.commands) > 0 {
		sc.background()
		for i, o := range sc.Present.Known {
			if len(o.Faults) == 0 && o.Step.Job != sc.Jobs()[i] {
				t.Fatalf("turn %d shows the plan of %s, not of %s", i+1, o.Step.Job.ID, sc.Jobs()[i].ID)
			}
		}
	}
	sameAsPlanned(t, sc)
	if len(sc.session.Forecast.Trial([]*plan.Job{first}).Known) == 0 {
		t.Error("the late answer was lost")
	}
}
