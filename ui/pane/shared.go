// Package pane is what the panes and pages of the screen share: the session that they show, what is
// picked in it, and the rows and sentences that more than one of them shows. It draws no pane of its
// own and lays nothing out.
package pane

import (
	"errors"
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/keys"
)

// Shared is what all panes and pages share: the session, what is picked in it, the window, and how
// it is drawn.
type Shared struct {
	*draw.Theme
	*keys.Table
	*session.Session
	draw.Size      // of the window
	Demo      bool // the shop is an invented one

	Over       Page    // over all panes; nil when none is open
	Prompt     *Prompt // nil when none is open
	AsksToQuit bool    // whether to leave, though something would be lost
	Frame      func(name string, title draw.Line, body []draw.Line, in keys.Scope) []draw.Line

	JobAt  int    // of the picked job, from 0
	Was    string // id of that job
	MoveAt int    // picked in its changeover, from 0
	Holder int    // picked, by number from 1; 0 is none

	use *DayUse // see use
}

// New shows a shop. It is an error when its beam can't be planned for, or its day has no jobs.
func New(s *shop.Shop, k *draw.Theme) (*Shared, error) {
	p, err := changeover.NewPlanner(s.Beam)
	if err != nil {
		return nil, fmt.Errorf("beam.toml: %w", err)
	}
	if len(s.Day.Jobs) == 0 {
		return nil, errors.New("day.toml: there are no jobs")
	}
	return &Shared{Theme: k, Table: keys.NewTable(k.ASCII), Session: session.New(s, p)}, nil
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

// Look picks the job that what happened last is about; the one picked stays so where
// that is about none.
func (d *Shared) Look(index int) {
	if index < 0 {
		index = d.JobAt
	}
	d.JobAt, d.MoveAt = max(0, min(index, len(d.Jobs())-1)), 0
}

// Picked is the index of the picked job, from 0.
func (d *Shared) Picked() int { return d.JobAt }

// ReadAnew picks the job again that was picked, or the one at its place in the sequence now.
func (d *Shared) ReadAnew() {
	d.Holder = min(d.Holder, len(d.Shop.Beam.Holders))
	index := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == d.Was })
	if index < 0 {
		index = d.JobAt
	}
	d.Pick(index)
}

// KeyOf is the key that asks for an action that the session names.
func (d *Shared) KeyOf(a workday.Action) string {
	return d.KeyFor(map[workday.Action]keys.Action{
		workday.ToSave: keys.SaveDay, workday.ToReread: keys.Reread, workday.ToCompare: keys.CompareOrders, workday.ToUndo: keys.Undo,
		workday.ToSetUp: keys.Setup, workday.ToHold: keys.Hold, workday.ToCorrect: keys.Correct, workday.ToRun: keys.Runs, workday.ToUndoEntry: keys.TakeBack, workday.ToStop: keys.Back,
	}[a])
}

// AimedHolder is the number of the picked move's holder, 0 without one.
func (d *Shared) AimedHolder() int {
	if moves := d.Moves(); d.MoveAt < len(moves) {
		return moves[d.MoveAt].Holder
	}
	return 0
}
