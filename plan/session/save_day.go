package session

import (
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/words"
)

// SaveDay saves the day as it is here.
func (d *Session) SaveDay() {
	j, now := d.Journal, d.History.Now
	switch {
	case d.Waits():
	case j.OthersHave():
		d.askAgain(nil, func(a Asked) {
			if a.lock == nil {
				d.Say("not saved: %s", a.why)
				return
			}
			d.SaveDay()
		})
	case !j.Writes():
		d.Say("not saved: %s", j.Why())
	case !d.Changed() && !j.DayLags():
		d.Say("there is nothing to save: day.toml is as it is here")
	default:
		d.Say("saving day.toml")
		d.busyWith(j.WriteDay(d.Shop, journal.Filed{Day: now.Day(d.Shop.Day), From: d.Origins(now)}, func(s journal.DaySaved) { d.saved(now, s) }))
	}
}

// saved goes on when the day was saved: what was saved is now the file's.
func (d *Session) saved(now draft.Draft, s journal.DaySaved) {
	if s.Err != nil {
		d.Say("NOT SAVED: %v", s.Err)
		return
	}
	d.Filed, d.SavedTo = now, ""
	if s.Out.Beside {
		d.SavedTo = s.Out.File
	}
	d.Relist()
	d.Say("%s", words.Join(", ", s.Out.Said, now.Chosen()))
}
