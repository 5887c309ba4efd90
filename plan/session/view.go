package session

import (
	"time"

	"bide/plan/session/journal"
	"bide/plan/session/workday"
	"bide/plan/shop/record"
)

// View is an open shop as it is shown: all that there is to see, and nothing that changes it.
type View struct {
	workday.View
	Actual        journal.Actual // what is really at the beam
	Saving        journal.Saving
	Wear          *record.Summary // of the record; nil while it isn't read
	SavedTo       string          // the file that the day was saved to where day.toml could not be; else empty
	Outdated      string          // says that what is shown may be; empty while it isn't
	OutdatedBrief string          // the same in few words
	Question      string          // whether to quit, with what would be lost
	Setup         *Guide          // that is under way; nil when none is
	Time          time.Time       // by the clock on the wall; zero where no clock counts
}

// Shown is the shop as it is now; it stays so, whatever becomes of the session.
func (d *Session) Shown() View {
	v := View{View: d.Day.Shown(), Actual: d.Actual, Saving: d.Journal.Saving, Wear: d.Files.Wear, SavedTo: d.Files.SavedTo, Question: d.question()}
	v.Outdated, v.OutdatedBrief = d.Files.outdated()
	if d.Journal.Asked() {
		v.Time = d.TimeNow()
	}
	if d.Setup != nil {
		v.Setup = d.Setup.shown()
	}
	return v
}
