package sheet

import (
	"fmt"
	"strings"

	"bide/plan"
)

// theKnife is the page that says once what holds for many jobs: what is set in each,
// what is wrong with all of them, what to watch, and how the day wears the anvil.
func (t *text) theKnife() {
	k := t.atKnife()
	if len(k.set) == 0 {
		return
	}
	t.begin("THE KNIFE", "what is set, and what to watch", "")
	t.add(hang("", startingValues)...)
	t.space()
	t.grid(k.settings())
	if text := k.bendHow(); text != "" {
		t.para(hang("", text)...)
	}
	if shared := k.sharedWarnings(); len(shared) > 0 {
		t.para("LOOK OUT, in every job")
		for _, w := range shared {
			t.add(hang("  - ", w)...)
		}
	}
	t.theCautions(k)
	t.para("SOURCES " + sourcesHead)
	for _, line := range k.sources() {
		t.add(hang("  - ", line)...)
	}
	if t.options.Only == "" {
		t.wear()
	}
	if damaged := k.damaged(); len(damaged) > 0 {
		t.para(hang("", "DAMAGED BANDS of the anvil. "+damagedHead)...)
		for _, band := range damaged {
			t.add(hang("  - ", band)...)
		}
	}
}

// theCautions lists each caution once: those of any job, then those of some with the
// jobs that they are of.
func (t *text) theCautions(k atKnife) {
	every, some := k.cautions()
	t.para("CAUTIONS of every job here. Local codes and licensed people come first.")
	for _, c := range every {
		t.add(hang("  "+pad(c.About, 12), c.Text)...)
	}
	if len(some) > 0 {
		t.para("CAUTIONS of some, by their number above")
	}
	for _, c := range some {
		t.add(hang("  "+pad(c.About, 12), c.Text+" ("+c.Of+")")...)
	}
}

// wear draws the metres that the day cuts on each band of the anvil's face.
func (t *text) wear() {
	f := t.options.Knife.Face
	if f == nil || f.Worst < 0 {
		return
	}
	line, rail, u := newStrip(t.plan.Beam.Rail), t.plan.Beam.Rail, t.options.Unit
	most := f.Metres[f.Worst]
	for b, metres := range f.Metres {
		from, to := f.Span(b)
		for c := line.column(plan.Length(from)); c < len(line.marks) && (line.place(c) < plan.Length(to) || b == len(f.Metres)-1 && line.place(c) == plan.Length(to)); c++ {
			line.marks[c] = tenths(metres, most)
		}
	}
	t.para(
		fmt.Sprintf("THE ANVIL'S FACE: metres that the day cuts on it, in bands of %s", u.Show(plan.Length(f.Band))),
		apart("oper. "+u.Show(rail.From), u.Show(rail.To)+" drive"),
		"cut  "+strings.TrimRight(string(line.marks), " "))
	t.markDamaged()
	face := wornFace{t.facts}
	t.add(hang("     ", "0 to 9: tenths of the most, "+face.worn())...)
	t.para(hang("", face.bandsHead())...)
	t.bandTable(face)
}

// markDamaged draws where the anvil is damaged.
func (t *text) markDamaged() {
	line, rail, any := newStrip(t.plan.Beam.Rail), t.plan.Beam.Rail, false
	for _, s := range t.options.damaged() {
		if s.To >= rail.From && s.From <= rail.To {
			line.over(s, damageMark[0])
			any = true
		}
	}
	if any {
		t.add("bad  " + strings.TrimRight(string(line.marks), " "))
	}
}

// bandTable is the table of what is cut in each band of the face.
func (t *text) bandTable(face wornFace) {
	bands := face.bands()
	wide := len("metres")
	for _, b := range bands {
		wide = max(wide, len(b.Metres))
	}
	cells := make([]string, len(bands))
	for i, b := range bands {
		cells[i] = fmt.Sprintf("%s  %*s %1s", b.From, wide, b.Metres, b.Mark)
	}
	head := fmt.Sprintf("%*s  %*s  ", len(bands[0].From), "from", wide, "metres")
	heads, rows := sideBySide(head, cells)
	t.table(heads, rows, 0)
}

// bend draws below the picture of the beam how far the anvil bends.
func (t *text) bend(i int) {
	text := t.bends(i)
	if text == "" {
		return
	}
	k := t.options.turn(i)
	if k.Bending == nil {
		t.add(labelled("Anvil", text)...)
		return
	}
	b, bent := k.Bending, newStrip(t.plan.Beam.Rail)
	for c := range bent.marks {
		if at := inMM(bent.place(c)); at >= b.Anvil.FromMM && at <= b.Anvil.FromMM+b.Anvil.SpanMM {
			bent.marks[c] = tenths(b.At(at), b.MostMM)
		}
	}
	t.add("bend " + string(bent.marks))
	t.add(hang("     ", "0 to 9: tenths of the anvil's "+text)...)
}

// tenths is the digit that says how many tenths of the most a value is; nothing at
// all is a point.
func tenths(v, most float64) byte {
	if v <= 0 || most <= 0 {
		return '.'
	}
	return '0' + byte(min(int(10*v/most), 9))
}
