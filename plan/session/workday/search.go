package workday

import (
	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// Seek starts a search from the present order.
func (d Offers) Seek(aim plan.Aim) {
	if d.Search.Busy() {
		d.Say("a search is running: %s stops it and keeps the best order so far", d.Screen.KeyOf(ToStop))
		return
	}
	if d.Offer != nil {
		d.Say("the last search's order waits: %s shows it, to accept or discard it", d.Screen.KeyOf(ToCompare))
		return
	}
	d.Search.Aim = aim
	d.Later(d.Search.Begin(d.Inputs(), d.wants(*d.Now), 0, planning.Errand{Opens: true}))
}

// wants is a draft as a day to be searched: what is set aside is no part of it.
func (d Offers) wants(f draft.Draft) *plan.Day {
	clock := d.Start.Clock
	day := &plan.Day{Start: clock.At, End: d.Shop.Day.End, Calendar: clock.Calendar}
	for _, j := range f.All {
		if j.State != plan.OnHold {
			day.Jobs = append(day.Jobs, *j)
		}
	}
	return day
}
