// Package moveto is the page of what it costs to move a job to each number in the sequence.
package moveto

import (
	"bide/plan/session"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Page is the page of what it costs to move a job to each number in the sequence.
type Page struct{}

func (Page) Help() keys.Scope      { return keys.OnMoveTo }
func (Page) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 10 }

// HandleKey picks a number, moves the job there or leaves it.
func (Page) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	m := d.Moving
	switch a {
	case keys.Choose:
		return func(s *session.Session) { s.Mover.Move() }
	case keys.Back:
		return func(s *session.Session) { s.Mover.Stop() }
	}
	to := listOf(m, d.PageSize()).Step(a)
	if a == keys.Cheapest {
		to = m.Best(to)
	}
	return func(s *session.Session) { s.Mover.Pick(to) }
}
