package planning

import (
	"slices"

	"bide/plan"
)

// Offer is an order that a search found, until it is accepted or discarded.
type Offer struct {
	Order                          // its jobs laid out as found
	From   map[*plan.Job]*plan.Job // the day's jobs that those laid out otherwise were made from
	Aim    plan.Aim
	Inputs Inputs
	Floor  *plan.Floor   // of any order; nil where nothing is proven
	Day    *plan.DayPlan // as it was found
}

// NewOffer offers what a search for the aim found for a day with these inputs.
func NewOffer(found *plan.DayPlan, in Inputs, aim plan.Aim) *Offer {
	o := &Offer{Order: Order{Totals: found.Totals, Final: true}, From: map[*plan.Job]*plan.Job{}, Aim: aim, Inputs: in, Floor: found.Floor, Day: found}
	own := map[string]*plan.Job{}
	for _, j := range in.Jobs {
		own[j.ID] = j
	}
	turns := slices.Clone(found.Turns)
	for i := range turns {
		t := &turns[i]
		if t.Job = own[t.Job.ID]; !t.Refused() {
			s := *t.Step
			t.Job = o.laid(t.Job, &s)
			s.Job, t.Step = t.Job, &s
		}
		o.Jobs = append(o.Jobs, t.Job)
	}
	begin := Outcome{Positions: in.positions, Clock: in.clock}
	o.Known = begin.outcomes(turns)
	return o
}

// At lets the order found begin at another clock.
func (o *Offer) At(clock plan.Clock) { o.Order.from(&Outcome{Clock: clock}) }

// laid is a job of the day with what a step has chosen for it.
func (o *Offer) laid(j *plan.Job, s *plan.Step) *plan.Job {
	c := o.Inputs.beam.Choose(s)
	if j.Chosen.Same(c) {
		return j
	}
	next := *j
	next.Chosen = c
	o.From[&next] = j
	return &next
}

// Keeps reports whether a day keeps all rules between its jobs.
func Keeps(day *plan.DayPlan) bool { return len(plan.Broken(day.Jobs(), day.Done)) == 0 }

// FitRounds are the candidates tried to fit what was found to a day that has changed.
const FitRounds = 2000

// LaidAs gives the jobs of a day the layouts found for those of another one, where they
// are to be laid out as those were.
func LaidAs(found *plan.DayPlan, day *plan.Day, b *plan.Beam) *plan.Day {
	steps := found.Steps()
	for i := range day.Jobs {
		j := &day.Jobs[i]
		n := slices.IndexFunc(steps, func(s *plan.Step) bool { return s.Job.ID == j.ID })
		if n >= 0 && j.LaidLike(steps[n].Job) {
			j.Chosen = b.Choose(steps[n])
		}
	}
	return day
}
