package draft

import (
	"slices"
	"time"

	"bide/plan"
)

// States are jobs by id, and what became of them.
type States map[string]Progress

// Progress is how far a job has come, with what is recorded of that.
type Progress struct {
	State        plan.State
	Began, Ended time.Time // its run; zero is unknown
	Ran          float64   // metres; 0 is none, or unknown
}

// ProgressOf is how far a job has come.
func ProgressOf(j *plan.Job) Progress { return Progress{j.State, j.Began, j.Ended, j.Ran} }

// In gives a job that progress.
func (p Progress) In(j *plan.Job) {
	j.State, j.Began, j.Ended, j.Ran = p.State, p.Began, p.Ended, p.Ran
}

// To is the progress of a job that comes into a state: what it had run before it was done
// stays run.
func (p Progress) To(state plan.State) Progress {
	if p.State == plan.Done {
		p.Ran = 0
	}
	return Progress{State: state, Ran: p.Ran}
}

// Done is the progress of a job that ended then, having run so many metres.
func (p Progress) Done(at time.Time, metres float64) Progress {
	p.State, p.Ended, p.Ran = plan.Done, at, metres
	return p
}

// In gives a draft with the jobs in these states. A job that stands in several drafts
// becomes one job again: turned holds what became of each.
func (s States) In(f Draft, turned map[*plan.Job]*plan.Job) Draft {
	all := slices.Clone(f.All)
	for i, j := range all {
		state, named := s[j.ID]
		if !named || ProgressOf(j) == state {
			continue
		}
		if turned[j] == nil {
			next := *j
			state.In(&next)
			turned[j] = &next
		}
		all[i] = turned[j]
	}
	out := New(all, f.Aim)
	out.About, out.Did, out.Back, out.Cause = f.About, f.Did, f.Back, f.Cause
	return out
}

// StatesOf are the present states of these jobs.
func (d Draft) StatesOf(jobs States) States {
	out := States{}
	for id := range jobs {
		if j := d.Find(id); j != nil {
			out[id] = ProgressOf(j)
		}
	}
	return out
}

// Ended is a draft in which what ran has ended, when isn't known: the beam is being set up
// for a job.
func Ended(f Draft, next string) Draft {
	s := States{}
	for _, j := range f.All {
		if j.State == plan.Running && j.ID != next {
			s[j.ID] = ProgressOf(j).Done(time.Time{}, 0)
		}
	}
	return s.In(f, map[*plan.Job]*plan.Job{})
}
