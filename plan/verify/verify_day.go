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
	clock := d.Begins
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
		clock.At = v.times(s, clock)
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
	t.Setup += s.Setup.Total()
	t.Late += s.Late
	if s.Late > 0 {
		t.LateJobs++
	}
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
	begins := d.Start
	for _, t := range []time.Time{p.Start.Recorded, d.Now} {
		begins = later(begins, t)
	}
	for _, j := range d.Jobs {
		if j.State == plan.Done {
			begins = later(begins, j.Ended)
		}
	}
	v.must(p.Begins.At.Equal(begins), "the day begins at %v instead of %v", p.Begins.At, begins)
	v.must(p.Begins.Calendar == d.Calendar, "it is planned by another calendar than the day's")
}
