package workday

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
)

// Offers has better orders of a day searched for, and offers what is found.
type Offers struct{ *Day }

// weigh offers the order that a search found, unless it is no better. One that keeps
// the rules is better than any that breaks them, whatever it costs.
func (d Offers) weigh(f planning.Found) (opens bool) {
	now := d.Present.Totals
	mends := len(d.Broken) > 0 && planning.Keeps(f.Day)
	switch {
	case !mends && !f.Day.Totals.Better(now, d.Search.Aim) && f.Fits:
		d.Offer = nil
		d.mention("the day has changed: what the search found is no better than this order now")
		return false
	case !mends && !f.Day.Totals.Better(now, d.Search.Aim):
		d.mention("the search found nothing better than this order")
		return false
	}
	d.Offer = planning.NewOffer(f.Day, f.Inputs, d.Search.Aim)
	for is, was := range d.Offer.From {
		d.stems[is] = d.Origin(was)
	}
	text := "an order was found"
	if f.Fits {
		text = "the order found, fitted to the changed day"
	}
	if opens = f.Opens && slices.Equal(f.Inputs.Jobs, d.Jobs()); !opens {
		text += " (" + d.Screen.KeyOf(ToCompare) + " shows it)"
	}
	d.mention(text + ": " + words.Against(f.Day.Totals, now))
	return opens
}

// Accept makes the order found the present one. One that was found for another day is
// fitted to that of now first.
func (d Offers) Accept() {
	if !d.Fitted() {
		return
	}
	o := d.Offer
	d.Offer = nil
	next := d.Now.Ordered(o.Jobs)
	next.Given, next.Did, next.Back = o.Known, "the best order found", "the order is as before the search"
	next.Aim = o.Aim // what is changed by hand from now on is improved for it too
	before := d.Present.Totals
	known := d.Present.Whole()
	d.do(next)
	if known {
		d.Say("the best order found: %s", words.Against(o.Totals, before))
	}
}

// Discard lays the order found aside. It can be undone like a change of the day.
func (d Offers) Discard() {
	next := *d.Now
	next.About, next.Did, next.Cause = "", "", d.Offer
	d.History.Do(next)
	d.Offer = nil
	d.Say("the order found is discarded; this one stays (%s brings it back)", d.Screen.KeyOf(ToUndo))
}

// OfferAgain offers what was discarded, unless another order waits.
func (d Offers) OfferAgain(o *planning.Offer) {
	if d.Offer != nil {
		d.Say("the earlier order stays discarded: a newer one waits (%s shows it)", d.Screen.KeyOf(ToCompare))
		return
	}
	d.Offer = o
	d.Say("the order found is back: %s shows it, to accept or discard it", d.Screen.KeyOf(ToCompare))
}

// Fitted reports whether the order that waits, if one does, was found for the day of now. One
// that wasn't is fitted to it first, to be shown then.
func (d Offers) Fitted() bool {
	switch {
	case d.Offer == nil || d.Offer.Inputs.Same(d.Inputs()):
		return true
	case d.Search.Busy():
		d.Say("the order found is being fitted to the day as it is now")
	default:
		d.Search.Aim = d.Offer.Aim
		d.Say("the day has changed: the order found is being fitted to it")
		d.fit(d.Offer.Day, true)
	}
	return false
}

// fit searches for a moment from what was found for another day: from its order, with
// its layouts where jobs are to be laid out as they were.
func (d Offers) fit(found *plan.DayPlan, opens bool) {
	var order []string
	for _, j := range found.Jobs() {
		order = append(order, j.ID)
	}
	day := planning.LaidAs(found, d.wants(d.Now.Like(order, d.Start.Positions.Begun)), d.Beam)
	d.Later(d.Search.Begin(d.Inputs(), day, planning.FitRounds, planning.Errand{Fits: true, Opens: opens}))
}

// Finds takes what a search came to, if it wasn't given up: what was found for another
// day than that of now is fitted to it first, and what it is to be better than must be
// known.
func (d Offers) Finds(f planning.Found) {
	if !d.Search.Take(f) {
		return
	}
	switch {
	case f.Err != nil:
		d.mention(f.Err.Error())
	case !f.Inputs.Same(d.Inputs()):
		d.fit(f.Day, f.Fits && f.Opens)
	case !d.Present.Whole():
		d.Search.Hold(f)
	default:
		if d.weigh(f) {
			d.Screen.Offered()
		}
	}
}

// DiscardAgain discards an order found again, if it is the one that waits.
func (d Offers) DiscardAgain(o *planning.Offer) {
	if d.Offer != nil && d.Offer != o {
		d.Say("the earlier order is discarded again; a newer one waits (%s shows it)", d.Screen.KeyOf(ToCompare))
		return
	}
	d.Offer = nil
	d.Say("redone: the order found is discarded")
}
