package setup

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// view draws the form in n lines of w cells: the open field first where there is no
// room for all.
func (f *correction) view(d *pane.Shared, s draw.Size) []draw.Line {
	says, warns, _ := f.read(d)
	ink := draw.Faint
	if warns {
		ink = draw.Late
	}
	if f.said != "" {
		says, ink = f.said, draw.Late
	}
	if says == "" {
		says = f.Open().Hint
	}
	var reported []draw.Line
	for _, row := range d.Wrap(says, max(s.W-2, 1)) {
		l := d.Line()
		l.Add(draw.Plain, " ")
		l.Add(ink, row)
		reported = append(reported, l)
	}
	title := d.Line()
	title.Add(draw.Strong, " "+f.title)
	if s.H < len(f.Fields)+len(reported)+2 {
		return append([]draw.Line{f.row(d, f.At, s.W)}, reported...)
	}
	out := []draw.Line{title}
	for _, n := range slices.Sorted(maps.Keys(f.positions)) {
		l := d.Line()
		l.Add(draw.Good, fmt.Sprintf("  measured: holder %d at %s", n, words.Both(f.positions[n], d.Shop.Unit)))
		out = append(out, l)
	}
	for i := range f.Fields {
		out = append(out, f.row(d, i, s.W))
	}
	out = append(out, d.Line())
	out = append(out, reported...)
	if n, wrong := f.number(d); wrong == "" {
		l := d.Line()
		l.Add(draw.Faint, " "+d.Short(neighbours(d, n), s.W-2))
		out = append(out, l)
	}
	if len(f.positions) > 0 {
		l := d.Line()
		l.Add(draw.Plain, " Enter without a number: replan from these positions. Esc: change nothing.")
		out = append(out, l)
	}
	if n, _ := f.number(d); n > 0 && s.H-len(out) >= 8 {
		out = append(out, d.Line())
		out = append(out, f.picture(d, n, draw.Size{W: s.W, H: min(s.H-len(out), 10)})...)
	}
	return out
}

// picture is the beam around a holder: where it is shown above, where the form has it
// below.
func (f *correction) picture(d *pane.Shared, number int, s draw.Size) []draw.Line {
	at, reported := d.Actual.Positions.At, f.corrected(d)
	m := &plan.Move{Holder: number, From: at[number-1], To: reported[number-1]}
	sc := draw.NewScale(around(d, m), s.W, d.Shop.Unit)
	pic := draw.NewPicture(d.Theme, s.W, s.H-2)
	fine := sc
	fine.Cols *= pic.Across()
	threads := draw.Unmoved(at, fine.Column)
	for i := range threads {
		if threads[i].To = fine.Column(reported[i]); reported[i] != at[i] {
			threads[i].Class = draw.Moves
		}
	}
	threads[number-1].Class = draw.Aimed
	pic.Draw(threads)
	out := []draw.Line{pane.ScaleNumbers(d.Theme, sc, d.Shop.Unit), named(d, m, sc)}
	for y := range s.H - 2 {
		out = append(out, pic.Line(y))
	}
	return out
}

// row is the line of one field, with its hint while nothing is typed.
func (f *correction) row(d *pane.Shared, i, w int) draw.Line {
	in, hint := &f.Fields[i], ""
	switch {
	case i == f.At && in.Proposed:
		hint = "Enter keeps it, a digit types another"
	case in.Value() == "":
		hint = in.Hint
	}
	if w < 40 {
		hint = ""
	}
	return f.Row(d.Theme, i, min(11, max(w/3, 0)), w, draw.Span{Style: draw.Faint, Text: hint}, 0)
}

// neighbours are the positions of the holders around one, as they are shown.
func neighbours(d *pane.Shared, number int) string {
	at := d.Actual.Positions.At
	var parts []string
	for n := max(number-2, 1); n <= min(number+2, len(at)); n++ {
		parts = append(parts, fmt.Sprintf("%d: %s", n, d.Shop.Unit.Number(at[n-1])))
	}
	return "shown at (" + d.Shop.Unit.String() + "): " + strings.Join(parts, "  ")
}
