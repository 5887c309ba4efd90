// Package setup is the guided setup: the changeover at the machine, move by move, over the whole screen.
// It shows cautions first and one move at a time; what is recorded is the session's.
package setup

import (
	"bide/plan/session"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Page shows the guided setup over the whole screen.
type Page struct {
	*session.Setup
	from int         // first line shown of a text that is longer than the screen
	Form *correction // nil when none is open
}

func (w *Page) Fits(draw.Size) bool { return true }

// Help is where the keys work.
func (w *Page) Help() keys.Scope {
	switch {
	case w.Ending != nil:
		return keys.OnEnding
	case w.Form != nil:
		return keys.OnCorrection
	case !w.Warned:
		return keys.OnCautions
	}
	return keys.OnSetup
}

// Typing reports whether a form is open.
func (w *Page) Typing() bool { return w.Form != nil }

// HandleKey goes on, or back, or looks ahead.
func (w *Page) HandleKey(a keys.Action, d *pane.Shared) {
	switch {
	case w.Ending != nil:
		w.answered(a)
		return
	case w.Form != nil:
		w.answer(a, d)
		return
	}
	last := max(len(w.Ahead())-1, 0)
	switch a {
	case keys.Left, keys.Up:
		w.Look, w.from = max(w.Look-1, 0), max(w.from-1, 0)
		return
	case keys.Right, keys.Down:
		if w.from = min(w.from+1, w.beyond(d)); w.Warned {
			w.Look = min(w.Look+1, last)
		}
		return
	}
	w.from = 0
	switch a {
	case keys.Proceed:
		w.Warned = true
	case keys.Confirm:
		w.Confirm()
	case keys.TakeBack:
		w.TakeBack()
	case keys.Runs:
		w.Finish()
	case keys.Correct:
		w.Form = newPositionForm(w.Move())
	case keys.Fault:
		w.Form = newFaultForm(w.Move())
	case keys.SaveAgain:
		w.SaveAgain()
	case keys.Reread:
		d.Files.ReadAgain()
	case keys.Top:
		w.Look = 0
	case keys.Bottom:
		w.Look = last
	case keys.Back:
		w.Leave()
	}
}
