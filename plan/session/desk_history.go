package session

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// Do makes a draft the present one and tells what was done.
func (d *Session) Do(next draft.Draft) {
	d.History.Do(next)
	d.Show(next, next.Did, "moved to")
}

// Undo takes the last change back, redo does it again.
func (d *Session) Undo() {
	was := d.History.Now
	ran, runs := was.Cause.(*Claim)
	mark, marks := was.Cause.(*remark)
	switch {
	case runs:
		d.Unrun(ran)
		return
	case marks && d.Waits():
		return
	case !d.History.Undo():
		d.Say("there is nothing to undo")
		return
	case marks:
		d.unreport(mark)
		return
	}
	if o, found := was.Cause.(*planning.Offer); found {
		d.offerAgain(o)
		return
	}
	d.Show(was, "undone: "+was.Did, "undone: back to")
}

func (d *Session) Redo() {
	switch {
	case d.Waits():
		return
	case !d.History.Redo():
		d.Say("there is nothing to do again")
		return
	}
	switch by := d.History.Now.Cause.(type) {
	case *remark:
		d.rereport(by)
	case *planning.Offer:
		d.tossAgain(by)
	default:
		d.Show(d.History.Now, "done again: "+d.History.Now.Did, "done again: moved to")
	}
}

// JustRan reports whether the last change is that a job was set up and runs.
func (d *Session) JustRan() bool {
	_, ran := d.History.Now.Cause.(*Claim)
	return ran
}

// tossAgain discards an order found again, if it is the one that waits.
func (d *Session) tossAgain(o *planning.Offer) {
	if d.Offer != nil && d.Offer != o {
		d.Say("the order found first is discarded again; a later one waits (%s)", d.Viewer.KeyOf(ToCompare))
		return
	}
	d.Offer = nil
	d.Say("done again: the order found is discarded")
}

// Show puts the present draft on the desk, with the job that a draft was made about
// picked, and tells what was done, or of a job that was only moved where it is now.
func (d *Session) Show(of draft.Draft, did, moved string) {
	if against := d.Notice.against; d.Notice.job != of.About || against == nil {
		d.Notice.against = nil
		if d.Forecast.Present.Whole() {
			totals := d.Forecast.Present.Totals
			d.Notice.against = &totals
		}
	}
	d.Forecast.Aim = d.History.Now.Aim
	d.Forecast.Reorder(d.History.Now.Jobs, d.History.Now.Given)
	d.Notice.job, d.Notice.Text, d.Notice.also = of.About, did, ""
	turn := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == of.About })
	if of.About == "" { // a search, not one job, changed the order
		turn = 0
	}
	d.Viewer.Look(turn)
	if of.About != "" && of.Did == "" && turn >= 0 {
		d.Notice.Text = fmt.Sprintf("%s %s turn %d", of.About, moved, d.Number(turn))
		if d.Refused(turn) {
			d.Notice.Text = of.About + " is moved; the beam can't run it, so it has no turn"
		}
	}
	if d.interrupt() {
		d.Notice.also = interrupted
	}
	d.settle()
}
