package ui

import (
	"fmt"

	"bide/plan"
)

// movesPane lists the picked changeover's moves, in the order in which each can be
// made as it comes.
type movesPane struct{ size }

func (p *movesPane) SetSize(s size) { p.size = s }
func (p *movesPane) Help() scope    { return onMoves }

// HandleKey picks a move, or another changeover.
func (p *movesPane) HandleKey(a action, d *desk) {
	page := max(p.list()-1, 1)
	switch a {
	case up:
		p.along(d, -1)
	case down:
		p.along(d, 1)
	case pageUp:
		p.along(d, -page)
	case pageDown:
		p.along(d, page)
	case top:
		p.along(d, -len(d.moves()))
	case bottom:
		p.along(d, len(d.moves()))
	case left:
		d.pick(d.turn - 1)
	case right:
		d.pick(d.turn + 1)
	}
}

// along picks the move n rows on.
func (p *movesPane) along(d *desk, n int) { d.pickMove(along(p.rows(d), d.move, n)) }

// caution comes before any move, in more or fewer words. It permits nothing.
func caution(w int) string {
	if w < 50 {
		return "Site rules first: stopped, locked out, air proved gone, lifted."
	}
	return "First, by local code and the site's procedure: stopped, locked out, air dumped and proved gone, holders lifted. No hand near one that travels."
}

// detail is how many lines tell about the picked move and caution.
func (p *movesPane) detail() int { return max(min((p.h-2)/2, 6), 0) }

// list is how many moves are shown.
func (p *movesPane) list() int { return max(p.h-2-p.detail(), 0) }

// View draws the pane.
func (p *movesPane) View(d *desk, focused bool) []line {
	title := d.line()
	moves := d.moves()
	if o := d.outcome(d.turn); o != nil && len(o.faults) == 0 {
		title.add(faint, p.shown(d, len(moves)))
	}
	var body []line
	if len(moves) > 0 {
		columns := columnsFor(moveColumns(d, moves), p.w)
		body = append(body, heads(d.look, columns))
		rows := p.rows(d)
		from := window(rowOfTurn(rows, d.move), len(rows), p.list())
		for _, n := range rows[from:min(from+p.list(), len(rows))] {
			body = append(body, rowOf(d.look, columns, step{d, n, &moves[n], focused}))
		}
	} else {
		body = append(body, nothingMoves(d, p.w)...)
	}
	for len(body) < p.h-1-p.detail() {
		body = append(body, d.line())
	}
	return box(d.look, "3 Moves", title, append(body[:max(p.h-1-p.detail(), 0)], p.about(d)...), p.size, focused)
}

// shown tells how many moves there are, to which job, and which are in the list.
func (p *movesPane) shown(d *desk, n int) string {
	if f := &d.filters[theMoves]; f.on() {
		return f.count(len(p.rows(d)), n) + "to " + d.job().ID
	}
	if some := some(window(d.move, n, p.list()), p.list(), n); some != "" {
		return some + " to " + d.job().ID
	}
	return fmt.Sprintf("to %s: %s", d.job().ID, inOrder(n))
}

func inOrder(n int) string {
	switch n {
	case 0:
		return "all bide"
	case 1:
		return "1 move"
	}
	return fmt.Sprintf("%d in order", n)
}

// nothingMoves tells why there are no moves to list.
func nothingMoves(d *desk, w int) (out []line) {
	texts := []span{{plain, "No holder moves: all bide."}}
	switch o := d.outcome(d.turn); {
	case d.job() == nil:
		texts[0].text = "No job is waiting."
	case o == nil:
		texts[0] = span{faint, d.pending + " being worked out"}
	case len(o.faults) > 0:
		texts = nil
		for _, f := range o.faults {
			texts = append(texts, span{late, "x refused: " + f.Why(d.shop.Unit)})
		}
	}
	for _, s := range texts {
		for _, text := range d.wrap(s.text, w-2) {
			l := d.line()
			l.add(plain, " ")
			l.add(s.ink, text)
			out = append(out, l)
		}
	}
	return out
}

// about tells the picked move in full, in both units, and the caution below it.
func (p *movesPane) about(d *desk) []line {
	n := p.detail()
	var out []line
	tell := func(i ink, text string, room int) {
		for _, row := range d.wrap(text, p.w-2) {
			if room--; room < 0 {
				return
			}
			l := d.line()
			l.add(plain, " ")
			l.add(i, row)
			out = append(out, l)
		}
	}
	warn := min(len(d.wrap(caution(p.w), p.w-2)), n)
	if moves := d.moves(); d.move < len(moves) {
		tell(picked, sentence(&moves[d.move], d.shop.Unit), n-warn)
	}
	for len(out) < n-warn {
		out = append(out, d.line())
	}
	tell(faint, caution(p.w), warn)
	return out
}

// sentence is one move in words, with lengths in both units.
func sentence(m *plan.Move, u plan.Unit) string {
	o := other(u)
	way := m.To - m.From
	return fmt.Sprintf("Holder %d %s: from %s to %s, %s to the %s (%s to %s)",
		m.Holder, m.Why.Text(u), u.Number(m.From), u.Show(m.To), u.Number(max(way, -way)), towards(way),
		o.Number(m.From), o.Show(m.To))
}

// step is one row of the list.
type step struct {
	*desk
	n       int
	move    *plan.Move
	focused bool
}

func (s step) picked() bool { return s.n == s.desk.move }

func (s step) cursor() (ink, string) {
	switch {
	case !s.picked():
		return plain, ""
	case s.focused:
		return picked, s.look.cursor
	}
	return picked, s.cursorBy
}

// moveColumns are all columns of the list; lengths of one column are written alike.
func moveColumns(d *desk, moves []plan.Move) []column[step] {
	places, ways, others := ruler{unit: d.shop.Unit}, ruler{unit: d.shop.Unit}, ruler{unit: other(d.shop.Unit)}
	for i := range moves {
		m := &moves[i]
		places.fineAs(m.From)
		places.fineAs(m.To)
		ways.fineAs(m.To - m.From)
		others.fineAs(m.To)
	}
	wide, wideWay, wideOther := len("from"), len("by"), len("to, in")
	for i := range moves {
		m := &moves[i]
		wide = max(wide, len(places.number(m.From)), len(places.number(m.To)))
		wideWay = max(wideWay, len(ways.signed(m.To-m.From)))
		wideOther = max(wideOther, len(others.number(m.To)))
	}
	of := func(i ink, text func(*plan.Move) string) func(step) (ink, string) {
		return func(s step) (ink, string) {
			if s.picked() {
				return picked, text(s.move)
			}
			return i, text(s.move)
		}
	}
	return []column[step]{
		{width: 1, left: true, cell: step.cursor},
		{head: "n", width: 3, rank: 3, cell: func(s step) (ink, string) { return faint, fmt.Sprint(s.n + 1) }},
		{head: "holder", width: 6, cell: of(strong, func(m *plan.Move) string { return fmt.Sprint(m.Holder) })},
		{head: "from", width: wide, rank: 1, cell: of(plain, func(m *plan.Move) string { return places.number(m.From) })},
		{head: "to", width: wide, cell: of(strong, func(m *plan.Move) string { return places.number(m.To) })},
		{head: "by", width: wideWay, rank: 2, cell: of(moved, func(m *plan.Move) string { return ways.signed(m.To - m.From) })},
		{head: "side", width: 5, rank: 5, left: true, cell: of(faint, func(m *plan.Move) string { return side(m.To - m.From) })},
		{head: "to, " + other(d.shop.Unit).String(), width: wideOther, rank: 6, cell: of(faint, func(m *plan.Move) string { return others.number(m.To) })},
		{head: "why", width: 16, rank: 4, left: true, flex: 60, cell: of(plain, func(m *plan.Move) string { return m.Why.Text(d.shop.Unit) })},
	}
}
