package session

import (
	"bide/plan/session/planning"
)

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
		d.OfferAgain(o)
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
		d.DiscardAgain(by)
	default:
		d.Show(d.History.Now, "done again: "+d.History.Now.Did, "done again: moved to")
	}
}

// JustRan reports whether the last change is that a job was set up and runs.
func (d *Session) JustRan() bool {
	_, ran := d.History.Now.Cause.(*Claim)
	return ran
}
