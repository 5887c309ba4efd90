package ui

import (
	"context"
	"slices"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// lift is a job lifted out of the day: what it costs to drop it into each gap is
// worked out in the background, at first sight and then settled (see lift_work.go).
type lift struct {
	job   *plan.Job
	rest  []*plan.Job // the others in their order
	was   int         // the gap that it came from
	gap   int         // picked: it would come before rest[gap]
	aim   plan.Aim    // that the day is planned for
	costs map[int]gapCost
	out   gapCost // of leaving it out
	seen  bool    // all gaps at first sight

	start   *plan.Standing // what all of it is worked out from
	without *plan.Slipping // the day without the job; nil until it is there
	cancel  context.CancelFunc
	tells   chan seenGap

	settling int                // gap of the steps being settled, withoutJob, noGap
	stop     context.CancelFunc // of that
	days     []*settledGap      // of late
}

// gapCost is what a gap costs against the day as it is now.
type gapCost struct {
	plan.Slip
	settled bool // it is exactly what the day costs then; else about that
}

func (l *lift) Help() keys.Scope      { return keys.OnMoveTo }
func (l *lift) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 10 }

// lift takes the picked job up.
func (m *model) lift() tea.Cmd {
	j := m.job()
	switch {
	case j == nil:
		m.say("no job is picked")
		return nil
	case j.State == plan.Running:
		m.say("%s is running: it stays where it is", j.ID)
		return nil
	}
	l := m.lifted(m.turn)
	m.over = l
	return l.begin(m)
}

// lifted is the job of a turn lifted out of the day, nothing worked out.
func (d *session) lifted(turn int) *lift {
	l := &lift{job: d.jobs()[turn], was: turn, gap: turn, aim: d.forecast.Aim, costs: map[int]gapCost{}, start: d.forecast.Start.Standing, settling: noGap}
	l.rest = slices.Delete(slices.Clone(d.jobs()), turn, turn+1)
	return l
}

// with is the order with the job in a gap.
func (l *lift) with(gap int) []*plan.Job { return slices.Insert(slices.Clone(l.rest), gap, l.job) }

// barred reports whether nothing can be dropped into a gap: it is before the job that
// runs.
func (l *lift) barred(gap int) bool { return gap < len(l.rest) && l.rest[gap].State == plan.Running }

// HandleKey picks a gap, drops the job there or puts it back.
func (l *lift) HandleKey(a keys.Action, m *model) tea.Cmd {
	l.gap = l.list(m.pageSize()).Step(a)
	switch a {
	case keys.Cheapest:
		l.gap = l.best()
	case keys.Choose:
		l.drop(m)
	case keys.Back:
		l.end(m)
		m.say("%s is back where it was", l.job.ID)
	}
	return nil
}

func (l *lift) end(m *model) {
	l.giveUp()
	m.over = nil
}

// drop puts the job into the picked gap. A day that was settled with it there is there
// at once.
func (l *lift) drop(m *model) {
	if l.barred(l.gap) {
		m.say("%s is running: nothing can come before it", l.rest[l.gap].ID)
		return
	}
	l.end(m)
	if l.gap == l.was {
		m.say("%s is back where it was", l.job.ID)
		return
	}
	order := l.with(l.gap)
	if d := l.day(l.gap); d != nil && l.start == m.forecast.Start.Standing {
		m.forecast.Keep(order, d.alone, d.settled)
	}
	next := m.history.now.ordered(order)
	next.about, next.did = l.job.ID, ""
	m.desk.do(next)
}

// best is the known gap that costs least, the present one of equals: see plan.Slip.
func (l *lift) best() int {
	best := l.gap
	found := false
	for _, gap := range l.byPlace() {
		c, known := l.cost(gap)
		if least, _ := l.cost(best); known && !l.barred(gap) && (!found || c.Better(least.Slip, l.aim)) {
			best, found = gap, true
		}
	}
	return best
}

// cost is what a gap costs. One that isn't settled is told against the settled day: the
// day with it costs about that and what the gap seems to add, and is late no less than
// not at all.
func (l *lift) cost(gap int) (c gapCost, known bool) {
	now := l.costs[l.was]
	if c, known = l.costs[gap]; !known || c.settled || !now.settled {
		return c, known
	}
	c.LateBy = max(c.LateBy, -now.Totals.Late)
	c.Totals = now.Totals
	c.Totals.Setup += c.Setup
	c.Totals.Repositions += c.Repositions
	c.Totals.Late += c.LateBy
	return c, known
}

// byPlace are all gaps, the one that the job came from first.
func (l *lift) byPlace() []int {
	order := []int{l.was}
	for gap := range len(l.rest) + 1 {
		order = append(order, gap)
	}
	return order
}
