package words

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
)

// Change is a number with its sign; zero is the same.
func Change(n int) string {
	if n == 0 {
		return "="
	}
	return fmt.Sprintf("%+d", n)
}

// SignedMinutes are minutes with their sign.
func SignedMinutes(d time.Duration) string { return fmt.Sprintf("%+.1f", d.Minutes()) }

// SameOr is a figure, or that it is the same.
func SameOr(minutes string) string {
	if minutes == "+0.0" || minutes == "-0.0" {
		return "="
	}
	return minutes
}

// Lateness is how late something is; nothing where it isn't.
func Lateness(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return "!" + Hours(d)
}

// Totals say what a day costs.
func Totals(t plan.Totals) string {
	return fmt.Sprintf("%s min of setup, %s, %s", Minutes(t.Setup), Count(t.Repositions, "move"), Late(t))
}

// Late says how late a day is.
func Late(t plan.Totals) string {
	if t.LateJobs == 0 {
		return "none late"
	}
	return fmt.Sprintf("%s late (%s)", Hours(t.Late), Count(t.LateJobs, "job"))
}

// Cost says what a day costs against the other day.
func Cost(s plan.Difference) string {
	other := s.Totals
	other.Setup -= s.Setup
	other.Repositions -= s.Repositions
	other.Late -= s.LateBy
	return Against(s.Totals, other)
}

// Jobs names jobs.
func Jobs(jobs []*plan.Job) string {
	var names []string
	for _, j := range jobs {
		names = append(names, j.ID)
	}
	return strings.Join(names, ", ")
}
