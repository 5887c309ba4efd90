package plan

import "time"

// Next plans one job from what stands now, its setup beginning at the clock. It
// returns the turn and what stands while the job runs: now itself where it is refused.
func (p *Planner) Next(now *Standing, clock time.Time, j *Job) (Turn, *Standing) {
	return p.next(now, clock, j, p.Best)
}

// NextCentred plans like Next, but at the allowed shift nearest to centred: what a
// shop does that leaves the shift alone. A job that runs or that the beam is being set
// up for stays as it was begun (see Resume).
func (p *Planner) NextCentred(now *Standing, clock time.Time, j *Job) (Turn, *Standing) {
	if j.State == Running || now.Setting != nil && now.Setting.Job == j.ID {
		return p.Resume(now, clock, j)
	}
	return p.next(now, clock, j, p.Nearest)
}

func (p *Planner) next(now *Standing, clock time.Time, j *Job,
	changeover func([]Length, *Job) (Layout, Changeover, []Fault)) (Turn, *Standing) {
	l, c, faults := changeover(now.At, j)
	if len(faults) > 0 {
		return Turn{Job: j, Faults: faults}, now
	}
	s := &Step{Job: j, Layout: l, Changeover: c, Setup: p.beam.setupTime(now, j, &c), SetupStart: clock}
	s.clock()
	return Turn{Job: j, Step: s}, now.After(s)
}

// After is what stands while the step's job runs, when now stood before it.
func (now *Standing) After(s *Step) *Standing {
	stands := &Standing{}
	now.advance(stands, s.Job, s.Changeover.Holders)
	stands.Recorded = s.RunEnd
	return stands
}

// PlanDay plans the day's jobs in the order of the file, each changeover on its
// own; Settle improves on that. Jobs done or set aside are left out; jobs that the beam can't run are
// refused and the rest planned. It fails only when the beam can't plan at all.
func PlanDay(b *Beam, start *Standing, d *Day) (*DayPlan, error) {
	day, err := planDay(b, start, d)
	if err == nil {
		day.Floor = b.FloorOfOrder(start.At, day.Jobs())
	}
	return day, err
}

// planDay is PlanDay without a floor.
func planDay(b *Beam, start *Standing, d *Day) (*DayPlan, error) {
	p, err := NewPlanner(b)
	if err != nil {
		return nil, err
	}
	day := &DayPlan{Beam: b, Start: start, Done: d.Done(), Aim: d.Aim}
	day.Turns = p.run(start, d, p.Resume)
	day.Totals = Sum(day.Turns)
	day.Listed = Sum(p.run(start, d, p.NextCentred))
	return day, nil
}

// Done counts the jobs that are done.
func (d *Day) Done() (n int) {
	for i := range d.Jobs {
		if d.Jobs[i].State == Done {
			n++
		}
	}
	return n
}

// run plans the day's jobs one after the other with next.
func (p *Planner) run(now *Standing, d *Day,
	next func(*Standing, time.Time, *Job) (Turn, *Standing)) (turns []Turn) {
	clock := d.Begins(now)
	for i := range d.Jobs {
		j := &d.Jobs[i]
		if j.State == Done || j.State == Aside {
			continue
		}
		t, stands := next(now, clock, j)
		if turns = append(turns, t); !t.Refused() {
			now, clock = stands, t.Step.RunEnd
		}
	}
	return turns
}
