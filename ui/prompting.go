package ui

import (
	"bide/ui/draw"
	"bide/ui/pane"
)

// prompting is the line that a prompt is typed in.
func prompting(d *pane.Shared, w int) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, " "+d.Prompt.Label+": ")
	l = l.Fit(min(l.Width, max(w-12, 0)))
	d.Prompt.Draw(d.Theme, &l, w-l.Width, true)
	return l
}
