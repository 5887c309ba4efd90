package ui

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
)

// step shows one move: its holder and new place in large figures, the same in full
// and in both units, why it moves and what it waits for, the picture of the beam
// around it, and what comes then.
func (w *walk) step(d *desk, s size) []line {
	move := w.move(d)
	if s.h <= 1 {
		return []line{d.shortest(move, s.w)}
	}
	out := w.figures(d, move, s)
	if len(out) == 0 || s.w < 36 {
		out = d.inFull(move, s.w)
		if text := w.waits(d, move); text != "" {
			out = append(out[:min(2, len(out))], append(w.texts(d, s.w+2, span{late, text}), out[min(2, len(out)):]...)...)
		} else if text := w.swap(d, move, s.w-1); text != "" {
			out = slices.Insert(out, min(2, len(out)), w.texts(d, s.w+2, span{strong, text})...)
		}
		return out
	}
	out = append(out, w.facts(d, move, s.w)...)
	waits, swap, why := w.waits(d, move), w.swap(d, move, s.w-2), span{plain, whyOf(move, d.shop.Unit)}
	for _, t := range []span{{late, waits}, {strong, swap}, why} { // what matters most first
		if t.text != "" {
			out = append(out, w.texts(d, s.w, t)...)
		}
	}
	if text := w.frees(d, move); waits == "" && text != "" {
		out = append(out, w.texts(d, s.w, span{faint, text})...)
	}
	if rest := s.h - len(out); rest >= 7 {
		then := w.then(d, s.w, max(1, rest/4))
		out = append(out, w.picture(d, move, size{s.w, rest - len(then)})...)
		return append(out, then...)
	}
	return append(out, w.then(d, s.w, max(s.h-len(out), 0))...)
}

// whyOf tells why a holder moves, or where to.
func whyOf(m *plan.Move, u plan.Unit) string {
	format := "Why: holder %d %s"
	if m.Why.Cause == plan.GoesToCut { // that tells where to
		format = "Holder %d %s"
	}
	return fmt.Sprintf(format, m.Holder, m.Why.Text(u))
}

// figures are the holder's number and its new place, as large as there is room for;
// none where there is too little.
func (w *walk) figures(d *desk, m *plan.Move, s size) (out []line) {
	arrow := ">"
	if m.To < m.From {
		arrow = "<"
	}
	parts := []span{{picked, fmt.Sprint(m.Holder)}, {moved, arrow}, {picked, d.shop.Unit.Number(m.To)}}
	whole := parts[0].text + " " + arrow + " " + parts[2].text
	high := max(s.h*2/5, 0)
	if s.h >= 9 {
		high = max(high, faceRows)
	}
	g, fits := magnify(whole, size{s.w - 3, high})
	if !fits {
		return nil
	}
	if s.h >= 14 {
		l := d.line()
		l.add(faint, " holder")
		l.to(1 + g.wide(parts[0].text+" "+arrow+" ") + g.across)
		l.add(faint, "to, "+d.shop.Unit.String())
		if look := w.look; look > 0 {
			l.add(late, fmt.Sprintf("   looking ahead: %s after the next", count(look, "move")))
		}
		out = append(out, l)
	}
	rows := make([]line, g.high())
	for y := range rows {
		rows[y] = d.line()
		rows[y].add(plain, " ")
	}
	gap := g.wide(" ") + 2*g.across
	for i, p := range parts {
		for y, text := range g.rows(p.text, d.block) {
			if i > 0 {
				rows[y].add(plain, blanks(gap))
			}
			rows[y].add(p.ink, text)
		}
	}
	out = append(out, rows...)
	if s.h >= 18 {
		out = append(out, d.line())
	}
	return out
}

// facts are from, to and by in both units, and the side that the way leads to: where
// there is no room for both, in the shop's unit and with the side.
func (w *walk) facts(d *desk, m *plan.Move, width int) (out []line) {
	u, o := d.shop.Unit, other(d.shop.Unit)
	way := m.To - m.From
	ours, theirs := ruler{unit: u}, ruler{unit: o}
	for _, x := range []plan.Length{m.From, m.To, way} {
		ours.fineAs(x)
		theirs.fineAs(x)
	}
	row := func(label string, i ink, a, b, more string) (short, whole line) {
		l := d.line()
		l.left(faint, " "+label, 7)
		l.right(i, a, 11)
		l.add(faint, " "+u.String())
		short, whole = d.line(), d.line()
		short.join(l)
		whole.join(l)
		whole.right(plain, b, 12)
		whole.add(faint, " "+o.String())
		if more != "" {
			short.add(i, "   "+more)
			whole.add(i, "   "+more)
		}
		return short, whole
	}
	_, from := row("from", plain, ours.number(m.From), theirs.number(m.From), "")
	_, to := row("to", picked, ours.number(m.To), theirs.number(m.To), w.fraction(d, m.To))
	if to.width > width {
		_, to = row("to", picked, ours.number(m.To), theirs.number(m.To), "")
	}
	side := strings.ToUpper(towards(way))
	_, by := row("by", moved, ours.signed(way), theirs.signed(way), "to the "+side)
	if by.width > width {
		by, _ = row("by", moved, ours.signed(way), theirs.signed(way), side)
	}
	return []line{from, to, by}
}

// fraction is a place as a rule in inches shows it, where it does.
func (w *walk) fraction(d *desk, at plan.Length) string {
	if text, ok := at.Fraction(); ok && strings.Contains(text, "/") {
		return text + " in"
	}
	return ""
}

// waits tells which holder is in the way of a move.
func (w *walk) waits(d *desk, m *plan.Move) string {
	if n := d.forecast.beam.Blocks(d.truth.stands.At, *m); n != 0 {
		return fmt.Sprintf("! waits for holder %d, which is in its way", n)
	}
	return ""
}

// frees tells which holders wait for a move.
func (w *walk) frees(d *desk, m *plan.Move) string {
	for _, n := range w.ahead(d) {
		if d.forecast.beam.Blocks(d.truth.stands.At, n) == m.Holder {
			return fmt.Sprintf("Its way is clear. Holder %d waits for it.", n.Holder)
		}
	}
	return "Its way is clear."
}

// then lists what comes after the move looked at, in n lines.
func (w *walk) then(d *desk, width, n int) (out []line) {
	ahead := w.ahead(d)
	u := d.shop.Unit
	for k := min(w.look, len(ahead)-1) + 1; k < len(ahead) && len(out) < n; k++ {
		m := &ahead[k]
		l := d.line()
		l.left(faint, map[bool]string{true: " then"}[len(out) == 0], 6)
		l.right(strong, fmt.Sprint(m.Holder), 4)
		l.right(plain, u.Number(m.From), 10)
		l.add(faint, " "+d.to)
		l.right(plain, u.Number(m.To), 10)
		l.add(faint, " "+u.String())
		l.add(faint, "  "+d.short(m.Why.Text(u), max(width-l.width-3, 0)))
		out = append(out, l)
	}
	if len(out) == 0 && n > 0 {
		l := d.line()
		l.add(faint, " then nothing: this is the last move")
		out = append(out, l)
	}
	return out
}

// picture is the beam around a move: where holders stand now above,
// where they are to stand below.
func (w *walk) picture(d *desk, m *plan.Move, s size) []line {
	c := w.o.step.Changeover
	c.From = d.truth.stands.At
	sc := newScale(around(d, m), s.w, d.shop.Unit)
	pic := newPicture(d.look, s.w, max(s.h-3, 0))
	fine := sc
	fine.cols *= pic.across()
	pic.draw(threads(&c, m.Holder, fine.column))
	out := []line{numbers(d.look, sc, d.shop.Unit), named(d, m, sc)}
	for y := range max(s.h-3, 0) {
		out = append(out, pic.line(y))
	}
	return append(out, web(d.look, sc, &w.o.step.Layout))
}

// around is what of the beam is shown around a move: its way, and neighbours on both
// sides.
func around(d *desk, m *plan.Move) plan.Span {
	b := d.shop.Beam
	all := plan.Span{From: min(b.Rail.From, b.Web.From), To: max(b.Rail.To, b.Web.To)}
	side := 6 * b.Pitch()
	from, to := min(m.From, m.To)-side, max(m.From, m.To)+side
	if least := 20 * b.Pitch(); to-from < least {
		mid := (from + to) / 2
		from, to = mid-least/2, mid+least/2
	}
	return plan.Span{From: max(from, all.From), To: min(to, all.To)}
}

// named names the moved holder where it stands, then its neighbours as there is room.
func named(d *desk, m *plan.Move, s scale) line {
	l := newLabels(s.width)
	at := d.truth.stands.At
	l.put(s.column(at[m.Holder-1]), picked, d.aim+fmt.Sprint(m.Holder))
	for far := 1; far < len(at); far++ {
		for _, n := range []int{m.Holder - far, m.Holder + far} {
			if n >= 1 && n <= len(at) {
				c := d.forecast.beam.Holders[n-1]
				l.put(s.column(at[n-1]), map[bool]ink{true: faint, false: late}[c == plan.Good], fmt.Sprint(n)+letters[c])
			}
		}
	}
	return runs(d.look, l)
}
