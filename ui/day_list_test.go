package ui

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/pane"
	"bide/ui/pane/daylist"
)

// Ids of any length leave room for when each job is due; the column that nothing stands
// in goes first, and a lateness that there is stays.
func TestLongIDsLeaveWhatCounts(t *testing.T) {
	for _, id := range []string{"D-1", "D-101-hot", "2062-11-25/hot/117"} {
		s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
		next := *s.Job()
		next.ID = id
		s.Replace(s.Job(), &next)
		s.settle()
		for _, isLate := range []bool{true, false} {
			var heads []string
			if s.Forecast.Present.Totals.LateJobs = 1; !isLate {
				s.Forecast.Present.Totals.LateJobs = 0
			}
			for _, c := range draw.ColumnsFor(daylist.Columns(s.Shared, s.day.W), s.day.W) {
				heads = append(heads, c.Head)
			}
			got := strings.Join(heads, " ")
			if !strings.Contains(got, "run") || !strings.Contains(got, "due") || isLate && !strings.Contains(got, "late") {
				t.Errorf("%s, late %v: the columns are %q", id, isLate, got)
			}
		}
		if s.fits(); !strings.Contains(s.View(), s.Short(id, daylist.LeastIDWidth)) {
			t.Errorf("%s isn't shown:\n%s", id, s.View())
		}
	}
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	for _, j := range s.Jobs() {
		next := *j
		next.Due = plan.Job{}.Due
		s.Replace(j, &next)
	}
	for _, c := range draw.ColumnsFor(daylist.Columns(s.settle().Shared, s.day.W), s.day.W) {
		if c.Head == "due" {
			t.Error("a column of due times is shown though no job has one")
		}
	}
}

// Figures of jobs planned each on its own are marked as estimates, in the list, the day map
// and beside the totals; those of the settled day are not.
func TestProvisionalFiguresAreMarked(t *testing.T) {
	s := plannedScreen(t, smallDay(t, 4), testLook(noColours, false, false), 120, 36)
	for !s.Forecast.Present.Full() {
		s.background()
	}
	if s.Forecast.Present.Whole() {
		t.Fatal("the day is settled already")
	}
	about := func() (n int) {
		for turn := range s.Jobs() {
			_, moves := daylist.MovesCell(pane.JobRow{Shared: s.Shared, Index: turn, Job: s.Jobs()[turn], Outcome: s.Outcome(turn), Focused: true})
			if strings.HasPrefix(moves, "~") {
				n++
			}
			if _, by := daylist.LateCell(pane.JobRow{Shared: s.Shared, Index: turn, Job: s.Jobs()[turn], Outcome: s.Outcome(turn), Focused: true}); strings.HasPrefix(by, "!") != (by != "" && !s.Estimated()) {
				t.Errorf("turn %d is late by %q", turn, by)
			}
		}
		return n
	}
	if n := about(); n != len(s.Jobs()) || !strings.Contains(s.View(), "planning all jobs together") || !strings.Contains(s.View(), "~ estimate: ") {
		t.Errorf("%d of %d are marked:\n%s", n, len(s.Jobs()), s.View())
	}
	s.press("4")
	if view := s.View(); strings.Count(view, " ~") < len(s.Jobs())/2 {
		t.Errorf("the day map marks none:\n%s", view)
	}
	if n := func() int { s.settle(); return about() }(); n != 0 || strings.Contains(s.View(), "~") {
		t.Errorf("settled, %d are marked:\n%s", n, s.View())
	}
}

// At 120x36 a job is listed with its material, its customer and when it ends, and a filter finds
// a customer's jobs; without customers there is no column of them.
func TestCustomerIsListed(t *testing.T) {
	s := newScreen(t, smallDay(t, 4), testLook(noColours, false, false), 120, 36).settle()
	if strings.Contains(s.View(), "customer") {
		t.Errorf("a column of customers though no job has one:\n%s", s.View())
	}
	next := *s.Jobs()[2]
	next.Customer, next.Note = "hall 2", "cut first"
	s.Replace(s.Jobs()[2], &next)
	s.settle()
	for _, want := range []string{"material", "customer", "end", "hall 2"} {
		if !strings.Contains(s.View(), want) {
			t.Errorf("no %q:\n%s", want, s.View())
		}
	}
	s.press("home", "/").enters("hall")
	if s.Job().ID != next.ID || !strings.Contains(s.View(), "note: cut first") {
		t.Errorf("the filter finds %s:\n%s", s.Job().ID, s.View())
	}
	s.fits()
}
