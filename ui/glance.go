package ui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// untilGlance is the time between two looks: the files' dates cost next to nothing.
const untilGlance = 5 * time.Second

// glance comes when it is time to look at the files.
type glance struct{}

// glances is the command that waits for the next look; nil where none is wanted.
func (m *model) glances() tea.Cmd {
	if !m.Files.Watched {
		return nil
	}
	return tea.Tick(untilGlance, func(time.Time) tea.Msg { return glance{} })
}

// Quiet reports whether nothing is open that a shop read anew would disturb.
func (m *model) Quiet() bool {
	if g := m.Guided(); m.Over != nil && (g == nil || g.Typing()) {
		return false
	}
	return m.Prompt == nil && !m.AsksToQuit
}
