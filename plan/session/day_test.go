package session_test

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/workday"
)

// Edits are undone and done again one by one, each with what the day costs then; a new one
// ends what could be done again.
func TestUndoRedo(t *testing.T) {
	v := open(t, folder(t, nil))
	was := v.Forecast.Present.Totals
	v.MoveBy(1, 1)
	v.settle()
	moved := v.Forecast.Present.Totals
	if v.order() != "ACBD" || moved.Repositions >= was.Repositions || !strings.Contains(v.Told(""), "B moved to number 3") {
		t.Errorf("%s, %d moves, were %d: %q", v.order(), moved.Repositions, was.Repositions, v.Told(""))
	}
	v.SetArrange(v.Jobs()[0])
	v.settle()
	if v.Jobs()[0].Arrange != plan.ByEntries || !strings.Contains(v.Told(""), workday.Arranges[plan.ByEntries]) {
		t.Errorf("%+v: %q", v.Jobs()[0].Arrange, v.Told(""))
	}
	v.Undo()
	v.settle()
	v.Undo()
	if v.settle(); v.order() != "ABCD" || v.Forecast.Present.Totals != was || v.Changed() {
		t.Errorf("%s, %+v, was %+v", v.order(), v.Forecast.Present.Totals, was)
	}
	v.Undo()
	v.says("there is nothing to undo")
	v.Redo()
	if v.settle(); v.order() != "ACBD" || v.Forecast.Present.Totals != moved || v.Jobs()[0].Arrange != plan.AsListed {
		t.Errorf("%s", v.order())
	}
	v.Hold(v.Jobs()[0])
	v.settle()
	if v.Redo(); v.order() != "CBD" || len(v.Away()) != 1 {
		t.Errorf("%s, away %s", v.order(), ids(v.Away()))
	}
	v.says("there is nothing to redo")
}

// A job taken out leaves what others wait for, added it has an id of its own, and a rule
// that the order breaks is said first.
func TestEdits(t *testing.T) {
	v := open(t, folder(t, nil))
	v.OrderAfter(v.Jobs()[1], v.Jobs()[0])
	v.settle()
	v.MoveBy(0, 1)
	v.settle()
	if !strings.HasPrefix(v.Told(""), "rule broken: ") || len(v.Broken) != 1 {
		t.Errorf("%q", v.Told(""))
	}
	v.Remove(v.Jobs()[1])
	if v.settle(); v.order() != "BCD" || len(v.Jobs()[0].After) != 0 || len(v.Broken) != 0 {
		t.Errorf("%s, B comes after %v", v.order(), v.Jobs()[0].After)
	}
	next := *v.Jobs()[0]
	next.ID = v.FreeID("B")
	v.Add(&next, "", v.Jobs()[0])
	if v.settle(); next.ID == "B" || v.order() != "B"+next.ID+"CD" || v.Origin(&next) != "" {
		t.Errorf("%s", v.order())
	}
	if err := v.MarkDone(v.Jobs()[0], "06:20, 100"); err != nil {
		t.Fatal(err)
	}
	if v.settle(); v.order() != next.ID+"CD" || v.Number(0) != 2 {
		t.Errorf("%s, the first is number %d", v.order(), v.Number(0))
	}
	v.BringBack(v.Away()[0])
	if v.settle(); len(v.Jobs()) != 4 || v.Number(0) != 1 {
		t.Errorf("%s", v.order())
	}
}

// What a search finds is offered; accepted it is there with the totals that were found, and
// undone the day is as before.
func TestSearchAcceptedAndUndone(t *testing.T) {
	v := open(t, folder(t, nil))
	was := v.Forecast.Present.Totals
	v.Seek(plan.AimMinutes)
	if v.Seek(plan.AimMinutes); !v.Search.Running() {
		t.Fatal("no search runs")
	}
	v.says("<stop> stops it")
	if v.settle(); v.Offer == nil || v.offered != 1 || !v.Offer.Totals.Better(was, plan.AimMinutes) {
		t.Fatalf("offered %d times: %+v", v.offered, v.Offer)
	}
	found, order := v.Offer.Totals, ids(v.Offer.Jobs)
	v.Discard()
	if v.Offer != nil || v.order() != "ABCD" {
		t.Error("it isn't discarded")
	}
	v.Undo()
	if v.says("the order found is back"); v.Offer == nil {
		t.Fatal("it isn't back")
	}
	v.Accept()
	if v.settle(); v.Offer != nil || v.order() != order || v.Forecast.Present.Totals != found || !v.Changed() {
		t.Errorf("%s, %+v, found %s, %+v", v.order(), v.Forecast.Present.Totals, order, found)
	}
	v.Undo()
	if v.settle(); v.order() != "ABCD" || v.Forecast.Present.Totals != was || v.Changed() {
		t.Errorf("%s, %+v, was %+v", v.order(), v.Forecast.Present.Totals, was)
	}
}

// An edit under a search ends it, and what it has found is fitted to the day of now: the
// edit is never undone by accepting.
func TestEditUnderASearch(t *testing.T) {
	v := open(t, folder(t, nil))
	v.Seek(plan.AimMinutes)
	work := v.Work()
	if v.Hold(v.Jobs()[3]); !strings.Contains(v.Told(""), "the search stops, and") {
		t.Errorf("the search goes on: %q", v.Told(""))
	}
	for _, w := range work {
		v.Take(w())
	}
	v.settle()
	if v.Offer == nil || len(v.Offer.Jobs) != 3 {
		t.Fatalf("%q: %+v", v.Told(""), v.Offer)
	}
	v.Accept()
	if v.settle(); len(v.Jobs()) != 3 || ids(v.Away()) != "D" || !v.Forecast.Present.Whole() {
		t.Errorf("%s, away %s", v.order(), ids(v.Away()))
	}
}

// Of what is undone it is said what is so then, with no key for what it was before.
func TestUndoSaysWhatIsSo(t *testing.T) {
	v := open(t, folder(t, nil)).settle()
	first, second := v.Jobs()[0], v.Jobs()[1]
	for want, edit := range map[string]func(){
		"undone: B is back in the day":              func() { v.Remove(second) },
		"undone: B waits again":                     func() { v.Hold(second) },
		"undone: A waits again":                     func() { v.MarkRunning(first) },
		"undone: A may shift inside its trim again": func() { v.SetShift(first) },
		"undone: A: slit order fixed again":         func() { v.SetArrange(first) },
		"undone: B is free in the sequence again":   func() { v.Fix(second) },
		"undone: B need not come after A":           func() { v.OrderAfter(second, first) },
		"A undone: back to number 1":                func() { v.MoveBy(0, 1) },
		"undone: E is removed from the day again":   func() { e := *second; e.ID = "E"; v.Add(&e, "", second) },
		"undone: B is as before the edit":           func() { e := *second; e.Metres++; v.Replace(second, &e) },
	} {
		edit()
		if v.Undo(); v.Notice.Text != want {
			t.Errorf("%q, want %q", v.Notice.Text, want)
		}
	}
}
