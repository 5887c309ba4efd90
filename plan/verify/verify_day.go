package verify

import (
	"maps"
	"slices"
	"time"

	"bide/plan"
)

// The verifier's part for a day: what is carried from step to step.

// rounding is by how much a time may differ for each leg of the positioner's way
// or each run: they are reported to the microsecond.
const rounding = 2 * time.Microsecond

// day: step after step from the start's positions, then the sums.
func (v *verifier) day(d *plan.DayPlan) {
	steps := planned(d)
	now, sum := carry(d.Start, len(d.Beam.Holders)), plan.Totals{Jobs: len(steps)}
	for i, s := range steps {
		if !v.must(s.Job != nil, "step %d has no job", i+1) {
			return
		}
		v.job = s.Job.ID
		v.layout(s.Job, s.Layout)
		v.changeover(now.at, s.Layout, s.Changeover)
		if len(s.Changeover.Holders) != len(d.Beam.Holders) {
			return // nothing to go on from, and reported already
		}
		v.setup(now, s)
		v.times(steps, i)
		v.ahead(steps[i:])
		addStep(&sum, s)
		now.run(s)
	}
	v.job = ""
	v.must(d.Totals == sum, "totals %+v instead of %+v", d.Totals, sum)
	if d.Floor != nil {
		v.must(d.Floor.Repositions <= sum.Repositions, "a floor of %d above the %d repositions", d.Floor.Repositions, sum.Repositions)
	}
	v.once(d)
}

// addStep counts one step in, from what its parts say.
func addStep(t *plan.Totals, s *plan.Step) {
	t.Repositions += s.Changeover.Repositions
	t.Setup += s.RunStart.Sub(s.SetupStart)
	t.Late += s.Late
	if s.Late > 0 {
		t.LateJobs++
	}
}

// times: the setup begins when the job before has run, the run when it is set up;
// it takes its metres at its speed, or what the job says; late is what it ends behind its due time.
func (v *verifier) times(steps []*plan.Step, i int) {
	s := steps[i]
	if i > 0 {
		v.must(s.SetupStart.Equal(steps[i-1].RunEnd), "setup begins at %v, the job before ends at %v", s.SetupStart, steps[i-1].RunEnd)
	}
	t := s.Setup
	total := max(t.Positioner, t.Crew) + t.Every + t.Rethread + t.CleanDown + t.Pressure
	v.must(min(t.Positioner, t.Crew, t.Every, t.Rethread, t.CleanDown, t.Pressure) >= 0 && !s.RunEnd.Before(s.RunStart), "times run backwards: %+v", t)
	v.must(s.RunStart.Sub(s.SetupStart) == total, "the run begins %v after the setup of %v", s.RunStart.Sub(s.SetupStart), total)
	run := time.Duration(0)
	if s.Job.Speed > 0 {
		run = time.Duration(s.Job.Metres / s.Job.Speed * float64(time.Minute))
	}
	if s.Job.Takes > 0 {
		run = s.Job.Takes
	}
	v.near("the run", s.RunEnd.Sub(s.RunStart), run, 1)
	late := time.Duration(0)
	if !s.Job.Due.IsZero() && s.RunEnd.After(s.Job.Due) {
		late = s.RunEnd.Sub(s.Job.Due)
	}
	v.must(s.Late == late, "late by %v, reported %v", late, s.Late)
}

// near: a duration is as reported, but for rounding.
func (v *verifier) near(what string, got, want time.Duration, legs int) {
	v.must((got-want).Abs() <= time.Duration(legs)*rounding, "%s takes %v, reported %v", what, want, got)
}

// ahead: whoever is said to stand ready for a later job stands there until it, and
// holds the cut named.
func (v *verifier) ahead(steps []*plan.Step) {
	for _, m := range steps[0].Changeover.Moves {
		if m.Why.Cause != plan.ForLaterJob {
			continue
		}
		found := false
		for _, later := range steps[1:] {
			if len(later.Changeover.Holders) < m.Holder || later.Changeover.Holders[m.Holder-1].At != m.To {
				break
			}
			if later.Job.ID == m.Why.Job {
				found = later.Changeover.Holders[m.Holder-1].Cut == m.Why.Cut
				break
			}
		}
		v.must(found, "holder %d is to be at %s until job %s and doesn't, or not for cut %d", m.Holder, mm(m.To), m.Why.Job, m.Why.Cut)
	}
}

// planned are the steps of a plan.
func planned(d *plan.DayPlan) (steps []*plan.Step) {
	for _, t := range d.Turns {
		if t.Step != nil {
			steps = append(steps, t.Step)
		}
	}
	return steps
}

// once: no job comes twice; each is planned, by a step that is its own, or refused for a
// reason.
func (v *verifier) once(d *plan.DayPlan) {
	seen := map[string]bool{}
	for i, t := range d.Turns {
		if !v.must(t.Job != nil, "number %d in the sequence has no job", i+1) {
			continue
		}
		v.must(!seen[t.Job.ID], "job %s comes twice", t.Job.ID)
		seen[t.Job.ID] = true
		if t.Step != nil {
			v.must(t.Step.Job == t.Job, "the step of job %s is another job's", t.Job.ID)
			v.must(len(t.Faults) == 0, "job %s is planned and refused", t.Job.ID)
			continue
		}
		v.must(len(t.Faults) > 0, "job %s is refused without a reason", t.Job.ID)
		for _, f := range t.Faults {
			v.must(f.Why(plan.Millimetres) != "", "job %s is refused with an empty reason", t.Job.ID)
		}
	}
}

// covers: the jobs planned and refused are those of the day that wait or run, and
// the first setup begins at the day's start.
func (v *verifier) covers(p *plan.DayPlan, d *plan.Day) {
	got := map[string]bool{}
	for _, t := range p.Turns {
		if t.Job != nil {
			got[t.Job.ID] = true
		}
	}
	for _, j := range d.Jobs {
		want := j.State == plan.Waiting || j.State == plan.Running
		v.must(got[j.ID] || !want, "job %s is neither planned nor refused", j.ID)
		v.must(want || !got[j.ID], "job %s is done or on hold, and planned all the same", j.ID)
		delete(got, j.ID)
	}
	for _, id := range slices.Sorted(maps.Keys(got)) {
		v.must(false, "job %s is not of this day", id)
	}
	if steps := planned(p); len(steps) > 0 {
		begins := d.Start
		if r := p.Start.Recorded; r.After(begins) && r.Sub(begins) < 24*time.Hour { // under way
			begins = r
		}
		v.must(steps[0].SetupStart.Equal(begins), "the day begins at %v instead of %v", steps[0].SetupStart, begins)
	}
}
