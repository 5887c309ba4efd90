package ui

import (
	"context"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// together comes back from the background: the day that ends with an outcome,
// settled. It brings nothing when it was given up.
type together struct {
	last *outcome
	day  []*outcome
}

// mostSettled is how many settled days are kept, so that what was there before is
// there again at once.
const mostSettled = 16

// settling is the command that settles the present order.
func (f *forecast) settling() tea.Cmd {
	ctx, cancel := context.WithCancel(context.Background())
	f.asking, f.cancel = true, cancel
	known, jobs := f.present.known, f.present.jobs
	day := &plan.DayPlan{Beam: f.beam, Start: f.start.stands}
	for i, o := range known {
		if len(o.faults) > 0 {
			day.Refused = append(day.Refused, plan.Refusal{Job: jobs[i], Faults: o.faults})
		} else {
			day.Steps = append(day.Steps, o.step)
		}
	}
	begin, aim, last := f.start, f.sought, known[len(known)-1]
	return func() tea.Msg {
		defer cancel()
		settled, err := held(plan.Settle(ctx, day, aim), nil)
		switch {
		case ctx.Err() != nil:
			return together{}
		case err != nil || settled == day:
			return together{last, known}
		}
		return together{last, inTurn(&begin, known, settled.Steps)}
	}
}

// inTurn is what comes of the steps, and of the jobs in between that can't be run as
// was known of them.
func inTurn(begin *outcome, known []*outcome, steps []plan.Step) []*outcome {
	var out []*outcome
	before := begin
	for _, o := range known {
		next := &outcome{faults: o.faults, stands: before.stands, clock: before.clock}
		if len(o.faults) == 0 {
			next.step, steps = steps[0], steps[1:]
			next.stands, next.clock = before.stands.After(&next.step), next.step.RunEnd
		}
		out = append(out, next)
		before = next
	}
	return out
}

// join keeps a settled day and shows it where it belongs.
func (f *forecast) join(t together) {
	f.asking, f.cancel = false, nil
	if t.last == nil {
		return
	}
	if f.settled == nil || len(f.settled) >= mostSettled {
		f.settled = map[*outcome][]*outcome{}
	}
	f.settled[t.last] = t.day
	f.extend(&f.present)
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
	} else if day := f.settled[c.known[n-1]]; day != nil {
		c.known, c.final = day, true
	}
}
