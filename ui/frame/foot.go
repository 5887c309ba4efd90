package frame

import (
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Foot lays what just happened and the keys under a frame that has all lines but these
// two. A text that is too long for one line takes as many of the frame's last ones as it
// needs: nothing else moves, and it is there only until the next key.
func Foot(d *pane.Shared, frame []draw.Line, in keys.Scope, notes []string) []draw.Line {
	rows := status(d, notes, max(len(frame)-1, 1))
	out := frame[:max(len(frame)-len(rows)+1, 0)]
	for _, l := range rows {
		out = append(out, l.Fit(d.W))
	}
	return append(out, keys.Footer(d.Theme, d.Table, in, d.W))
}

// status are the lines that tell what just happened until the next key, at most so
// many; then what is assumed.
func status(d *pane.Shared, notes []string, most int) []draw.Line {
	text := d.Told(d.Pending)
	switch {
	case d.AsksToQuit:
		return d.Rows(draw.Late, d.Question, d.W, most)
	case d.Prompt != nil:
		return []draw.Line{prompting(d)}
	case d.Searching.Running:
		return []draw.Line{searching(d)}
	case text == "" && d.Saving.Fault() != "":
		return d.Rows(draw.Late, "NOT SAVED: "+d.Saving.Fault(), d.W, most)
	case text != "":
		return d.Rows(draw.Strong, text, d.W, most)
	}
	if d.Outdated != "" {
		return d.Rows(draw.Late, d.Outdated, d.W, most)
	}
	l := d.Line()
	if len(notes) > 0 {
		l.Add(draw.Faint, " note: "+d.Noted(notes, d.W-8))
	}
	return []draw.Line{l.Fit(d.W)}
}

// prompting is the line that a prompt is typed in.
func prompting(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, " "+d.Prompt.Label+": ")
	l = l.Fit(min(l.Width, max(d.W-12, 0)))
	d.Prompt.Draw(d.Theme, &l, d.W-l.Width, true)
	return l
}
