package session

import (
	"bide/plan"
	"bide/plan/session/planning"
)

// Undo undoes the last change: an edit of the day, a condition, an order discarded, or that a
// job runs.
func (d *Session) Undo() {
	was := *d.Now
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
	back := was.Back
	if j := d.Now.Find(was.About); back == "" && j != nil {
		back = j.ID + map[plan.State]string{plan.Waiting: " waits again", plan.Running: " is running again", plan.Done: " is done again", plan.OnHold: " is on hold again"}[j.State]
	}
	d.Show(was, "undone: "+back, "undone: back to")
}

// Redo does again what was undone last.
func (d *Session) Redo() {
	next, any := d.History.Next()
	if by, is := next.Cause.(*change); is {
		d.Conditions.giveAgain(by)
		return
	}
	if !any {
		d.Say("there is nothing to redo")
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
	_, ran := d.Now.Cause.(*Report)
	return ran
}
