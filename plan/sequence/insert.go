package sequence

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover"
)

// Insertion is a planned day and a job to be put into it: the turns are those without it.
type Insertion struct {
	*plan.DayPlan // its turns, each planned on its own or as a search gave them
	Job           *plan.Job
}

// In is the day with the job before the turn of an index, len(Turns) for the end. The turns
// before it stay as they are; the others are planned on from it one by one, as Resume plans
// them. Jobs that can't be set, the job itself or ones behind it, are refused.
//
// It is a first estimate of the day: planned jointly it is never worse. It takes one
// changeover for the job and one for each turn behind it.
func (in *Insertion) In(p *changeover.Planner, index int) *plan.DayPlan {
	day := *in.DayPlan
	day.Turns, day.Floor = slices.Insert(slices.Clone(in.Turns), index, plan.Turn{Job: in.Job}), nil
	now, clock := in.Start, in.Begins
	for i := range day.Turns {
		t, stands := &day.Turns[i], now
		switch {
		case i > index && t.Refused(): // as it was
			continue
		case i >= index:
			*t, stands = p.Resume(now, clock, t.Job)
		case !t.Refused():
			stands = now.After(t.Step)
		}
		if !t.Refused() {
			now, clock.At = stands, t.Step.RunEnd
		}
	}
	day.Totals = plan.TotalsOf(day.Turns)
	return &day
}
