package planning

import (
	"slices"
	"time"

	"bide/plan"
)

// Index is where in the order a job is, by its id; -1 where it isn't in it.
func (o *Order) Index(id string) int {
	return slices.IndexFunc(o.Jobs, func(j *plan.Job) bool { return j.ID == id })
}

// Step is what is planned for a job; nil when it isn't known or the job is refused.
func (o *Order) Step(id string) *plan.Step {
	if i := o.Index(id); i >= 0 && i < len(o.Known) && len(o.Known[i].Faults) == 0 {
		return o.Known[i].Step
	}
	return nil
}

// Number is a job's number in the sequence, when so many jobs are done before: jobs that
// the beam can't run have none, which is 0.
func (o *Order) Number(index, done int) int {
	refused := func(i int) bool { return i < len(o.Known) && len(o.Known[i].Faults) > 0 }
	if index < 0 || refused(index) {
		return 0
	}
	n := done + 1
	for i := range index {
		if !refused(i) {
			n++
		}
	}
	return n
}

// Ends is when the last job ends, of those known.
func (o *Order) Ends() (end time.Time) {
	for _, k := range o.Known {
		if k.Clock.After(end) {
			end = k.Clock
		}
	}
	return end
}
