package ui

import (
	"bide/plan/session/workday"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// The mouse is off at first: while it is on, a terminal doesn't let text be selected.
// A click picks a pane and its row, the wheel goes up and down in the pane it is over.

// clickable is a pane of which a click picks something.
type clickable interface {
	// Click is a click at a cell of the pane, from 0; its rule is in line 0.
	Click(d *desk, x, y int)
}

// switchMouse turns the mouse on or off.
func (m *model) switchMouse() tea.Cmd {
	if m.mousing = !m.mousing; m.mousing {
		m.Say("mouse on: a click picks, the wheel scrolls; m turns it off")
		return tea.EnableMouseCellMotion
	}
	m.Say("mouse off: the terminal selects text again")
	return tea.DisableMouse
}

// mouse does what a click or the wheel asks for.
func (m *model) mouse(e tea.MouseEvent) {
	if !m.mousing || e.Action != tea.MouseActionPress || m.scope()&keys.OnPanes == 0 {
		return
	}
	which, x, y := m.under(e.X, e.Y)
	if which == all {
		return
	}
	switch e.Button {
	case tea.MouseButtonWheelUp:
		m.panel(which).HandleKey(keys.Up, m.desk)
	case tea.MouseButtonWheelDown:
		m.panel(which).HandleKey(keys.Down, m.desk)
	case tea.MouseButtonLeft:
		m.Notice = workday.Notice{}
		m.turnTo(which)
		if p, ok := m.panel(which).(clickable); ok {
			p.Click(m.desk, x, y)
		}
	}
}

// under is the pane at a cell of the screen, and the cell within it; all when none
// is there.
func (m *model) under(x, y int) (which, int, int) {
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
	return all, 0, 0
}

// Click picks the job of a row.
func (p *dayPane) Click(d *desk, _, y int) {
	s := p.parts(d)
	rows, row := p.shown(d), y-2
	if s.roomy {
		row = (y - 3) / 2
	}
	from := draw.Window(rowOfTurn(rows, d.turn), len(rows), s.list)
	if row >= 0 && row < s.list && from+row < len(rows) {
		d.pick(rows[from+row])
	}
}

// Click picks the move of a row.
func (p *movesPane) Click(d *desk, _, y int) {
	rows := p.rows(d)
	from := draw.Window(rowOfTurn(rows, d.move), len(rows), p.list())
	if row := y - 2; row >= 0 && row < p.list() && from+row < len(rows) {
		d.pickMove(rows[from+row])
	}
}

// Click picks the moved holder nearest to a column.
func (p *beamPane) Click(d *desk, x, _ int) {
	s := draw.NewScale(p.view(d), p.W, d.Shop.Unit)
	best, near := -1, 0
	for n, m := range d.moves() {
		for _, at := range []int{s.Column(m.From), s.Column(m.To)} {
			if off := max(at-x, x-at); best < 0 || off < near {
				best, near = n, off
			}
		}
	}
	if best >= 0 {
		d.pickMove(best)
	}
}

// Click picks the job of a line, or where all are in one the job at a time.
func (p *schedulePane) Click(d *desk, x, y int) {
	const heads = 3 // with the pane's rule
	if !p.inOne() {
		if turns := p.shown(d); y >= heads && y-heads < len(turns) {
			d.pick(turns[y-heads])
		}
		return
	}
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), p.W}
	for turn := range d.Jobs() {
		if o := d.Outcome(turn); o != nil && len(o.Faults) == 0 && s.column(o.Step.SetupStart) <= x && x <= s.column(o.Step.RunEnd) {
			d.pick(turn)
		}
	}
}

// Click picks the job of a row.
func (p *dayMapPane) Click(d *desk, _, y int) {
	const heads = 3 // with the pane's rule
	s := p.parts(d)
	turns := p.shown(d, s.jobs)
	if row := draw.Floor(y-heads, s.bends+s.runs); row >= 0 && row < len(turns) {
		d.pick(turns[row])
	}
}

// Click picks the row, a holder or a changeover.
func (p *holdersPane) Click(d *desk, _, y int) {
	rows, at := p.picks(d)
	n := p.list(d)
	from, row := draw.Window(max(at, 0), len(rows), n), y-2
	if row < 0 || row >= n || from+row >= len(rows) {
		return
	}
	p.choose(d, rows[from+row])
}
