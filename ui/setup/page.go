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
	*session.Guide
	from int         // first line shown of a text that is longer than the screen
	form *correction // nil when none is open
}

func (w *Page) Fits(draw.Size) bool { return true }

// Help is where the keys work.
func (w *Page) Help() keys.Scope {
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
func (w *Page) Typing() bool { return w.form != nil }

// HandleKey goes on, or back, or looks ahead.
func (w *Page) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	switch {
	case w.Ending != nil:
		return w.answered(a)
	case w.form != nil:
		return w.answer(a, d)
	}
	last := max(len(w.Ahead())-1, 0)
	switch a {
	case keys.Left, keys.Up:
		w.from = max(w.from-1, 0)
		return lookAt(w.Look - 1)
	case keys.Right, keys.Down:
		if w.from = min(w.from+1, w.beyond(d)); w.Warned {
			return lookAt(min(w.Look+1, last))
		}
		return nil
	}
	w.from = 0
	switch a {
	case keys.Top:
		return lookAt(0)
	case keys.Bottom:
		return lookAt(last)
	case keys.Correct:
		w.form = newPositionForm(w.Move())
	case keys.Fault:
		w.form = newFaultForm(w.Move())
	case keys.Reread:
		return func(s *session.Session) { s.Files.ReadAgain() }
	}
	if does := deeds[a]; does != nil {
		return func(s *session.Session) { does(s.Setup) }
	}
	return nil
}

// deeds are what is done in a guided setup.
var deeds = map[keys.Action]func(*session.Setup){
	keys.Proceed:   func(s *session.Setup) { s.Warned = true },
	keys.Confirm:   (*session.Setup).Confirm,
	keys.TakeBack:  (*session.Setup).TakeBack,
	keys.Runs:      (*session.Setup).Finish,
	keys.SaveAgain: (*session.Setup).SaveAgain,
	keys.Back:      (*session.Setup).Leave,
}

// lookAt looks at one of the moves ahead.
func lookAt(n int) pane.Want {
	return func(s *session.Session) { s.Setup.Look = max(n, 0) }
}
