package plan

import (
	"context"
	"slices"
)

// Settle plans the jobs of a planned day in the same order, but together: with
// layouts, as far as the jobs allow, and resting places that suit the jobs to come.
// The day that it returns is never worse than the one given by the aim; where it
// isn't better it is that one. The result depends on the day and the aim alone,
// unless the context is cancelled, which ends it early.
func Settle(ctx context.Context, d *DayPlan, aim Aim) *DayPlan {
	if len(d.Steps) == 0 {
		return d
	}
	s := newSearch(d.Beam, d.Start, d.Steps[0].SetupStart, d, Effort{Aim: aim, Seed: settleSeed})
	f := finisher{seeker: s.seeker(0)}
	f.rules = rules{none: true} // the order isn't touched, whatever it breaks
	t := s.tour()
	for i := range d.Steps {
		t.stands[i].advance(&t.stands[i+1], d.Steps[i].Job, d.Steps[i].Changeover.Holders)
	}
	f.finish(ctx, t.clone())
	woven := min(settlesPerJob*len(t.order), mostSettles)
	f.weave(ctx, t.clone(), woven, true)
	if slices.ContainsFunc(t.order, f.free) {
		f.weave(ctx, f.relaid(ctx, t), woven, true)
	}
	f.restore(ctx)
	best := s.better([]*DayPlan{d, f.best})
	if best == d {
		return d
	}
	best.Refused, best.Listed, best.Floor, best.Done = d.Refused, d.Listed, d.Floor, d.Done
	best.Sequence, best.Aim = d.Sequence, aim
	return best
}

// relaid is the tour with layouts that a short search found to suit each other; places
// that were known are not.
func (f *finisher) relaid(ctx context.Context, t *tour) *tour {
	f.inOrder = true
	f.still()
	energy := f.reckon(t, 0, unreachable-1, nil, 0)
	if energy >= unreachable {
		return t
	}
	rounds := min(relaidPerJob*len(t.order), mostRelaid)
	t, _ = f.anneal(t, energy, rounds, relaidWarmth, func(int, *tour) bool { return ctx.Err() == nil })
	return t
}

// How long a day is woven and laid out anew to settle it, and the seed of its chance: a
// sheet should be there at once.
const (
	settlesPerJob = 80
	mostSettles   = 1600
	relaidPerJob  = 200
	mostRelaid    = 4000
	relaidWarmth  = 0.1
	settleSeed    = 1
)
