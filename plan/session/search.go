package session

import (
	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// Seek starts a search from the present order.
func (d *Session) Seek(aim plan.Aim) {
	if d.Search.Busy() {
		d.Say("a search is running: Esc stops it and keeps the best order so far")
		return
	}
	if d.Offer != nil {
		d.Say("the last search's order waits: v shows it, to accept or discard it")
		return
	}
	d.Search.Aim = aim
	d.later(d.Search.Begin(d.Inputs(), d.wants(d.History.Now), d.Search.Rounds, planning.Errand{Opens: true}))
}

// Inputs is what a plan of the present day depends on.
func (d *Session) Inputs() planning.Inputs { return d.Forecast.Inputs(d.History.Now.Done()) }

// wants is a draft as a day to be searched: what is set aside is no part of it.
func (d *Session) wants(f draft.Draft) *plan.Day {
	day := &plan.Day{Start: d.Forecast.Start.Clock, End: d.Shop.Day.End}
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
func (d *Session) interrupt() bool { return d.Search.Interrupt(d.Inputs()) }
