package ui

import (
	"fmt"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
)

// movesPane lists the picked changeover's moves, in the order in which each can be
// made as it comes.
type movesPane struct{ draw.Size }

func (p *movesPane) SetSize(s draw.Size) { p.Size = s }
func (p *movesPane) Help() keys.Scope    { return keys.OnMoves }

// HandleKey picks a move, or another changeover.
func (p *movesPane) HandleKey(a keys.Action, d *desk) {
	page := max(p.list()-1, 1)
	switch a {
	case keys.Up:
		p.along(d, -1)
	case keys.Down:
		p.along(d, 1)
	case keys.PageUp:
		p.along(d, -page)
	case keys.PageDown:
		p.along(d, page)
	case keys.Top:
		p.along(d, -len(d.moves()))
	case keys.Bottom:
		p.along(d, len(d.moves()))
	case keys.Left:
		d.pick(d.turn - 1)
	case keys.Right:
		d.pick(d.turn + 1)
	}
}

// along picks the move n rows on.
func (p *movesPane) along(d *desk, n int) { d.pickMove(along(p.rows(d), d.move, n)) }

// detail is how many lines tell about the picked move and caution.
func (p *movesPane) detail() int { return max(min((p.H-2)/2, 6), 0) }

// list is how many moves are shown.
func (p *movesPane) list() int { return max(p.H-2-p.detail(), 0) }

// View draws the pane.
func (p *movesPane) View(d *desk, focused bool) []draw.Line {
	title := d.Line()
	moves := d.moves()
	if o := d.Outcome(d.turn); o != nil && len(o.Faults) == 0 {
		title.Add(draw.Faint, p.shown(d, len(moves)))
	}
	var body []draw.Line
	if len(moves) > 0 {
		columns := draw.ColumnsFor(moveColumns(d, moves), p.W)
		body = append(body, draw.Heads(d.Theme, columns))
		rows := p.rows(d)
		from := draw.Window(rowOfTurn(rows, d.move), len(rows), p.list())
		for _, n := range rows[from:min(from+p.list(), len(rows))] {
			body = append(body, draw.RowOf(d.Theme, columns, step{d, n, &moves[n], focused}))
		}
	} else {
		body = append(body, nothingMoves(d, p.W)...)
	}
	for len(body) < p.H-1-p.detail() {
		body = append(body, d.Line())
	}
	return draw.Box(d.Theme, "Moves", title, append(body[:max(p.H-1-p.detail(), 0)], p.about(d)...), p.Size, focused)
}

// shown tells how many moves there are, to which job, and which are in the list.
func (p *movesPane) shown(d *desk, n int) string {
	if f := &d.filters[theMoves]; f.On() {
		return f.Count(len(p.rows(d)), n) + "to " + d.job().ID
	}
	if some := draw.Range(draw.Window(d.move, n, p.list()), p.list(), n); some != "" {
		return draw.Fitting(p.W-len("-->Moves  "), some+" to "+d.job().ID, some)
	}
	return fmt.Sprintf("to %s: %s", d.job().ID, inOrder(n))
}

func inOrder(n int) string {
	switch n {
	case 0:
		return "no moves"
	case 1:
		return "1 move"
	}
	return fmt.Sprintf("%d in order", n)
}

// nothingMoves tells why there are no moves to list.
func nothingMoves(d *desk, w int) (out []draw.Line) {
	texts := []draw.Span{{Style: draw.Plain, Text: "No holder moves."}}
	switch o := d.Outcome(d.turn); {
	case d.job() == nil:
		texts[0].Text = "No job is waiting."
	case o == nil:
		texts[0] = draw.Span{Style: draw.Faint, Text: d.Pending + " being planned"}
	case len(o.Faults) > 0:
		texts = nil
		for _, f := range o.Faults {
			texts = append(texts, draw.Span{Style: draw.Late, Text: "x refused: " + f.Why(d.Shop.Unit)})
		}
	}
	for _, s := range texts {
		for _, text := range d.Wrap(s.Text, w-2) {
			l := d.Line()
			l.Add(draw.Plain, " ")
			l.Add(s.Style, text)
			out = append(out, l)
		}
	}
	return out
}

// about tells the picked move in full, in both units, and the caution below it.
func (p *movesPane) about(d *desk) []draw.Line {
	n := p.detail()
	var out []draw.Line
	tell := func(i draw.Style, text string, room int) {
		for _, row := range d.Wrap(text, p.W-2) {
			if room--; room < 0 {
				return
			}
			l := d.Line()
			l.Add(draw.Plain, " ")
			l.Add(i, row)
			out = append(out, l)
		}
	}
	warn := min(len(d.Wrap(caution.InShort(p.W), p.W-2)), n)
	if moves := d.moves(); d.move < len(moves) {
		tell(draw.Picked, sentence(&moves[d.move], d.Shop.Unit), n-warn)
	}
	for len(out) < n-warn {
		out = append(out, d.Line())
	}
	tell(draw.Faint, caution.InShort(p.W), warn)
	return out
}

// sentence is one move in words, with lengths in both units.
func sentence(m *plan.Move, u plan.Unit) string {
	o := words.Other(u)
	way := m.To - m.From
	why := ", " + m.Why.Text(u)
	if m.Why.Cause == plan.ToCut {
		why = " moves " + m.Why.Text(u)
	}
	return fmt.Sprintf("Holder %d%s: from %s to %s, %s to the %s (%s to %s)",
		m.Holder, why, u.Number(m.From), u.Show(m.To), u.Number(max(way, -way)), words.Towards(way),
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

func (s step) cursor() (draw.Style, string) {
	switch {
	case !s.picked():
		return draw.Plain, ""
	case s.focused:
		return draw.Picked, s.Theme.Cursor
	}
	return draw.Picked, s.CursorBy
}

// moveColumns are all columns of the list; lengths of one column are written alike.
func moveColumns(d *desk, moves []plan.Move) []draw.Column[step] {
	u := d.Shop.Unit
	var at, to, by []plan.Length
	for _, m := range moves {
		at, to, by = append(at, m.From, m.To), append(to, m.To), append(by, words.Between(m.From, m.To, u))
	}
	places, ways, others := words.NewRuler(u, "from", at...), words.NewRuler(u, "by", by...), words.NewRuler(words.Other(u), "to, in", to...)
	way := func(m *plan.Move) string { return ways.Signed(words.Between(m.From, m.To, u)) }
	wideWay := ways.Width
	for i := range moves {
		wideWay = max(wideWay, len(way(&moves[i])))
	}
	of := func(i draw.Style, text func(*plan.Move) string) func(step) (draw.Style, string) {
		return func(s step) (draw.Style, string) {
			if s.picked() {
				return draw.Picked, text(s.move)
			}
			return i, text(s.move)
		}
	}
	return []draw.Column[step]{
		{Width: 1, Left: true, Cell: step.cursor},
		{Head: "n", Width: 3, Rank: 3, Cell: func(s step) (draw.Style, string) { return draw.Faint, fmt.Sprint(s.n + 1) }},
		{Head: "holder", Width: 6, Cell: of(draw.Strong, func(m *plan.Move) string { return fmt.Sprint(m.Holder) })},
		{Head: "from", Width: places.Width, Rank: 1, Cell: of(draw.Plain, func(m *plan.Move) string { return places.Number(m.From) })},
		{Head: "to", Width: places.Width, Cell: of(draw.Strong, func(m *plan.Move) string { return places.Number(m.To) })},
		{Head: "by", Width: wideWay, Rank: 2, Cell: of(draw.Moved, way)},
		{Head: "side", Width: 5, Rank: 5, Left: true, Cell: of(draw.Faint, func(m *plan.Move) string { return words.Side(m.To - m.From) })},
		{Head: "to, " + words.Other(d.Shop.Unit).String(), Width: others.Width, Rank: 6, Cell: of(draw.Faint, func(m *plan.Move) string { return others.Number(m.To) })},
		{Head: "why", Width: 16, Rank: 4, Left: true, Flex: 60, Cell: of(draw.Plain, func(m *plan.Move) string { return m.Why.Text(d.Shop.Unit) })},
	}
}
