package ui

import (
	"fmt"
	"strings"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// small is the screen below the size of the panes: the next step, and around it
// what there is room for. The last line names the keys, where there is more than one,
// or tells that a search runs.
func small(d *desk, s size) []line {
	below := d.smallBelow(s)
	room := max(s.h-len(below), 1)
	body := d.smallBody(size{s.w, room + min(s.h-1, 1)})
	out := make([]line, 0, s.h)
	for _, l := range body[:min(len(body), room)] {
		out = append(out, l.fit(s.w))
	}
	for len(out) < room {
		out = append(out, d.line().fit(s.w))
	}
	text, brief, ink := d.told(), d.news.brief, strong
	if text == "" {
		text, brief = d.outdated()
		ink = late
	}
	if text = fitted(text, brief, s); text != "" && s.h >= 2 {
		rows := d.rows(ink, text, s.w, room)
		if s.h < 8 { // what is first matters least: the changeover's name
			copy(out, rows)
		} else {
			copy(out[room-len(rows):], rows)
		}
	}
	return append(out, below...)
}

// tooSmall says that a key works on a larger screen alone, if there it does. That a job
// runs can be told on a small one, and so be taken back there.
func (m *model) tooSmall(key string) tea.Cmd {
	for in := scope(1); in < scopes; in <<= 1 {
		a := m.actionOf(key, in)
		if a == undo && m.history.now.ran != nil {
			m.putAway()
			return m.undo()
		}
		if in&panes != 0 && a != nothing {
			m.say("%s works from %dx%d on: make the window larger", shownKey(key, m.ascii), leastWidth, leastHeight)
			m.news.brief = fmt.Sprintf("%s: from %dx%d on", shownKey(key, m.ascii), leastWidth, leastHeight)
			return nil
		}
	}
	return nil
}

// smallBelow are the last lines: the caution, and the keys.
func (d *desk) smallBelow(s size) (out []line) {
	if s.h < 2 {
		return nil
	}
	if o := d.outcome(d.turn); s.h >= 5 && o != nil && len(o.faults) == 0 {
		l := d.line()
		l.add(late, smallCaution(s.w))
		out = append(out, l.fit(s.w))
	}
	if d.search.cancel != nil {
		return append(out, d.smallSearching().fit(s.w))
	}
	return append(out, footer(d.look, d.keyTable, onSmall, s.w))
}

// smallSearching is in the place of the keys while a search runs.
func (d *desk) smallSearching() line {
	l := d.line()
	l.add(accent, "Esc")
	l.add(faint, " stops")
	l.add(strong, fmt.Sprintf(" search %.0f %%", 100*d.search.share()))
	return l
}

// smallCaution is the caution in as many words as there is room for.
func smallCaution(w int) string {
	for _, text := range []string{caution(w), "Site rules! locked out? air off? lifted?", "locked out? air off? lifted?", "locked? air? lifted?"} {
		if cells(text) <= w {
			return text
		}
	}
	return "locked?"
}

// smallBody is all that a small screen may tell, cut at its beginning to what it
// needs most.
func (d *desk) smallBody(s size) []line {
	moves := d.moves()
	if !d.present.whole() { // what is known so far is not to be set up by
		l := d.line()
		l.add(faint, "planning "+d.pending)
		return append([]line{d.smallHead(s.w)}, l)[min(1, max(3-s.h, 0)):]
	}
	if d.move >= len(moves) {
		return append([]line{d.smallHead(s.w)}, nothingMoves(d, s.w)...)[min(1, max(3-s.h, 0)):]
	}
	m := &moves[d.move]
	if s.h <= 2 {
		return []line{d.shortest(m, s.w)}
	}
	body := append([]line{d.smallHead(s.w)}, d.inFull(m, s.w)...)
	if s.h == 3 {
		return body[1:]
	}
	if s.h < 8 {
		return body
	}
	body = append(body, d.smallTimes())
	then := "then"
	if left, room := len(moves)-d.move-1, s.h-2-len(body); left > room && room > 0 {
		then += " " + some(d.move+1, room, len(moves))
	}
	body = append(body, d.ruled(then, s.w))
	columns := columnsFor(moveColumns(d, moves), s.w)
	for n := d.move + 1; n < len(moves); n++ {
		body = append(body, rowOf(d.look, columns, step{d, n, &moves[n], false}))
	}
	return body
}

// smallHead tells which changeover, which step of how many, and an invented day.
func (d *desk) smallHead(w int) line {
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
	if text := "  DEMO"; d.demo && l.width+cells(text) <= w {
		l.add(late, text)
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

// inFull is a move on three lines and more: holder, way, and why. The side that the way
// leads to is told in words, however little room there is.
func (d *desk) inFull(m *plan.Move, w int) []line {
	u, way := d.shop.Unit, m.To-m.From
	by := ruler{unit: u}
	by.fineAs(way)
	holder, places := d.line(), d.line()
	holder.add(plain, "holder ")
	holder.add(picked, fmt.Sprint(m.Holder))
	holder.add(moved, " "+by.signed(way))
	if text := fitting(w-holder.width, " to the "+towards(way), " "+towards(way)); holder.width+cells(text) <= w {
		holder.add(faint, text)
		places = d.places(m, w)
	} else {
		holder, places = d.shortest(m, w), d.line()
		far, side := max(way, -way), strings.TrimSuffix(towards(way), " side")
		places.add(moved, fitting(w, u.Show(far)+" to "+side+" side", u.Show(far)+" to "+side, u.Number(far)+" to "+side, u.Number(far)+" "+side))
	}
	out := []line{holder, places}
	for _, text := range d.wrap(m.Why.Text(u), w) {
		l := d.line()
		l.add(plain, text)
		out = append(out, l)
	}
	return out
}

// places are a move's place now, where there is room, and its new one.
func (d *desk) places(m *plan.Move, w int) line {
	l, u := d.line(), d.shop.Unit
	if from := u.Number(m.From) + " "; cells(from+d.to+" "+u.Show(m.To)) <= w {
		l.add(plain, from)
	}
	l.add(plain, d.to+" ")
	l.add(picked, fitting(w-l.width, u.Show(m.To), u.Number(m.To)))
	return l
}

// ruled is a rule with a name, over the whole width.
func (d *desk) ruled(name string, w int) line { return heading(d.look, name, d.line(), w, false) }

// smallQuestion asks whether to leave, on any screen.
func smallQuestion(k *look, asks string, s size) []line {
	texts := k.wrap("y quits, any other key stays. "+asks, max(s.w, 1))
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
