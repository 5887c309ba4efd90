package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/floor"
	"time"
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
	day := &plan.DayPlan{Beam: b, Start: start, Done: d.Done(), Aim: d.Aim}
	day.Turns = runDay(p, start, d, p.Resume)
	day.Totals = plan.TotalsOf(day.Turns)
	day.Listed = plan.TotalsOf(runDay(p, start, d, p.NextCentred))
	return day, nil
}

// runDay plans the day's jobs one after the other with next.
func runDay(p *changeover.Planner, now *plan.Positions, d *plan.Day,
	next func(*plan.Positions, time.Time, *plan.Job) (plan.Turn, *plan.Positions)) (turns []plan.Turn) {
	clock := d.Begins(now)
	for i := range d.Jobs {
		j := &d.Jobs[i]
		if j.State == plan.Done || j.State == plan.OnHold {
			continue
		}
		t, stands := next(now, clock, j)
		if turns = append(turns, t); !t.Refused() {
			now, clock = stands, t.Step.RunEnd
		}
	}
	return turns
}
