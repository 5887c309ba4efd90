package settings

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// The anvil under its blades, and how the day wears its face. Both have one scale, so
// that what stands below each other is at one place.

// anvilScale is the scale from bearing to bearing, or along the web area where no
// bearings are known.
func (t *text) anvilScale(b *material.Bending) draw.Scale {
	view := t.Shop.Beam.Web
	if b != nil {
		view.From = min(view.From, nm(b.Anvil.FromMM))
		view.To = max(view.To, nm(b.Anvil.FromMM+b.Anvil.SpanMM))
	}
	return draw.NewScale(view, max(t.w-2, 1), t.Shop.Unit)
}

// nm is a place of a formula on the beam's scale.
func nm(mm float64) plan.Length { return plan.Length(mm * float64(plan.Millimetre)) }

// picture adds lines of a picture, one cell from the edge.
func (t *text) picture(lines ...draw.Line) {
	for _, l := range lines {
		row := t.Line()
		row.Add(draw.Plain, " ")
		row.Join(l)
		t.out = append(t.out, row)
	}
}

// anvil draws the load along the anvil and its bend.
func (t *text) anvil(k *material.Turn) {
	t.chapter("The anvil under these blades", "")
	for _, d := range k.Damaged {
		t.entry(draw.Late, "!", 3, draw.Plain, "Damaged "+d.Where+".")
	}
	b := k.Bending
	if b == nil {
		t.para(draw.Plain, "Its bend is not calculated: "+k.Unbent+".")
		return
	}
	for _, text := range BendWords(t.Shared, b) {
		t.para(draw.Plain, text)
	}
	const loadRows, bendRows = 2, 4
	s := t.anvilScale(b)
	t.picture(pane.ScaleNumbers(t.Theme, s, t.Shop.Unit))
	t.picture(draw.Bars(t.Theme, loads(s, b), loadRows)...)
	t.picture(t.roll(s, b))
	t.picture(draw.Curve(t.Theme, s.Width, bendRows, func(x float64) float64 {
		at := (float64(s.Origin) + x*float64(s.Step)/float64(s.Cols)) / float64(plan.Millimetre)
		if at < b.Anvil.FromMM || at > b.Anvil.FromMM+b.Anvil.SpanMM || b.MostMM <= 0 {
			return -1
		}
		return min(b.At(at)/b.MostMM, 1)
	})...)
}

// BendWords say in numbers how an anvil bends.
func BendWords(d *pane.Shared, b *material.Bending) []string {
	sum := b.OperatorN + b.DriveN
	out := []string{
		fmt.Sprintf("%s press with %s in total; the bearings carry %s on the operator side and %s on the drive side.",
			words.Count(len(b.Presses), "blade"), force(sum), force(b.OperatorN), force(b.DriveN)),
		fmt.Sprintf("It bends most at %s, by %.3f mm (%.4f in); %s.",
			d.Shop.Unit.Show(rounded(b.MostAt)), b.MostMM, material.Inches(b.MostMM), d.AtKnife().Rests),
	}
	for _, text := range []string{b.Past(), b.Doubt()} {
		if text != "" {
			out = append(out, strings.ToUpper(text[:1])+text[1:]+".")
		}
	}
	return append(out, material.BendMatters)
}

// rounded is a place to the millimetre.
func rounded(mm float64) plan.Length {
	return draw.Floor(nm(mm)+plan.Millimetre/2, plan.Millimetre) * plan.Millimetre
}

// loads are the forces in each column as parts of the largest of them.
func loads(s draw.Scale, b *material.Bending) []float64 {
	out, most := make([]float64, s.Width), 0.0
	for _, p := range b.Presses {
		if c := s.Column(nm(p.AtMM)); c >= 0 && c < len(out) {
			out[c] += p.Newtons
			most = max(most, out[c])
		}
	}
	return parts(out, most)
}

// parts are values as parts of the most.
func parts(values []float64, most float64) []float64 {
	for i := range values {
		if most > 0 {
			values[i] /= most
		}
	}
	return values
}

// roll is the anvil between its bearings.
func (t *text) roll(s draw.Scale, b *material.Bending) draw.Line {
	from, to := s.Column(nm(b.Anvil.FromMM)), s.Column(nm(b.Anvil.FromMM+b.Anvil.SpanMM))
	cells := make([]draw.Span, s.Width)
	for x := range cells {
		switch {
		case x == from || x == min(to, s.Width-1):
			cells[x] = draw.Span{Style: draw.Accent, Text: t.Bearing}
		case from < x && x < to:
			cells[x] = draw.Span{Style: draw.Faint, Text: t.Rule}
		default:
			cells[x] = draw.Span{Style: draw.Plain, Text: " "}
		}
	}
	t.mark(s, cells)
	return draw.FromCells(t.Theme, cells)
}

// mark puts the damaged bands of the anvil over the cells of a line, and reports whether
// it did.
func (t *text) mark(s draw.Scale, cells []draw.Span) (any bool) {
	for _, bad := range t.Shop.Beam.Bad {
		for x := max(s.Column(bad.From), 0); x <= min(s.Column(bad.To), s.Width-1); x++ {
			cells[x], any = draw.Span{Style: draw.Late, Text: t.Damaged}, true
		}
	}
	return any
}

// face draws the metres that the day cuts on each band of the anvil's face.
func (t *text) face() {
	f := t.AtKnife().Face
	if f == nil || f.Worst < 0 {
		return
	}
	t.chapter("The anvil's face over the day", "")
	t.para(draw.Plain, FaceWords(t.Shared, f))
	for _, d := range t.AtKnife().Damaged {
		t.entry(draw.Late, "!", 3, draw.Plain, "Damaged "+d.Where+"; "+d.Worn+".")
	}
	const rows = 3
	s := t.anvilScale(t.anyBending())
	t.picture(draw.Bars(t.Theme, worn(s, f), rows)...)
	if cells := pane.NewLabels(s.Width); t.mark(s, cells) {
		t.picture(draw.FromCells(t.Theme, cells))
	}
	t.picture(pane.ScaleNumbers(t.Theme, s, t.Shop.Unit))
}

// anyBending is an anvil of the day, all of which rest on the same bearings.
func (t *text) anyBending() *material.Bending {
	for _, k := range t.AtKnife().Turns {
		if k.Bending != nil {
			return k.Bending
		}
	}
	return nil
}

// worn are the metres in each column, as parts of the most in any: where a column has
// several bands, those of the most worn.
func worn(s draw.Scale, f *material.Face) []float64 {
	out := make([]float64, s.Width)
	for b, metres := range f.Metres {
		from, to := f.Span(b)
		for c := max(s.Column(plan.Length(from)), 0); c <= min(s.Column(plan.Length(to)-1), s.Width-1); c++ {
			out[c] = max(out[c], metres)
		}
	}
	return parts(out, f.Metres[f.Worst])
}

// FaceWords say in numbers how the day wears the face.
func FaceWords(d *pane.Shared, f *material.Face) string {
	from, to := f.Span(f.Worst)
	u, day := d.Shop.Unit, "The day"
	if !d.Present.Whole() {
		day = "The day, as far as it is planned,"
	}
	text := fmt.Sprintf("%s cuts most from %s to %s: %.0f m. On average the bands of %s with cuts have %.0f %% of that.",
		day, u.Number(plan.Length(from)), u.Show(plan.Length(to)), f.Metres[f.Worst], u.Show(plan.Length(f.Band)), 100*f.Evenness())
	if taken := d.AtKnife().Faced; taken != "" {
		text += " Here " + taken + "."
	}
	return text
}
