package ui

import (
	"context"
	"slices"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// together is a day settled for an aim, by what its jobs come to each on its own. A refused job
// leaves what stands alone, so that the jobs behind it come to the same without it: only
// all of the jobs tell days apart. Nothing comes back of a settling that was given up.
type together struct {
	aim        plan.Aim
	alone, day []*outcome
}

// mostSettled is how many settled days are kept, so that what was there before is
// there again at once.
const mostSettled = 16

// settling is the command that settles the present order.
func (f *forecast) settling() tea.Cmd {
	ctx, cancel := context.WithCancel(context.Background())
	f.asking, f.cancel = true, cancel
	known, jobs, day := f.present.known, f.present.jobs, f.presentDay()
	begin, aim := f.start, f.sought
	return func() tea.Msg {
		defer cancel()
		settled, err := held(plan.Settle(ctx, day, aim), nil)
		switch {
		case ctx.Err() != nil:
			return together{}
		case err != nil || settled == day:
			return together{aim, known, known}
		}
		return together{aim, known, inTurn(&begin, jobs, settled)}
	}
}

// presentDay is the present order as it is known.
func (f *forecast) presentDay() *plan.DayPlan {
	day := &plan.DayPlan{Beam: f.beam, Start: f.start.stands, Totals: f.present.totals}
	for i, o := range f.present.known {
		if len(o.faults) > 0 {
			day.Refused = append(day.Refused, plan.Refusal{Job: f.present.jobs[i], Faults: o.faults})
		} else {
			day.Steps = append(day.Steps, o.step)
		}
	}
	return day
}

// inTurn is what comes of jobs in their order, refused ones among them, when the day
// is planned so.
func inTurn(begin *outcome, jobs []*plan.Job, day *plan.DayPlan) (out []*outcome) {
	before, steps := begin, day.Steps
	for _, j := range jobs {
		o := &outcome{stands: before.stands, clock: before.clock}
		if len(steps) > 0 && steps[0].Job == j {
			o.step, steps = steps[0], steps[1:]
			o.stands, o.clock = before.stands.After(&o.step), o.step.RunEnd
		} else {
			o.faults = faultsOf(day, j)
		}
		out = append(out, o)
		before = o
	}
	return out
}

// faultsOf are the reasons for which a day refuses a job.
func faultsOf(day *plan.DayPlan, j *plan.Job) []plan.Fault {
	if i := slices.IndexFunc(day.Refused, func(r plan.Refusal) bool { return r.Job == j }); i >= 0 {
		return day.Refused[i].Faults
	}
	return []plan.Fault{unheld} // never: a day plans or refuses each of its jobs
}

// plant keeps what was worked out of an order elsewhere, job by job and settled, so
// that the order is there at once.
func (f *forecast) plant(jobs []*plan.Job, alone, settled *plan.DayPlan) {
	known := slices.Clone(f.trial(jobs).known)
	for _, o := range inTurn(&f.start, jobs, alone)[len(known):] {
		before := &f.start
		if len(known) > 0 {
			before = known[len(known)-1]
		}
		f.answers.keep(question{before.stands, jobs[len(known)], false}, o)
		known = append(known, o)
	}
	f.keepDay(together{f.sought, known, inTurn(&f.start, jobs, settled)})
}

// join keeps a settled day and shows it where it belongs.
func (f *forecast) join(t together) {
	f.asking, f.cancel = false, nil
	if t.day != nil {
		f.keepDay(t)
		f.extend(&f.present)
	}
}

// keepDay keeps a settled day, in the place of the oldest where there are many.
func (f *forecast) keepDay(t together) {
	if len(f.settled) >= mostSettled {
		f.settled = slices.Delete(f.settled, 0, 1)
	}
	f.settled = append(f.settled, t)
}

// settledDay is the day settled, as it is sought, whose jobs are known each on its own;
// nil where it isn't there.
func (f *forecast) settledDay(alone []*outcome) []*outcome {
	for _, t := range f.settled {
		if t.aim == f.sought && slices.Equal(t.alone, alone) {
			return t.day
		}
	}
	return nil
}

// drop gives a settling that is under way up.
func (f *forecast) drop() {
	if f.cancel != nil {
		f.cancel()
	}
}

// finish puts the settled day in the place of a chain of jobs each on its own, if
// there is one. What a search gave whole is planned together already.
func (f *forecast) finish(c *chain) {
	n := len(c.known)
	if c.centred || c.final || n == 0 || !c.full() {
		return
	}
	if f.alone || len(c.given) == n && c.known[n-1] == c.given[n-1] {
		c.final = true
	} else if day := f.settledDay(c.known); day != nil {
		c.known, c.final = day, true
	}
}
