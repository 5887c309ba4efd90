package ui

import (
	"bide/plan/session"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// walk shows the guided setup over the whole screen.
type walk struct {
	*session.Setup
	from int         // first line shown of a text that is longer than the screen
	form *correction // nil when none is open
}

func (w *walk) Fits(draw.Size) bool { return true }

// Help is where the keys work.
func (w *walk) Help() keys.Scope {
	switch {
	case w.Ending != nil:
		return keys.OnEnding
	case w.form != nil:
		return keys.OnCorrection
	case !w.Warned:
		return keys.OnCautions
	}
	return keys.OnSetup
}

// Typing reports whether a form is open.
func (w *walk) Typing() bool { return w.form != nil }

// HandleKey goes on, or back, or looks ahead.
func (w *walk) HandleKey(a keys.Action, d *pane.Shared) {
	switch {
	case w.Ending != nil:
		w.answered(a)
		return
	case w.form != nil:
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
		w.form = newPositionForm(w.Move())
	case keys.Fault:
		w.form = newFaultForm(w.Move())
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
