// Package sequence plans a day: its jobs in the order given, each changeover on its own
// (PlanDay) or all together (Jointly), the best order that a search finds (Search), or one
// more job put into it (Insertion).
//
// What it promises:
//   - Every changeover is exact for its layout and the positions before it (package
//     changeover). Order, layouts and resting places of a day are searched for; what is
//     found is no worse by the day's aim than what was given, and says what is proven about
//     it (package floor).
//   - The result depends on the day, the aim, the rounds and the seed alone: not on the clock
//     or the number of processors. A cancelled context ends it early with the best so far.
//   - What runs, and what the beam is being set up for, stays as it was begun.
//
// A search goes from rough to fine: an estimate of a candidate (estimate.go), its changeovers
// planned one after the other (evaluate.go), chance that cools down (anneal.go, neighbours.go,
// layouts.go), several starts (restarts.go), and passes over the best (improve.go,
// reinsert.go, drop_idle.go, plainer.go). improve.go says what each pass wins.
package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/floor"
)

// PlanDay plans the day's jobs in the order of the file, each changeover on its own;
// Jointly improves on that. Jobs done or on hold are left out; jobs that the beam can't run
// are refused and the rest planned. It fails only when the beam can't plan at all.
func PlanDay(b *plan.Beam, start *plan.Positions, d *plan.Day) (*plan.DayPlan, error) {
	day, err := planDay(b, start, d)
	if err == nil {
		day.Floor = floor.OfOrder(b, start.At, day.Jobs())
	}
	return day, err
}

// planDay is PlanDay without a floor.
func planDay(b *plan.Beam, start *plan.Positions, d *plan.Day) (*plan.DayPlan, error) {
	p, err := changeover.NewPlanner(b)
	if err != nil {
		return nil, err
	}
	day := &plan.DayPlan{Beam: b, Start: start, Begins: d.Begins(start), Done: d.Done(), Aim: d.Aim}
	day.Turns = runDay(start, day.Begins, d, p.Resume)
	day.Totals = plan.TotalsOf(day.Turns)
	day.Listed = plan.TotalsOf(runDay(start, day.Begins, d, p.NextCentred))
	return day, nil
}

// runDay plans the day's jobs one after the other with next.
func runDay(now *plan.Positions, clock plan.Clock, d *plan.Day,
	next func(*plan.Positions, plan.Clock, *plan.Job) (plan.Turn, *plan.Positions)) (turns []plan.Turn) {
	for i := range d.Jobs {
		j := &d.Jobs[i]
		if j.State == plan.Done || j.State == plan.OnHold {
			continue
		}
		t, stands := next(now, clock, j)
		if turns = append(turns, t); !t.Refused() {
			now, clock.At = stands, t.Step.RunEnd
		}
	}
	return turns
}
