package sheet

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
)

// moveSheet is the numbered list of moves.
type moveSheet struct {
	Title string // that each page of it repeats
	Unit  string
	Other string
	Rows  []moveRow
}

// moveRow is one move; lengths with as many decimals as the others of their column.
type moveRow struct {
	Step, Holder                   int
	From, To, By, Side, Other, Why string
}

func newMoveSheet(f *facts, i int) *moveSheet {
	c, o := &f.steps[i].Changeover, f.options
	m := newMoveTable(c.Moves, o)
	out := &moveSheet{Title: fmt.Sprintf("Moves of changeover %d, %s", i+1, f.whole(i)), Unit: o.Unit.String(), Other: words.Other(o.Unit).String()}
	for k, mv := range c.Moves {
		by := words.Between(mv.From, mv.To, o.Unit)
		out.Rows = append(out.Rows, moveRow{
			k + 1, mv.Holder, m.from.Number(mv.From), m.to.Number(mv.To), m.by.Signed(by), words.Side(by),
			m.other.Number(mv.To), mv.Why.Text(o.Unit),
		})
	}
	return out
}

// mostRows is how many rows stand below each other before a table goes on beside itself.
const mostRows = 20

// beside cuts a long table into some that stand side by side, four in a line.
func (t sheetTable) beside(noun string, first func(row int) string) (out []sheetTable) {
	const across, few = 4, 6
	n := min(max((len(t.Rows)+across-1)/across, few), mostRows)
	for from := 0; from < len(t.Rows); from += n {
		to := min(from+n, len(t.Rows))
		caption := noun + " " + first(from)
		if to > from+1 {
			caption = noun + "s " + first(from) + " to " + first(to-1)
		}
		out = append(out, sheetTable{caption, t.Heads, t.Rows[from:to]})
	}
	return out
}

// cutSheets are the cuts with their holders; a star stands by those that were moved.
func (f *facts) cutSheets(s *plan.Step) []sheetTable {
	c, moved, u := newCutTable(s, f.options.Unit), isMoved(&s.Changeover), f.options.Unit.String()
	t := sheetTable{Heads: []tableHead{{"Cut", "n"}, {"Position, " + u, "n"}}}
	if c.beside {
		t.Heads = append(t.Heads, tableHead{"Holder at", "n"}, tableHead{"Off by", "n"})
	}
	t.Heads = append(t.Heads, tableHead{"Holder", "n"})
	for _, k := range c.cuts {
		row := []string{fmt.Sprint(k.cut), c.places.Number(k.wanted)}
		if c.beside {
			row = append(row, c.places.Number(k.at), c.way.Signed(k.off))
		}
		t.Rows = append(t.Rows, append(row, starred(k.holder, moved)))
	}
	return t.beside("Cut", func(row int) string { return t.Rows[row][0] })
}

// bandSheets are the metres cut in each band of the anvil's face.
func (f wornFace) bandSheets() []sheetTable {
	t := sheetTable{Heads: []tableHead{{"From, " + f.options.Unit.String(), "n"}, {"Metres", "n"}}}
	for _, b := range f.bands() {
		t.Rows = append(t.Rows, []string{strings.TrimSpace(b.From), strings.TrimSpace(b.Metres + " " + b.Mark)})
	}
	return t.beside("Band", func(row int) string { return t.Rows[row][0] })
}

// starred is a holder's number, with a star where it was moved.
func starred(holder int, moved map[int]bool) string {
	return strings.TrimSpace(fmt.Sprint(holder) + star(moved[holder]))
}

// idleSheet is where the holders in one idle use stand.
type idleSheet struct {
	Title  string
	Tables []sheetTable
}

var idleNames = map[plan.Use]string{plan.Parked: "Parked", plan.Resting: "Resting"}

func (f *facts) idleSheets(s *plan.Step) (out []idleSheet) {
	c := &s.Changeover
	moved, r := isMoved(c), words.NewRuler(f.options.Unit, "", places(c)...)
	for _, use := range []plan.Use{plan.Parked, plan.Resting} {
		numbers := used(c, use)
		if len(numbers) == 0 {
			continue
		}
		t := sheetTable{Heads: []tableHead{{"Holder", "n"}, {"Position, " + f.options.Unit.String(), "n"}}}
		for _, n := range numbers {
			t.Rows = append(t.Rows, []string{fmt.Sprint(n) + star(moved[n]), r.Number(c.Holders[n-1].At)})
		}
		out = append(out, idleSheet{
			fmt.Sprintf("%s%s: %d, %s", idleNames[use], idleWhere[use], len(numbers), words.Holders(numbers)),
			t.beside("Holder", func(row int) string { return fmt.Sprint(numbers[row]) }),
		})
	}
	return out
}
