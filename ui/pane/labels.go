package pane

import (
	"fmt"

	"bide/plan"
	"bide/ui/draw"
)

// The rows above and below the threads.

// Labels are short texts on one line at columns of their own.
type Labels []draw.Span

// NewLabels is a line of so many cells without a label.
func NewLabels(w int) Labels {
	out := make(Labels, max(w, 0))
	for x := range out {
		out[x].Text = " "
	}
	return out
}

// Put writes a text of single cells from a column on, if there is room for it
// between those that were put before.
func (l Labels) Put(column int, i draw.Style, text string) {
	runes := []rune(text)
	if column < 0 || column+len(runes) > len(l) {
		return
	}
	for x := max(column-1, 0); x <= min(column+len(runes), len(l)-1); x++ {
		if l[x].Text != " " {
			return
		}
	}
	for n, r := range runes {
		l[column+n] = draw.Span{Style: i, Text: string(r)}
	}
}

// ScaleNumbers is the scale.
func ScaleNumbers(k *draw.Theme, s draw.Scale, u plan.Unit) draw.Line {
	l := NewLabels(s.Width)
	unit := u.String()
	l.Put(s.Width-len(unit), draw.Faint, unit)
	for _, x := range s.Numbers() {
		l.Put(s.Column(x), draw.Faint, k.Tick+u.Number(x))
	}
	return draw.FromCells(k, l)
}

// ConditionLetters stand behind the numbers of holders that aren't good.
var ConditionLetters = map[plan.Condition]string{plan.NoCut: "n", plan.Stuck: "s", plan.Out: "o"}

// HolderNumbers names the picked holder at its position, those that aren't good, and every tenth.
// Nothing where positions are not known yet.
func HolderNumbers(d *Shared, s draw.Scale, now *plan.Positions, aimed int) draw.Line {
	l := NewLabels(s.Width)
	if now == nil {
		return draw.FromCells(d.Theme, l)
	}
	if n := aimed; n > 0 {
		l.Put(s.Column(now.At[n-1]), draw.Picked, d.Aim+fmt.Sprint(n))
	}
	for i, c := range d.Beam.Holders {
		if letter := ConditionLetters[c]; letter != "" {
			l.Put(s.Column(now.At[i]), draw.Late, fmt.Sprint(i+1)+letter)
		}
	}
	for i := 9; i < len(now.At); i += 10 {
		l.Put(s.Column(now.At[i]), draw.Faint, fmt.Sprint(i+1))
	}
	return draw.FromCells(d.Theme, l)
}

// WebRow is the job's web under the threads, with its edges, its cuts and its trim.
func WebRow(k *draw.Theme, s draw.Scale, l *plan.Layout) draw.Line {
	from, to := s.Column(l.Web.From), s.Column(l.Web.To)
	cells := make([]draw.Span, s.Width)
	for x := range cells {
		cells[x] = draw.Span{Style: draw.Plain, Text: " "}
		if from <= x && x <= to {
			cells[x] = draw.Span{Style: draw.Accent, Text: k.Web}
		}
	}
	mark := func(x int, i draw.Style, text string) {
		if x >= 0 && x < len(cells) {
			cells[x] = draw.Span{Style: i, Text: text}
		}
	}
	if n := len(l.Cuts); n > 0 && l.Trim[0]+l.Trim[1] > 0 {
		for x := max(from, 0); x < s.Column(l.Cuts[0]); x++ {
			mark(x, draw.Faint, k.Trim)
		}
		for x := s.Column(l.Cuts[n-1]) + 1; x <= min(to, s.Width-1); x++ {
			mark(x, draw.Faint, k.Trim)
		}
	}
	mark(from, draw.Accent, k.WebFrom)
	mark(to, draw.Accent, k.WebTo)
	for _, c := range l.Cuts {
		mark(s.Column(c), draw.Accent, k.Cut)
	}
	return draw.FromCells(k, cells)
}

// BeamSpan is all of the beam that there is to see.
func BeamSpan(b *plan.Beam) plan.Span {
	return plan.Span{From: min(b.Rail.From, b.Web.From), To: max(b.Rail.To, b.Web.To)}
}
