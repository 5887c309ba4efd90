package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// A lifted job shows what each gap costs at first sight, the figures are those of the
// days planned so job by job, and dropping puts it there.
func TestLift(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("j", "j", "j")
	j := s.job()
	s.press("g")
	if !strings.Contains(s.View(), "Move "+j.ID+" to") {
		t.Fatalf("nothing is lifted:\n%s", s.View())
	}
	s.settle()
	l := s.over.(*lift)
	if len(l.costs) != len(s.jobs()) || !l.seen {
		t.Fatalf("%d gaps are known, want %d", len(l.costs), len(s.jobs()))
	}
	if !strings.Contains(s.View(), "14 of 14 still to plan  ~ estimate") {
		t.Errorf("it isn't said that figures are only about:\n%s", s.View())
	}
	l.settling = 2
	for _, w := range []int{80, 100, 120} {
		s.send(tea.WindowSizeMsg{Width: w, Height: 36})
		if view := s.View(); !strings.Contains(view, "planning number 3, 14 to go  ~ estimate ") || !strings.Contains(view, "+/- against ") {
			t.Errorf("%d wide it isn't said which gap is being settled:\n%s", w, view)
		}
	}
	l.settling = noGap
	s.press("b")
	gap := l.gap
	for other, c := range l.costs {
		if c.Better(l.costs[gap].Slip, plan.AimMinutes) {
			t.Errorf("gap %d costs less than %d, the cheapest", other, gap)
		}
	}
	want := l.costs[1].Totals
	s.press("home", "down", "enter")
	if s.over != nil || s.jobs()[1] != j {
		t.Fatalf("%s isn't at turn 2: %v", j.ID, ids(s.jobs()))
	}
	if s.settle(); s.forecast.Present.Totals != want { // this screen doesn't settle days
		t.Errorf("dropped, the day costs %+v, told was %+v", s.forecast.Present.Totals, want)
	}
	if s.press("u"); s.jobs()[3] != j {
		t.Errorf("undone, %s isn't back: %v", j.ID, ids(s.jobs()))
	}
}

// Once all gaps are settled the page says so, and dropping the job into any of them
// gives exactly the totals told: at once where the day is kept, else when it is settled
// again, and to a screen that knows nothing of the lift too.
func TestLiftSettled(t *testing.T) {
	s := newScreen(t, shortDemo(t, 4), testLook(noColours, false, false), 120, 36).settle()
	before := s.forecast.Present.Totals
	s.press("j", "j", "g").settle()
	l := s.over.(*lift)
	for gap := range len(s.jobs()) {
		if c := l.costs[gap]; !c.settled {
			t.Fatalf("gap %d isn't settled:\n%s", gap, s.View())
		}
	}
	if !strings.Contains(s.View(), "all planned") || strings.Contains(s.View(), "~") {
		t.Errorf("it isn't said that all are settled:\n%s", s.View())
	}
	golden(t, "120x36_lift", s.View())
	if l.costs[2].Totals != before || l.costs[2].Setup != 0 || l.costs[2].Repositions != 0 {
		t.Errorf("where it is now it costs %+v against the same day", l.costs[2])
	}
	l.days = slices.DeleteFunc(l.days, func(d *settledGap) bool { return d.gap%2 == 0 }) // as of a longer day
	for gap := range fewer(len(s.jobs()), 2) {
		s.over, l.gap = l, gap
		want, kept, order := l.costs[gap], l.day(gap) != nil, ids(l.with(gap))
		if s.press("enter"); s.forecast.Present.Whole() != (kept || gap == 2) {
			t.Errorf("gap %d: the day is kept: %v; it is there at once: %v", gap, kept, s.forecast.Present.Whole())
		}
		if s.settle(); s.forecast.Present.Totals != want.Totals {
			t.Errorf("dropped into gap %d the day costs %+v, told was %+v", gap, s.forecast.Present.Totals, want.Totals)
		}
		if got := ids(s.jobs()); strings.Join(got, " ") != strings.Join(order, " ") {
			t.Errorf("gap %d: the order is %v, want %v", gap, got, order)
		}
		if gap == 2 {
			continue
		}
		if told := costWords(want.Slip); !strings.HasSuffix(s.told(), told) {
			t.Errorf("gap %d: told %q, the row says %q", gap, s.told(), told)
		}
		s.press("u").settle()
	}
	other := newScreen(t, shortDemo(t, 4), testLook(noColours, false, false), 80, 24)
	other.desk.do(other.history.now.ordered(jobsIn(other, ids(l.with(0)))))
	if other.settle(); other.forecast.Present.Totals != l.costs[0].Totals {
		t.Errorf("another screen says %+v, told was %+v", other.forecast.Present.Totals, l.costs[0].Totals)
	}
}

// jobsIn are a screen's jobs in an order by id.
func jobsIn(s *screen, order []string) (out []*plan.Job) {
	for _, id := range order {
		out = append(out, s.history.now.find(id))
	}
	return out
}

// The picked gap is settled first, whatever else is being settled makes way for it, and
// what was given up brings nothing.
func TestPickedGapIsSettledFirst(t *testing.T) {
	s := newScreen(t, shortDemo(t, 6), testLook(noColours, false, false), 120, 36).settle().press("j", "j", "j", "g")
	l := s.over.(*lift)
	for !l.seen || l.settling < 0 {
		s.background()
	}
	if l.settling < 0 || l.settling == l.was {
		t.Fatalf("gap %d is being settled, want one that isn't known", l.settling)
	}
	for _, gap := range []int{5, 1, 5, 4} {
		s.press("home")
		for range gap {
			s.press("down")
		}
		if l.settling != gap {
			t.Fatalf("gap %d is being settled, want the picked one, %d", l.settling, gap)
		}
	}
	for !l.costs[4].settled {
		s.background()
	}
	settled := 0
	for _, c := range l.costs {
		if c.settled {
			settled++
		}
	}
	if settled != 2 { // the picked one, and where it was
		t.Errorf("%d gaps are settled before the picked one", settled-1)
	}
	if want := fmt.Sprintf("%d of %d to go", len(s.jobs())-2, len(s.jobs())); !strings.Contains(s.View(), want) {
		t.Errorf("no %q in\n%s", want, s.View())
	}
	s.press("esc").settle()
	if len(l.days) != 1 || s.over != nil {
		t.Errorf("%d days were settled after the job was put back", len(l.days)-1)
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
	s.press("j", "g").settle().press("b")
	if l := s.over.(*lift); l.gap == 0 {
		t.Error("the gap before the running job is said to be the cheapest")
	}
	s.press("home", "enter")
	if s.over == nil || !strings.Contains(s.View(), "nothing can come before it") {
		t.Errorf("a job is dropped before the running one:\n%s", s.View())
	}
}

// Gaps beside a job that the beam can't run cost the same, and none is left out.
func TestLiftPastARefusedJob(t *testing.T) {
	of := demo(t)
	of.Day.Jobs[5].Web = 10 * of.Beam.Web.Length()
	s := newScreen(t, of, testLook(noColours, false, false), 120, 36).settle().press("j", "g").settle()
	l := s.over.(*lift)
	for gap := range len(s.jobs()) {
		if _, known := l.costs[gap]; !known {
			t.Errorf("what gap %d costs isn't told", gap)
		}
	}
	if a, b := l.costs[4], l.costs[5]; a.Totals != b.Totals {
		t.Errorf("before and behind a refused job it costs %+v and %+v", a.Totals, b.Totals)
	}
	l.gap = 5
	if s.press("enter").settle(); s.forecast.Present.Totals != l.costs[5].Totals {
		t.Errorf("dropped behind it the day costs %+v, told was %+v", s.forecast.Present.Totals, l.costs[5].Totals)
	}
}

// lifts lifts the picked job and picks another gap.
func (s *screen) lifts(keys ...string) *lift {
	s.press(append([]string{"1"}, keys...)...).press("g").settle().press("down").settle()
	return s.over.(*lift)
}

// When holders are marked while a job is lifted, all gaps are worked out anew, of the same
// job and with the same gap picked.
func TestLiftFollowsAMark(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	was := s.lifts("j")
	s.pick(4) // whatever is picked below
	s.stand(s.truth.marked(40, shop.Mark{Condition: plan.NoCut}, s.shop))
	s.later(s.ask())
	s.settle()
	if l := s.over.(*lift); l == was || l.start != s.forecast.Start.Standing || !l.seen {
		t.Error("what the gaps cost is that of the beam as it was")
	} else if l.job.ID != was.job.ID || l.gap != was.gap {
		t.Errorf("%s is lifted with gap %d picked, before it was %s with %d", l.job.ID, l.gap, was.job.ID, was.gap)
	}
}

// When the shop is read again while a job is lifted, the gaps are those of the day that
// there is then; a job that is gone or has begun to run is let go.
func TestLiftFollowsTheFiles(t *testing.T) {
	again := func(keys []string, change func(*plan.Day)) (*screen, *lift) {
		sc, dir := atWork(t, 120, 36)
		was := sc.lifts(keys...)
		fresh := read(t, dir)
		change(fresh.Day)
		sc.reread(fresh, nil, "read again")
		sc.later(sc.ask())
		sc.settle().fits()
		return sc, was
	}
	sc, was := again([]string{"end", "k"}, func(d *plan.Day) { d.Jobs = append(d.Jobs[:3:3], d.Jobs[len(d.Jobs)-2:]...) })
	if l := sc.over.(*lift); l.job.ID != was.job.ID || len(l.rest) != 4 || l.gap != 4 {
		t.Errorf("%s is lifted from %d others, gap %d; it was %s", l.job.ID, len(l.rest), l.gap, was.job.ID)
	}
	sc.press("enter").settle().fits()
	if last := sc.jobs()[4].ID; last != was.job.ID {
		t.Errorf("dropped behind all, the last is %s", last)
	}
	sc, was = again([]string{"j"}, func(d *plan.Day) { d.Jobs = append(d.Jobs[:1:1], d.Jobs[2:]...) })
	sc.tells("read again; " + was.job.ID + " doesn't wait")
	sc.press("enter")
	if sc.over != nil || sc.changed() {
		t.Errorf("%s is gone, and %T is open", was.job.ID, sc.over)
	}
	sc, was = again(nil, func(d *plan.Day) { d.Jobs[0].State = plan.Running })
	sc.tells(was.job.ID + " doesn't wait")
	if sc.over != nil {
		t.Errorf("%s runs, and is lifted", was.job.ID)
	}
}
