package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// A search finds a better order and offers it; accepted, it costs what the search
// planned, and one undo takes it back.
func TestSearchIsAdoptedAndUndone(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 120, 36).settle()
	s.search.rounds = fewer(0, 300)
	listed, before := ids(s.jobs()), s.present.totals
	s.press("s")
	if !strings.Contains(s.View(), "Esc keeps the best so far") {
		t.Errorf("no progress is shown:\n%s", s.View())
	}
	s.settle()
	if s.offer == nil || !slices.Equal(ids(s.jobs()), listed) || !strings.Contains(s.View(), "Enter accepts the order found") {
		t.Fatalf("the order found isn't offered beside this one:\n%s", s.View())
	}
	s.press("enter").settle()
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
	s.search.rounds = fewer(0, 300)
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

// On a small screen a running search is told, and Esc stops it there too.
func TestSearchStoppedOnASmallScreen(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	s.search.rounds = 1 << 40
	s.press("s")
	s.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	if s.fits(); !strings.Contains(s.View(), "Esc stops search") {
		t.Errorf("the search isn't told:\n%s", s.View())
	}
	if s.press("esc").settle(); s.search.cancel != nil {
		t.Error("Esc doesn't stop the search")
	}
}

// A plan that the verifier turns down is neither taken nor shown.
func TestPlansThatDontHold(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	day, err := plan.PlanDay(s.shop.Beam, s.shop.Standing, s.shop.Day)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := held(day, nil); err != nil {
		t.Fatalf("a sound plan: %v", err)
	}
	order := ids(s.jobs())
	day.Steps[1].Changeover.Moves[0].To++
	bad, err := held(day, nil)
	s.send(found{run: s.search.run, day: bad, err: err})
	if !strings.Contains(s.View(), "doesn't hold and isn't taken") || !slices.Equal(ids(s.jobs()), order) {
		t.Errorf("order %v, was %v:\n%s", ids(s.jobs()), order, s.View())
	}

	other := *s.shop.Beam // as if the planner had planned for another beam
	other.Clearance = 10 * other.HolderWidth
	o := worker{s.planner, &other}.work(question{stands: s.start.stands, job: s.jobs()[0]}, s.start.clock)
	if len(o.faults) != 1 || !strings.Contains(o.faults[0].Why(s.shop.Unit), "doesn't hold") || o.stands != s.start.stands {
		t.Errorf("a changeover that doesn't hold gives %+v", o)
	}
}

// An order that keeps the rules is taken instead of one that breaks them, even if
// it costs more; of two that keep them, only the better.
func TestSearchMendsABrokenOrder(t *testing.T) {
	for _, breaks := range []bool{true, false} {
		shop := demo(t)
		day, err := plan.PlanDay(shop.Beam, shop.Standing, shop.Day)
		if err != nil {
			t.Fatal(err)
		}
		if breaks {
			shop.Day.Jobs[0].After = []string{shop.Day.Jobs[1].ID}
		}
		s := newScreen(t, shop, testLook(noColours, false, false), 120, 36).settle()
		for i := range day.Steps {
			day.Steps[i].Job = &plan.Job{ID: day.Steps[i].Job.ID} // free of rules
		}
		cheaper := day.Totals
		cheaper.Setup, cheaper.Late, cheaper.LateJobs = 0, 0, 0
		s.send(found{run: s.search.run, day: day, from: &cheaper})
		if took := s.offer != nil; took != breaks {
			t.Errorf("the present order breaks a rule: %v, taken: %v", breaks, took)
		}
	}
}
