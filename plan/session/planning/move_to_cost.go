package planning

import (
	"time"

	"bide/plan"
)

// Cost is what an index costs. An estimate is held against the day planned together: the
// day with it costs that and what moving it there seems to add, and is late no less than
// not at all.
func (m *MoveTo) Cost(index int) (c Cost, known bool) {
	now := m.costs[m.Was]
	if c, known = m.costs[index]; !known || c.Exact || !now.Exact {
		return c, known
	}
	c.LateBy = max(c.LateBy, -now.Totals.Late)
	c.Totals = now.Totals
	c.Totals.Setup += c.Setup
	c.Totals.Repositions += c.Repositions
	c.Totals.Late += c.LateBy
	return c, known
}

// Known is how many are estimated at least, Exact how many are known exactly.
func (m *MoveTo) Known() (known, exact int) {
	for _, c := range m.costs {
		if c.Exact {
			exact++
		}
	}
	return len(m.costs), exact
}

// Range is the least and the most setup that any known index adds, where it is now among
// them.
func (m *MoveTo) Range() (least, most time.Duration) {
	for _, c := range m.costs {
		least, most = min(least, c.Setup), max(most, c.Setup)
	}
	return least, most
}

// Out is what leaving the job out costs against moving it to where that costs c.
func (m *MoveTo) Out(c Cost) (out Cost) {
	out = m.out
	out.Setup -= c.Setup
	out.Repositions -= c.Repositions
	out.LateBy -= c.LateBy
	return out
}

// Best is the known index that costs least, the present one of equals (see plan.Difference); the
// picked one where none is known.
func (m *MoveTo) Best(picked int) int {
	if best := m.least(func(Cost) bool { return true }); best != none {
		return best
	}
	return picked
}

// least is the known index of some that costs least, the present one of equals.
func (m *MoveTo) least(of func(Cost) bool) int {
	best, least := none, Cost{}
	try := func(index int) {
		c, known := m.Cost(index)
		if known && of(c) && !m.Barred(index) && (best == none || c.Better(least.Difference, m.Aim)) {
			best, least = index, c
		}
	}
	try(m.Was)
	for index := range len(m.Rest) + 1 {
		try(index)
	}
	return best
}

// Apply is the order with the job at an index. A day that was planned together so is there
// at once.
func (m *MoveTo) Apply(index int) []*plan.Job {
	order := m.With(index)
	for _, d := range m.days {
		if d.index == index && !m.Stale() {
			m.forecast.Keep(order, d.alone, d.together)
		}
	}
	return order
}
