package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
)

// weigh offers the order that a search found, unless it is no better. One that keeps
// the rules is better than any that breaks them, whatever it costs.
func (d *session) weigh(f planning.Found) (opens bool) {
	now := d.forecast.Present.Totals
	mends := len(d.broken) > 0 && planning.Keeps(f.Day)
	switch {
	case !mends && !f.Day.Totals.Better(now, d.search.Aim) && f.Fits:
		d.offer = nil
		d.mention("what the search had found is no better than this order, as the day is now")
		return false
	case !mends && !f.Day.Totals.Better(now, d.search.Aim):
		d.mention("the search found nothing better than this order")
		return false
	}
	d.offer = planning.NewOffer(f.Day, f.Inputs, d.search.Aim)
	for is, was := range d.offer.From {
		d.stem(is, d.origin(was))
	}
	text := "an order was found"
	if f.Fits {
		text = "what the search had found, fitted to the day as it is now"
	}
	if opens = f.Opens && slices.Equal(f.Inputs.Jobs, d.jobs()); !opens {
		text += " (" + d.viewer.keyOf(toCompare) + " shows it)"
	}
	d.mention(text + ": " + against(f.Day.Totals, now))
	return opens
}

// accept makes the order found the present one. One that was found for another day is
// fitted to that of now first.
func (d *session) accept() {
	o := d.offer
	if !o.Inputs.Same(d.inputs()) {
		d.refit()
		return
	}
	d.offer = nil
	next := d.history.Now.Ordered(o.Jobs)
	next.Given, next.Did = o.Known, "the best order found"
	next.Aim = o.Aim // what is changed by hand from now on is settled for it too
	before := d.forecast.Present.Totals
	known := d.forecast.Present.Whole()
	d.do(next)
	if known {
		d.say("the best order found: %s", against(o.Totals, before))
	}
}

// discard lays the order found aside. It can be undone like a change of the day.
func (d *session) discard() {
	next := d.history.Now
	next.About, next.Did, next.Cause = "", "", d.offer
	d.history.Do(next)
	d.offer = nil
	d.say("the order found is discarded; this one stays (%s brings it back)", d.viewer.keyOf(toUndo))
}

// offerAgain offers what was discarded, unless another order waits.
func (d *session) offerAgain(o *planning.Offer) {
	if d.offer != nil {
		d.say("the order found first stays discarded: a later one waits (%s)", d.viewer.keyOf(toCompare))
		return
	}
	d.offer = o
	d.say("the order found is back: %s shows it, to accept or discard it", d.viewer.keyOf(toCompare))
}

// refit has the order that waits fitted to the day of now, to be shown then.
func (d *session) refit() {
	if d.search.Busy() {
		d.say("the order found is being fitted to the day as it is now")
		return
	}
	d.search.Aim = d.offer.Aim
	d.say("the day has changed since the order was found: it is being fitted to it")
	d.fit(d.offer.Day, true)
}

// fit searches for a moment from what was found for another day: from its order, with
// its layouts where jobs are to be laid out as they were.
func (d *session) fit(found *plan.DayPlan, opens bool) {
	var order []string
	for _, j := range found.Jobs() {
		order = append(order, j.ID)
	}
	day := planning.LaidAs(found, d.wants(d.history.Now.Like(order, d.forecast.Start.Standing.Setting)), d.forecast.Beam)
	rounds := planning.FitRounds
	if d.search.Rounds > 0 {
		rounds = min(rounds, d.search.Rounds)
	}
	d.later(d.search.Begin(d.inputs(), day, rounds, planning.Errand{Fits: true, Opens: opens}))
}

// finds takes what a search came to, if it wasn't given up: what was found for another
// day than that of now is fitted to it first, and what it is to be better than must be
// known.
func (d *session) finds(f planning.Found) {
	if !d.search.Take(f) {
		return
	}
	switch {
	case f.Err != nil:
		d.mention(f.Err.Error())
	case !f.Inputs.Same(d.inputs()):
		d.fit(f.Day, f.Fits && f.Opens)
	case !d.forecast.Present.Whole():
		d.search.Hold(f)
	default:
		if d.weigh(f) {
			d.viewer.offered()
		}
	}
}
