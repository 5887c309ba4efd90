package ui

import (
	"context"
	"testing"

	"bide/plan"

	"github.com/google/go-cmp/cmp"
)

// What the screen comes to show is what the sheet gives: the day settled.
func TestSettledDayIsTheSheets(t *testing.T) {
	s := demo(t)
	sc := newScreen(t, s, testLook(noColours, false, false), 120, 36).settle()
	day, err := plan.PlanDay(s.Beam, s.Standing, s.Day)
	if err != nil {
		t.Fatal(err)
	}
	want := plan.Settle(context.Background(), day, plan.AimMinutes)
	if !sc.present.whole() || sc.present.totals != want.Totals {
		t.Errorf("the screen: %+v\nthe sheet: %+v", sc.present.totals, want.Totals)
	}
	n := 0
	for _, o := range sc.present.known {
		if len(o.faults) > 0 {
			continue
		}
		if diff := cmp.Diff(want.Steps[n].Changeover.Holders, o.step.Changeover.Holders); diff != "" {
			t.Errorf("%s (-sheet +screen):\n%s", o.step.Job.ID, diff)
		}
		n++
	}
}

// Each job is shown as soon as it is known on its own; the day is whole when it is
// settled, and after an undo it is there at once.
func TestSettledDay(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36)
	for !sc.present.full() {
		sc.background()
	}
	if sc.present.whole() {
		t.Fatal("whole before it is settled")
	}
	before := sc.settle().present.totals
	sc.press("J").settle()
	if sc.present.totals == before {
		t.Fatal("another order costs the same")
	}
	if sc.press("u"); !sc.present.whole() || sc.present.totals != before {
		t.Errorf("undone: whole %v, %+v, was %+v", sc.present.whole(), sc.present.totals, before)
	}
}

// A settling that is under way when the order changes brings nothing.
func TestSettlingIsGivenUp(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36)
	for !sc.present.full() {
		sc.background()
	}
	settling := sc.commands
	sc.commands = nil
	sc.press("J")
	for _, cmd := range settling {
		if msg, ok := cmd().(together); ok && msg.last != nil {
			t.Error("a settling that was given up brought a day")
		}
		sc.send(together{})
	}
	if sc.settle(); !sc.present.whole() {
		t.Error("the day isn't settled")
	}
}
