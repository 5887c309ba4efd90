package draft

import (
	"slices"

	"bide/plan"
)

// States are jobs by id, and what became of them.
type States map[string]plan.State

// In gives a draft with the jobs in these states. A job that stands in several drafts
// becomes one job again: turned holds what became of each.
func (s States) In(f Draft, turned map[*plan.Job]*plan.Job) Draft {
	all := slices.Clone(f.All)
	for i, j := range all {
		state, named := s[j.ID]
		if !named || j.State == state {
			continue
		}
		if turned[j] == nil {
			next := *j
			next.State = state
			turned[j] = &next
		}
		all[i] = turned[j]
	}
	out := New(all, f.Aim)
	out.About, out.Did, out.Cause = f.About, f.Did, f.Cause
	return out
}

// StatesOf are the present states of these jobs.
func (d Draft) StatesOf(jobs States) States {
	out := States{}
	for id := range jobs {
		if j := d.Find(id); j != nil {
			out[id] = j.State
		}
	}
	return out
}

// Ended is a draft in which what ran has ended: the beam is being set up for a job.
func Ended(f Draft, next string) Draft {
	s := States{}
	for _, j := range f.All {
		if j.State == plan.Running && j.ID != next {
			s[j.ID] = plan.Done
		}
	}
	return s.In(f, map[*plan.Job]*plan.Job{})
}
