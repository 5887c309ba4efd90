package small

import (
	"bide/ui/draw"
	"bide/ui/pane"
)

// Prompt is the prompt over a small screen.
func Prompt(d *pane.Shared, s draw.Size) []draw.Line {
	rows := append(d.Wrap(d.Prompt.Label+":", max(s.W, 1)), "")
	rows = rows[max(len(rows)-s.H, 0):]
	out := make([]draw.Line, 0, s.H)
	for _, text := range rows[:len(rows)-1] {
		l := d.Line()
		l.Add(draw.Strong, text)
		out = append(out, l.Fit(s.W))
	}
	l := d.Line()
	d.Prompt.Draw(d.Theme, &l, s.W, true)
	for out = append(out, l.Fit(s.W)); len(out) < s.H; {
		out = append(out, d.Line().Fit(s.W))
	}
	return out
}
