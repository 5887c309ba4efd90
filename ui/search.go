package ui

import (
	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// seek starts a search from the present order.
func (d *session) seek(aim plan.Aim) {
	if d.search.Busy() {
		d.say("a search is running: Esc stops it and keeps the best order so far")
		return
	}
	if d.offer != nil {
		d.say("the last search's order waits: v shows it, to accept or discard it")
		return
	}
	d.search.Aim = aim
	d.later(d.search.Begin(d.inputs(), d.wants(d.history.Now), d.search.Rounds, planning.Errand{Opens: true}))
}

// inputs is what a plan of the present day depends on.
func (d *session) inputs() planning.Inputs { return d.forecast.Inputs(d.history.Now.Done()) }

// wants is a draft as a day to be searched: what is set aside is no part of it.
func (d *session) wants(f draft.Draft) *plan.Day {
	day := &plan.Day{Start: d.forecast.Start.Clock, End: d.shop.Day.End}
	for _, j := range f.All {
		if j.State != plan.Aside {
			day.Jobs = append(day.Jobs, *j)
		}
	}
	return day
}

const interrupted = "the search stops at that, and what it has found is fitted to the day as it is now"

// interrupt ends a running search whose day has become another, and reports whether
// it did: what it has found by then is fitted to the day of now.
func (d *session) interrupt() bool { return d.search.Interrupt(d.inputs()) }
