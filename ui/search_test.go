package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
)

// A search finds a better order, shows what it costs as the search planned it, and
// one undo takes it back.
func TestSearchIsAdoptedAndUndone(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 120, 36).settle()
	listed, before := ids(s.jobs()), s.present.totals
	s.press("s")
	if !strings.Contains(s.View(), "Esc keeps the best so far") {
		t.Errorf("no progress is shown:\n%s", s.View())
	}
	s.settle()
	if !s.present.totals.Better(before, plan.AimMinutes) {
		t.Fatalf("searched %+v, before %+v", s.present.totals, before)
	}
	if !strings.Contains(s.View(), "the best order found") {
		t.Errorf("it isn't said:\n%s", s.View())
	}
	var steps []plan.Step
	for _, o := range s.present.known {
		steps = append(steps, o.step)
	}
	day := &plan.DayPlan{Beam: s.shop.Beam, Start: s.shop.Standing, Steps: steps, Totals: plan.Sum(steps)}
	if err := plan.Verify(day); err != nil {
		t.Errorf("what is shown doesn't hold: %v", err)
	}
	s.press("u").settle()
	if !slices.Equal(ids(s.jobs()), listed) || s.present.totals != before {
		t.Errorf("undone: %v, %+v", ids(s.jobs()), s.present.totals)
	}
	s.press("U").settle()
	if !s.present.totals.Better(before, plan.AimMinutes) {
		t.Errorf("done again: %+v", s.present.totals)
	}
}

// What comes from a search that was given up, because the order was changed by
// hand, is dropped.
func TestSearchGivenUp(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 120, 36).settle()
	s.press("S", "J")
	order := ids(s.jobs())
	s.settle()
	if !slices.Equal(ids(s.jobs()), order) || s.search.cancel != nil {
		t.Errorf("the order became %v, by hand it was %v", ids(s.jobs()), order)
	}
}

// Esc ends a search at once and keeps the best so far; while one runs no other
// begins.
func TestSearchStopped(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	s.search.rounds = 1 << 40
	before := s.present.totals
	s.press("s", "s", "esc").settle()
	if s.search.cancel != nil || before.Better(s.present.totals, plan.AimMinutes) {
		t.Errorf("stopped: %+v, before %+v", s.present.totals, before)
	}
}
