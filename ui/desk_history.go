package ui

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// do makes a draft the present one and tells what was done.
func (d *session) do(next draft.Draft) {
	d.history.Do(next)
	d.show(next, next.Did, "moved to")
}

// undo takes the last change back, redo does it again.
func (d *session) undo() {
	was := d.history.Now
	ran, runs := was.Cause.(*claim)
	mark, marks := was.Cause.(*remark)
	switch {
	case runs:
		d.unrun(ran)
		return
	case marks && d.waits():
		return
	case !d.history.Undo():
		d.say("there is nothing to undo")
		return
	case marks:
		d.unreport(mark)
		return
	}
	if o, found := was.Cause.(*planning.Offer); found {
		d.offerAgain(o)
		return
	}
	d.show(was, "undone: "+was.Did, "undone: back to")
}

func (d *session) redo() {
	switch {
	case d.waits():
		return
	case !d.history.Redo():
		d.say("there is nothing to do again")
		return
	}
	switch by := d.history.Now.Cause.(type) {
	case *remark:
		d.rereport(by)
	case *planning.Offer:
		d.tossAgain(by)
	default:
		d.show(d.history.Now, "done again: "+d.history.Now.Did, "done again: moved to")
	}
}

// justRan reports whether the last change is that a job was set up and runs.
func (d *session) justRan() bool {
	_, ran := d.history.Now.Cause.(*claim)
	return ran
}

// tossAgain discards an order found again, if it is the one that waits.
func (d *session) tossAgain(o *planning.Offer) {
	if d.offer != nil && d.offer != o {
		d.say("the order found first is discarded again; a later one waits (%s)", d.viewer.keyOf(toCompare))
		return
	}
	d.offer = nil
	d.say("done again: the order found is discarded")
}

// show puts the present draft on the desk, with the job that a draft was made about
// picked, and tells what was done, or of a job that was only moved where it is now.
func (d *session) show(of draft.Draft, did, moved string) {
	if against := d.news.against; d.news.job != of.About || against == nil {
		d.news.against = nil
		if d.forecast.Present.Whole() {
			totals := d.forecast.Present.Totals
			d.news.against = &totals
		}
	}
	d.forecast.Aim = d.history.Now.Aim
	d.forecast.Reorder(d.history.Now.Jobs, d.history.Now.Given)
	d.news.job, d.news.text, d.news.also = of.About, did, ""
	turn := slices.IndexFunc(d.jobs(), func(j *plan.Job) bool { return j.ID == of.About })
	if of.About == "" { // a search, not one job, changed the order
		turn = 0
	}
	d.viewer.look(turn)
	if of.About != "" && of.Did == "" && turn >= 0 {
		d.news.text = fmt.Sprintf("%s %s turn %d", of.About, moved, d.nth(turn))
		if d.turnedDown(turn) {
			d.news.text = of.About + " is moved; the beam can't run it, so it has no turn"
		}
	}
	if d.interrupt() {
		d.news.also = interrupted
	}
	d.settle()
}
