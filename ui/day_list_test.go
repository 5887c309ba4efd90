package ui

import (
	"strings"
	"testing"

	"bide/plan"
)

// Ids of any length leave room for when each job is due; the column that nothing stands
// in goes first, and a lateness that there is stays.
func TestLongIDsLeaveWhatCounts(t *testing.T) {
	for _, id := range []string{"D-1", "D-101-hot", "2062-11-25/hot/117"} {
		s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
		next := *s.job()
		next.ID = id
		s.replace(s.job(), &next)
		s.settle()
		for _, isLate := range []bool{true, false} {
			var heads []string
			if s.present.totals.LateJobs = 1; !isLate {
				s.present.totals.LateJobs = 0
			}
			for _, c := range columnsFor(dayColumns(s.desk), 44) {
				heads = append(heads, c.head)
			}
			got := strings.Join(heads, " ")
			if !strings.Contains(got, "run") || !strings.Contains(got, "due") || isLate && !strings.Contains(got, "late") {
				t.Errorf("%s, late %v: the columns are %q", id, isLate, got)
			}
		}
		if s.fits(); !strings.Contains(s.View(), s.short(id, leastID)) {
			t.Errorf("%s isn't shown:\n%s", id, s.View())
		}
	}
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	for _, j := range s.jobs() {
		next := *j
		next.Due = plan.Job{}.Due
		s.replace(j, &next)
	}
	for _, c := range columnsFor(dayColumns(s.settle().desk), 44) {
		if c.head == "due" {
			t.Error("a column of due times is shown though no job has one")
		}
	}
}
