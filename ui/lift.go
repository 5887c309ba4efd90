package ui

import (
	"context"
	"slices"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// lift is a job lifted out of the day: what it costs to drop it into each gap is
// worked out in the background, the last gap first.
type lift struct {
	job    *plan.Job
	before int         // jobs of the day that are done
	rest   []*plan.Job // the others in their order
	was    int         // the gap that it came from
	gap    int         // picked: it would come before rest[gap]
	slips  map[int]plan.Slip
	done   bool
	cancel context.CancelFunc
	tells  chan slipped
}

// slipped is what one gap costs; gap is counted in rest. The last has done set.
type slipped struct {
	of   *lift
	gap  int
	slip plan.Slip
	done bool
}

func (l *lift) Help() scope      { return onLift }
func (l *lift) Fits(s size) bool { return s.w >= 60 && s.h >= 10 }

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
	ctx, cancel := context.WithCancel(context.Background())
	l := &lift{job: j, before: m.history.now.done(), was: m.turn, gap: m.turn, slips: map[int]plan.Slip{}, cancel: cancel}
	l.rest = slices.Delete(slices.Clone(m.jobs()), m.turn, m.turn+1)
	l.tells = make(chan slipped, len(l.rest)+2) // room for all: nobody waits for a reader
	known := slices.Clone(m.present.known[:min(m.turn, len(m.present.known))])
	beam, start := m.forecast.beam, m.start
	work := func() tea.Msg {
		defer close(l.tells)
		l.work(ctx, beam, start, known)
		return nil
	}
	m.over = l
	m.say("reckoned job by job; once the job is dropped the day is planned together")
	return tea.Batch(work, l.listen())
}

// listen waits for the next gap's cost.
func (l *lift) listen() tea.Cmd {
	return func() tea.Msg {
		if s, more := <-l.tells; more {
			return s
		}
		return slipped{of: l, done: true}
	}
}

// work plans the day without the job, from what is known of it, and then the job in
// each gap. It runs in the background with a planner of its own.
func (l *lift) work(ctx context.Context, b *plan.Beam, start outcome, known []*outcome) {
	p, err := plan.NewPlanner(b)
	if err != nil {
		return // it was planned with before
	}
	stands, clock := start.stands, start.clock
	var steps []plan.Step
	gaps := []int{0} // of rest, by gap of steps
	for i, j := range l.rest {
		var o outcome
		if i < len(known) {
			o = *known[i]
		} else if ctx.Err() == nil {
			o.step, o.stands, o.faults = p.Resume(stands, clock, j)
			o.clock = o.step.RunEnd
		} else {
			return
		}
		if len(o.faults) == 0 {
			steps, gaps = append(steps, o.step), append(gaps, i+1)
			stands, clock = o.stands, o.clock
		}
	}
	p.SlipIn(ctx, start.stands, start.clock, steps, l.before, l.job, func(s plan.Slip) {
		l.tells <- slipped{of: l, gap: gaps[s.Gap], slip: s}
	})
}

// slipped takes a gap's cost to the lift that asked for it.
func (m *model) slipped(s slipped) tea.Cmd {
	if l, up := m.over.(*lift); !up || l != s.of {
		return nil
	}
	if s.done {
		s.of.done = true
		return nil
	}
	s.of.slips[s.gap] = s.slip
	return s.of.listen()
}

// HandleKey picks a gap, drops the job there or puts it back.
func (l *lift) HandleKey(a action, m *model) tea.Cmd {
	page := max(m.h-8, 1)
	to := l.gap
	switch a {
	case up:
		to--
	case down:
		to++
	case pageUp:
		to -= page
	case pageDown:
		to += page
	case top:
		to = 0
	case bottom:
		to = len(l.rest)
	case cheapest:
		to = l.best()
	case choose:
		l.drop(m)
	case back:
		l.end(m)
		m.say("%s is back where it was", l.job.ID)
	}
	l.gap = max(0, min(to, len(l.rest)))
	return nil
}

func (l *lift) end(m *model) {
	l.cancel()
	m.over = nil
}

// drop puts the job into the picked gap.
func (l *lift) drop(m *model) {
	if l.gap < len(l.rest) && l.rest[l.gap].State == plan.Running {
		m.say("%s is running: nothing can come before it", l.rest[l.gap].ID)
		return
	}
	l.end(m)
	if l.gap == l.was {
		m.say("%s is back where it was", l.job.ID)
		return
	}
	next := m.history.now.ordered(slices.Insert(slices.Clone(l.rest), l.gap, l.job))
	next.about, next.did = l.job.ID, ""
	m.desk.do(next)
}

// best is the known gap that costs least: no rule broken and nothing refused first, then
// least late, least setup, fewest repositions; the present one of equals.
func (l *lift) best() int {
	best := l.gap
	order := []int{l.was}
	for gap := range len(l.rest) + 1 {
		order = append(order, gap)
	}
	found := false
	for _, gap := range order {
		s, known := l.slips[gap]
		if known && (!found || cheaper(s, l.slips[best])) {
			best, found = gap, true
		}
	}
	return best
}

// cheaper reports whether one gap costs less than another.
func cheaper(a, b plan.Slip) bool {
	if x, y := len(a.Broken)+len(a.Refused), len(b.Broken)+len(b.Refused); x != y {
		return x < y
	}
	if a.LateBy != b.LateBy {
		return a.LateBy < b.LateBy
	}
	if a.Setup != b.Setup {
		return a.Setup < b.Setup
	}
	return a.Repositions < b.Repositions
}
