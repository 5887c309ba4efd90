package plan

import (
	"testing"
	"time"
)

// Two shifts with a pause in each, the second of which runs go on through. By hand, in minutes of
// runs: from 13:00 to 7:00 the next day 60 + 60; over the first pause 105 of 120; over the second
// all of 120; before the first shift none; the last shift is open without an end.
func TestWorked(t *testing.T) {
	at := func(day, hour, minute int) time.Time { return time.Date(2026, 11, day, hour, minute, 0, 0, time.UTC) }
	c := NewCalendar([]Hours{{at(25, 6, 0), at(25, 14, 0)}, {at(26, 6, 0), at(26, 14, 0)}},
		[]Pause{{Hours: Hours{at(25, 9, 0), at(25, 9, 15)}}, {Hours: Hours{at(26, 9, 0), at(26, 9, 15)}, Runs: true}})
	for _, w := range []struct {
		from, to time.Time
		want     int
	}{
		{at(25, 13, 0), at(26, 7, 0), 120},
		{at(25, 8, 0), at(25, 10, 0), 105},
		{at(26, 8, 0), at(26, 10, 0), 120},
		{at(25, 1, 0), at(25, 6, 0), 0},
		{at(25, 9, 5), at(25, 9, 10), 0},
		{at(26, 13, 0), at(26, 15, 0), 120},
		{at(25, 8, 0), at(25, 7, 0), 0},
	} {
		if got := c.Worked(w.from, w.to); got != time.Duration(w.want)*time.Minute {
			t.Errorf("%v to %v: %v, want %d min", w.from, w.to, got, w.want)
		}
	}
	if got := (*Calendar)(nil).Worked(at(25, 1, 0), at(26, 1, 0)); got != 24*time.Hour {
		t.Errorf("always open: %v", got)
	}
}
