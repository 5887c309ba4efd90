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
	"bide/ui/list"
)

// desk is what all panes look at: the session, what is picked in it, and how it is drawn.
type desk struct {
	*draw.Theme
	*keys.Table
	*session.Session
	demo   bool                   // the shop is an invented one
	drawer map[formPlace]*jobForm // forms closed unfinished

	turn   int    // of the picked job, from 0
	was    string // id of that job
	move   int    // picked in its changeover, from 0
	holder int    // picked, by number from 1; 0 is none

	filters [lastPaneShown + 1]list.Filter // of the panes' lists
	prompt  *prompt                        // nil when none is open
	used    *dayUse                        // see use
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

// unfinished is what was typed and would be lost.
func (d *desk) Unfinished() string {
	if len(d.drawer) > 0 {
		return "a form closed unfinished"
	}
	return ""
}

// keyOf is the key that asks for an action that the session names.
func (d *desk) KeyOf(a workday.Action) string {
	return d.KeyFor(map[workday.Action]keys.Action{
		workday.ToSave: keys.SaveDay, workday.ToReread: keys.Reread, workday.ToCompare: keys.CompareOrders, workday.ToUndo: keys.Undo,
		workday.ToSetUp: keys.Setup, workday.ToHold: keys.Hold, workday.ToCorrect: keys.Correct, workday.ToRun: keys.Runs, workday.ToUndoEntry: keys.TakeBack, workday.ToStop: keys.Back,
	}[a])
}

// offered shows an order that a search found to the person who waits for it.
func (m *model) Offered() {
	if m.over == nil && m.help == nil && !m.asks && m.prompt == nil {
		m.openCompare()
	}
}
