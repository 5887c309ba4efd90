// Package small is the screen below the size of the panes: the next move, and around it what there is
// room for.
package small

import (
	"fmt"

	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// View is the screen below the size of the panes: the next step, and around it
// what there is room for. The last line names the keys, where there is more than one,
// or says that a search runs.
func View(d *pane.Shared, s draw.Size) []draw.Line {
	below := below(d, s)
	room := max(s.H-len(below), 1)
	body := body(d, draw.Size{W: s.W, H: room + min(s.H-1, 1)})
	out := make([]draw.Line, 0, s.H)
	for _, l := range body[:min(len(body), room)] {
		out = append(out, l.Fit(s.W))
	}
	for len(out) < room {
		out = append(out, d.Line().Fit(s.W))
	}
	text, brief, ink := d.Told(d.Pending), d.Notice.Brief, draw.Strong
	if text == "" {
		text, brief, ink = d.Outdated, d.OutdatedBrief, draw.Late
	}
	if text = pane.FitMessage(text, brief, s); text != "" && s.H >= 2 {
		rows := d.Rows(ink, text, s.W, room)
		if s.H < 8 { // what is first matters least: the changeover's name
			copy(out, rows)
		} else {
			copy(out[room-len(rows):], rows)
		}
	}
	return append(out, below...)
}

// below are the last lines: the caution, and the keys.
func below(d *pane.Shared, s draw.Size) (out []draw.Line) {
	if s.H < 2 {
		return nil
	}
	if o := d.Outcome(d.JobAt); s.H >= 5 && o != nil && len(o.Faults) == 0 {
		l := d.Line()
		l.Add(draw.Late, caution.OnOneLine(s.W))
		out = append(out, l.Fit(s.W))
	}
	if d.Searching.Running {
		return append(out, searching(d).Fit(s.W))
	}
	return append(out, keys.Footer(d.Theme, d.Table, keys.OnSmall, s.W))
}

// searching is in the place of the keys while a search runs.
func searching(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Accent, "Esc")
	l.Add(draw.Faint, " stops")
	l.Add(draw.Strong, fmt.Sprintf(" search %.0f %%", 100*d.Searching.Share()))
	return l
}

// body is all that a small screen may tell, cut at its beginning to what it
// needs most.
func body(d *pane.Shared, s draw.Size) []draw.Line {
	moves := d.Moves()
	if !d.Present.Whole() { // what is known so far is not to be set up by
		l := d.Line()
		l.Add(draw.Faint, "planning "+d.Pending)
		return append([]draw.Line{head(d, s.W)}, l)[min(1, max(3-s.H, 0)):]
	}
	if d.MoveAt >= len(moves) {
		return append([]draw.Line{head(d, s.W)}, pane.NoMoves(d, s.W)...)[min(1, max(3-s.H, 0)):]
	}
	m := &moves[d.MoveAt]
	if s.H <= 2 {
		return []draw.Line{pane.MoveInShort(d, m, s.W)}
	}
	body := append([]draw.Line{head(d, s.W)}, pane.MoveInFull(d, m, s.W)...)
	if s.H == 3 {
		return body[1:]
	}
	if s.H < 8 {
		return body
	}
	body = append(body, times(d))
	then := "then"
	if left, room := len(moves)-d.MoveAt-1, s.H-2-len(body); left > room && room > 0 {
		then += " " + draw.Range(d.MoveAt+1, room, len(moves))
	}
	body = append(body, ruled(d, then, s.W))
	columns := draw.ColumnsFor(pane.MoveColumns(d, moves), s.W)
	for n := d.MoveAt + 1; n < len(moves); n++ {
		body = append(body, draw.RowOf(d.Theme, columns, pane.MoveRow{Shared: d, Index: n, Move: &moves[n], Focused: false}))
	}
	return body
}

// head tells which changeover, which step of how many, and an invented day.
func head(d *pane.Shared, w int) draw.Line {
	l := d.Line()
	j := d.Job()
	if j == nil {
		return l
	}
	if s := d.Before(d.JobAt); s != nil && s.Job != "" {
		l.Add(draw.Strong, s.Job)
	}
	l.Add(draw.Strong, d.To+j.ID)
	if n := len(d.Moves()); n > 0 {
		l.Add(draw.Faint, fmt.Sprintf(" %d/%d", d.MoveAt+1, n))
	}
	if text := "  DEMO"; d.Demo && l.Width+draw.CellWidth(text) <= w {
		l.Add(draw.Late, text)
	}
	return l
}

// times tells when the changeover and its run begin, and how long setup takes.
func times(d *pane.Shared) draw.Line {
	step, day := d.Outcome(d.JobAt).Step, d.Shop.Day.Start
	l := d.Line()
	l.Add(draw.Faint, "setup ")
	l.Add(draw.Plain, words.Clock(step.SetupStart, day))
	l.Add(draw.Faint, ", run ")
	l.Add(draw.Plain, words.Clock(step.RunStart, day))
	if step.Late > 0 {
		l.Add(draw.Late, " !"+words.Hours(step.Late)+" late")
	}
	return l
}

// ruled is a rule with a name, over the whole width.
func ruled(d *pane.Shared, name string, w int) draw.Line {
	return draw.Heading(d.Theme, name, d.Line(), w, false)
}

// Question asks whether to leave, on any screen.
func Question(k *draw.Theme, asks string, s draw.Size) []draw.Line {
	texts := k.Wrap("y quits, any other key stays. "+asks, max(s.W, 1))
	out := make([]draw.Line, 0, s.H)
	for i := range s.H {
		l := k.Line()
		if i < len(texts) {
			l.Add(draw.Late, texts[i])
		}
		out = append(out, l.Fit(s.W))
	}
	return out
}
