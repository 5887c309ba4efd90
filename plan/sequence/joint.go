package sequence

import (
	"context"
	"slices"

	"bide/plan"
)

// Jointly plans the jobs of a planned day in the same order, but together: with
// layouts, as far as the jobs allow, and resting places that suit the jobs to come.
// The day that it returns is never worse than the one given by the aim; where it
// isn't better it is that one. A layout chosen for a job stays, and a day that is all as
// it was chosen stays as it is. The result depends on the day and the aim alone, unless
// the context is cancelled, which ends it early.
func Jointly(ctx context.Context, d *plan.DayPlan, aim plan.Aim) *plan.DayPlan {
	steps := d.Steps()
	if len(steps) == 0 {
		return d
	}
	return newInstance(d, aim).planJointly(ctx)
}

// planJointly is Jointly for the sequence given.
func (in *instance) planJointly(ctx context.Context) *plan.DayPlan {
	if in.asChosen() {
		return withLaterJobs(in.listed)
	}
	d, all := in.listed, in.fixed().starts()
	plans := make([]*plan.DayPlan, 1+len(all))
	plans[0] = d
	sideBySide(all, func(r *run) { plans[1+r.number] = r.planFrom(ctx, r.number) })
	best := better(plans, in.aim)
	if best == d {
		return d
	}
	best.Turns, best.Listed, best.Floor, best.Done = among(best.Steps(), d), d.Listed, d.Floor, d.Done
	best.Sequence, best.Aim = d.Sequence, in.aim
	return best
}

// withLaterJobs is a day planned as it was chosen, with the later jobs named that moves are
// made for.
func withLaterJobs(d *plan.DayPlan) *plan.DayPlan {
	out := *d
	out.Turns = slices.Clone(d.Turns)
	for i := range out.Turns {
		if t := &out.Turns[i]; !t.Refused() {
			s := *t.Step
			t.Step = &s
		}
	}
	steps := out.Steps()
	for n, s := range steps {
		c := &s.Changeover
		c.Moves = slices.Clone(c.Moves)
		for i := range c.Moves {
			if m := &c.Moves[i]; m.Why.Cause == plan.AsChosen {
				if why := ahead(steps[n+1:], m); why.Job != "" {
					m.Why = why
				}
			}
		}
	}
	return &out
}

// starts are the runs that plan a day side by side, each from another beginning: one where
// no job leaves any choice of layout.
//
// The ground is uneven: the given layouts may suit each other already, a little annealing
// may get them out of a poor state, and where a search has left them in one that it can't
// leave, centred ones are the better start. Which is best depends on the day, and nothing
// shows it beforehand: on the demo three starts save 106.5 s of setup and 121 moves, on a
// trial 121.7 s and 23 moves, on two others nothing.
func (in *instance) starts() (all []*run) {
	for n := range mostStarts {
		if n == 0 || slices.ContainsFunc(in.given().order, in.free) {
			all = append(all, newRun(in, jointSeed, n))
		}
	}
	return all
}

// planFrom plans the sequence given from one of several beginnings: as it is, with
// layouts that suit each other better, and the same begun with centred ones.
func (r *run) planFrom(ctx context.Context, beginning int) *plan.DayPlan {
	t, ok := r.given(), true
	switch beginning {
	case 0:
		for i, s := range r.steps {
			t.positions[i].Advance(&t.positions[i+1], r.jobs[i], s.Changeover.Holders)
		}
	case 1:
		t, ok = r.layOutAnew(ctx, t)
	case 2:
		if t, ok = r.begin(true); ok {
			t, ok = r.layOutAnew(ctx, t)
		}
	}
	if !ok {
		return nil
	}
	p := r.improver()
	p.polish(ctx, t.clone()) // reinsertion leaves blades out
	p.reinsert(ctx, r.chooser, t)
	p.dropIdleMoves()
	p.plainerLayouts(ctx)
	return p.best
}

// layOutAnew is the candidate with layouts that a short search found to suit each other,
// and places to go with them. It is not ok where its layouts can't be set one after the
// other.
func (r *run) layOutAnew(ctx context.Context, t *candidate) (better *candidate, ok bool) {
	energy := r.eval.all(t, r.usual())
	if energy >= impossible {
		return t, false
	}
	rounds := min(layOutPerJob*len(t.order), mostLayOut)
	t, _ = r.anneal(t, energy, rounds, layOutWarmth, func(int, *candidate) bool { return ctx.Err() == nil })
	return t, true
}

// How long jobs are reinserted and laid out anew to plan a day jointly, and the seed of its
// chance: a sheet should be there at once.
const (
	mostStarts   = 3
	layOutPerJob = 80
	mostLayOut   = 2400
	layOutWarmth = 0.1
	jointSeed    = 1
)
