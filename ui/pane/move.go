package pane

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
)

// NoMoves tells why there are no moves to list.
func NoMoves(d *Shared, w int) (out []draw.Line) {
	texts := []draw.Span{{Style: draw.Plain, Text: "No holder moves."}}
	switch o := d.Outcome(d.JobAt); {
	case d.Job() == nil:
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

// MoveSentence is one move in words, with lengths in both units.
func MoveSentence(m *plan.Move, u plan.Unit) string {
	o := words.Other(u)
	way := m.To - m.From
	verb := "moves "
	switch m.Why.Cause {
	case plan.NearCut, plan.OverWeb:
		verb = "is "
	case plan.MakesRoom, plan.MakesWay:
		verb = ""
	}
	return fmt.Sprintf("Holder %d %s: from %s to %s, %s to the %s (%s to %s)",
		m.Holder, verb+m.Why.Text(u), u.Number(m.From), u.Show(m.To), u.Number(max(way, -way)), words.Towards(way),
		o.Number(m.From), o.Show(m.To))
}

// MoveRow is one row of a list of moves.
type MoveRow struct {
	*Shared
	Index   int
	Move    *plan.Move
	Focused bool
}

func (s MoveRow) picked() bool { return s.Index == s.Shared.MoveAt }

func (s MoveRow) cursor() (draw.Style, string) { return s.RowCursor(s.picked(), s.Focused) }

// MoveColumns are all columns of the list; lengths of one column are written alike.
func MoveColumns(d *Shared, moves []plan.Move) []draw.Column[MoveRow] {
	u := d.Shop.Unit
	var at, to, by []plan.Length
	for _, m := range moves {
		at, to, by = append(at, m.From, m.To), append(to, m.To), append(by, words.Between(m.From, m.To, u))
	}
	positions, ways, others := words.NewRuler(u, "from", at...), words.NewRuler(u, "by", by...), words.NewRuler(words.Other(u), "to, in", to...)
	way := func(m *plan.Move) string { return ways.Signed(words.Between(m.From, m.To, u)) }
	wideWay := ways.Width
	for i := range moves {
		wideWay = max(wideWay, len(way(&moves[i])))
	}
	of := func(i draw.Style, text func(*plan.Move) string) func(MoveRow) (draw.Style, string) {
		return func(s MoveRow) (draw.Style, string) { return draw.Pick(s.picked(), i), text(s.Move) }
	}
	return []draw.Column[MoveRow]{
		{Width: 1, Left: true, Cell: MoveRow.cursor},
		{Head: "n", Width: 3, Rank: 3, Cell: func(s MoveRow) (draw.Style, string) { return draw.Faint, fmt.Sprint(s.Index + 1) }},
		{Head: "holder", Width: 6, Cell: of(draw.Strong, func(m *plan.Move) string { return fmt.Sprint(m.Holder) })},
		{Head: "from", Width: positions.Width, Rank: 1, Cell: of(draw.Plain, func(m *plan.Move) string { return positions.Number(m.From) })},
		{Head: "to", Width: positions.Width, Cell: of(draw.Strong, func(m *plan.Move) string { return positions.Number(m.To) })},
		{Head: "by", Width: wideWay, Rank: 2, Cell: of(draw.Moved, way)},
		{Head: "side", Width: 5, Rank: 5, Left: true, Cell: of(draw.Faint, func(m *plan.Move) string { return words.Side(m.To - m.From) })},
		{Head: "to, " + words.Other(d.Shop.Unit).String(), Width: others.Width, Rank: 6, Cell: of(draw.Faint, func(m *plan.Move) string { return others.Number(m.To) })},
		{Head: "why", Width: 16, Rank: 4, Left: true, Flex: 60, Cell: of(draw.Plain, func(m *plan.Move) string { return m.Why.Text(d.Shop.Unit) })},
	}
}

// MoveInShort is a move on one line; where that is too long, its holder and new position.
func MoveInShort(d *Shared, m *plan.Move, w int) (l draw.Line) {
	u := d.Shop.Unit
	for _, gap := range []string{" ", ""} {
		l = d.Line()
		l.Add(draw.Picked, fmt.Sprint(m.Holder))
		l.Add(draw.Faint, ":"+gap)
		l.Add(draw.Plain, u.Number(m.From)+gap+d.To+gap)
		l.Add(draw.Picked, u.Number(m.To))
		if l.Width <= w {
			return l
		}
	}
	l = d.Line()
	l.Add(draw.Picked, fmt.Sprint(m.Holder)+d.To+u.Number(m.To))
	return l
}

// MoveInFull is a move on three lines and more: holder, way, and why. The side that the way
// leads to is told in words, however little room there is.
func MoveInFull(d *Shared, m *plan.Move, w int) []draw.Line {
	u, way := d.Shop.Unit, m.To-m.From
	by := words.ExactRuler(u, way)
	holder, positions := d.Line(), d.Line()
	holder.Add(draw.Plain, "holder ")
	holder.Add(draw.Picked, fmt.Sprint(m.Holder))
	holder.Add(draw.Moved, " "+by.Signed(way))
	if text := draw.Fitting(w-holder.Width, " to the "+words.Towards(way), " "+words.Towards(way)); holder.Width+draw.CellWidth(text) <= w {
		holder.Add(draw.Faint, text)
		positions = positionsOf(d, m, w)
	} else {
		holder, positions = MoveInShort(d, m, w), d.Line()
		far, side := max(way, -way), strings.TrimSuffix(words.Towards(way), " side")
		positions.Add(draw.Moved, draw.Fitting(w, u.Show(far)+" to "+side+" side", u.Show(far)+" to "+side, u.Number(far)+" to "+side, u.Number(far)+" "+side))
	}
	out := []draw.Line{holder, positions}
	for _, text := range d.Wrap(m.Why.Text(u), w) {
		l := d.Line()
		l.Add(draw.Plain, text)
		out = append(out, l)
	}
	return out
}

// positionsOf are the position of a move now, where there is room, and its new one.
func positionsOf(d *Shared, m *plan.Move, w int) draw.Line {
	l, u := d.Line(), d.Shop.Unit
	if from := u.Number(m.From) + " "; draw.CellWidth(from+d.To+" "+u.Show(m.To)) <= w {
		l.Add(draw.Plain, from)
	}
	l.Add(draw.Plain, d.To+" ")
	l.Add(draw.Picked, draw.Fitting(w-l.Width, u.Show(m.To), u.Number(m.To)))
	return l
}
