package sheet

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
)

// moves is the numbered list of what to move, with a box to fill in for each.
func (t *text) moves(s *plan.Step) {
	c := &s.Changeover
	t.space()
	if len(c.Moves) == 0 {
		t.add(hang("", "MOVES: none. "+noMoves)...)
		return
	}
	m := newMoveTable(c.Moves, t.options)
	title := hang("", "MOVES: "+t.inOrder(c))
	if text := power(t.plan.Beam.Drive.Kind); text != "" {
		title = append(hang("", text), title...)
	}
	rows := make([][]string, len(c.Moves))
	for i, mv := range c.Moves {
		rows[i] = m.row(i+1, mv)
	}
	if len(title)+2+len(rows[0]) > t.room() {
		t.next()
	}
	t.add(append(title, "")...)
	t.table([]string{m.head()}, rows, t.group)
}

const noMoves = "Every holder is in position for this job."

// inOrder says how moves are to be made.
func (f *facts) inOrder(c *plan.Changeover) string {
	return fmt.Sprintf("%s, in this order. Each is clear of its neighbours when it moves; out of order it may not be. Lengths in %s.",
		words.Count(len(c.Moves), "holder"), unitWords[f.options.Unit])
}

var unitWords = [...]string{plan.Millimetres: "millimetres", plan.Inches: "inches"}

// moveTable is the columns of a list of moves.
type moveTable struct {
	unit         plan.Unit
	from, to, by words.Ruler
	other        words.Ruler // to, in the other unit
}

func newMoveTable(moves []plan.Move, o *Options) moveTable {
	var from, to, by []plan.Length
	for _, m := range moves {
		from, to, by = append(from, m.From), append(to, m.To), append(by, words.Between(m.From, m.To, o.Unit))
	}
	places := words.NewRuler(o.Unit, "from", append(append([]plan.Length{}, from...), to...)...)
	return moveTable{
		unit: o.Unit, from: places, to: places,
		by:    words.NewRuler(o.Unit, "by", by...),
		other: words.NewRuler(words.Other(o.Unit), "to, "+words.Other(o.Unit).String(), to...),
	}
}

func (m moveTable) head() string {
	return "[ ] step holder  " + m.from.Head("from") + "  " + m.to.Head("to") + "  " + m.by.Head("by") +
		" to side  " + m.other.Head("to, "+words.Other(m.unit).String()) + "  why"
}

// row is one move; what doesn't fit of its reason goes on below, from further left
// where that would take several lines.
func (m moveTable) row(step int, mv plan.Move) []string {
	by := words.Between(mv.From, mv.To, m.unit)
	label := fmt.Sprintf("[ ] %4d %6d  %s  %s %s %-7s  %s  ", step, mv.Holder,
		m.from.Place(mv.From), m.to.Place(mv.To), m.by.Way(by), words.Side(by), m.other.Place(mv.To))
	why := mv.Why.Text(m.unit)
	lines := wrap(why, width-runes(label))
	if len(lines) <= 2 {
		return hang(label, why)
	}
	return append([]string{label + lines[0]}, hang(strings.Repeat(" ", width/2-4), strings.Join(lines[1:], " "))...)
}

// result says what stands where when all moves are made.
func (t *text) result(s *plan.Step) {
	c := &s.Changeover
	isMoved, u := isMoved(c), t.options.Unit
	if len(s.Layout.Cuts) > 0 {
		t.section(fmt.Sprintf("CUTS: %d, each with its position (%s) and its holder, h; * was moved", len(s.Layout.Cuts), u))
		t.cuts(s, isMoved)
		if text := t.strips(s); text != "" {
			t.add(hang("", "STRIP ERROR "+text)...)
		}
	}
	for _, use := range []plan.Use{plan.Parked, plan.Resting} {
		numbers := used(c, use)
		if len(numbers) == 0 {
			continue
		}
		t.section(hang("", fmt.Sprintf("%s: %d, %s", strings.ToUpper(use.String())+idleWhere[use], len(numbers), words.Holders(numbers)))...)
		t.idle(c, numbers, isMoved)
	}
}

// idleWhere says where holders are that don't cut.
var idleWhere = map[plan.Use]string{plan.Parked: " outside the web", plan.Resting: " lifted over the web"}

// isMoved says of each holder whether the changeover moves it.
func isMoved(c *plan.Changeover) map[int]bool {
	out := map[int]bool{}
	for _, m := range c.Moves {
		out[m.Holder] = true
	}
	return out
}

// section begins a table with its title, never at the foot of a page.
func (t *text) section(title ...string) {
	if t.space(); t.room() < len(title)+3 {
		t.next()
	}
	t.mark = len(t.pages[len(t.pages)-1].lines)
	t.add(title...)
}

// cuts is the table of cuts, side by side.
func (t *text) cuts(s *plan.Step, isMoved map[int]bool) {
	c := newCutTable(s, t.options.Unit)
	head := "cut  " + c.places.Head("at")
	if c.beside {
		head += "  holder at  " + c.way.Head(" off by")
	}
	cells := make([]string, len(c.cuts))
	for i, k := range c.cuts {
		cell := fmt.Sprintf("%3d  %s", k.cut, c.places.Place(k.wanted))
		if c.beside {
			cell += fmt.Sprintf("  %9s  %s", c.places.Number(k.at), c.way.Way(k.off))
		}
		cells[i] = fmt.Sprintf("%s  %3d%s", cell, k.holder, star(isMoved[k.holder]))
	}
	heads, rows := sideBySide(head+"    h ", cells)
	t.table(heads, rows, 0)
}

// cutTable says where each cut is wanted, and by which holder it is made; where a
// holder serves its cut from beside it, also where each holder stands, and by how much
// that is off.
type cutTable struct {
	cuts        []cutHeld
	beside      bool
	places, way words.Ruler
}

// cutHeld is a cut and its holder.
type cutHeld struct {
	cut, holder     int
	wanted, at, off plan.Length
}

func newCutTable(s *plan.Step, u plan.Unit) cutTable {
	var t cutTable
	var off []plan.Length
	for i, h := range s.Changeover.Holders {
		if h.Use == plan.Cutting {
			wanted := s.Layout.Cuts[h.Cut-1]
			k := cutHeld{h.Cut, i + 1, wanted, h.At, words.Between(wanted, h.At, u)}
			t.cuts, off = append(t.cuts, k), append(off, k.off)
			t.beside = t.beside || k.off != 0
		}
	}
	t.places = words.NewRuler(u, "at", append(places(&s.Changeover), s.Layout.Cuts...)...)
	t.way = words.NewRuler(u, "off by", off...)
	return t
}

// idle is the table of where idle holders stand.
func (t *text) idle(c *plan.Changeover, numbers []int, isMoved map[int]bool) {
	r := words.NewRuler(t.options.Unit, "at", places(c)...)
	var cells []string
	for _, n := range numbers {
		cells = append(cells, fmt.Sprintf("%6d  %s%s", n, r.Place(c.Holders[n-1].At), star(isMoved[n])))
	}
	head, rows := sideBySide("holder  "+r.Head("at")+" ", cells)
	t.table(head, rows, 0)
}

func star(yes bool) string {
	if yes {
		return "*"
	}
	return " "
}

// places lists where all holders stand after the changeover.
func places(c *plan.Changeover) []plan.Length {
	out := make([]plan.Length, len(c.Holders))
	for i, h := range c.Holders {
		out[i] = h.At
	}
	return out
}

// strips says by how much a strip comes out other than planned because a holder
// serves its cut from beside it; empty where none does.
func (f *facts) strips(s *plan.Step) string {
	l, u := &s.Layout, f.options.Unit
	off := make([]plan.Length, len(l.Slits)+1) // of the slits' edges, from the operator side
	first := 1                                 // edge 0 is the web's own without trim
	if l.Trim != [2]plan.Length{} {
		first = 0
	}
	for _, h := range s.Changeover.Holders {
		if h.Use == plan.Cutting {
			off[first+h.Cut-1] = h.At - l.Cuts[h.Cut-1]
		}
	}
	var parts []string
	for i := range l.Slits {
		if wider := off[i+1] - off[i]; wider != 0 {
			sign := ""
			if wider > 0 {
				sign = "+"
			}
			parts = append(parts, fmt.Sprintf("slit %d %s%s", i+1, sign, u.Show(wider)))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "from holders that are not exactly on their cut: " + strings.Join(parts, ", ")
}
