package ui

import (
	"bide/plan/words"
	"fmt"
)

// saveDay saves the day as it is here.
func (d *session) saveDay() {
	j, now := d.journal, d.history.now
	switch {
	case d.waits():
	case j.right == another:
		d.askAgain(nil, func(a asked) {
			if a.lock == nil {
				d.say("not saved: %s", a.why)
				return
			}
			d.saveDay()
		})
	case !j.writes():
		d.say("not saved: %s", j.why)
	case !d.changed() && !j.behind:
		d.say("there is nothing to save: day.toml is as it is here")
	default:
		d.say("saving day.toml")
		d.busyWith(j.writeDay(d.shop, now, filed{now.day(d.shop.Day), d.origins(now)}))
	}
}

// saved goes on when the day was saved: what was saved is now the file's.
func (d *session) saved(s daySaved) {
	d.journal.busy = false
	d.journal.wroteDay(s)
	if s.err != nil {
		d.say("NOT SAVED: %v", s.err)
		return
	}
	d.kept, d.aside = s.draft, ""
	if s.out.Beside {
		d.aside = s.out.File
	}
	d.relist()
	d.say("%s", words.Join(", ", s.out.Said, s.draft.chosen()))
}

// chosen tells that what a search chose is saved with the day.
func (d draft) chosen() string {
	n := 0
	for _, j := range d.all {
		if j.Chosen != nil {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("with what a search chose for %s", words.Count(n, "job"))
}
