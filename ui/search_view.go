package ui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// tick comes while a search runs, to show how far it is.
type tick struct{}

// beat is how often the progress of a search is drawn.
const beat = 100 * time.Millisecond

// beats waits for the next time to draw how far a search is, one at a time.
func (m *model) beats() tea.Cmd {
	if !m.Search.Running() || m.beating {
		return nil
	}
	m.beating = true
	return tea.Tick(beat, func(time.Time) tea.Msg { return tick{} })
}
