package ui

import (
	"slices"
	"strings"
	"testing"
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
	s.press("v", "tab", "tab", "x").fits()
	if s.offer != nil || !slices.Equal(ids(s.jobs()), order) || s.changed() {
		t.Errorf("discarded: %v, was %v", ids(s.jobs()), order)
	}
}

// An order found for other jobs than those of now isn't accepted.
func TestOfferOfAnotherDay(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 120, 36).settle()
	s.search.rounds = 300
	s.press("s").settle().press("esc", "x")
	order := ids(s.jobs())
	s.press("v", "enter")
	if !slices.Equal(ids(s.jobs()), order) || !strings.Contains(s.View(), "search again") {
		t.Errorf("accepted: %v, was %v\n%s", ids(s.jobs()), order, s.View())
	}
}
