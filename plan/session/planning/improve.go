package planning

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/verify"
)

// Improved is a day improved for an aim, by what its jobs come to each on its own. A refused job
// leaves what stands alone, so that the jobs behind it come to the same without it: only
// all of the jobs tell days apart. Nothing comes back of an improving that was given up.
type Improved struct {
	aim        plan.Aim
	alone, Day []*Outcome
}

// Improver plans a day together, in the order it has: sequence.Jointly, unless the forecast is
// given another.
type Improver func(context.Context, *plan.DayPlan, plan.Aim) *plan.DayPlan

// mostImproved is how many improved days are kept, so that what was there before is
// there again at once.
const mostImproved = 16

// improving improves the present order.
func (f *Forecast) improving() Work {
	ctx, cancel := context.WithCancel(context.Background())
	f.asking, f.cancel = true, cancel
	known, day := f.Present.Known, f.day()
	begin, aim, improve := f.Start, f.Aim, f.Improve
	return func() any {
		defer cancel()
		joint, err := verified(improve(ctx, day, aim), nil, nil)
		switch {
		case ctx.Err() != nil:
			return Improved{}
		case err != nil || joint == day:
			return Improved{aim, known, known}
		}
		return Improved{aim, known, begin.outcomes(joint.Turns)}
	}
}

// day is the present order as it is known.
func (f *Forecast) day() *plan.DayPlan {
	return &plan.DayPlan{Beam: f.Beam, Start: f.Start.Positions, Begins: f.Start.Clock, Turns: f.Present.turns(), Totals: f.Present.Totals}
}

// outcomes are what comes of turns after this one.
func (o *Outcome) outcomes(turns []plan.Turn) (out []*Outcome) {
	for _, t := range turns {
		positions := o.Positions
		if !t.Refused() {
			positions = positions.After(t.Step)
		}
		o = o.then(t, positions)
		out = append(out, o)
	}
	return out
}

// keep keeps what was worked out of an order elsewhere, job by job and improved, so
// that the order is there at once.
func (f *Forecast) keep(jobs []*plan.Job, alone, joint *plan.DayPlan) {
	known := slices.Clone(f.Trial(jobs).Known)
	for _, o := range f.Start.outcomes(alone.Turns)[len(known):] {
		before := &f.Start
		if len(known) > 0 {
			before = known[len(known)-1]
		}
		f.answers.keep(question{before.Positions, jobs[len(known)], false}, o)
		known = append(known, o)
	}
	f.keepDay(Improved{f.Aim, known, f.Start.outcomes(joint.Turns)})
}

// keepDay keeps an improved day, in the place of the oldest where there are many.
func (f *Forecast) keepDay(t Improved) {
	if len(f.improved) >= mostImproved {
		f.improved = slices.Delete(f.improved, 0, 1)
	}
	f.improved = append(f.improved, t)
}

// improvedDay is the day improved, as it is sought, whose jobs are known each on its own;
// nil where it isn't there.
func (f *Forecast) improvedDay(alone []*Outcome) []*Outcome {
	for _, t := range f.improved {
		if t.aim == f.Aim && slices.EqualFunc(t.alone, alone, alike) {
			return t.Day
		}
	}
	return nil
}

// alike reports whether two outcomes are of one turn, whatever their clocks.
func alike(a, b *Outcome) bool { return a.Job == b.Job && a.Positions == b.Positions }

// drop gives an improving that is under way up.
func (f *Forecast) drop() {
	if f.cancel != nil {
		f.cancel()
	}
}

// finish puts the improved day in the place of an order of jobs each on its own, if
// there is one. What a search gave whole is planned together already.
func (f *Forecast) finish(c *Order) {
	n := len(c.Known)
	if c.centred || c.Final || n == 0 || !c.Full() {
		return
	}
	if len(c.given) == n && alike(c.Known[n-1], c.given[n-1]) {
		c.Final = true
	} else if day := f.improvedDay(c.Known); day != nil {
		c.Known, c.Final = f.Start.following(day), true
	}
}

// verified passes on a plan that the verifier finds nothing wrong with, and of another what is.
// Given a day, it also has to plan or refuse each of that day's jobs.
func verified(p *plan.DayPlan, of *plan.Day, err error) (*plan.DayPlan, error) {
	if err != nil {
		return nil, err
	}
	if of != nil {
		err = verify.DayOf(p, of)
	} else {
		err = verify.Plan(p)
	}
	if err != nil {
		return nil, fmt.Errorf("the plan that the search made fails its check and isn't used: %s", strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	return p, nil
}
