package ui

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"bide/plan"
)

// view draws the form in n lines of w cells: the open field first where there is no
// room for all.
func (f *form) view(d *desk, s size) []line {
	says, warns, _ := f.read(d)
	ink := faint
	if warns {
		ink = late
	}
	if f.said != "" {
		says, ink = f.said, late
	}
	if says == "" {
		says = f.fields[f.at].hint
	}
	var told []line
	for _, row := range d.wrap(says, max(s.w-2, 1)) {
		l := d.line()
		l.add(plain, " ")
		l.add(ink, row)
		told = append(told, l)
	}
	title := d.line()
	title.add(strong, " "+f.title)
	if s.h < len(f.fields)+len(told)+2 {
		return append([]line{f.row(d, f.at, s.w)}, told...)
	}
	out := []line{title}
	for _, n := range slices.Sorted(maps.Keys(f.places)) {
		l := d.line()
		l.add(good, fmt.Sprintf("  found: holder %d at %s", n, both(f.places[n], d.shop.Unit)))
		out = append(out, l)
	}
	for i := range f.fields {
		out = append(out, f.row(d, i, s.w))
	}
	out = append(out, d.line())
	out = append(out, told...)
	if n, wrong := f.number(d); wrong == "" {
		l := d.line()
		l.add(faint, " "+d.short(neighbours(d, n), s.w-2))
		out = append(out, l)
	}
	if len(f.places) > 0 {
		l := d.line()
		l.add(plain, " Enter without a number: plan again from this. Esc: as it was.")
		out = append(out, l)
	}
	if n, _ := f.number(d); n > 0 && s.h-len(out) >= 8 {
		out = append(out, d.line())
		out = append(out, f.picture(d, n, size{s.w, min(s.h-len(out), 10)})...)
	}
	return out
}

// picture is the beam around a holder: where it is thought to stand above, where the
// form tells that it does below.
func (f *form) picture(d *desk, number int, s size) []line {
	at, told := d.truth.stands.At, f.standing(d)
	m := &plan.Move{Holder: number, From: at[number-1], To: told[number-1]}
	sc := newScale(around(d, m), s.w, d.shop.Unit)
	pic := newPicture(d.look, s.w, s.h-2)
	fine := sc
	fine.cols *= pic.across()
	threads := standing(at, fine.column)
	for i := range threads {
		if threads[i].to = fine.column(told[i]); told[i] != at[i] {
			threads[i].class = moves
		}
	}
	threads[number-1].class = aimed
	pic.draw(threads)
	out := []line{numbers(d.look, sc, d.shop.Unit), named(d, m, sc)}
	for y := range s.h - 2 {
		out = append(out, pic.line(y))
	}
	return out
}

// row is the line of one field; the open one is marked and has a cursor.
func (f *form) row(d *desk, i, w int) line {
	l := d.line()
	open, in := i == f.at, f.fields[i]
	mark, ink := "  ", plain
	if open {
		mark, ink = d.cursor+" ", picked
	}
	l.add(picked, mark)
	l.left(faint, in.label, min(10, max(w/3, 0)))
	l.add(plain, " ")
	text := in.text
	for cells(d.safe(text)) > max(w-l.width-1, 0) && text != "" {
		text = string([]rune(text)[1:]) // what was typed last stays in sight
	}
	l.add(ink, text)
	if open {
		l.add(accent, "_")
	}
	hint := "  " + in.hint
	if open && f.offers {
		hint = "  Enter takes it, a digit begins another"
	}
	if (in.text == "" || open && f.offers) && l.width+cells(hint) <= w {
		l.add(faint, hint)
	}
	return l
}

// neighbours tells where the holders around one are thought to stand.
func neighbours(d *desk, number int) string {
	at := d.truth.stands.At
	var parts []string
	for n := max(number-2, 1); n <= min(number+2, len(at)); n++ {
		parts = append(parts, fmt.Sprintf("%d: %s", n, d.shop.Unit.Number(at[n-1])))
	}
	return "thought to stand (" + d.shop.Unit.String() + "): " + strings.Join(parts, "  ")
}
