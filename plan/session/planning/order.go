package planning

import (
	"slices"
	"time"

	"bide/plan"
)

// Order is an order of jobs, and what is known of it from its first job on.
type Order struct {
	Jobs    []*plan.Job
	centred bool
	given   []*Outcome // planned together by a search, for as long as the jobs are those
	Known   []*Outcome
	Final   bool        // what is known was planned together
	Totals  plan.Totals // of what is known
}

// Full reports whether all jobs of the order are known, be it each on its own.
func (c *Order) Full() bool { return len(c.Known) == len(c.Jobs) }

// Whole reports whether all of the order is known as it will stay.
func (c *Order) Whole() bool { return c.Full() && (c.centred || c.Final || len(c.Jobs) == 0) }

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
		if k.Clock.At.After(end) {
			end = k.Clock.At
		}
	}
	return end
}

// turns are those of the jobs known.
func (c *Order) turns() []plan.Turn {
	turns := make([]plan.Turn, len(c.Known))
	for i, o := range c.Known {
		turns[i] = o.Turn
	}
	return turns
}

// Steps are those of the jobs known that the beam can run.
func (c *Order) Steps() []*plan.Step { return (&plan.DayPlan{Turns: c.turns()}).Steps() }

// gave is what the search gave for the next job of the order, if the order has gone
// its way so far.
func (c *Order) gave() *Outcome {
	n := len(c.Known)
	if n >= len(c.given) || c.given[n].Job != c.Jobs[n] || n > 0 && !alike(c.Known[n-1], c.given[n-1]) {
		return nil
	}
	return c.given[n]
}
