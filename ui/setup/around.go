package setup

import (
	"fmt"
	"strings"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// head tells which changeover, which move of how many, and how long the rest takes.
func (w *Page) head(d *pane.Shared, width int) draw.Line {
	made, ahead := len(w.Made()), len(w.Ahead())
	from := d.Actual.Positions.Job
	if w.Running != nil {
		from = w.Running.ID
	}
	if from == w.Job.ID {
		from = ""
	}
	l := d.Line()
	if width < 60 {
		l.Add(draw.Strong, from+d.To+w.Job.ID)
		l.Add(draw.Faint, fmt.Sprintf(" %d/%d", min(made+1, made+ahead), made+ahead))
		if w.Warned && w.Look > 0 && ahead > 0 {
			l.Add(draw.Late, fmt.Sprintf(" ahead %d", min(w.Look, ahead-1)))
		} else if d.Demo && l.Width+6 <= width {
			l.Add(draw.Late, "  DEMO")
		}
		return l
	}
	l.Add(draw.Accent, " setup ")
	if from != "" {
		l.Add(draw.Strong, " "+from+" "+d.To+" "+w.Job.ID)
	} else {
		l.Add(draw.Faint, " to")
		l.Add(draw.Strong, " "+w.Job.ID)
	}
	if d.Demo {
		l.Add(draw.Late, "  DEMO")
	}
	switch {
	case w.Plan == nil || w.Refused():
	case ahead == 0:
		l.Add(draw.Strong, fmt.Sprintf("   all %s made", words.Count(made, "move")))
	default:
		l.Add(draw.Strong, fmt.Sprintf("   move %d of %d", made+1, made+ahead))
		l.Add(draw.Faint, fmt.Sprintf("   %d left, %s min", ahead, words.Minutes(w.TimeLeft())))
	}
	if room := width - l.Width - 4; room >= 10 && made+ahead > 0 && w.Plan != nil && !w.Refused() {
		bar := min(room, 40)
		done := bar * made / (made + ahead)
		l.To(width - bar - 1)
		l.Add(draw.Moved, strings.Repeat(d.Bar, done))
		l.Add(draw.Faint, strings.Repeat(d.Trim, bar-done))
	}
	return l
}

// status tells what isn't saved, before all; then what just happened. Both in few words
// too.
func (w *Page) status(d *pane.Shared) (text, brief string, i draw.Style) {
	switch {
	case d.AsksToQuit:
		return d.Question, "", draw.Late
	case d.Saving.Busy():
		return d.Pending + " being saved", "", draw.Faint
	case d.Saving.Fault() != "":
		again := d.KeyFor(keys.SaveAgain)
		return "NOT SAVED (" + again + " tries again): " + words.Join("; ", d.Saving.Fault(), d.Notice.Text), "NOT SAVED: " + again, draw.Late
	}
	if d.Outdated != "" {
		return words.Join("; ", d.Notice.Text, d.Outdated), d.OutdatedBrief, draw.Late
	}
	return d.Notice.Text, d.Notice.Brief, draw.Strong
}

// keysLine names the keys: the first whatever the width, then as many as there is
// room for.
func (w *Page) keysLine(d *pane.Shared, width int) draw.Line {
	in := w.Help()
	if d.AsksToQuit {
		in = keys.OnQuestion
	}
	l := d.Line()
	for _, b := range d.Table.All {
		if b.Where&in == 0 || b.Word == "" || !w.works(d, b.Act) {
			continue
		}
		next := d.Line()
		if l.Width > 0 {
			next.Add(draw.Plain, "  ")
		}
		next.Add(draw.Accent, b.Shown(d.Theme.ASCII))
		next.Add(draw.Faint, " "+b.Word)
		if l.Width > 0 && l.Width+next.Width > width {
			continue
		}
		l.Join(next)
	}
	return l.Fit(width)
}

// works reports whether a key is worth a place in the line of keys now.
func (w *Page) works(d *pane.Shared, a keys.Action) bool {
	left := len(w.Ahead()) > 0
	switch a {
	case keys.Confirm:
		return left
	case keys.Runs:
		return w.Plan != nil && !w.Refused() && !left
	case keys.TakeBack:
		return w.Undoable
	case keys.SaveAgain:
		return d.Saving.Owes()
	}
	return true
}
