package session

import (
	"bide/plan/session/planning"
)

// Undo undoes the last change: an edit of the day, a condition, an order discarded, or that a
// job runs.
func (d *Session) Undo() {
	was := d.History.Now
	switch by := was.Cause.(type) {
	case *Report:
		d.unrun(by)
		return
	case *change:
		d.Conditions.takeBack(by)
		return
	}
	if !d.History.Undo() {
		d.Say("there is nothing to undo")
		return
	}
	if o, found := was.Cause.(*planning.Offer); found {
		d.OfferAgain(o)
		return
	}
	d.Show(was, "undone: "+was.Did, "undone: back to")
}

// Redo does again what was undone last.
func (d *Session) Redo() {
	next, any := d.History.Next()
	if by, is := next.Cause.(*change); is {
		d.Conditions.giveAgain(by)
		return
	}
	if !any {
		d.Say("there is nothing to do again")
		return
	}
	d.History.Redo()
	if by, is := next.Cause.(*planning.Offer); is {
		d.DiscardAgain(by)
		return
	}
	d.Show(next, "redone: "+next.Did, "redone: moved to")
}

// JustRan reports whether the last change is that a job was set up and runs.
func (d *Session) JustRan() bool {
	_, ran := d.History.Now.Cause.(*Report)
	return ran
}
