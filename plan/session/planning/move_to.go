package planning

import (
	"context"
	"slices"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/sequence"
)

// MoveTo works out what it costs to move one job to each number in the sequence. An index
// is how many of the other jobs come before it then.
//
// Each is worked out twice. First the jobs behind it are planned one by one, which is an
// estimate and soon there for all of them. Then the day with the job there is planned
// together, as it will be once the job is moved, and that is what it costs: the picked one
// first, whatever else was being planned, then those that seem to cost least, last the day
// without the job. Both run side by side, each with a planner of its own.
type MoveTo struct {
	MoveCosts
	forecast *Forecast
	start    *plan.Positions     // what all of it begins with
	planner  *changeover.Planner // of the estimates
	without  *sequence.Insertion // the day without the job; its turns are there after the first estimate
	now      *plan.DayPlan       // the day as it is, estimated like the others
	order    []int               // still to be estimated, the next first
	busy     bool                // one is being estimated

	days []Moved // of late
	ctx  context.Context
	end  context.CancelFunc // of all
	stop context.CancelFunc // of what is being planned together
}

// What stands for an index where none is meant.
const (
	none       = -1
	withoutJob = -2
)

// keptDays is how many days planned together are kept until the job is moved; of the
// others the costs alone.
const keptDays = 8

// Estimated is what comes of an estimate.
type Estimated struct {
	of    *MoveTo
	index int
	slip  plan.Difference
	first *firstEstimate // of the job where it is now; nil after that
	gone  bool           // it was given up
}

// firstEstimate is what all others are held against.
type firstEstimate struct {
	without *sequence.Insertion
	now     *plan.DayPlan
	out     plan.Difference
	planner *changeover.Planner
}

// Moved is the day with the job moved, one by one and planned together; without the
// latter where it was given up.
type Moved struct {
	of              *MoveTo
	index           int
	alone, together *plan.DayPlan
}

// MoveTo looks at moving the job at an index of the present order, which has so many jobs
// done before it.
func (f *Forecast) MoveTo(index, done int) *MoveTo {
	costs := MoveCosts{
		Job: f.Present.Jobs[index], Rest: slices.Delete(slices.Clone(f.Present.Jobs), index, index+1), Was: index,
		aim: f.Aim, Improving: none, costs: map[int]Cost{},
	}
	m := &MoveTo{MoveCosts: costs, forecast: f, start: f.Start.Positions, order: []int{index}}
	m.without = &sequence.Insertion{DayPlan: &plan.DayPlan{Beam: f.Beam, Start: m.start, Begins: f.Start.Clock, Done: done}, Job: m.Job}
	m.ctx, m.end = context.WithCancel(context.Background())
	for i := len(m.Rest); i >= 0; i-- { // from the last on: what comes soonest takes longest
		if i != index {
			m.order = append(m.order, i)
		}
	}
	return m
}

// Estimates are the costs of moving the job at an index by at most so many numbers, by estimates
// that are worked out at once.
func (f *Forecast) Estimates(index, done, near int) MoveCosts {
	m := f.MoveTo(index, done)
	m.order = slices.DeleteFunc(m.order, func(i int) bool { return max(i-m.Was, m.Was-i) > near })
	for w := m.estimate(); w != nil; w = m.estimate() {
		m.Take(w())
	}
	return m.MoveCosts
}

// with is the order with the job at an index.
func (m *MoveTo) with(index int) []*plan.Job {
	return slices.Insert(slices.Clone(m.Rest), index, m.Job)
}

// Stale reports whether the day begins with other positions now: holders were marked, or
// the shop read again.
func (m *MoveTo) Stale() bool { return m.start != m.forecast.Start.Positions }

// End gives up all that is being worked out.
func (m *MoveTo) End() {
	m.end()
	m.give()
}

// give gives up what is being planned together.
func (m *MoveTo) give() {
	if m.stop != nil {
		m.stop()
	}
}

// Next is what is to be worked out, when an index is picked: nothing, or one or two
// things side by side.
func (m *MoveTo) Next(picked int) (all []Work) {
	if w := m.estimate(); w != nil {
		all = append(all, w)
	}
	if w := m.improve(picked); w != nil {
		all = append(all, w)
	}
	return all
}

// estimate estimates the next index; nil when one is being estimated, or all are.
func (m *MoveTo) estimate() Work {
	if m.busy || len(m.order) == 0 {
		return nil
	}
	m.busy = true
	if m.now == nil {
		known := m.forecast.Trial(m.Rest).Known
		return func() any { return m.first(known) }
	}
	index := m.order[0]
	return func() any {
		return Estimated{of: m, index: index, slip: m.without.In(m.planner, index).Against(m.now)}
	}
}

// first plans the day without the job, one by one from what is known of it, and with the
// job where it is now.
func (m *MoveTo) first(known []*Outcome) Estimated {
	p, err := changeover.NewPlanner(m.without.Beam)
	if err != nil { // never: it was planned with before
		return Estimated{of: m, gone: true}
	}
	day := *m.without.DayPlan
	positions, clock := m.without.Start, m.without.Begins
	for i, j := range m.Rest {
		var t plan.Turn
		switch {
		case i < len(known):
			t, positions = known[i].Turn, known[i].Positions
		case m.ctx.Err() == nil:
			t, positions = p.Resume(positions, clock, j)
		default:
			return Estimated{of: m, gone: true}
		}
		if day.Turns = append(day.Turns, t); !t.Refused() {
			clock.At = t.Step.RunEnd
		}
	}
	day.Totals = plan.TotalsOf(day.Turns)
	s := &sequence.Insertion{DayPlan: &day, Job: m.Job}
	now := s.In(p, m.Was)
	return Estimated{of: m, index: m.Was, slip: now.Against(now), first: &firstEstimate{s, now, s.Against(now), p}}
}

// Take keeps what work for this came to; false when it was for another.
func (m *MoveTo) Take(result any) bool {
	switch r := result.(type) {
	case Estimated:
		if r.of == m {
			m.takeEstimate(r)
		}
		return r.of == m
	case Moved:
		if r.of == m {
			m.takeDay(r)
		}
		return r.of == m
	}
	return false
}

func (m *MoveTo) takeEstimate(e Estimated) {
	m.busy = false
	if e.gone {
		m.order = nil
		return
	}
	if f := e.first; f != nil {
		m.without, m.now, m.planner, m.out = f.without, f.now, f.planner, Cost{f.out, false}
	}
	m.order = m.order[1:]
	m.Estimated = len(m.order) == 0
	m.put(e.index, Cost{e.slip, false})
}

// takeDay keeps a day planned together; one that was given up brings nothing.
func (m *MoveTo) takeDay(d Moved) {
	if d.together == nil {
		return
	}
	if m.Improving == d.index {
		m.Improving, m.stop = none, nil
	}
	m.put(d.index, Cost{d.together.Against(m.forecast.day()), true})
	if d.index != withoutJob {
		m.days = append(m.days, d)
		m.days = slices.Delete(m.days, 0, max(len(m.days)-keptDays, 0))
	}
}

// put keeps what an index costs.
func (m *MoveTo) put(index int, c Cost) {
	if index == withoutJob {
		m.out = c
	} else if c.Exact || !m.costs[index].Exact {
		m.costs[index] = c
	}
}

// improve plans the next day together; nil when none is to be planned now. What is being
// planned makes way for the picked one.
func (m *MoveTo) improve(picked int) Work {
	f := m.forecast
	if m.now == nil || m.Stale() || !f.Present.Whole() {
		return nil
	}
	if now := f.day(); !m.costs[m.Was].Exact {
		now.Done = m.without.Done
		m.put(m.Was, Cost{now.Against(now), true})
	}
	next := m.next(picked)
	if next == none || m.Improving == next || m.Improving != none && next != picked {
		return nil
	}
	m.give()
	ctx, stop := context.WithCancel(m.ctx)
	m.Improving, m.stop = next, stop
	return func() any {
		defer stop()
		return m.together(ctx, next)
	}
}

// next is what is to be planned together next: the picked index, then the one that seems
// to cost least, once all are estimated, last the day without the job.
func (m *MoveTo) next(picked int) int {
	if !m.costs[picked].Exact && !m.Barred(picked) {
		return picked
	}
	if !m.Estimated {
		return none
	}
	best := m.least(func(c Cost) bool { return !c.Exact })
	if best == none && !m.out.Exact {
		return withoutJob
	}
	return best
}

// together is the day with the job at an index, or without it.
func (m *MoveTo) together(ctx context.Context, index int) Moved {
	p, err := changeover.NewPlanner(m.without.Beam)
	if err != nil { // never: it was planned with before
		return Moved{of: m, index: index}
	}
	d := Moved{of: m, index: index, alone: m.without.DayPlan}
	if index != withoutJob {
		d.alone = m.without.In(p, index)
	}
	d.together = m.forecast.Improve(ctx, d.alone, m.aim)
	if ctx.Err() != nil {
		return Moved{of: m, index: index}
	}
	if _, err := verified(d.together, nil, nil); err != nil {
		d.together = d.alone
	}
	return d
}
