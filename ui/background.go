package ui

import (
	"time"

	"bide/plan/session/planning"

	tea "github.com/charmbracelet/bubbletea"
)

// untilGlance is the time between two looks: the files' dates cost next to nothing.
const untilGlance = 5 * time.Second

// glance comes when it is time to look at the files.
type glance struct{}

// nextGlance is the command that waits for the next look; nil where none is wanted.
func nextGlance(m *model) tea.Cmd {
	if !m.session.Files.Watched {
		return nil
	}
	return tea.Tick(untilGlance, func(time.Time) tea.Msg { return glance{} })
}

// redraw comes while a search runs, to show how far it is.
type redraw struct{}

// beat is how often the progress of a search is drawn.
const beat = 100 * time.Millisecond

// nextBeat waits for the next time to draw how far a search is, one at a time.
func nextBeat(m *model) tea.Cmd {
	if !m.session.Search.Running() || m.beating {
		return nil
	}
	m.beating = true
	return tea.Tick(beat, func(time.Time) tea.Msg { return redraw{} })
}

// ask is the command for what is to be done in the background now.
func (m *model) ask() tea.Cmd {
	all := []tea.Cmd{nextBeat(m)}
	for _, w := range m.session.Work() {
		all = append(all, background(w))
	}
	return tea.Batch(all...)
}

// background is work as a command; nil for none.
func background(w planning.Work) tea.Cmd {
	if w == nil {
		return nil
	}
	return func() tea.Msg { return w() }
}
