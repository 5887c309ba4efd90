// Package session is an open shop: the day as it is ordered now with what that costs, its
// drafts and their undoing, what happens at the beam and is recorded, and the shop's files,
// as others may change them. It knows no terminal and draws nothing. Whoever shows it calls
// its deeds, has its work done in the background, hands back what that comes to, and reads
// its notice. Nothing that was reported at the beam is lost or said to be saved before it is.
package session

import (
	"bide/plan/changeover"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/shop/record"
)

// Session is an open shop: the day as it is ordered now with what that costs, what stands
// at the beam, what is saved, and what happened last. It knows nothing of a screen.
type Session struct {
	*workday.Day
	workday.Editor
	workday.Offers
	Viewer  Viewer
	SavedTo string // the file that the day was saved to where day.toml could not be; else empty

	Journal *journal.Journal // of what happens at the beam
	Actual  journal.Actual   // what is really there
	Claims  []*Claim         // on walks, to be taken back
	Setup   *Setup           // that is under way; nil when none is
	Began   string           // id of the job that was reported to run just now
	Watch   watch            // over the shop's files
	Wear    *record.Summary  // of the record; nil while it isn't read
}

// busyWith has work done in the background, if nothing is being written: until it has ended
// nothing is written, read again or changed. Else it says so.
func (d *Session) busyWith(w planning.Work) bool {
	if d.Waits() {
		return false
	}
	d.Journal.Begin()
	d.Later(w)
	return true
}

// Waits reports whether something is being written, and says so.
func (d *Session) Waits() bool {
	if d.Journal.Busy() {
		d.Say("wait: the last one is still being saved")
	}
	return d.Journal.Busy()
}

// Viewer is what a session asks of whoever shows it.
type Viewer interface {
	workday.Screen
	Picked() int        // the turn of the job that is looked at
	Unfinished() string // what was typed there and would be lost; empty where nothing was
	ReadAnew()          // the shop's files were: jobs may have other turns
	Quiet() bool        // nothing is open there that a shop read anew would disturb
}

// Take goes on with what work in the background came to; false where that was none of the
// session's.
func (d *Session) Take(result any) bool {
	switch r := result.(type) {
	case planning.Found:
		d.Finds(r)
	case journal.Written:
		d.performed(r)
	case journal.DaySaved:
		d.Journal.WroteDay(r)
		r.Then(r)
	case Asked:
		d.given(r)
	case Looked:
		d.sees(r)
	case recorded:
		d.heard(r)
	default:
		if !d.Forecast.Take(r) {
			return false
		}
		d.planned()
	}
	return true
}

// planned goes on when more of the day is known.
func (d *Session) planned() {
	d.Refresh()
	d.followPlan()
	if f := d.Search.Held(); f != nil && d.Forecast.Present.Whole() {
		d.Finds(*f)
	}
}

// New opens a session of a shop whose beam can be planned.
func New(s *shop.Shop, p *changeover.Planner) *Session {
	d := &Session{Day: workday.New(s, p), Journal: journal.New(), Actual: journal.Actual{Standing: s.Standing, Marks: s.Marks}}
	d.Editor, d.Offers = workday.Editor{Day: d.Day}, workday.Offers{Day: d.Day}
	d.Journal.SetDayLags(d.Lags)
	d.Watch.since = d.Journal.Clock()
	return d
}

// ShowOn has whoever shows the session told what to show.
func (d *Session) ShowOn(v Viewer) { d.Viewer, d.Screen = v, v }
