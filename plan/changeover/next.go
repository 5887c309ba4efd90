package changeover

import "bide/plan"

// Next plans one job from the positions now, its setup beginning at the clock. It
// returns the turn and the positions while the job runs: now itself where it is refused.
func (p *Planner) Next(now *plan.Positions, clock plan.Clock, j *plan.Job) (plan.Turn, *plan.Positions) {
	return p.next(now, clock, j, p.Best)
}

// NextCentred plans like Next, but at the allowed shift nearest to centred: what a
// shop does that leaves the shift alone. A job that runs or that the beam is being set
// up for stays as it was begun (see Resume).
func (p *Planner) NextCentred(now *plan.Positions, clock plan.Clock, j *plan.Job) (plan.Turn, *plan.Positions) {
	if j.State == plan.Running || now.Begun != nil && now.Begun.Job == j.ID {
		return p.Resume(now, clock, j)
	}
	return p.next(now, clock, j, p.Nearest)
}

func (p *Planner) next(now *plan.Positions, clock plan.Clock, j *plan.Job,
	changeover func([]plan.Length, *plan.Job) (plan.Layout, plan.Changeover, []plan.Fault)) (plan.Turn, *plan.Positions) {
	l, c, faults := changeover(now.At, j)
	if fault, ok := clock.Calendar.Refuses(j); ok {
		faults = append(faults, fault)
	}
	if len(faults) > 0 {
		return plan.Turn{Job: j, Faults: faults}, now
	}
	s := &plan.Step{Job: j, Layout: l, Changeover: c, Setup: p.Beam.SetupTime(now, j, &c)}
	s.Clock(clock)
	return plan.Turn{Job: j, Step: s}, now.After(s)
}
