package ui

import (
	"strings"
	"testing"

	"bide/plan"
)

// dayHeads are the heads of the day's list.
func (s *screen) dayHeads() string {
	_, heads, _ := strings.Cut(s.View(), " job ")
	heads, _, _ = strings.Cut(heads, s.Between)
	return heads
}

// Ids of any length leave room for when each job is due; the column that nothing stands
// in goes first, and a lateness that there is stays.
func TestLongIDsLeaveWhatCounts(t *testing.T) {
	for _, id := range []string{"D-1", "D-101-hot", "2062-11-25/hot/117"} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
		next := *s.Job()
		next.ID = id
		s.session.Replace(s.Job(), &next)
		s.settle()
		for _, isLate := range []bool{true, false} {
			if s.Present.Totals.LateJobs = 1; !isLate {
				s.Present.Totals.LateJobs = 0
			}
			got := s.dayHeads()
			if !strings.Contains(got, "run") || !strings.Contains(got, "due") || isLate && !strings.Contains(got, "late") {
				t.Errorf("%s, late %v: the columns are %q", id, isLate, got)
			}
		}
		if s.fits(); !strings.Contains(s.View(), s.Short(id, 7)) {
			t.Errorf("%s isn't shown:\n%s", id, s.View())
		}
	}
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	for _, j := range s.Jobs() {
		next := *j
		next.Due = plan.Job{}.Due
		s.session.Replace(j, &next)
	}
	if heads := s.settle().dayHeads(); strings.Contains(heads, "due") {
		t.Errorf("a column of due times is shown though no job has one: %q", heads)
	}
}

// Figures of jobs planned each on its own are marked as estimates, in the list, the day map
// and beside the totals; those of the settled day are not.
func TestProvisionalFiguresAreMarked(t *testing.T) {
	s := plannedScreen(t, smallDay(t, 4), testLook(noColours, false, false), 120, 36)
	for !s.Present.Full() {
		s.background()
	}
	if s.Present.Whole() {
		t.Fatal("the day is settled already")
	}
	if view := s.View(); strings.Count(view, " ~") < len(s.Jobs()) || strings.Contains(view, " !") || !strings.Contains(view, "planning all jobs together") || !strings.Contains(view, "~ estimate: ") {
		t.Errorf("not all of %d jobs are marked, or one is said to be late:\n%s", len(s.Jobs()), view)
	}
	s.press("4")
	if view := s.View(); strings.Count(view, " ~") < len(s.Jobs())/2 {
		t.Errorf("the day map marks none:\n%s", view)
	}
	if s.settle(); strings.Contains(s.View(), "~") {
		t.Errorf("settled, some are marked:\n%s", s.View())
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
	s.session.Replace(s.Jobs()[2], &next)
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
