package ui

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

// desk is what all panes and pages share: the session, what is picked in it, the window, and how
// it is drawn.
type desk struct {
	*draw.Theme
	*keys.Table
	*session.Session
	draw.Size      // of the window
	demo      bool // the shop is an invented one

	over   overlay // over all panes; nil when none is open
	prompt *prompt // nil when none is open
	asks   bool    // whether to leave, though something would be lost
	frame  func(name string, title draw.Line, body []draw.Line, in keys.Scope) []draw.Line

	turn   int    // of the picked job, from 0
	was    string // id of that job
	move   int    // picked in its changeover, from 0
	holder int    // picked, by number from 1; 0 is none

	used *dayUse // see use
}

func newDesk(s *shop.Shop, k *draw.Theme) (*desk, error) {
	p, err := changeover.NewPlanner(s.Beam)
	if err != nil {
		return nil, fmt.Errorf("beam.toml: %w", err)
	}
	if len(s.Day.Jobs) == 0 {
		return nil, errors.New("day.toml: there are no jobs")
	}
	return &desk{Theme: k, Table: keys.NewTable(k.ASCII), Session: session.New(s, p)}, nil
}

// job is the picked one, nil when the day has none.
func (d *desk) job() *plan.Job {
	if d.turn < len(d.Jobs()) {
		return d.Jobs()[d.turn]
	}
	return nil
}

// moves are those of the picked changeover.
func (d *desk) moves() []plan.Move {
	if o := d.Outcome(d.turn); o != nil && !o.Refused() {
		return o.Step.Changeover.Moves
	}
	return nil
}

// pick goes to another job.
func (d *desk) pick(turn int) {
	turn = max(0, min(turn, len(d.Jobs())-1))
	if turn != d.turn {
		d.turn, d.move = turn, 0
	}
}

// pickMove goes to another move of the changeover.
func (d *desk) pickMove(n int) { d.move = max(0, min(n, len(d.moves())-1)) }

// look picks the job that what happened last is about; the one picked stays so where
// that is about none.
func (d *desk) Look(turn int) {
	if turn < 0 {
		turn = d.turn
	}
	d.turn, d.move = max(0, min(turn, len(d.Jobs())-1)), 0
}

// picked is the turn of the job that is looked at.
func (d *desk) Picked() int { return d.turn }

// readAnew picks the job again that was picked, or what has its turn now.
func (d *desk) ReadAnew() {
	d.holder = min(d.holder, len(d.Shop.Beam.Holders))
	turn := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == d.was })
	if turn < 0 {
		turn = d.turn
	}
	d.pick(turn)
}

// keyOf is the key that asks for an action that the session names.
func (d *desk) KeyOf(a workday.Action) string {
	return d.KeyFor(map[workday.Action]keys.Action{
		workday.ToSave: keys.SaveDay, workday.ToReread: keys.Reread, workday.ToCompare: keys.CompareOrders, workday.ToUndo: keys.Undo,
		workday.ToSetUp: keys.Setup, workday.ToHold: keys.Hold, workday.ToCorrect: keys.Correct, workday.ToRun: keys.Runs,
	}[a])
}

// aimed is the number of the picked move's holder, 0 without one.
func (d *desk) aimed() int {
	if moves := d.moves(); d.move < len(moves) {
		return moves[d.move].Holder
	}
	return 0
}
