package ui

import (
	"context"
	"testing"

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/session/planning"

	"github.com/google/go-cmp/cmp"
)

// What the screen comes to show is what the sheet gives: the day settled.
func TestSettledDayIsTheSheets(t *testing.T) {
	s := smallDay(t, 6)
	sc := plannedScreen(t, s, testLook(noColours, false, false), 120, 36).settle()
	day, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
	if err != nil {
		t.Fatal(err)
	}
	want := sequence.Jointly(context.Background(), day, plan.AimMinutes)
	if !sc.Present.Whole() || sc.Present.Totals != want.Totals {
		t.Errorf("the screen: %+v\nthe sheet: %+v", sc.Present.Totals, want.Totals)
	}
	n := 0
	for _, o := range sc.Present.Known {
		if len(o.Faults) > 0 {
			continue
		}
		if diff := cmp.Diff(want.Steps()[n].Changeover.Holders, o.Step.Changeover.Holders); diff != "" {
			t.Errorf("%s (-sheet +screen):\n%s", o.Step.Job.ID, diff)
		}
		n++
	}
}

// What the screen shows after a guided setup, and in the middle of one, is what the sheet gives
// from the files at that moment, asked for from now: moves, minutes and the clock.
func TestScreenShowsTheSheetAfterAMove(t *testing.T) {
	first, dir := atSmall(t, 80, 24)
	first.session.Journal.Close()
	sc := atBeam(plannedScreen(t, read(t, dir), testLook(noColours, false, false), 120, 36))
	same := func(when string) {
		t.Helper()
		sc.settle()
		s := read(t, dir)
		s.Day.Now = sc.Start.Clock.At
		day, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
		if err != nil {
			t.Fatal(err)
		}
		want := sequence.Jointly(context.Background(), day, plan.AimMinutes)
		if !sc.Present.Whole() || sc.Present.Totals != want.Totals {
			t.Errorf("%s the screen has %+v, the sheet %+v", when, sc.Present.Totals, want.Totals)
		}
		for n, o := range sc.Present.Known {
			if step := want.Steps()[n]; !o.Step.SetupStart.Equal(step.SetupStart) || !o.Step.RunEnd.Equal(step.RunEnd) || o.Step.Job.ID != step.Job.ID {
				t.Errorf("%s the screen has %s from %v to %v, the sheet %s from %v to %v", when,
					o.Step.Job.ID, o.Step.SetupStart, o.Step.RunEnd, step.Job.ID, step.SetupStart, step.RunEnd)
			}
		}
	}
	same("at the start")
	sc.press("w", "enter")
	for sc.setup().Move() != nil {
		sc.confirms(1)
	}
	sc.press("r").settle()
	same("set up")
	sc.press("w", "enter").confirms(1).press("y").settle().press("esc")
	same("after the first move of the next")
	sc.press("w", "enter").confirms(2).press("esc")
	same("after two more")
	sc.press("w", "enter")
	for range 3 {
		sc.press("u").settle()
	}
	sc.tells("D-101 is running")
	sc.press("esc")
	same("all of them taken back")
	sc.press("w", "enter").confirms(1).press("z").settle().press("esc")
	same("D-101 set aside")
}

// A job that the beam can't run takes the plan of no other, wherever it comes into a
// day that is settled.
func TestRefusedJobTakesNoPlan(t *testing.T) {
	sc := plannedScreen(t, smallDay(t, 3), testLook(noColours, false, false), 120, 36).settle()
	before := sc.Present.Totals
	own := func(when string) {
		t.Helper()
		sc.settle()
		if !sc.Present.Whole() || sc.Present.Totals.Jobs != 3 {
			t.Errorf("%s: whole %v, %d jobs planned", when, sc.Present.Whole(), sc.Present.Totals.Jobs)
		}
		for i, o := range sc.Present.Known {
			if j := sc.Present.Jobs[i]; len(o.Faults) == 0 && o.Step.Job != j {
				t.Errorf("%s: %s has the plan of %s", when, j.ID, o.Step.Job.ID)
			} else if refused := j.ID == "D-101b"; refused != (len(o.Faults) > 0) {
				t.Errorf("%s: %s is refused: %v", when, j.ID, !refused)
			}
		}
	}
	sc.press("c", "down", "down", "down", "ctrl+u").types("10 x 1").press("enter")
	own("added")
	sc.tells("x refused")
	for _, key := range []string{"K", "J", "J", "J"} {
		sc.press(key)
		own("moved with " + key)
	}
	sc.press("x")
	if sc.settle(); sc.Present.Totals != before {
		t.Errorf("taken out, the day comes to %+v, was %+v", sc.Present.Totals, before)
	}
	sc.press("u")
	own("taken back")
}

// Each job is shown as soon as it is known on its own; the day is whole when it is
// settled, and after an undo it is there at once.
func TestSettledDay(t *testing.T) {
	sc := plannedScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 36)
	for !sc.Present.Full() {
		sc.background()
	}
	if sc.Present.Whole() {
		t.Fatal("whole before it is settled")
	}
	before := sc.settle().Present.Totals
	sc.press("J").settle()
	if sc.Present.Totals == before {
		t.Fatal("another order costs the same")
	}
	if sc.press("u"); !sc.Present.Whole() || sc.Present.Totals != before {
		t.Errorf("undone: whole %v, %+v, was %+v", sc.Present.Whole(), sc.Present.Totals, before)
	}
}

// A settling that is under way when the order changes brings nothing.
func TestSettlingIsGivenUp(t *testing.T) {
	sc := plannedScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 36)
	for !sc.Present.Full() {
		sc.background()
	}
	settling := sc.commands
	sc.commands = nil
	sc.press("J")
	for _, cmd := range settling {
		if msg, ok := cmd().(planning.Improved); ok && msg.Day != nil {
			t.Error("a settling that was given up brought a day")
		}
		sc.send(planning.Improved{})
	}
	if sc.settle(); !sc.Present.Whole() {
		t.Error("the day isn't settled")
	}
}
