package frame

import (
	"fmt"
	"strings"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"

	"github.com/charmbracelet/bubbles/progress"
)

// searching is the line that tells how far a search is, and what happened last.
func searching(d *pane.Shared) draw.Line {
	l := d.Line()
	fills := [2]rune{'█', '░'}
	if d.ASCII {
		fills = [2]rune{'#', '.'}
	}
	const noColours = 3 // the line brings its own
	bar := progress.New(progress.WithColorProfile(noColours), progress.WithFillCharacters(fills[0], fills[1]),
		progress.WithoutPercentage(), progress.WithWidth(min(20, d.W/4)))
	l.Add(draw.Plain, " ")
	l.Add(draw.Accent, bar.ViewAs(d.Searching.Share()))
	l.Add(draw.Strong, fmt.Sprintf(" %3.0f %%  ", 100*d.Searching.Share()))
	if text := d.Told(d.Pending); text != "" {
		l.Add(draw.Strong, d.Short(text, d.W-l.Width-1))
		return l
	}
	esc, best := "  Esc keeps the best so far", bestSoFar(d)
	switch {
	case d.Over != nil: // Esc goes back there
		esc = ""
	case d.W < 100:
		esc = "  Esc keeps it"
	}
	for draw.CellWidth(best)+l.Width+draw.CellWidth(esc) > d.W && strings.Contains(best, ", ") {
		best = best[:strings.LastIndex(best, ", ")]
	}
	l.Add(draw.Strong, best)
	l.Add(draw.Faint, esc)
	return l
}

// bestSoFar tells what the running search has found, against the present order and
// what is proven least; what matters least last.
func bestSoFar(d *pane.Shared) string {
	p := d.Searching.Progress
	switch {
	case d.Searching.Fits:
		return "fitting what was found to the day as it is now"
	case p == nil:
		return "searching"
	}
	was, known := d.Present.Totals, d.Present.Whole()
	if known && !p.Best.Better(was, d.Searching.Aim) {
		return "nothing better found yet"
	}
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
