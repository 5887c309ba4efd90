// Package session is an open shop: the day as it is ordered now with what that costs, its
// drafts and their undoing, what happens at the beam and is recorded, and the shop's files,
// as others may change them. It knows no terminal and draws nothing. Whoever shows it calls
// its deeds, has its work done in the background, hands back what that comes to, and reads
// its notice. Nothing that was reported at the beam is lost or said to be saved before it is.
package session

import (
	"errors"
	"fmt"
	"strings"

	"bide/plan/changeover"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/words"
)

// Session is an open shop: the day as it is ordered now with what that costs, what stands
// at the beam, what is saved, and what happened last. It knows nothing of a screen.
type Session struct {
	*workday.Day
	workday.Editor
	workday.Offers
	Viewer Viewer

	Journal *journal.Journal // of what happens at the beam
	Actual  journal.Actual   // what is really there
	Reports []*Report        // of guided setups, to be undone
	Setup   *Setup           // that is under way; nil when none is
	Began   string           // id of the job that was reported to run just now

	Files      Files
	Conditions Conditions
}

// alone has work done in the background, if nothing else is being written, read or asked for:
// until it has ended, nothing is. Else it says so. This is the one way to write or read files.
func (d *Session) alone(w planning.Work) bool {
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
		d.Say("wait: the last entry is still being saved")
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
	case planning.Estimated, planning.Moved:
		if d.Mover != nil {
			d.Mover.Take(r)
		}
	case journal.Written:
		d.performed(r)
	case journal.DaySaved:
		d.Journal.WroteDay(r)
		r.Then(r)
	case Asked:
		d.Files.given(r)
	case Looked:
		d.Files.sees(r)
	case recorded:
		d.Files.heard(r)
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
	if f := d.Search.Held(); f != nil && d.Present.Whole() {
		d.Finds(*f)
	}
}

// New opens a session of a shop. It is an error when its beam can't be planned for, or its day
// has no jobs.
func New(s *shop.Shop) (*Session, error) {
	p, err := changeover.NewPlanner(s.Beam)
	if err != nil {
		return nil, fmt.Errorf("beam.toml: %w", err)
	}
	if len(s.Day.Jobs) == 0 {
		return nil, errors.New("day.toml: there are no jobs")
	}
	d := &Session{Day: workday.New(s, p), Journal: journal.New(), Actual: journal.Actual{Positions: s.Positions, Marks: s.Marks}}
	d.Editor, d.Offers = workday.Editor{Day: d.Day}, workday.Offers{Day: d.Day}
	d.Journal.SetDayLags(d.Lags)
	d.Files, d.Conditions = Files{Session: d, since: d.TimeNow()}, Conditions{d}
	return d, nil
}

// ShowOn sets who shows the session.
func (d *Session) ShowOn(v Viewer) { d.Viewer, d.Screen = v, v }

// Loses reports whether leaving would lose something.
func (d *Session) Loses() bool { return d.Journal.Busy() || len(d.losing()) > 0 }

// losing names what leaving would lose.
func (d *Session) losing() (all []string) {
	owed := d.Journal.Owing()
	if owed == "" && d.Journal.Fault() != "" {
		owed = "what was entered at the beam"
	}
	if owed != "" {
		all = append(all, owed)
	}
	switch {
	case !d.Changed():
	case d.Journal.Writes():
		all = append(all, "the changes to the day ("+d.Viewer.KeyOf(workday.ToSave)+" saves them)")
	default:
		all = append(all, "the changes to the day")
	}
	if text := d.Viewer.Unfinished(); text != "" {
		all = append(all, text)
	}
	switch {
	case d.Search.Busy():
		all = append(all, "what the search has found so far")
	case d.Offer != nil:
		all = append(all, "the order that a search found ("+d.Viewer.KeyOf(workday.ToCompare)+" shows it)")
	}
	return all
}

// question asks whether to quit, and says what would be lost, and why.
func (d *Session) question() string {
	if d.Journal.Busy() {
		return "The last entry is still being saved. Quit anyway?"
	}
	text, why := "Not saved: "+strings.Join(d.losing(), "; ")+". ", words.Join("; ", d.Journal.Fault(), d.Journal.Why())
	if d.Changed() || d.Journal.Fault() != "" || d.Journal.Owing() != "" {
		text += capital(why)
	}
	return text + "Quit anyway?"
}

// capital is a text as a sentence before another; nothing stays nothing.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + ". "
}
