// Package pane is what the panes and pages of the screen share: the session as they show it, what is
// picked in it, what they may want of it, and the rows and sentences that more than one of them shows.
// It draws no pane of its own and lays nothing out.
package pane

import (
	"bide/plan"
	"bide/plan/session"
	"bide/ui/draw"
	"bide/ui/keys"
)

// Shared is what all panes and pages share: the session as it is now, what is picked in it, the
// window, and how it is drawn.
type Shared struct {
	*draw.Theme
	*keys.Table
	session.View
	draw.Size      // of the window
	Demo      bool // the shop is an invented one

	Over       Page    // over all panes; nil when none is open
	Prompt     *Prompt // nil when none is open
	AsksToQuit bool    // whether to leave, though something would be lost
	Frame      func(name string, title draw.Line, body []draw.Line, in keys.Scope) []draw.Line

	JobAt  int // of the picked job, from 0
	MoveAt int // picked in its changeover, from 0
	Holder int // picked, by number from 1; 0 is none
}

// Job is the picked one, nil when the day has none.
func (d *Shared) Job() *plan.Job {
	if d.JobAt < len(d.Jobs()) {
		return d.Jobs()[d.JobAt]
	}
	return nil
}

// Moves are those of the picked changeover.
func (d *Shared) Moves() []plan.Move {
	if o := d.Outcome(d.JobAt); o != nil && !o.Refused() {
		return o.Step.Changeover.Moves
	}
	return nil
}

// Pick goes to another job.
func (d *Shared) Pick(index int) {
	index = max(0, min(index, len(d.Jobs())-1))
	if index != d.JobAt {
		d.JobAt, d.MoveAt = index, 0
	}
}

// PickMove goes to another move of the changeover.
func (d *Shared) PickMove(n int) { d.MoveAt = max(0, min(n, len(d.Moves())-1)) }

// AimedHolder is the number of the picked move's holder, 0 without one.
func (d *Shared) AimedHolder() int {
	if moves := d.Moves(); d.MoveAt < len(moves) {
		return moves[d.MoveAt].Holder
	}
	return 0
}
