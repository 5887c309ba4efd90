package ui

import (
	"io"

	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/plain"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
)

// Plain writes the same panes as linear text, for screen readers and printers: no
// boxes, no colours, no cursor, one thing a line. Jobs are planned as on the screen.
func Plain(o Options) error {
	o.complete()
	r := lipgloss.NewRenderer(io.Discard)
	m, err := newModel(o.Shop, draw.NewTheme(r, false, o.ASCII || !o.unicode()))
	if err != nil {
		return err
	}
	m.Demo = o.Demo
	m.personalise(o.Config)
	m.mousing = false
	m.session.Files.ReadRecord()
	await(m, m.Init())
	moving := func(index, near int) planning.MoveCosts {
		return m.session.Forecast.Estimates(index, m.Now.Done(), near)
	}
	_, err = io.WriteString(o.Output, plain.Text(m.Shared, m.notes(), m.session.Preview(), moving))
	return err
}

// await does what is asked for in the background, one after the other.
func await(m *model, cmd tea.Cmd) {
	for todo := []tea.Cmd{cmd}; len(todo) > 0; {
		cmd, todo = todo[0], todo[1:]
		if cmd == nil {
			continue
		}
		switch msg := cmd().(type) {
		case tea.BatchMsg:
			todo = append(todo, msg...)
		default:
			_, next := m.Update(msg)
			todo = append(todo, next)
		}
	}
}
