package session

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/shop/disk"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// A shop that another screen has can only be looked at. Whenever something is to be
// written, the right is asked for again: the other may have ended. What stands may have
// changed meanwhile; it is then read again before anything is written.

// Asked comes when the right to write was asked for again.
type Asked struct {
	lock  *disk.Lock    // nil: it wasn't given
	why   string        // not
	files []string      // that another has changed
	fresh *shop.Shop    // those read again; else nil
	hand  *journal.Deed // that the right is wanted for; nil where it is for another thing
	then  func(Asked)
}

const writtenHere = "the other screen has closed: this one saves now"

// askAgain asks for the right to write, in the background, and goes on with what it is
// wanted for: a deed, if that is in hand.
func (f *Files) askAgain(hand *journal.Deed, then func(Asked)) {
	old, now := f.Shop, f.Journal.Now()
	f.alone(func() any {
		a := Asked{hand: hand, then: then}
		a.lock, a.why = journal.Ask(old.Dir, now)
		if a.files = old.Changed(); len(a.files) == 0 {
			return a
		}
		fresh, problems := shop.Open(old.Dir)
		if len(problems) > 0 && a.lock != nil {
			a.lock.Release()
			return Asked{why: "the other screen has closed, but " + problems[0].String() + ": nothing is saved here", hand: hand, then: then}
		}
		a.fresh = fresh
		return a
	})
}

// given goes on when the right was asked for again.
func (f *Files) given(a Asked) {
	j := f.Journal
	j.End()
	f.stale = a.files
	if wrong := ""; a.fresh != nil && a.lock != nil {
		if wrong = f.cantTake(a.fresh); wrong != "" {
			a.lock.Release()
			a.lock, a.fresh, a.why = nil, nil, "the other screen has closed, but "+wrong+": nothing is saved here"
		}
	}
	if a.fresh != nil && a.lock == nil && (f.Loses() || len(f.Reports) > 0) {
		a.fresh = nil // what is reported here waits for the right
	}
	j.Given(a.lock, a.why)
	switch {
	case a.fresh == nil && a.lock != nil:
		f.Say("%s", writtenHere)
	case a.fresh != nil && a.lock != nil:
		f.Reread(a.fresh, a.hand, writtenHere+"; the files changed meanwhile, and are read again")
	case a.fresh != nil:
		f.Reread(a.fresh, a.hand, "the shop was changed meanwhile, and is read again: nothing was recorded")
	}
	a.then(a)
}

// Reread goes on with the shop as its files are now, and says so. What was entered here and
// isn't in them is named, to be entered again; wishes for the day that aren't saved stay. A
// setup of which nothing is lost goes on with the positions. A deed in hand isn't done: it
// rests on what was there before.
func (f *Files) Reread(fresh *shop.Shop, hand *journal.Deed, says string) {
	lost, w := f.missing(fresh), f.Setup
	goesOn := w != nil && lost == ""
	if hand != nil {
		f.Actual = hand.Actual
		f.Journal.Owe(hand.Events)
		if lost = f.missing(fresh); lost == "" {
			says = words.Join("; ", says, hand.Undone())
		}
	}
	f.Journal.Settled()
	f.Reports, f.Wear, f.Setup = nil, nil, nil
	if f.Changed() {
		says = words.Join("; ", says, "unsaved changes here are kept; earlier ones can no longer be undone")
		f.Shop.Stands(fresh)
		f.Become(f.statesIn(fresh))
		f.History = draft.History[draft.Draft]{Now: draft.New(f.Now.All, f.Now.Aim)}
	} else {
		f.Open(fresh)
		f.Journal.SetDayLags(f.Lags)
		f.Aim = f.Now.Aim
	}
	f.stamp, f.stale, f.wrong, f.since = shop.Stamp{}, nil, "", f.TimeNow()
	f.Actual = journal.Actual{Positions: f.Shop.Positions, Marks: f.Shop.Marks}
	f.Start.Clock = f.begins(f.Actual.Positions)
	f.Stand(f.Actual)
	f.Viewer.ReadAnew()
	if goesOn {
		says = words.Join("; ", says, f.setOutAgain(w))
	}
	if lost != "" {
		says += "; not in the files, record it again: " + lost
	}
	f.Say("%s", says)
}

// statesIn are the states of a shop's jobs, as workday.Day.Open has them.
func (f *Files) statesIn(fresh *shop.Shop) draft.States {
	filed, lags := workday.FiledIn(fresh)
	f.Journal.SetDayLags(lags)
	s := draft.States{}
	for _, j := range filed.All {
		s[j.ID] = draft.ProgressOf(j)
	}
	return s
}

// setOutAgain begins a setup anew over a shop read again, as far as it was read; where its
// job is set up already, that is said.
func (d *Session) setOutAgain(was *Setup) string {
	turn := d.nextUp()
	if turn < 0 || d.Jobs()[turn].ID != was.Job.ID {
		return "the setup of " + was.Job.ID + " is over"
	}
	d.Viewer.Look(turn)
	d.Setup = d.preview(d.Jobs()[turn])
	d.Setup.Warned = was.Warned
	return ""
}

// missing names what was entered here at the beam, was not written down, and is not in the
// shop as read again either.
func (f *Files) missing(fresh *shop.Shop) string {
	var parts []string
	u, stands := f.Shop.Unit, f.Actual.Positions.At
	for n := 1; n <= min(len(stands), len(fresh.Positions.At)); n++ {
		told := f.Journal.Reported(n, record.Moved, record.Corrected)
		if at := stands[n-1]; told != nil && at != fresh.Positions.At[n-1] {
			parts = append(parts, fmt.Sprintf("holder %d from %s to %s", n, u.Show(told.From), u.Show(at)))
		}
		if told = f.Journal.Reported(n, record.Condition); told != nil && fresh.Beam.Holders[n-1] != told.Condition {
			parts = append(parts, fmt.Sprintf("holder %d is %s", n, told.Condition))
		}
	}
	for _, j := range f.Filed.All {
		i := slices.IndexFunc(fresh.Day.Jobs, func(there plan.Job) bool { return there.ID == j.ID })
		if state, told := f.Journal.Became(j.ID); told && i >= 0 && fresh.Day.Jobs[i].State != state {
			parts = append(parts, outcomes(draft.States{j.ID: {State: state}}, ""))
		}
	}
	return words.Join(", ", parts...)
}
