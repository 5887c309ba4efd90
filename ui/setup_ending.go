package ui

import (
	"time"

	"bide/plan"
)

// ending asks what became of the job that ran before, when the first thing is reported
// and by the clock its run isn't over: it may be done, or stopped for another.
type ending struct {
	job  *plan.Job
	till time.Time // its run's end as planned
	now  time.Time
	then func() // what was about to be reported
}

// asks reports whether that has to be asked first.
func (w *setup) asks(then func()) bool {
	d, turn := w.d, w.turnOf()
	if w.ending = nil; turn < 1 || w.o == nil || w.sure || d.journal.Invented() {
		return false
	}
	now, before := d.journal.Clock(), d.outcome(turn-1)
	j := w.running()
	if j == nil || before == nil || !now.Before(before.Clock) || !d.shop.Day.Begins(&plan.Standing{Recorded: now}).Equal(now) {
		return false
	}
	w.ending = &ending{j, before.Clock, now, then}
	return true
}

// ended takes what became of it, done or put aside, and goes on.
func (w *setup) ended(became plan.State) {
	e := w.ending
	w.became, w.ending, w.sure = became, nil, true
	e.then()
}

// runsOn takes that it still runs: nothing is reported.
func (w *setup) runsOn() {
	w.d.say("nothing is told: %s runs", w.ending.job.ID)
	w.ending = nil
}
