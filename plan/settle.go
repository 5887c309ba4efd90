package plan

import "context"

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
	f.weave(ctx, t, min(settlesPerJob*len(t.order), mostSettles), true)
	f.restore(ctx)
	best := s.better([]*DayPlan{d, f.best})
	if best == d {
		return d
	}
	best.Refused, best.Listed, best.Floor, best.Done = d.Refused, d.Listed, d.Floor, d.Done
	best.Sequence, best.Aim = d.Sequence, aim
	return best
}

// How long a day is woven to settle it, and the seed of its chance: a sheet should be
// there at once.
const (
	settlesPerJob = 80
	mostSettles   = 1600
	settleSeed    = 1
)
