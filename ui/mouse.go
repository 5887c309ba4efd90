package ui

import (
	"bide/plan/session/workday"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// The mouse is off at first: while it is on, a terminal doesn't let text be selected.
// A click picks a pane and its row, the wheel goes up and down in the pane it is over.

// clickable is a pane of which a click picks something.
type clickable interface {
	// Click is a click at a cell of the pane, from 0; its rule is in line 0.
	Click(d *pane.Shared, x, y int)
}

// switchMouse turns the mouse on or off.
func switchMouse(m *model) tea.Cmd {
	if m.mousing = !m.mousing; m.mousing {
		m.session.Say("mouse on: a click picks, the wheel scrolls; %s turns it off", m.KeyFor(keys.ToggleMouse))
		return tea.EnableMouseCellMotion
	}
	m.session.Say("mouse off: the terminal selects text again")
	return tea.DisableMouse
}

// mouse does what a click or the wheel asks for.
func (m *model) mouse(e tea.MouseEvent) {
	if !m.mousing || e.Action != tea.MouseActionPress || m.scope()&keys.OnPanes == 0 {
		return
	}
	which, x, y := paneUnder(m, e.X, e.Y)
	if which == noPane {
		return
	}
	switch e.Button {
	case tea.MouseButtonWheelUp:
		m.grant(m.panel(which).HandleKey(keys.Up, m.Shared))
	case tea.MouseButtonWheelDown:
		m.grant(m.panel(which).HandleKey(keys.Down, m.Shared))
	case tea.MouseButtonLeft:
		m.session.Notice = workday.Notice{}
		m.turnTo(which)
		if p, ok := m.panel(which).(clickable); ok {
			p.Click(m.Shared, x, y)
		}
	}
}

// paneUnder is the pane at a cell of the screen, and the cell within it; all when none
// is there.
func paneUnder(m *model, x, y int) (paneID, int, int) {
	l := m.layout()
	y-- // the bar
	in := func(s draw.Size) bool { return x >= 0 && y >= 0 && x < s.W && y < s.H }
	switch {
	case in(l.page):
		return m.focus, x, y
	case in(l.beam):
		return theBeam, x, y
	}
	y -= l.beam.H
	if in(l.day) {
		return theDay, x, y
	}
	if x -= l.day.W + l.between; in(l.moves) {
		return theMoves, x, y
	}
	return noPane, 0, 0
}
