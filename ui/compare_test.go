package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
)

// Two orders stand side by side: the file's and this one, with the figures of both.
func TestCompareWithTheFile(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("J").settle().press("v")
	view := s.View()
	for _, part := range []string{"the file's order, centred", "this order", minutes(s.listed.totals.Setup), minutes(s.present.totals.Setup)} {
		if !strings.Contains(view, part) {
			t.Errorf("no %q in\n%s", part, view)
		}
	}
	golden(t, "80x24_compare", view)
	if s.press("down", "down", "enter"); s.over != nil || s.turn != 2 {
		t.Errorf("Enter goes to turn %d", s.turn+1)
	}
}

// An order found waits until it is accepted or discarded; Esc does neither.
func TestOfferWaits(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 120, 36).settle()
	s.search.rounds = 300
	order := ids(s.jobs())
	s.press("s").settle()
	if s.offer == nil {
		t.Fatal("nothing is offered")
	}
	golden(t, "120x36_compare_found_ascii", s.View())
	s.press("esc")
	if s.offer == nil || s.over != nil || !slices.Equal(ids(s.jobs()), order) {
		t.Fatal("Esc accepts or discards")
	}
	golden(t, "120x36_offer_waits_ascii", s.View())
	s.press("v", "tab", "tab", "x").fits()
	if s.offer != nil || !slices.Equal(ids(s.jobs()), order) || s.changed() {
		t.Errorf("discarded: %v, was %v", ids(s.jobs()), order)
	}
	if s.press("u"); s.offer == nil || s.changed() || !strings.Contains(s.View(), "the order found is back") {
		t.Errorf("undo doesn't bring the order found back:\n%s", s.View())
	}
	if s.press("U"); s.offer != nil {
		t.Error("discarded again, it waits")
	}
	if s.press("u", "q"); s.ended || !strings.Contains(s.View(), "Would be lost: the order that a search found (v shows it)") {
		t.Errorf("leaving doesn't ask:\n%s", s.View())
	}
	s.press("n", "v", "enter")
	if slices.Equal(ids(s.jobs()), order) {
		t.Error("brought back, it can't be accepted")
	}
}

// An order found for other jobs than those of now is fitted to them before it is shown.
func TestOfferOfAnotherDay(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s").settle().press("esc", "x").settle()
	before := s.present.totals
	s.press("v")
	if s.over != nil || !strings.Contains(s.View(), "fitted") {
		t.Errorf("shown as it was found:\n%s", s.View())
	}
	if s.settle(); s.offer == nil || s.over == nil {
		t.Fatalf("it isn't shown:\n%s", s.View())
	}
	s.press("enter").settle()
	if !s.present.totals.Better(before, plan.AimMinutes) || s.history.now.find("D-101") != nil {
		t.Errorf("accepted %+v, before %+v", s.present.totals, before)
	}
}
