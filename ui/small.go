package ui

import (
	"fmt"

	"bide/plan"
)

// small is the screen below the size of the panes: the next step, and around it
// what there is room for. The last line names the keys, where there is more than one.
func small(d *desk, s size) []line {
	body := d.smallBody(s)
	out := make([]line, 0, s.h)
	for _, l := range body[:min(len(body), max(s.h-1, 1))] {
		out = append(out, l.fit(s.w))
	}
	for len(out) < s.h-1 {
		out = append(out, d.line().fit(s.w))
	}
	if s.h > 1 {
		out = append(out, footer(d.look, onSmall, s.w))
	}
	return out
}

// smallBody is all that a small screen may tell, cut at its beginning to what it
// needs most.
func (d *desk) smallBody(s size) []line {
	moves := d.moves()
	if d.move >= len(moves) {
		return append([]line{d.smallHead()}, nothingMoves(d, s.w+2)...)[min(1, max(3-s.h, 0)):]
	}
	m := &moves[d.move]
	if s.h <= 2 {
		return []line{d.shortest(m, s.w)}
	}
	body := append([]line{d.smallHead()}, d.inFull(m, s.w)...)
	if s.h == 3 {
		return body[1:]
	}
	if s.h < 8 {
		return body
	}
	body = append(body, d.smallTimes(), d.ruled("then", s.w))
	columns := columnsFor(moveColumns(d, moves), s.w)
	for n := d.move + 1; n < len(moves); n++ {
		body = append(body, rowOf(d.look, columns, step{d, n, &moves[n], false}))
	}
	return body
}

// smallHead tells which changeover, and which step of how many.
func (d *desk) smallHead() line {
	l := d.line()
	j := d.job()
	if j == nil {
		return l
	}
	if s := d.before(d.turn); s != nil && s.Job != "" {
		l.add(strong, s.Job)
	}
	l.add(strong, d.to+j.ID)
	if n := len(d.moves()); n > 0 {
		l.add(faint, fmt.Sprintf(" %d/%d", d.move+1, n))
	}
	return l
}

// smallTimes tells when the changeover and its run begin, and how long setup takes.
func (d *desk) smallTimes() line {
	step, day := &d.outcome(d.turn).step, d.shop.Day.Start
	l := d.line()
	l.add(faint, "setup ")
	l.add(plain, clock(step.SetupStart, day))
	l.add(faint, ", run ")
	l.add(plain, clock(step.RunStart, day))
	if step.Late > 0 {
		l.add(late, " !"+hours(step.Late)+" late")
	}
	return l
}

// shortest is a move on one line; where that is too long, its holder and new place.
func (d *desk) shortest(m *plan.Move, w int) (l line) {
	u := d.shop.Unit
	for _, gap := range []string{" ", ""} {
		l = d.line()
		l.add(picked, fmt.Sprint(m.Holder))
		l.add(faint, ":"+gap)
		l.add(plain, u.Number(m.From)+gap+d.to+gap)
		l.add(picked, u.Number(m.To))
		if l.width <= w {
			return l
		}
	}
	l = d.line()
	l.add(picked, fmt.Sprint(m.Holder)+d.to+u.Number(m.To))
	return l
}

// inFull is a move on three lines and more: holder, way, and why.
func (d *desk) inFull(m *plan.Move, w int) []line {
	u, way := d.shop.Unit, m.To-m.From
	by := ruler{unit: u}
	by.fineAs(way)
	holder, places := d.line(), d.line()
	holder.add(plain, "holder ")
	holder.add(picked, fmt.Sprint(m.Holder))
	holder.add(moved, " "+by.signed(way))
	if text := " to the " + towards(way); holder.width+cells(text) <= w {
		holder.add(faint, text)
	} else {
		holder.add(faint, " "+side(way))
	}
	if from := u.Number(m.From) + " "; cells(from+d.to+" "+u.Show(m.To)) <= w {
		places.add(plain, from)
	}
	places.add(plain, d.to+" ")
	places.add(picked, u.Show(m.To))
	out := []line{holder, places}
	for _, text := range d.wrap(m.Why.Text(u), w) {
		l := d.line()
		l.add(plain, text)
		out = append(out, l)
	}
	return out
}

// ruled is a rule with a name, over the whole width.
func (d *desk) ruled(name string, w int) line { return heading(d.look, name, d.line(), w, false) }

// smallQuestion asks whether to leave, on any screen.
func smallQuestion(k *look, s size) []line {
	texts := k.wrap("y quits: the order was changed and isn't kept. Any other key stays.", max(s.w, 1))
	out := make([]line, 0, s.h)
	for i := range s.h {
		l := k.line()
		if i < len(texts) {
			l.add(late, texts[i])
		}
		out = append(out, l.fit(s.w))
	}
	return out
}
