package planning

import (
	"time"

	"bide/plan"
)

// MoveCosts is what moving one job costs, as far as it is worked out.
type MoveCosts struct {
	Job       *plan.Job
	Rest      []*plan.Job // the others in their order
	Was       int         // where it is now
	aim       plan.Aim    // that the day is planned for
	Estimated bool        // all of them
	Improving int         // which is being planned together; below 0 none is

	costs map[int]Cost
	out   Cost // of leaving it out
}

// Cost is what an index costs against the day as it is now.
type Cost struct {
	plan.Difference
	Exact bool // else it is an estimate
}

// Barred reports whether nothing can be moved to an index: it is before the job that runs.
func (m *MoveCosts) Barred(index int) bool {
	return index < len(m.Rest) && m.Rest[index].State == plan.Running
}

// Cost is what an index costs. An estimate is held against the day planned together: the
// day with it costs that and what moving it there seems to add, and is late no less than
// not at all.
func (m *MoveCosts) Cost(index int) (c Cost, known bool) {
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
func (m *MoveCosts) Known() (known, exact int) {
	for _, c := range m.costs {
		if c.Exact {
			exact++
		}
	}
	return len(m.costs), exact
}

// Range is the least and the most setup that any known index adds, where it is now among
// them.
func (m *MoveCosts) Range() (least, most time.Duration) {
	for _, c := range m.costs {
		least, most = min(least, c.Setup), max(most, c.Setup)
	}
	return least, most
}

// Out is what leaving the job out costs against moving it to where that costs c.
func (m *MoveCosts) Out(c Cost) (out Cost) {
	out = m.out
	out.Setup -= c.Setup
	out.Repositions -= c.Repositions
	out.LateBy -= c.LateBy
	return out
}

// Best is the known index that costs least, the present one of equals (see plan.Difference); the
// picked one where none is known.
func (m *MoveCosts) Best(picked int) int {
	if best := m.least(func(Cost) bool { return true }); best != none {
		return best
	}
	return picked
}

// least is the known index of some that costs least, the present one of equals.
func (m *MoveCosts) least(of func(Cost) bool) int {
	best, least := none, Cost{}
	try := func(index int) {
		c, known := m.Cost(index)
		if known && of(c) && !m.Barred(index) && (best == none || c.Better(least.Difference, m.aim)) {
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
	order := m.with(index)
	for _, d := range m.days {
		if d.index == index && !m.Stale() {
			m.forecast.keep(order, d.alone, d.together)
		}
	}
	return order
}
