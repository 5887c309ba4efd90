package session

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
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

const writtenHere = "the shop is free now, and written here"

// askAgain asks for the right to write, in the background, and goes on with what it is
// wanted for: a deed, if that is in hand.
func (d *Session) askAgain(hand *journal.Deed, then func(Asked)) {
	old, now := d.Shop, d.Journal.Now()
	d.busyWith(func() any {
		a := Asked{hand: hand, then: then}
		a.lock, a.why = journal.Ask(old.Dir, now)
		if a.files = old.Changed(); len(a.files) == 0 {
			return a
		}
		fresh, problems := shop.Open(old.Dir)
		if len(problems) > 0 && a.lock != nil {
			a.lock.Release()
			return Asked{why: "the shop is free, but " + problems[0].String() + ": nothing is written", hand: hand, then: then}
		}
		a.fresh = fresh
		return a
	})
}

// given goes on when the right was asked for again.
func (d *Session) given(a Asked) {
	j := d.Journal
	j.End()
	d.Watch.stale = a.files
	if wrong := ""; a.fresh != nil && a.lock != nil {
		if wrong = d.cantTake(a.fresh); wrong != "" {
			a.lock.Release()
			a.lock, a.fresh, a.why = nil, nil, "the shop is free, but "+wrong+": nothing is written"
		}
	}
	if a.fresh != nil && a.lock == nil && (d.Loses() || len(d.Claims) > 0) {
		a.fresh = nil // what is reported here waits for the right
	}
	j.Given(a.lock, a.why)
	switch {
	case a.fresh == nil && a.lock != nil:
		d.Say("%s", writtenHere)
	case a.fresh != nil && a.lock != nil:
		d.Reread(a.fresh, a.hand, writtenHere+"; it was changed meanwhile, and is read again")
	case a.fresh != nil:
		d.Reread(a.fresh, a.hand, "the shop was changed meanwhile, and is read again: nothing was told")
	}
	a.then(a)
}

// Reread goes on with the shop as its files are now, and says so. What was told here and
// isn't in them is named, to be told again; wishes for the day that aren't saved stay. A
// walk on which nothing is lost goes on with what stands. A deed in hand isn't done: it
// rests on what was there before.
func (d *Session) Reread(fresh *shop.Shop, hand *journal.Deed, says string) {
	lost, w := d.missing(fresh), d.Setup
	walks := w != nil && lost == ""
	if hand != nil {
		d.Actual = hand.Actual
		d.Journal.Owe(hand.Events)
		if lost = d.missing(fresh); lost == "" {
			says = words.Join("; ", says, hand.Undone())
		}
	}
	d.Journal.Settled()
	d.Claims, d.Wear, d.Setup = nil, nil, nil
	if d.Changed() {
		says = words.Join("; ", says, "the day here isn't saved and stays; undo begins anew")
		d.Shop.Stands(fresh)
		d.Become(d.statesIn(fresh))
		d.History = draft.History[draft.Draft]{Now: draft.New(d.History.Now.All, d.History.Now.Aim)}
	} else {
		d.Shop, d.Stems = fresh, nil
		d.Open(fresh)
		d.Journal.SetDayLags(d.Lags)
		d.Forecast.Aim = d.History.Now.Aim
	}
	d.Watch = watch{On: d.Watch.On, since: d.Journal.Clock()}
	d.Actual = journal.Actual{Standing: d.Shop.Standing, Marks: d.Shop.Marks}
	d.Forecast.Start.Clock = d.Shop.Day.Begins(d.Actual.Standing)
	d.Stand(d.Actual)
	d.Viewer.ReadAnew()
	if walks {
		says = words.Join("; ", says, d.setOutAgain(w))
	}
	if lost != "" {
		says += "; not in it, tell it again: " + lost
	}
	d.Say("%s", says)
}

// statesIn are the states of a shop's jobs: where the beam is half set up for another,
// what ran has ended, as openDay has it.
func (d *Session) statesIn(fresh *shop.Shop) draft.States {
	s, half := draft.States{}, fresh.Standing.Setting
	d.Journal.SetDayLags(false)
	for i := range fresh.Day.Jobs {
		j := &fresh.Day.Jobs[i]
		if s[j.ID] = j.State; half != nil && j.State == plan.Running && j.ID != half.Job {
			s[j.ID] = plan.Done
			d.Journal.SetDayLags(true)
		}
	}
	return s
}

// setOutAgain begins a setup anew over a shop read again, as far as it was read; where its
// job is set up already, that is said.
func (d *Session) setOutAgain(was *Setup) string {
	turn := d.NextUp()
	if turn < 0 || d.Jobs()[turn].ID != was.Job.ID {
		return "the walk to " + was.Job.ID + " is over"
	}
	d.Viewer.Look(turn)
	d.guide(d.Jobs()[turn]).Warned = was.Warned
	return ""
}

// missing names what was told here at the beam, was not written down, and is not in the
// shop as read again either.
func (d *Session) missing(fresh *shop.Shop) string {
	var parts []string
	u, stands := d.Shop.Unit, d.Actual.Standing.At
	for n := 1; n <= min(len(stands), len(fresh.Standing.At)); n++ {
		told := d.Journal.Reported(n, record.Moved, record.Corrected)
		if at := stands[n-1]; told != nil && at != fresh.Standing.At[n-1] {
			parts = append(parts, fmt.Sprintf("holder %d from %s to %s", n, u.Show(told.From), u.Show(at)))
		}
		if told = d.Journal.Reported(n, record.Condition); told != nil && fresh.Beam.Holders[n-1] != told.Condition {
			parts = append(parts, fmt.Sprintf("holder %d is %s", n, told.Condition))
		}
	}
	for _, j := range d.Filed.All {
		i := slices.IndexFunc(fresh.Day.Jobs, func(there plan.Job) bool { return there.ID == j.ID })
		if state, told := d.Journal.Became(j.ID); told && i >= 0 && fresh.Day.Jobs[i].State != state {
			parts = append(parts, outcomes(draft.States{j.ID: state}, ""))
		}
	}
	return words.Join(", ", parts...)
}
