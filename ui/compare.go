package ui

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// sequence is one of the two orders that are compared.
type sequence struct {
	name string
	*planning.Order
	done int // jobs before it
}

// number is a job's number in the sequence; empty for one that the beam can't run, "-"
// for one that isn't in the order.
func (s *sequence) number(index int) string {
	switch n := s.Number(index, s.done); {
	case index < 0:
		return "-"
	case n == 0:
		return ""
	default:
		return fmt.Sprint(n)
	}
}

// compare is the page of two orders side by side. An order that a search finds while it
// is open waits until the page is opened anew: no key is to change its meaning under
// one's hands.
type compare struct {
	d     *desk
	of    *planning.Offer // that waited when the page was opened; nil without one
	other int             // which order is on the left
	at    int             // job, by its turn on the right
}

// offered is the order that a search found and the page shows, to be accepted or
// discarded; nil where it shows none, or that one waits no more.
func (c *compare) offered() *planning.Offer {
	if c.of != c.d.Offer {
		return nil
	}
	return c.of
}

// Help is where the keys work: there is something to accept, or not.
func (c *compare) Help() keys.Scope {
	if c.offered() != nil {
		return keys.OnOffer
	}
	return keys.OnCompare
}

func (c *compare) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 12 }

// sides are the orders to be compared: one of the left ones, and the right one, which is
// what was found where there is such an order.
func (d *desk) sides(o *planning.Offer) (left []sequence, right sequence) {
	done := d.History.Now.Done()
	listed, present := sequence{"as listed, centred", &d.Forecast.Listed, done}, sequence{"this order", &d.Forecast.Present, done}
	if o == nil {
		return []sequence{listed}, present
	}
	return []sequence{present, listed}, sequence{"the order found", &o.Order, done}
}

// openCompare shows two orders side by side. One that was found for another day is
// fitted to that of now first.
func (m *model) openCompare() tea.Cmd {
	if m.Offer != nil && !m.Offer.Inputs.Same(m.Inputs()) {
		m.Refit()
		return nil
	}
	m.over = &compare{d: m.desk, of: m.Offer}
	return nil
}

// HandleKey goes through the jobs, changes the order on the left, and accepts or
// discards what a search found.
func (c *compare) HandleKey(a keys.Action, m *model) tea.Cmd {
	found := c.offered()
	left, right := m.sides(found)
	c.at = c.list(m.pageSize(), len(right.Jobs)).Step(a)
	switch a {
	case keys.OtherOrder:
		if c.other = (c.other + 1) % len(left); len(left) == 1 {
			m.Say("there are only these two; a search (s) finds a third")
		}
	case keys.Choose:
		if found == nil {
			c.show(m, right)
			break
		}
		m.over = nil
		m.Accept()
	case keys.Discard:
		if found != nil {
			m.over = nil
			m.desk.Discard()
		}
	case keys.Back:
		m.over = nil
		if m.Offer != nil {
			m.Say("the order found is kept: v shows it, to accept or discard")
		}
	}
	return nil
}

// show goes to the picked job in the panes.
func (c *compare) show(m *model, right sequence) {
	m.over = nil
	if c.at < len(right.Jobs) {
		m.pick(c.at)
	}
}

// compared is one row: a job, in both orders.
type compared struct {
	*desk
	left, right *sequence
	turn        int
	job         *plan.Job
	on          bool
}

func (c compared) both() (a, b *plan.Step) { return c.left.Step(c.job.ID), c.right.Step(c.job.ID) }

// cell makes a cell of what one of the steps says.
func (c compared) cell(i draw.Style, s *plan.Step, text func(*plan.Step) string) (draw.Style, string) {
	if s == nil {
		return draw.Faint, "-"
	}
	return draw.Pick(c.on && i != draw.Late, i), text(s)
}

func lateText(s *plan.Step) string  { return words.Lateness(s.Late) }
func setupText(s *plan.Step) string { return words.Minutes(s.Setup.Total()) }
func movesText(s *plan.Step) string { return fmt.Sprint(s.Changeover.Repositions) }

// compareColumns are those of the jobs in two orders.
func compareColumns(d *desk) []draw.Column[compared] {
	left := func(i draw.Style, text func(*plan.Step) string) func(compared) (draw.Style, string) {
		return func(c compared) (draw.Style, string) { a, _ := c.both(); return c.cell(i, a, text) }
	}
	right := func(i draw.Style, text func(*plan.Step) string) func(compared) (draw.Style, string) {
		return func(c compared) (draw.Style, string) { _, b := c.both(); return c.cell(i, b, text) }
	}
	end := func(s *plan.Step) string { return d.Clock(s.RunEnd) }
	wide := max(d.lateWidth(), len("!00:00"))
	return []draw.Column[compared]{
		{Width: 1, Left: true, Cell: func(c compared) (draw.Style, string) {
			if c.on {
				return draw.Picked, c.desk.Cursor
			}
			return draw.Plain, ""
		}},
		{Head: "job", Width: d.idWidth(), Left: true, Cell: func(c compared) (draw.Style, string) { return draw.Pick(c.on, draw.Strong), c.job.ID }},
		{Head: "no.", Width: 3, Cell: func(c compared) (draw.Style, string) { return draw.Faint, c.left.number(c.left.Index(c.job.ID)) }},
		{Head: "min", Width: 5, Cell: left(draw.Plain, setupText)},
		{Head: "moves", Width: 5, Cell: left(draw.Plain, movesText)},
		{Head: "end", Width: d.clockWidth(), Rank: 1, Cell: left(draw.Faint, end)},
		{Head: "late", Width: wide, Left: true, Cell: left(draw.Late, lateText)},
		{Width: 1, Left: true, Cell: func(c compared) (draw.Style, string) { return draw.Faint, c.desk.Between }},
		{Head: "no.", Width: 3, Cell: func(c compared) (draw.Style, string) { return draw.Faint, c.right.number(c.turn) }},
		{Head: "min", Width: 5, Cell: right(draw.Strong, setupText)},
		{Head: "moves", Width: 5, Cell: right(draw.Moved, movesText)},
		{Head: "end", Width: d.clockWidth(), Rank: 1, Cell: right(draw.Faint, end)},
		{Head: "late", Width: wide, Left: true, Cell: right(draw.Late, lateText)},
		{Head: "+-min", Width: 6, Cell: func(c compared) (draw.Style, string) {
			a, b := c.both()
			if a == nil || b == nil {
				return draw.Plain, ""
			}
			return c.difference(b.Setup.Total() - a.Setup.Total())
		}},
		{Head: "moves", Width: 5, Rank: 2, Cell: func(c compared) (draw.Style, string) {
			a, b := c.both()
			if a == nil || b == nil {
				return draw.Plain, ""
			}
			n := b.Changeover.Repositions - a.Changeover.Repositions
			return worse(n), words.Change(n)
		}},
		{Head: "material", Width: 10, Rank: 3, Left: true, Flex: 20, Cell: func(c compared) (draw.Style, string) { return draw.Faint, c.job.Material }},
	}
}

// difference is what the right order takes longer, or shorter.
func (c compared) difference(d time.Duration) (draw.Style, string) {
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
