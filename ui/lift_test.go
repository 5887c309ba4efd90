package ui

import (
	"strings"
	"testing"

	"bide/plan"
)

// A lifted job shows what each gap costs, the figures are those of the day planned
// so, and dropping puts it there.
func TestLift(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("j", "j", "j")
	j := s.job()
	s.press("g")
	if !strings.Contains(s.View(), "Lift "+j.ID) {
		t.Fatalf("nothing is lifted:\n%s", s.View())
	}
	s.settle()
	l := s.over.(*lift)
	if len(l.slips) != len(s.jobs()) || !l.done {
		t.Fatalf("%d gaps are known, want %d", len(l.slips), len(s.jobs()))
	}
	golden(t, "120x36_lift", s.View())
	s.press("b")
	gap := l.gap
	for other, slip := range l.slips {
		if cheaper(slip, l.slips[gap]) {
			t.Errorf("gap %d costs less than %d, the cheapest", other, gap)
		}
	}
	s.press("home", "down", "enter")
	if s.over != nil || s.jobs()[1] != j {
		t.Fatalf("%s isn't at turn 2: %v", j.ID, ids(s.jobs()))
	}
	if s.settle(); l.slips[1].Totals.Better(s.present.totals, plan.AimMinutes) {
		t.Errorf("dropped, the day costs %+v, told was %+v", s.present.totals, l.slips[1].Totals)
	}
	if s.press("u"); s.jobs()[3] != j {
		t.Errorf("undone, %s isn't back: %v", j.ID, ids(s.jobs()))
	}
}

// Esc puts the job back, also while the gaps are worked out, and what comes late is
// dropped.
func TestLiftPutBack(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 80, 24).settle()
	order := ids(s.jobs())
	s.press("j", "g", "down", "esc")
	if s.over != nil || strings.Join(ids(s.jobs()), " ") != strings.Join(order, " ") {
		t.Fatalf("put back: %v, was %v", ids(s.jobs()), order)
	}
	s.press("g").settle()
	golden(t, "80x24_lift_ascii", s.View())
	s.fits()
	s.press("enter")
	if s.changed() {
		t.Error("dropped where it was, the day is changed")
	}
}

// A job that runs isn't lifted, and none is dropped before it.
func TestLiftLeavesTheRunningJobFirst(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 80, 24).settle()
	s.press("r").settle()
	if s.press("g"); s.over != nil {
		t.Error("a running job is lifted")
	}
	s.press("j", "g").settle().press("home", "enter")
	if s.over == nil || !strings.Contains(s.View(), "nothing can come before it") {
		t.Errorf("a job is dropped before the running one:\n%s", s.View())
	}
}
