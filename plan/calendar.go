package plan

import (
	"slices"
	"time"
)

// Hours is a stretch of time, its end left out. One without an end goes on for good.
type Hours struct{ From, To time.Time }

// holds reports whether a time is in the stretch.
func (h Hours) holds(t time.Time) bool {
	return !t.Before(h.From) && (h.To.IsZero() || t.Before(h.To))
}

// Pause is when nobody sets up, and nothing runs unless it says so.
type Pause struct {
	Hours
	Why  string
	Runs bool // a run goes on, its stops too
}

// Calendar is when work goes on: inside shifts and outside pauses. What isn't done when the
// last shift ends goes on past it. A nil Calendar is always open.
type Calendar struct {
	Shifts []Hours // ascending, apart from each other
	Pauses []Pause

	// The open stretches, ascending and apart, the last one without an end.
	setups, runs []Hours
	end          time.Time // of the last shift; zero where it has none
}

// NewCalendar is the calendar of shifts, which ascend and are apart from each other, and
// pauses, which may come in any order.
func NewCalendar(shifts []Hours, pauses []Pause) *Calendar {
	c := &Calendar{Shifts: shifts, Pauses: pauses}
	if len(shifts) == 0 {
		return c
	}
	c.end = shifts[len(shifts)-1].To
	c.setups = c.open(func(Pause) bool { return true })
	c.runs = c.open(func(p Pause) bool { return !p.Runs })
	return c
}

// Shifts are those of a day; one from its start to its end where it has no calendar.
func (d *Day) Shifts() []Hours {
	if d.Calendar == nil {
		return []Hours{{d.Start, d.End}}
	}
	return slices.Clone(d.Calendar.Shifts)
}

// open are the stretches of the shifts without the pauses that count.
func (c *Calendar) open(counts func(Pause) bool) []Hours {
	open := slices.Clone(c.Shifts)
	open[len(open)-1].To = time.Time{}
	for _, p := range c.Pauses {
		if !counts(p) {
			continue
		}
		var left []Hours
		for _, h := range open {
			if !p.From.Before(p.To) || !p.To.After(h.From) || !h.To.IsZero() && !p.From.Before(h.To) {
				left = append(left, h)
				continue
			}
			if p.From.After(h.From) {
				left = append(left, Hours{h.From, p.From})
			}
			if h.To.IsZero() || p.To.Before(h.To) {
				left = append(left, Hours{p.To, h.To})
			}
		}
		open = left
	}
	return open
}

// stretches are the open ones for a run, or for a setup.
func (c *Calendar) stretches(run bool) []Hours {
	switch {
	case c == nil:
		return nil
	case run:
		return c.runs
	}
	return c.setups
}

// Works reports whether somebody sets up at a time.
func (c *Calendar) Works(t time.Time) bool { return c.Opens(t, false).Equal(t) }

// Opens is the first open moment from t on.
func (c *Calendar) Opens(t time.Time, run bool) time.Time {
	for _, h := range c.stretches(run) {
		if h.holds(t) {
			return t
		}
		if h.From.After(t) {
			return h.From
		}
	}
	return t
}

// Ends is when work ends that begins at an open moment and takes so long: broken off where
// it is closed, it goes on with what was left.
func (c *Calendar) Ends(t time.Time, takes time.Duration, run bool) time.Time {
	for _, h := range c.stretches(run) {
		if !h.To.IsZero() && !h.To.After(t) {
			continue
		}
		if h.From.After(t) {
			t = h.From
		}
		if end := t.Add(takes); h.To.IsZero() || !end.After(h.To) {
			return end
		}
		takes -= h.To.Sub(t)
		t = h.To
	}
	return t.Add(takes)
}

// Worked is how long runs went on between two times.
func (c *Calendar) Worked(from, to time.Time) (open time.Duration) {
	if c == nil || len(c.Shifts) == 0 {
		return to.Sub(from)
	}
	for _, h := range c.runs {
		begins, ends := h.From, to
		if begins.Before(from) {
			begins = from
		}
		if !h.To.IsZero() && h.To.Before(ends) {
			ends = h.To
		}
		open += max(ends.Sub(begins), 0)
	}
	return open
}

// Fits is the first moment from t on at which a run of that length fits without a break.
// Where none is left before the last shift's end, the run goes on past it.
func (c *Calendar) Fits(t time.Time, takes time.Duration) time.Time {
	for _, h := range c.stretches(true) {
		if !h.To.IsZero() && !h.To.After(t) {
			continue
		}
		if h.From.After(t) {
			t = h.From
		}
		if h.To.IsZero() || !t.Add(takes).After(h.To) {
			break
		}
	}
	return t
}

// Refuses is the fault of a job whose run may not be broken off and fits nowhere before the
// last shift's end; false where it has none.
func (c *Calendar) Refuses(j *Job) (Fault, bool) {
	if c == nil || c.end.IsZero() || !j.Unbroken {
		return Fault{}, false
	}
	longest, run := c.longest(), j.RunTime()
	return NewFault("unbroken", "it runs %.1f min and may not be broken off: the longest open time before the last shift's end is %.1f min", run.Minutes(), longest.Minutes()), run > longest
}

// longest is the longest time before the last shift's end that a run can take without a
// break.
func (c *Calendar) longest() (longest time.Duration) {
	for _, h := range c.runs {
		to := h.To
		if to.IsZero() {
			to = c.end
		}
		longest = max(longest, to.Sub(h.From))
	}
	return longest
}

// Clock is a moment of a day that is planned, by its calendar.
type Clock struct {
	At       time.Time
	Calendar *Calendar // nil is always open
}

// Clock sets when the step's job is set up, runs and ends, and how late that is: its setup
// begins at the first open moment from the clock on. A job that runs already has run since
// it began, and no less than up to the clock.
func (s *Step) Clock(from Clock) {
	c, setup, run := from.Calendar, s.Setup.Total(), s.Job.RunTime()
	switch {
	case setup > 0:
		s.SetupStart = c.Opens(from.At, false)
		s.SetupEnd = c.Ends(s.SetupStart, setup, false)
	case s.Job.State == Running && !s.Job.Began.IsZero():
		s.SetupStart, s.SetupEnd = s.Job.Began, s.Job.Began
	default:
		s.SetupStart = c.Opens(from.At, true)
		s.SetupEnd = s.SetupStart
	}
	s.RunStart = c.Opens(s.SetupEnd, true)
	if s.Job.Unbroken {
		s.RunStart = c.Fits(s.SetupEnd, run)
	}
	s.RunEnd = c.Ends(s.RunStart, run, true)
	s.Paused = s.RunEnd.Sub(s.SetupStart) - setup - run
	if s.RunEnd.Before(from.At) { // it still runs
		s.RunEnd = from.At
	}
	s.Late = 0
	if !s.Job.Due.IsZero() {
		s.Late = max(s.RunEnd.Sub(s.Job.Due), 0)
	}
}
