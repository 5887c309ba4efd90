// Package compare is the page of two orders of the day side by side: what each costs in all,
// and what it costs for each job. It is given both orders and changes neither.
package compare

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
)

// Sequence is one of the two orders that are compared.
type Sequence struct {
	name string
	*planning.Order
	done int // jobs before it
}

// Number is a job's number in the sequence; empty for one that the beam can't run, "-"
// for one that isn't in the order.
func (s *Sequence) Number(index int) string {
	switch n := s.Order.Number(index, s.done); {
	case index < 0:
		return "-"
	case n == 0:
		return ""
	default:
		return fmt.Sprint(n)
	}
}

// table is two orders side by side.
type table struct {
	*draw.Theme
	left, right Sequence
	offer       *planning.Offer // that the right one is, to be accepted or discarded; nil where it is none
	proven      *plan.Floor     // proven by the search that runs; nil where none is yet
	at          int             // the picked job of the right one

	id, clock, late int                    // how wide ids, times and lateness are
	time            func(time.Time) string // a time as it is shown
	searchKey       string                 // that begins a search
}

// row is one row: a job, in both orders.
type row struct {
	*table
	index int
	job   *plan.Job
	on    bool
}

func (r row) both() (a, b *plan.Step) { return r.left.Step(r.job.ID), r.right.Step(r.job.ID) }

// cell makes a cell of what one of the steps says.
func (r row) cell(i draw.Style, s *plan.Step, text func(*plan.Step) string) (draw.Style, string) {
	if s == nil {
		return draw.Faint, "-"
	}
	return draw.Pick(r.on && i != draw.Late, i), text(s)
}

func lateText(s *plan.Step) string  { return words.Lateness(s.Late) }
func setupText(s *plan.Step) string { return words.Minutes(s.Setup.Total()) }
func movesText(s *plan.Step) string { return fmt.Sprint(s.Changeover.Repositions) }

// columns are those of the jobs in two orders.
func (p *table) columns() []draw.Column[row] {
	left := func(i draw.Style, text func(*plan.Step) string) func(row) (draw.Style, string) {
		return func(r row) (draw.Style, string) { a, _ := r.both(); return r.cell(i, a, text) }
	}
	right := func(i draw.Style, text func(*plan.Step) string) func(row) (draw.Style, string) {
		return func(r row) (draw.Style, string) { _, b := r.both(); return r.cell(i, b, text) }
	}
	end := func(s *plan.Step) string { return p.time(s.RunEnd) }
	wide := max(p.late, len("!00:00"))
	return []draw.Column[row]{
		{Width: 1, Left: true, Cell: func(r row) (draw.Style, string) { return r.RowCursor(r.on, true) }},
		{Head: "job", Width: p.id, Left: true, Cell: func(r row) (draw.Style, string) { return draw.Pick(r.on, draw.Strong), r.job.ID }},
		{Head: "no.", Width: 3, Cell: func(r row) (draw.Style, string) { return draw.Faint, r.left.Number(r.left.Index(r.job.ID)) }},
		{Head: "min", Width: 5, Cell: left(draw.Plain, setupText)},
		{Head: "moves", Width: 5, Cell: left(draw.Plain, movesText)},
		{Head: "end", Width: p.clock, Rank: 1, Cell: left(draw.Faint, end)},
		{Head: "late", Width: wide, Left: true, Cell: left(draw.Late, lateText)},
		{Width: 1, Left: true, Cell: func(r row) (draw.Style, string) { return draw.Faint, r.Between }},
		{Head: "no.", Width: 3, Cell: func(r row) (draw.Style, string) { return draw.Faint, r.right.Number(r.index) }},
		{Head: "min", Width: 5, Cell: right(draw.Strong, setupText)},
		{Head: "moves", Width: 5, Cell: right(draw.Moved, movesText)},
		{Head: "end", Width: p.clock, Rank: 1, Cell: right(draw.Faint, end)},
		{Head: "late", Width: wide, Left: true, Cell: right(draw.Late, lateText)},
		{Head: "+-min", Width: 6, Cell: func(r row) (draw.Style, string) {
			a, b := r.both()
			if a == nil || b == nil {
				return draw.Plain, ""
			}
			return r.difference(b.Setup.Total() - a.Setup.Total())
		}},
		{Head: "moves", Width: 5, Rank: 2, Cell: func(r row) (draw.Style, string) {
			a, b := r.both()
			if a == nil || b == nil {
				return draw.Plain, ""
			}
			n := b.Changeover.Repositions - a.Changeover.Repositions
			return worse(n), words.Change(n)
		}},
		{Head: "material", Width: 10, Rank: 3, Left: true, Flex: 20, Cell: func(r row) (draw.Style, string) { return draw.Faint, r.job.Material }},
	}
}

// difference is what the right order takes longer, or shorter.
func (r row) difference(d time.Duration) (draw.Style, string) {
	text := words.SameOr(words.SignedMinutes(d))
	if text == "=" {
		return draw.Faint, text
	}
	return worse(int(d)), text
}

// worse is the ink of a difference: more costs more.
func worse(by int) draw.Style {
	switch {
	case by < 0:
		return draw.Good
	case by > 0:
		return draw.Moved
	}
	return draw.Faint
}
