package ui

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/words"

	tea "github.com/charmbracelet/bubbletea"
)

// The page shows what each number costs by estimates, and moving puts the job there.
func TestMoveTo(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("j", "j", "j")
	j := s.Job()
	s.press("g")
	if !strings.Contains(s.View(), "Move "+j.ID+" to") {
		t.Fatalf("no page is open:\n%s", s.View())
	}
	p := s.session.Mover
	for known, _ := p.Known(); known < len(s.Jobs()); known, _ = p.Known() {
		s.background()
	}
	p.Improving = -1
	s.follow()
	if known, _ := p.Known(); known != len(s.Jobs()) || !p.Estimated {
		t.Fatalf("%d are known, want %d", known, len(s.Jobs()))
	}
	if !strings.Contains(s.View(), "13 of 14 still to plan  ~ estimate") {
		t.Errorf("it isn't said that figures are estimates:\n%s", s.View())
	}
	p.Improving = 2
	for _, w := range []int{80, 100, 120} {
		s.send(tea.WindowSizeMsg{Width: w, Height: 36})
		if view := s.View(); !strings.Contains(view, "planning number 3, 13 left  ~ estimate ") || !strings.Contains(view, "+/- against ") {
			t.Errorf("%d wide it isn't said which is being planned:\n%s", w, view)
		}
	}
	p.Improving = -1
	s.press("b")
	if s.Moving.To != p.Best(3) {
		t.Errorf("the cheapest is said to be %d, it is %d", s.Moving.To, p.Best(3))
	}
	want, _ := p.Cost(1)
	s.press("home", "down", "enter")
	if s.Over != nil || s.Jobs()[1] != j {
		t.Fatalf("%s isn't at number 2: %v", j.ID, ids(s.Jobs()))
	}
	if s.settle(); s.Present.Totals != want.Totals { // this screen plans no day together
		t.Errorf("moved, the day costs %+v, shown was %+v", s.Present.Totals, want.Totals)
	}
	if s.press("u"); s.Jobs()[3] != j {
		t.Errorf("undone, %s isn't back: %v", j.ID, ids(s.Jobs()))
	}
}

// Once each number is known exactly the page says so, and what the row says the job costs
// there is what is said of it once it is moved.
func TestMoveToPlanned(t *testing.T) {
	s := plannedScreen(t, smallDay(t, 4), testLook(noColours, false, false), 120, 36).settle()
	s.press("j", "j", "g").settle()
	if !strings.Contains(s.View(), "all planned") || strings.Contains(s.View(), "~") {
		t.Errorf("it isn't said that all are planned:\n%s", s.View())
	}
	golden(t, "120x36_move_to", s.View())
	small := plannedScreen(t, smallDay(t, 4), testLook(noColours, false, true), 80, 24).settle()
	golden(t, "80x24_move_to_ascii", small.press("j", "j", "g").settle().View())
	c, _ := s.Moving.Cost(0)
	if s.press("home", "enter"); !s.Present.Whole() || s.Present.Totals != c.Totals {
		t.Errorf("moved, the day costs %+v, shown was %+v", s.Present.Totals, c.Totals)
	}
	if said := words.Cost(c.Difference); !strings.HasSuffix(s.Told(s.Pending), said) {
		t.Errorf("said is %q, the row says %q", s.Told(s.Pending), said)
	}
}

// Esc leaves the job where it is, also while days are planned, and what comes late is
// dropped.
func TestMoveToLeft(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, true), 80, 24).settle()
	order := ids(s.Jobs())
	s.press("j", "g", "down", "esc")
	if s.Over != nil || strings.Join(ids(s.Jobs()), " ") != strings.Join(order, " ") {
		t.Fatalf("left: %v, was %v", ids(s.Jobs()), order)
	}
	s.press("g").settle()
	s.fits()
	s.press("enter")
	if s.Changed() {
		t.Error("moved to where it is, the day is changed")
	}
}

// A job that runs isn't moved, and none is moved before it.
func TestMoveToLeavesTheRunningJobFirst(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, true), 80, 24).settle()
	s.press("r").settle()
	if s.press("g"); s.Over != nil {
		t.Error("a running job can be moved")
	}
	s.press("j", "g").settle().press("b")
	if s.Moving.To == 0 {
		t.Error("before the running job is said to be the cheapest")
	}
	s.press("home", "enter")
	if s.Over == nil || !strings.Contains(s.View(), "nothing can come before it") {
		t.Errorf("a job is moved before the running one:\n%s", s.View())
	}
}

// moving opens the page for the picked job and picks the next number.
func (s *screen) moving(keys ...string) *workday.Moving {
	s.press(append([]string{"1"}, keys...)...).press("g").settle().press("down").settle()
	return s.Moving
}

// When holders are marked while the page is open, all is worked out anew, of the same job
// and with the same number picked.
func TestMoveToFollowsAMark(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 36).settle()
	was, begun := s.moving("j"), s.session.Mover
	s.Pick(4) // whatever is picked below
	s.session.Stand(s.Actual.Marked(12, shop.Mark{Condition: plan.NoCut}, s.Shop))
	s.later(s.ask())
	s.settle()
	if l := s.session.Mover; l == begun || l.Stale() || !l.Estimated {
		t.Error("the costs are those of the beam as it was")
	} else if l.Job.ID != was.Job.ID || s.Moving.To != was.To {
		t.Errorf("%s with %d picked, before it was %s with %d", l.Job.ID, s.Moving.To, was.Job.ID, was.To)
	}
}

// When the shop is read again while the page is open, it is of the day that there is then;
// where the job is gone or has begun to run it closes.
func TestMoveToFollowsTheFiles(t *testing.T) {
	again := func(keys []string, change func(*plan.Day)) (*screen, *workday.Moving) {
		sc, dir := atSmall(t, 120, 36)
		was := sc.moving(keys...)
		fresh := read(t, dir)
		change(fresh.Day)
		sc.session.Files.Reread(fresh, nil, "read again")
		sc.later(sc.ask())
		sc.settle().fits()
		return sc, was
	}
	sc, was := again([]string{"end", "k"}, func(d *plan.Day) { d.Jobs = append(d.Jobs[:3:3], d.Jobs[len(d.Jobs)-2:]...) })
	if l := sc.Moving; l.Job.ID != was.Job.ID || len(l.Rest) != 4 || l.To != 4 {
		t.Errorf("%s of %d others, %d picked; it was %s", l.Job.ID, len(l.Rest), l.To, was.Job.ID)
	}
	sc.press("enter").settle().fits()
	if last := sc.Jobs()[4].ID; last != was.Job.ID {
		t.Errorf("moved behind all, the last is %s", last)
	}
	sc, was = again([]string{"j"}, func(d *plan.Day) { d.Jobs = append(d.Jobs[:1:1], d.Jobs[2:]...) })
	sc.tells("read again; " + was.Job.ID + " doesn't wait")
	sc.press("enter")
	if sc.Over != nil || sc.Changed() {
		t.Errorf("%s is gone, and %T is open", was.Job.ID, sc.Over)
	}
	sc, was = again(nil, func(d *plan.Day) { d.Jobs[0].State = plan.Running })
	sc.tells(was.Job.ID + " doesn't wait")
	if sc.Over != nil {
		t.Errorf("%s runs, and can be moved", was.Job.ID)
	}
}
