package ui

import (
	"context"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/verify"

	tea "github.com/charmbracelet/bubbletea"
)

// A search finds a better order and offers it; accepted, it costs what the search
// planned, and one undo takes it back.
func TestSearchIsAdoptedAndUndone(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, true), 120, 36).settle()
	s.session.Search.By = tries(fewer(0, 200))
	listed, before := ids(s.Jobs()), s.Present.Totals
	s.press("s")
	if !strings.Contains(s.View(), "Esc keeps the best so far") {
		t.Errorf("no progress is shown:\n%s", s.View())
	}
	s.settle()
	if s.Offer == nil || !slices.Equal(ids(s.Jobs()), listed) || !strings.Contains(s.View(), "Enter accepts the order found") {
		t.Fatalf("the order found isn't offered beside this one:\n%s", s.View())
	}
	s.press("enter").settle()
	if !s.Present.Totals.Better(before, plan.AimMinutes) {
		t.Fatalf("searched %+v, before %+v", s.Present.Totals, before)
	}
	if !strings.Contains(s.View(), "the best order found") {
		t.Errorf("it isn't said:\n%s", s.View())
	}
	var steps []*plan.Step
	for _, o := range s.Present.Known {
		steps = append(steps, o.Step)
	}
	day := &plan.DayPlan{Beam: s.Shop.Beam, Start: s.Shop.Positions, Begins: s.Start.Clock, Turns: plan.Planned(steps), Totals: plan.TotalsOf(plan.Planned(steps))}
	if err := verify.Plan(day); err != nil {
		t.Errorf("what is shown doesn't hold: %v", err)
	}
	s.press("u").settle()
	if !slices.Equal(ids(s.Jobs()), listed) || s.Present.Totals != before {
		t.Errorf("undone: %v, %+v", ids(s.Jobs()), s.Present.Totals)
	}
	s.press("U").settle()
	if !s.Present.Totals.Better(before, plan.AimMinutes) {
		t.Errorf("done again: %+v", s.Present.Totals)
	}
}

// A search goes on while only the order is changed by hand. What it finds waits beside
// the order of now, and no page opens over what the person is at.
func TestSearchGoesOn(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s", "J")
	order := ids(s.Jobs())
	if !s.session.Search.Running() || !strings.Contains(s.View(), "D-101 moved to number 2") {
		t.Fatalf("the search doesn't go on, or what was done isn't told:\n%s", s.View())
	}
	s.settle()
	if s.Offer == nil || s.Over != nil || !slices.Equal(ids(s.Jobs()), order) || !strings.Contains(s.View(), "v shows it") {
		t.Fatalf("by hand %v, now %v:\n%s", order, ids(s.Jobs()), s.View())
	}
	before := s.Present.Totals
	s.press("v", "enter").settle()
	if !s.Present.Totals.Better(before, plan.AimMinutes) {
		t.Errorf("accepted %+v, before %+v", s.Present.Totals, before)
	}
	s.press("u").settle()
	if !slices.Equal(ids(s.Jobs()), order) || s.Present.Totals != before {
		t.Errorf("undone: %v, %+v", ids(s.Jobs()), s.Present.Totals)
	}
}

// finding is what the running search finds, which comes when it is sent.
func (s *screen) finding() planning.Found {
	s.t.Helper()
	for i, cmd := range s.commands {
		batch, ok := cmd().(tea.BatchMsg)
		for k := 0; ok && k < len(batch); k++ {
			if f, ok := batch[k]().(planning.Found); ok {
				s.commands = append(s.commands[:i:i], s.commands[i+1:]...)
				return f
			}
		}
	}
	s.t.Fatal("no search runs")
	return planning.Found{}
}

// setUpNext sets the next job up, move by move.
func (s *screen) setUpNext() {
	s.session.Journal.Now = seconds()
	s.press("w", "enter")
	for len(s.setup().Ahead()) > 0 {
		s.press("enter").settle()
	}
	s.press("r").settle()
}

// A search that the day changes under is ended, and what it has found fitted to the day
// as it is then: its order, with its layouts of the jobs that stay as they were.
func TestSearchIsFitted(t *testing.T) {
	for name, change := range map[string]func(s *screen){
		"a job is edited":  func(s *screen) { s.press("down", "down", "f") }, // D-103 runs centred
		"one is taken out": func(s *screen) { s.press("down", "x") },
		"one is copied":    func(s *screen) { s.press("c", "enter") },
		"one runs":         func(s *screen) { s.press("r") },
		"a holder is stuck": func(s *screen) {
			s.session.Conditions.Set(12, shop.Mark{Condition: plan.NoCut})
			s.later(s.ask())
			s.settle()
		},
		"the first is set up": func(s *screen) { s.setUpNext() },
	} {
		if !plantest.IsLong() && !strings.HasPrefix(name, "a ") {
			continue
		}
		t.Run(name, func(t *testing.T) {
			s, _, _ := morning(t)
			s.press("s")
			f := s.finding()
			change(s)
			s.send(f)
			s.settle()
			if s.Offer == nil || s.Over != nil || !s.Offer.Inputs.Same(s.session.Inputs()) || !strings.Contains(s.View(), "an order was found: v") {
				t.Fatalf("it isn't offered:\n%s", s.View())
			}
			before := s.Present.Totals
			s.press("v", "enter").settle()
			if !s.Present.Totals.Better(before, plan.AimMinutes) {
				t.Errorf("accepted %+v, before %+v", s.Present.Totals, before)
			}
			if c := s.Now.Find("D-103"); c != nil && c.Shift == plan.Centred && c.Chosen != nil && c.Chosen.Shift != 0 {
				t.Errorf("laid out as found for another job: %+v", c.Chosen)
			}
		})
	}
}

// Esc ends a search at once and keeps the best so far; while one runs no other
// begins.
func TestSearchStopped(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	s.session.Search.By = tries(1 << 40)
	before := s.Present.Totals
	s.press("s", "s", "esc").settle()
	if s.session.Search.Running() || before.Better(s.Present.Totals, plan.AimMinutes) {
		t.Errorf("stopped: %+v, before %+v", s.Present.Totals, before)
	}
}

// On a small screen a running search is told, and Esc stops it there too.
func TestSearchStoppedOnASmallScreen(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	s.session.Search.By = tries(1 << 40)
	s.press("s")
	s.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	if s.fits(); !strings.Contains(s.View(), "Esc stops search") {
		t.Errorf("the search isn't told:\n%s", s.View())
	}
	if s.press("esc").settle(); s.session.Search.Running() {
		t.Error("Esc doesn't stop the search")
	}
}

// A plan that the verifier turns down is neither taken nor shown.
func TestPlansThatDontHold(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	order := ids(s.Jobs())
	s.session.Search.By = func(_ context.Context, b *plan.Beam, start *plan.Positions, d *plan.Day, _ sequence.Effort) (*plan.DayPlan, error) {
		bad, err := sequence.PlanDay(b, start, d)
		bad.Steps()[1].Changeover.Moves[0].To++
		return bad, err
	}
	s.press("s").settle()
	if !strings.Contains(s.View(), "fails its check and isn't used") || !slices.Equal(ids(s.Jobs()), order) {
		t.Errorf("order %v, was %v:\n%s", ids(s.Jobs()), order, s.View())
	}
}

// An order that keeps the rules is taken instead of one that breaks them, even if
// it costs more; of two that keep them, only the better.
func TestSearchMendsABrokenOrder(t *testing.T) {
	for _, breaks := range []bool{true, false} {
		shop := crowded(t)
		day, err := sequence.PlanDay(shop.Beam, shop.Positions, shop.Day)
		if err != nil {
			t.Fatal(err)
		}
		if breaks {
			shop.Day.Jobs[0].After = []string{shop.Day.Jobs[1].ID}
		}
		s := newScreen(t, shop, testLook(noColours, false, false), 120, 36).settle()
		for i := range day.Turns {
			t := &day.Turns[i]
			t.Job = &plan.Job{ID: t.Job.ID} // free of rules
			t.Step.Job = t.Job
		}
		cheaper := &s.Present.Totals
		cheaper.Setup, cheaper.Late, cheaper.LateJobs = 0, 0, 0
		s.send(planning.Found{Errand: planning.Errand{Run: s.session.Search.Run}, Inputs: s.session.Inputs(), Day: day})
		if took := s.Offer != nil; took != breaks {
			t.Errorf("the present order breaks a rule: %v, taken: %v", breaks, took)
		}
	}
}
