package ui

import (
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/words"
)

// saveDay saves the day as it is here.
func (d *session) saveDay() {
	j, now := d.journal, d.history.Now
	switch {
	case d.waits():
	case j.OthersHave():
		d.askAgain(nil, func(a asked) {
			if a.lock == nil {
				d.say("not saved: %s", a.why)
				return
			}
			d.saveDay()
		})
	case !j.Writes():
		d.say("not saved: %s", j.Why())
	case !d.changed() && !j.DayLags():
		d.say("there is nothing to save: day.toml is as it is here")
	default:
		d.say("saving day.toml")
		d.busyWith(j.WriteDay(d.shop, journal.Filed{Day: now.Day(d.shop.Day), From: d.origins(now)}, func(s journal.DaySaved) { d.saved(now, s) }))
	}
}

// saved goes on when the day was saved: what was saved is now the file's.
func (d *session) saved(now draft.Draft, s journal.DaySaved) {
	if s.Err != nil {
		d.say("NOT SAVED: %v", s.Err)
		return
	}
	d.kept, d.aside = now, ""
	if s.Out.Beside {
		d.aside = s.Out.File
	}
	d.relist()
	d.say("%s", words.Join(", ", s.Out.Said, now.Chosen()))
}
