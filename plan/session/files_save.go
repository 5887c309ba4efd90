package session

import (
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/words"
)

// SaveDay saves the day as it is here.
func (f *Files) SaveDay() {
	j, now := f.Journal, *f.Now
	switch {
	case j.OthersHave():
		f.askAgain(nil, func(a Asked) {
			if a.lock == nil {
				f.Say("not saved: %s", a.why)
				return
			}
			f.SaveDay()
		})
	case !j.Writes():
		f.Say("not saved: %s", j.Why())
	case !f.Changed() && !j.DayLags():
		f.Say("there is nothing to save: day.toml is as it is here")
	default:
		if f.alone(j.WriteDay(f.Shop, journal.Filed{Day: now.Day(f.Shop.Day), From: f.Origins(now)}, func(s journal.DaySaved) { f.saved(now, s) })) {
			f.Say("saving day.toml")
		}
	}
}

// saved goes on when the day was saved: what was saved is now the file's.
func (f *Files) saved(now draft.Draft, s journal.DaySaved) {
	if s.Err != nil {
		f.Say("NOT SAVED: %v", s.Err)
		return
	}
	f.Filed, f.SavedTo = now, ""
	if s.Out.Beside {
		f.SavedTo = s.Out.File
	}
	f.Relist()
	f.Say("%s", words.Join(", ", s.Out.Said, now.Chosen()))
}
