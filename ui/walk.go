package ui

import (
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// walk shows the guided setup over the whole screen.
type walk struct {
	*setup
	from int         // first line shown of a text that is longer than the screen
	form *correction // nil when none is open
}

func (w *walk) Fits(draw.Size) bool { return true }

// Help is where the keys work.
func (w *walk) Help() keys.Scope {
	switch {
	case w.ending != nil:
		return keys.OnEnding
	case w.form != nil:
		return keys.OnCorrection
	case !w.warned:
		return keys.OnCautions
	}
	return keys.OnSetup
}

// follow shows the guided setup that is under way, or none.
func (m *model) follow() {
	w, shown := m.over.(*walk)
	switch {
	case m.setup == nil && shown:
		m.over = nil
	case m.setup != nil && (!shown || w.setup != m.setup):
		m.over = &walk{setup: m.setup}
	}
}

// HandleKey goes on, or back, or looks ahead.
func (w *walk) HandleKey(a keys.Action, m *model) tea.Cmd {
	defer m.follow()
	switch {
	case w.ending != nil:
		w.answered(a)
		return nil
	case w.form != nil:
		w.answer(a, m)
		return nil
	}
	last := max(len(w.ahead())-1, 0)
	switch a {
	case keys.Left, keys.Up:
		w.look, w.from = max(w.look-1, 0), max(w.from-1, 0)
		return nil
	case keys.Right, keys.Down:
		if w.from = min(w.from+1, w.beyond(m)); w.warned {
			w.look = min(w.look+1, last)
		}
		return nil
	}
	w.from = 0
	switch a {
	case keys.Proceed:
		w.warned = true
	case keys.Confirm:
		w.tick()
	case keys.TakeBack:
		w.takeBack()
	case keys.Runs:
		w.finish()
	case keys.Correct:
		w.form = newPositionForm(w.move())
	case keys.Fault:
		w.form = newFaultForm(w.move())
	case keys.SaveAgain:
		w.again()
	case keys.Reread:
		m.readAgain()
	case keys.Top:
		w.look = 0
	case keys.Bottom:
		w.look = last
	case keys.Back:
		w.leave()
	}
	return nil
}
