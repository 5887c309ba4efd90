package ui

import (
	"context"
	"slices"

	"bide/plan"
	"bide/plan/session/planning"

	tea "github.com/charmbracelet/bubbletea"
)

// A lifted job's gaps are worked out twice. At first sight the jobs behind a gap are
// planned one by one, which is about what the day costs, and soon there for all gaps.
// Then each gap's day is settled, as it will be once the job is dropped, which is
// exactly what it costs: the picked gap first, whatever else was being settled, then
// those that seemed to cost least, last the day without the job. Both run side by side, each with a planner of its
// own; keys wait for neither.

// seenGap comes for each gap at first sight, the first time with the day
// without the job. The last has done set.
type seenGap struct {
	of      *lift
	without *plan.Slipping
	gap     int // of the steps
	slip    plan.Slip
	done    bool
}

// settledGap comes back from the background: the day with the job in a gap of the
// steps, one by one and settled. It is empty when it was given up.
type settledGap struct {
	of             *lift
	gap            int
	alone, settled *plan.DayPlan
}

// What stands for a gap where none is meant.
const (
	noGap      = -1
	withoutJob = -2 // the day without the job
)

// keptDays is how many settled days are kept until the job is dropped; of the others
// the costs alone.
const keptDays = 8

// begin is the command that works out all gaps at first sight.
func (l *lift) begin(m *model) tea.Cmd {
	ctx, cancel := context.WithCancel(context.Background())
	l.cancel = cancel
	l.tells = make(chan seenGap, len(l.rest)+4) // room for all: nobody waits for a reader
	s, known := l.unplanned(m.desk)
	work := func() tea.Msg {
		defer close(l.tells)
		if p, err := plan.NewPlanner(s.Beam); err == nil && l.leaveOut(ctx, p, s, known) {
			l.sight(ctx, p, s, len(l.rest), func(g seenGap) { l.tells <- g })
		}
		return nil
	}
	return tea.Batch(work, l.listen())
}

// unplanned is the day that the job is slipped into, nothing of it planned, and what is
// known of its jobs.
func (l *lift) unplanned(d *desk) (*plan.Slipping, []*planning.Outcome) {
	day := &plan.DayPlan{Beam: d.forecast.Beam, Start: l.start, Done: d.history.now.done()}
	return &plan.Slipping{DayPlan: day, Clock: d.forecast.Start.Clock, Job: l.job}, d.forecast.Trial(l.rest).Known
}

// listen waits for the next gap's cost.
func (l *lift) listen() tea.Cmd {
	return func() tea.Msg {
		if s, more := <-l.tells; more {
			return s
		}
		return seenGap{of: l, done: true}
	}
}

// leaveOut plans the day without the job, one by one from what is known of it; false
// when it is given up.
func (l *lift) leaveOut(ctx context.Context, p *plan.Planner, s *plan.Slipping, known []*planning.Outcome) bool {
	stands, clock := s.Start, s.Clock
	for i, j := range l.rest {
		var t plan.Turn
		after := stands
		switch {
		case i < len(known):
			t, after = known[i].Turn(j), known[i].Standing
		case ctx.Err() == nil:
			t, after = p.Resume(stands, clock, j)
		default:
			return false
		}
		if s.Turns = append(s.Turns, t); !t.Refused() {
			stands, clock = after, t.Step.RunEnd
		}
	}
	s.Totals = plan.Sum(s.Turns)
	return true
}

// sight tells what each gap costs at first sight, up to so many on either side of the
// one that the job came from: that one first, then from the last on, since what comes
// soonest costs most to reckon.
func (l *lift) sight(ctx context.Context, p *plan.Planner, s *plan.Slipping, near int, tell func(seenGap)) {
	was, now := l.was, s.In(p, l.was)
	tell(seenGap{of: l, without: s, gap: withoutJob, slip: s.Against(now)})
	tell(seenGap{of: l, without: s, gap: was, slip: now.Against(now)})
	for gap := min(was+near, len(s.Turns)); gap >= max(was-near, 0) && ctx.Err() == nil; gap-- {
		if gap != was {
			tell(seenGap{of: l, without: s, gap: gap, slip: s.In(p, gap).Against(now)})
		}
	}
}

// seen takes a gap's cost at first sight to the lift that asked for it.
func (m *model) seen(s seenGap) tea.Cmd {
	l := s.of
	switch {
	case m.over != overlay(l):
		return nil
	case s.done:
		l.seen = true
		return nil
	}
	l.take(s)
	return l.listen()
}

// take keeps a gap's cost at first sight.
func (l *lift) take(s seenGap) {
	if l.without == nil {
		l.without = s.without
	}
	l.put(s.gap, gapCost{s.slip, false})
}

// put keeps what a gap costs.
func (l *lift) put(gap int, c gapCost) {
	if gap == withoutJob {
		l.out = c
		return
	}
	if c.settled || !l.costs[gap].settled {
		l.costs[gap] = c
	}
}

// refine is the command that settles the next gap; nil when none is to be settled now.
// What is being settled makes way for the picked gap.
func (m *model) refine() tea.Cmd {
	l, up := m.over.(*lift)
	switch {
	case !up:
		return nil
	case l.start != m.forecast.Start.Standing: // holders were marked, or the shop read again, meanwhile
		return m.liftAgain(l)
	case l.without == nil || m.forecast.Alone || !m.forecast.Present.Whole():
		return nil
	}
	if now := m.forecast.Day(); !l.costs[l.was].settled {
		now.Done = l.without.Done
		l.put(l.was, gapCost{now.Against(now), true})
	}
	next := l.next()
	if next == noGap || l.settling == next || l.settling != noGap && next != l.gap {
		return nil
	}
	if l.settling != noGap {
		l.stop()
	}
	return l.settle(next)
}

// liftAgain lifts the same job out of a day that begins otherwise now. Where it can't be
// lifted any more it is let go, which is said.
func (m *model) liftAgain(l *lift) tea.Cmd {
	l.giveUp()
	turn := slices.IndexFunc(m.jobs(), func(j *plan.Job) bool { return j.ID == l.job.ID && j.State != plan.Running })
	if turn < 0 {
		m.over = nil
		m.mention(l.job.ID + " doesn't wait for its turn any more, and is let go")
		return nil
	}
	m.pick(turn)
	again := m.lifted(turn)
	if l.gap != l.was {
		again.gap = min(l.gap, len(again.rest))
	}
	m.over = again
	return again.begin(m)
}

// giveUp ends all that is worked out.
func (l *lift) giveUp() {
	l.cancel()
	if l.settling != noGap {
		l.stop()
	}
}

// next is the gap to be settled next: the picked one, then the one that
// seems to cost least, once all are seen, last the day without the job.
func (l *lift) next() int {
	if !l.costs[l.gap].settled && !l.barred(l.gap) {
		return l.gap
	}
	if !l.seen {
		return noGap
	}
	best := noGap
	for _, gap := range l.byPlace() {
		c, known := l.cost(gap)
		if least, _ := l.cost(max(best, 0)); known && !c.settled && !l.barred(gap) && (best < 0 || c.Better(least.Slip, l.aim)) {
			best = gap
		}
	}
	switch {
	case best >= 0:
		return best
	case !l.out.settled:
		return withoutJob
	}
	return noGap
}

// settle is the command that settles the day with the job in a gap.
func (l *lift) settle(gap int) tea.Cmd {
	ctx, stop := context.WithCancel(context.Background())
	l.settling, l.stop = gap, stop
	return func() tea.Msg {
		defer stop()
		p, err := plan.NewPlanner(l.without.Beam)
		if err != nil { // never: it was planned with before
			return settledGap{of: l, gap: gap}
		}
		alone, settled := l.together(ctx, p, gap, l.aim)
		if settled == nil {
			return settledGap{of: l, gap: gap}
		}
		if _, err := planning.Verified(settled, nil); err != nil {
			settled = alone
		}
		return settledGap{l, gap, alone, settled}
	}
}

// together is the day with the job in a gap, or without it; one by one, and settled: nil
// when it is given up.
func (l *lift) together(ctx context.Context, p *plan.Planner, gap int, aim plan.Aim) (alone, settled *plan.DayPlan) {
	if gap != withoutJob {
		return l.without.Settled(ctx, p, gap, aim)
	}
	alone = l.without.DayPlan
	if settled = plan.Settle(ctx, alone, aim); ctx.Err() != nil {
		return alone, nil
	}
	return alone, settled
}

// refined takes a settled gap to the lift that asked for it. One that was given up
// brings nothing.
func (m *model) refined(s settledGap) {
	l := s.of
	if m.over != overlay(l) || s.settled == nil {
		return
	}
	if l.settling == s.gap {
		l.settling = noGap
	}
	l.put(s.gap, gapCost{s.settled.Against(m.forecast.Day()), true})
	if s.gap == withoutJob {
		return
	}
	l.days = append(l.days, &s)
	l.days = slices.Delete(l.days, 0, max(len(l.days)-keptDays, 0))
}

// day is the settled day with the job in a gap; nil where it isn't kept.
func (l *lift) day(gap int) *settledGap {
	for _, d := range l.days {
		if d.gap == gap {
			return d
		}
	}
	return nil
}
