package ui

import (
	"testing"

	"bide/plan"
)

// What was worked out before is there at once, without anything asked for.
func TestUndoIsInstant(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	sc.press("j", "j", "J").settle().press("J").settle()
	for range 2 {
		sc.press("u")
		if !sc.present.whole() || len(sc.commands) > 0 {
			t.Fatalf("after undo %d of %d jobs are known and %d commands wait", len(sc.present.known), len(sc.jobs()), len(sc.commands))
		}
	}
	if sc.press("U", "U"); !sc.present.whole() {
		t.Error("a redo has to be worked out again")
	}
}

// Only what comes after the first job that changes is asked for again, one job at
// a time.
func TestForecastStartsAtTheChange(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	n := len(sc.jobs())
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
	if asked != 3 {
		t.Errorf("%d jobs were worked out again, want the last 3", asked)
	}
}

// An answer that comes when the order has changed isn't taken for one of the new
// order, and isn't lost either.
func TestLateAnswers(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	sc.press("J") // asks for the new first job
	first := sc.jobs()[0]
	sc.press("u", "j", "j", "J") // and now the answer is of another order
	for len(sc.commands) > 0 {
		sc.background()
		for i, o := range sc.present.known {
			if len(o.faults) == 0 && o.step.Job != sc.jobs()[i] {
				t.Fatalf("turn %d shows the plan of %s, not of %s", i+1, o.step.Job.ID, sc.jobs()[i].ID)
			}
		}
	}
	sameAsPlanned(t, sc)
	if sc.answers.find(question{sc.start.stands, first, false}) == nil {
		t.Error("the late answer was lost")
	}
}

// The memory keeps what was asked for of late and stays within its size.
func TestMemory(t *testing.T) {
	var m memory
	jobs := make([]plan.Job, 5*memorySize)
	for i := range jobs {
		m.keep(question{job: &jobs[i]}, &outcome{})
		if m.find(question{job: &jobs[0]}) == nil {
			t.Fatalf("what is always asked for was forgotten after %d", i)
		}
		if len(m.young)+len(m.old) > 2*memorySize {
			t.Fatalf("%d answers are kept", len(m.young)+len(m.old))
		}
	}
	if m.find(question{job: &jobs[1]}) != nil {
		t.Error("what nobody asks for is never forgotten")
	}
}
