package ui

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
)

// do makes a draft the present one and tells what was done.
func (d *session) do(next draft) {
	d.history.do(next)
	d.show(next, next.did, "moved to")
}

// undo takes the last change back, redo does it again.
func (d *session) undo() {
	was := d.history.now
	switch {
	case was.ran != nil:
		d.unrun(was.ran)
		return
	case was.remark != nil && d.waits():
		return
	case !d.history.undo():
		d.say("there is nothing to undo")
		return
	case was.remark != nil:
		d.unreport(was.remark)
		return
	case was.tossed != nil:
		d.offerAgain(was.tossed)
		return
	}
	d.show(was, "undone: "+was.did, "undone: back to")
}

func (d *session) redo() {
	switch {
	case d.waits():
		return
	case !d.history.redo():
		d.say("there is nothing to do again")
		return
	}
	if r := d.history.now.remark; r != nil {
		d.rereport(r)
		return
	}
	if o := d.history.now.tossed; o != nil {
		d.tossAgain(o)
		return
	}
	d.show(d.history.now, "done again: "+d.history.now.did, "done again: moved to")
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
func (d *session) show(of draft, did, moved string) {
	if against := d.news.against; d.news.job != of.about || against == nil {
		d.news.against = nil
		if d.forecast.Present.Whole() {
			totals := d.forecast.Present.Totals
			d.news.against = &totals
		}
	}
	d.forecast.Aim = d.history.now.aim
	d.forecast.Reorder(d.history.now.jobs, d.history.now.given)
	d.news.job, d.news.text, d.news.also = of.about, did, ""
	turn := slices.IndexFunc(d.jobs(), func(j *plan.Job) bool { return j.ID == of.about })
	if of.about == "" { // a search, not one job, changed the order
		turn = 0
	}
	d.viewer.look(turn)
	if of.about != "" && of.did == "" && turn >= 0 {
		d.news.text = fmt.Sprintf("%s %s turn %d", of.about, moved, d.nth(turn))
		if d.turnedDown(turn) {
			d.news.text = of.about + " is moved; the beam can't run it, so it has no turn"
		}
	}
	if d.interrupt() {
		d.news.also = interrupted
	}
	d.settle()
}
