package session

import (
	"time"

	"bide/plan"
)

// ending asks what became of the job that ran before, when the first thing is reported
// and by the clock its run isn't over: it may be done, or stopped for another.
type ending struct {
	Job  *plan.Job
	Till time.Time // its run's end as planned
	Now  time.Time
	then func() // what was about to be reported
}

// asks reports whether that has to be asked first.
func (w *Setup) asks(then func()) bool {
	d, turn := w.d, w.turnOf()
	if w.Ending = nil; turn < 1 || w.Plan == nil || w.sure || d.Journal.Invented() {
		return false
	}
	now, before := d.Journal.Clock(), d.Outcome(turn-1)
	j := w.Running()
	if j == nil || before == nil || !now.Before(before.Clock) || !d.Shop.Day.Begins(&plan.Standing{Recorded: now}).Equal(now) {
		return false
	}
	w.Ending = &ending{j, before.Clock, now, then}
	return true
}

// Ended takes what became of it, done or put aside, and goes on.
func (w *Setup) Ended(became plan.State) {
	e := w.Ending
	w.became, w.Ending, w.sure = became, nil, true
	e.then()
}

// RunsOn takes that it still runs: nothing is reported.
func (w *Setup) RunsOn() {
	w.d.Say("nothing is told: %s runs", w.Ending.Job.ID)
	w.Ending = nil
}
