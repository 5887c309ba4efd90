package plan

import (
	"context"
	"slices"
	"time"
)

// Slip is what it costs to slip a job into a planned day at one of its gaps,
// instead of leaving it out. The rest of the day is planned on from the gap job by
// job, with the job and without it, so that the difference is the job's alone.
type Slip struct {
	Gap         int           // the turn that the job would have, from 0
	Totals      Totals        // of the day with it
	Setup       time.Duration // added; below nought where the job makes the rest cheaper
	Repositions int           // added
	Late        []*Job        // jobs that are late with it and would not be without; the job itself too
	LateBy      time.Duration // lateness added, all jobs together
	Refused     []Refusal     // jobs that can't be set there, the job itself or ones behind it, and could without it
	Broken      []Breach      // rules that the order then breaks
}

// SlipIn works out for each gap of a day's steps, the one before the first and the
// one behind the last too, what it costs to run job j there, and tells each as it
// is known, the last gap first: what comes soonest costs most to reckon. The steps
// begin from start at the clock, behind the day's jobs that are done, and stay as
// they are up to the gap. It costs two
// changeovers for each job behind each gap. A cancelled context ends it.
func (p *Planner) SlipIn(ctx context.Context, start *Standing, clock time.Time, steps []Step, done int, j *Job, tell func(Slip)) {
	stands := make([]*Standing, len(steps)+1) // stands[g] is before the step at gap g
	stands[0] = start
	for i := range steps {
		stands[i+1] = stands[i].After(&steps[i])
	}
	for gap := len(steps); gap >= 0; gap-- {
		if ctx.Err() != nil {
			return
		}
		if gap > 0 {
			clock = steps[gap-1].RunEnd
		} else if len(steps) > 0 {
			clock = steps[0].SetupStart
		}
		tell(p.slip(stands[gap], clock, steps, done, gap, j))
	}
}

// slip is the cost at one gap.
func (p *Planner) slip(now *Standing, clock time.Time, steps []Step, done, gap int, j *Job) Slip {
	rest := &Day{Start: clock}
	for _, s := range steps[gap:] {
		rest.Jobs = append(rest.Jobs, *s.Job)
	}
	without, left := p.run(now, rest, p.Resume)
	slipped := *j
	if slipped.State != Running { // wherever it lay before
		slipped.State = Waiting
	}
	rest.Jobs = slices.Insert(rest.Jobs, 0, slipped)
	with, refused := p.run(now, rest, p.Resume)

	out := Slip{Gap: gap, Totals: Sum(append(slices.Clone(steps[:gap]), with...))}
	a, b := Sum(with), Sum(without)
	out.Setup, out.Repositions, out.LateBy = a.Setup-b.Setup, a.Repositions-b.Repositions, a.Late-b.Late
	own := func(id string) *Job { // the caller's, not the copies planned here
		for i := range steps {
			if steps[i].Job.ID == id {
				return steps[i].Job
			}
		}
		return j
	}
	late := lateOf(without)
	for _, s := range with {
		if s.Late > 0 && !late[s.Job.ID] {
			out.Late = append(out.Late, own(s.Job.ID))
		}
	}
	for _, r := range refused {
		if !slices.ContainsFunc(left, func(l Refusal) bool { return l.Job.ID == r.Job.ID }) {
			out.Refused = append(out.Refused, Refusal{own(r.Job.ID), r.Faults})
		}
	}
	jobs := make([]*Job, 0, len(steps)+1)
	for i := range steps {
		jobs = append(jobs, steps[i].Job)
	}
	out.Broken = Broken(slices.Insert(jobs, gap, j), done)
	return out
}

// lateOf are the IDs of the steps' late jobs.
func lateOf(steps []Step) map[string]bool {
	late := map[string]bool{}
	for i := range steps {
		if steps[i].Late > 0 {
			late[steps[i].Job.ID] = true
		}
	}
	return late
}
