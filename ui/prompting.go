package ui

import (
	"bide/ui/draw"
)

// prompting is the line that a prompt is typed in.
func prompting(d *desk, w int) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, " "+d.prompt.Label+": ")
	l = l.Fit(min(l.Width, max(w-12, 0)))
	d.prompt.Draw(d.Theme, &l, w-l.Width, true)
	return l
}
