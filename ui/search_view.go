package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan/words"
	"bide/ui/draw"

	"github.com/charmbracelet/bubbles/progress"
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

// searching is the line that tells how far a search is, and what happened last.
func (m *model) searching() draw.Line {
	l := m.Line()
	fills := [2]rune{'█', '░'}
	if m.ASCII {
		fills = [2]rune{'#', '.'}
	}
	const noColours = 3 // the line brings its own
	bar := progress.New(progress.WithColorProfile(noColours), progress.WithFillCharacters(fills[0], fills[1]),
		progress.WithoutPercentage(), progress.WithWidth(min(20, m.W/4)))
	l.Add(draw.Plain, " ")
	l.Add(draw.Accent, bar.ViewAs(m.Search.Share()))
	l.Add(draw.Strong, fmt.Sprintf(" %3.0f %%  ", 100*m.Search.Share()))
	if text := m.Told(m.Pending); text != "" {
		l.Add(draw.Strong, m.Short(text, m.W-l.Width-1))
		return l
	}
	esc, best := "  Esc keeps the best so far", m.bestSoFar()
	if m.W < 100 {
		esc = "  Esc keeps it"
	}
	for draw.CellWidth(best)+l.Width+draw.CellWidth(esc) > m.W && strings.Contains(best, ", ") {
		best = best[:strings.LastIndex(best, ", ")]
	}
	l.Add(draw.Strong, best)
	l.Add(draw.Faint, esc)
	return l
}

// bestSoFar tells what the running search has found, against the present order and
// the floor; what matters least last.
func (m *model) bestSoFar() string {
	p := m.Search.Progress()
	switch {
	case m.Search.Fits:
		return "fitting what was found to the day as it is now"
	case p == nil:
		return "searching"
	}
	was, known := m.Forecast.Present.Totals, m.Forecast.Present.Whole()
	parts := []string{fmt.Sprintf("best so far %s min", words.Minutes(p.Best.Setup))}
	if known {
		parts[0] += fmt.Sprintf(" (now %s)", words.Minutes(was.Setup))
	}
	if p.Best.LateJobs > 0 {
		parts = append(parts, fmt.Sprintf("%s late", words.Hours(p.Best.Late)))
	}
	moves := fmt.Sprintf("%d moves", p.Best.Repositions)
	if known {
		moves += fmt.Sprintf(" (now %d)", was.Repositions)
	}
	parts = append(parts, moves)
	if p.Floor != nil {
		parts = append(parts, fmt.Sprintf("proven least %d", p.Floor.Repositions))
	}
	return strings.Join(parts, ", ")
}
