package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// ordering is one of the two orders that are compared.
type ordering struct {
	name   string
	jobs   []*plan.Job
	known  []*outcome
	totals plan.Totals
	done   int // jobs before it
}

func (s *ordering) whole() bool { return len(s.known) == len(s.jobs) }

// turnOf is a job's turn, by its id; -1 when the order hasn't got it.
func (s *ordering) turnOf(id string) int {
	return slices.IndexFunc(s.jobs, func(j *plan.Job) bool { return j.ID == id })
}

// step is what is planned for a job; nil when it isn't known or the job is refused.
func (s *ordering) step(id string) *plan.Step {
	if t := s.turnOf(id); t >= 0 && t < len(s.known) && len(s.known[t].faults) == 0 {
		return &s.known[t].step
	}
	return nil
}

// nth is a turn as people count it: from 1, with the jobs that are done before, and
// without those that the beam can't run; empty for one of these, "-" for no turn.
func (s *ordering) nth(turn int) string {
	refused := func(t int) bool { return t < len(s.known) && len(s.known[t].faults) > 0 }
	if turn < 0 {
		return "-"
	}
	if refused(turn) {
		return ""
	}
	n := s.done + 1
	for t := range turn {
		if !refused(t) {
			n++
		}
	}
	return fmt.Sprint(n)
}

// compare is the page of two orders side by side. An order that a search finds while it
// is open waits until the page is opened anew: no key is to change its meaning under
// one's hands.
type compare struct {
	d     *desk
	of    *offer // that waited when the page was opened; nil without one
	other int    // which order is on the left
	at    int    // job, by its turn on the right
}

// offered is the order that a search found and the page shows, to be accepted or
// discarded; nil where it shows none, or that one waits no more.
func (c *compare) offered() *offer {
	if c.of != c.d.offer {
		return nil
	}
	return c.of
}

// Help is where the keys work: there is something to accept, or not.
func (c *compare) Help() scope {
	if c.offered() != nil {
		return onOffer
	}
	return onCompare
}

func (c *compare) Fits(s size) bool { return s.w >= 60 && s.h >= 12 }

// sides are the orders to be compared: one of the left ones, and the right one, which is
// what was found where there is such an order.
func (d *desk) sides(o *offer) (left []ordering, right ordering) {
	listed := ordering{"the file's order, centred", d.listed.jobs, d.listed.known, d.listed.totals, d.history.now.done()}
	present := ordering{"this order", d.jobs(), d.present.known, d.present.totals, d.history.now.done()}
	if o == nil {
		return []ordering{listed}, present
	}
	found := ordering{"the order found", o.draft.jobs, slices.Clone(o.draft.given), o.totals, o.draft.done()}
	for t := len(found.known); t < len(found.jobs); t++ { // refused ones are behind
		fault := plan.Fault{Why: func(plan.Unit) string { return "refused" }}
		if turn := slices.Index(d.jobs(), found.jobs[t]); turn >= 0 && d.outcome(turn) != nil && len(d.outcome(turn).faults) > 0 {
			fault = d.outcome(turn).faults[0]
		}
		found.known = append(found.known, &outcome{faults: []plan.Fault{fault}})
	}
	return []ordering{present, listed}, found
}

// openCompare shows two orders side by side. One that was found for another day is
// fitted to that of now first.
func (m *model) openCompare() tea.Cmd {
	if m.offer != nil && !m.offer.ground.holds(m.desk) {
		return m.refit()
	}
	m.over = &compare{d: m.desk, of: m.offer}
	return nil
}

// HandleKey goes through the jobs, changes the order on the left, and accepts or
// discards what a search found.
func (c *compare) HandleKey(a action, m *model) tea.Cmd {
	found := c.offered()
	left, right := m.sides(found)
	page := max(m.h-10, 1)
	n := len(right.jobs)
	c.at += map[action]int{up: -1, down: 1, pageUp: -page, pageDown: page, top: -n, bottom: n}[a]
	c.at = max(0, min(c.at, n-1))
	switch a {
	case otherOrder:
		if c.other = (c.other + 1) % len(left); len(left) == 1 {
			m.say("there are only these two; a search (s) finds a third")
		}
	case choose:
		if found == nil {
			c.show(m, right)
			break
		}
		m.over = nil
		return m.accept()
	case discard:
		if found != nil {
			m.over = nil
			m.desk.discard()
		}
	case back:
		m.over = nil
		if m.offer != nil {
			m.say("the order found waits: v shows it, to accept or discard it")
		}
	}
	return nil
}

// show goes to the picked job in the panes.
func (c *compare) show(m *model, right ordering) {
	m.over = nil
	if c.at < len(right.jobs) {
		m.pick(c.at)
	}
}

// compared is one row: a job, in both orders.
type compared struct {
	*desk
	left, right *ordering
	turn        int
	job         *plan.Job
	on          bool
}

func (c compared) both() (a, b *plan.Step) { return c.left.step(c.job.ID), c.right.step(c.job.ID) }

// cell makes a cell of what one of the steps says.
func (c compared) cell(i ink, s *plan.Step, text func(*plan.Step) string) (ink, string) {
	if s == nil {
		return faint, "-"
	}
	return pick(c.on && i != late, i), text(s)
}

func lateText(s *plan.Step) string  { return lateness(s.Late) }
func setupText(s *plan.Step) string { return minutes(s.Setup.Total()) }
func movesText(s *plan.Step) string { return fmt.Sprint(s.Changeover.Repositions) }

// compareColumns are those of the jobs in two orders.
func compareColumns(d *desk) []column[compared] {
	left := func(i ink, text func(*plan.Step) string) func(compared) (ink, string) {
		return func(c compared) (ink, string) { a, _ := c.both(); return c.cell(i, a, text) }
	}
	right := func(i ink, text func(*plan.Step) string) func(compared) (ink, string) {
		return func(c compared) (ink, string) { _, b := c.both(); return c.cell(i, b, text) }
	}
	end := func(s *plan.Step) string { return d.at(s.RunEnd) }
	wide := max(d.lateWidth(), len("!00:00"))
	return []column[compared]{
		{width: 1, left: true, cell: func(c compared) (ink, string) {
			if c.on {
				return picked, c.desk.cursor
			}
			return plain, ""
		}},
		{head: "job", width: d.idWidth(), left: true, cell: func(c compared) (ink, string) { return pick(c.on, strong), c.job.ID }},
		{head: "turn", width: 4, cell: func(c compared) (ink, string) { return faint, c.left.nth(c.left.turnOf(c.job.ID)) }},
		{head: "min", width: 5, cell: left(plain, setupText)},
		{head: "mov", width: 4, cell: left(plain, movesText)},
		{head: "end", width: d.clockWidth(), rank: 1, cell: left(faint, end)},
		{head: "late", width: wide, left: true, cell: left(late, lateText)},
		{width: 1, left: true, cell: func(c compared) (ink, string) { return faint, c.desk.between }},
		{head: "turn", width: 4, cell: func(c compared) (ink, string) { return faint, c.right.nth(c.turn) }},
		{head: "min", width: 5, cell: right(strong, setupText)},
		{head: "mov", width: 4, cell: right(moved, movesText)},
		{head: "end", width: d.clockWidth(), rank: 1, cell: right(faint, end)},
		{head: "late", width: wide, left: true, cell: right(late, lateText)},
		{head: "+-min", width: 6, cell: func(c compared) (ink, string) {
			a, b := c.both()
			if a == nil || b == nil {
				return plain, ""
			}
			return c.difference(b.Setup.Total() - a.Setup.Total())
		}},
		{head: "+-mov", width: 5, rank: 2, cell: func(c compared) (ink, string) {
			a, b := c.both()
			if a == nil || b == nil {
				return plain, ""
			}
			n := b.Changeover.Repositions - a.Changeover.Repositions
			return worse(n), more(n)
		}},
		{head: "material", width: 10, rank: 3, left: true, flex: 20, cell: func(c compared) (ink, string) { return faint, c.job.Material }},
	}
}

// difference is what the right order takes longer, or shorter.
func (c compared) difference(d time.Duration) (ink, string) {
	text := sameOr(signedMinutes(d))
	if text == "=" {
		return faint, text
	}
	return worse(int(d)), text
}

// worse is the ink of a difference: more costs more.
func worse(by int) ink {
	switch {
	case by < 0:
		return good
	case by > 0:
		return moved
	}
	return faint
}
