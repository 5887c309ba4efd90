package ui

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
)

// The anvil under its blades, and how the day wears its face. Both have one scale, so
// that what stands below each other is at one place.

// anvilScale is the scale from bearing to bearing, or along the web area where no
// bearings are known.
func (t *settingsText) anvilScale(b *material.Bending) scale {
	view := t.shop.Beam.Web
	if b != nil {
		view.From = min(view.From, nm(b.Anvil.FromMM))
		view.To = max(view.To, nm(b.Anvil.FromMM+b.Anvil.SpanMM))
	}
	return newScale(view, max(t.w-2, 1), t.shop.Unit)
}

// nm is a place of a formula on the beam's scale.
func nm(mm float64) plan.Length { return plan.Length(mm * float64(plan.Millimetre)) }

// picture adds lines of a picture, one cell from the edge.
func (t *settingsText) picture(lines ...line) {
	for _, l := range lines {
		row := t.line()
		row.add(plain, " ")
		row.join(l)
		t.out = append(t.out, row)
	}
}

// anvil draws the load along the anvil and its bend.
func (t *settingsText) anvil(k *material.Turn) {
	t.chapter("The anvil under these blades", "")
	for _, d := range k.Damaged {
		t.entry(late, "!", 3, plain, "Damaged "+d.Told+".")
	}
	b := k.Bending
	if b == nil {
		t.para(plain, "Its bend isn't worked out: "+k.Unbent+".")
		return
	}
	for _, text := range bendWords(t.desk, b) {
		t.para(plain, text)
	}
	const loadRows, bendRows = 2, 4
	s := t.anvilScale(b)
	t.picture(numbers(t.look, s, t.shop.Unit))
	t.picture(bars(t.look, loads(s, b), loadRows)...)
	t.picture(t.roll(s, b))
	t.picture(curve(t.look, s.width, bendRows, func(x float64) float64 {
		at := (float64(s.origin) + x*float64(s.step)/float64(s.cols)) / float64(plan.Millimetre)
		if at < b.Anvil.FromMM || at > b.Anvil.FromMM+b.Anvil.SpanMM || b.MostMM <= 0 {
			return -1
		}
		return min(b.At(at)/b.MostMM, 1)
	})...)
}

// bendWords tell in numbers how an anvil bends.
func bendWords(d *desk, b *material.Bending) []string {
	sum := b.OperatorN + b.DriveN
	out := []string{
		fmt.Sprintf("%s press with %s in all; the bearings carry %s on the operator side and %s on the drive side.",
			count(len(b.Presses), "blade"), force(sum), force(b.OperatorN), force(b.DriveN)),
		fmt.Sprintf("It bends most at %s, by %.3f mm (%.4f in), without its own weight; %s.",
			d.shop.Unit.Show(rounded(b.MostAt)), b.MostMM, material.Inches(b.MostMM), d.atKnife().Rests),
	}
	if text := b.Doubt(); text != "" {
		out = append(out, strings.ToUpper(text[:1])+text[1:]+".")
	}
	return out
}

// rounded is a place to the millimetre.
func rounded(mm float64) plan.Length {
	return floor(nm(mm)+plan.Millimetre/2, plan.Millimetre) * plan.Millimetre
}

// loads are the forces in each column as parts of the largest of them.
func loads(s scale, b *material.Bending) []float64 {
	out, most := make([]float64, s.width), 0.0
	for _, p := range b.Presses {
		if c := s.column(nm(p.AtMM)); c >= 0 && c < len(out) {
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
func (t *settingsText) roll(s scale, b *material.Bending) line {
	from, to := s.column(nm(b.Anvil.FromMM)), s.column(nm(b.Anvil.FromMM+b.Anvil.SpanMM))
	cells := make([]span, s.width)
	for x := range cells {
		switch {
		case x == from || x == min(to, s.width-1):
			cells[x] = span{accent, t.bearing}
		case from < x && x < to:
			cells[x] = span{faint, t.rule}
		default:
			cells[x] = span{plain, " "}
		}
	}
	t.mark(s, cells)
	return runs(t.look, cells)
}

// mark puts the damaged bands of the anvil over the cells of a line, and reports whether
// it did.
func (t *settingsText) mark(s scale, cells []span) (any bool) {
	for _, bad := range t.shop.Beam.Bad {
		for x := max(s.column(bad.From), 0); x <= min(s.column(bad.To), s.width-1); x++ {
			cells[x], any = span{late, t.damaged}, true
		}
	}
	return any
}

// face draws the metres that the day cuts on each band of the anvil's face.
func (t *settingsText) face() {
	f := t.atKnife().Face
	if f == nil || f.Worst < 0 {
		return
	}
	t.chapter("The anvil's face over the day", "")
	t.para(plain, faceWords(t.desk, f))
	for _, d := range t.atKnife().Damaged {
		t.entry(late, "!", 3, plain, "Damaged "+d.Told+"; "+d.Worn+".")
	}
	const rows = 3
	s := t.anvilScale(t.anyBending())
	t.picture(bars(t.look, worn(s, f), rows)...)
	if cells := newLabels(s.width); t.mark(s, cells) {
		t.picture(runs(t.look, cells))
	}
	t.picture(numbers(t.look, s, t.shop.Unit))
}

// anyBending is an anvil of the day, all of which rest on the same bearings.
func (t *settingsText) anyBending() *material.Bending {
	for _, k := range t.atKnife().Turns {
		if k.Bending != nil {
			return k.Bending
		}
	}
	return nil
}

// worn are the metres in each column, as parts of the most in any: where a column has
// several bands, those of the most worn.
func worn(s scale, f *material.Face) []float64 {
	out := make([]float64, s.width)
	for b, metres := range f.Metres {
		from, to := f.Span(b)
		for c := max(s.column(plan.Length(from)), 0); c <= min(s.column(plan.Length(to)-1), s.width-1); c++ {
			out[c] = max(out[c], metres)
		}
	}
	return parts(out, f.Metres[f.Worst])
}

// faceWords tell in numbers how the day wears the face.
func faceWords(d *desk, f *material.Face) string {
	from, to := f.Span(f.Worst)
	u, day := d.shop.Unit, "The day"
	if !d.present.whole() {
		day = "The day, as far as it is worked out,"
	}
	text := fmt.Sprintf("%s cuts most from %s to %s: %.0f m. The bands of %s that are cut in have %.0f %% of that on average.",
		day, u.Number(plan.Length(from)), u.Show(plan.Length(to)), f.Metres[f.Worst], u.Show(plan.Length(f.Band)), 100*f.Evenness())
	if taken := d.atKnife().Faced; taken != "" {
		text += " Here " + taken + "."
	}
	return text
}
