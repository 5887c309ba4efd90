package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"context"
	"slices"
)

// Settle plans the jobs of a planned day in the same order, but together: with
// layouts, as far as the jobs allow, and resting places that suit the jobs to come.
// The day that it returns is never worse than the one given by the aim; where it
// isn't better it is that one. A layout chosen for a job stays, and a day that is all as
// it was chosen stays as it is. The result depends on the day and the aim alone, unless
// the context is cancelled, which ends it early.
func Settle(ctx context.Context, d *plan.DayPlan, aim plan.Aim) *plan.DayPlan {
	steps := d.Steps()
	if len(steps) == 0 {
		return d
	}
	return newSearch(d.Beam, d.Start, steps[0].SetupStart, d, Effort{Aim: aim}).settle(ctx)
}

// settle is Settle for the listed day.
func (s *search) settle(ctx context.Context) *plan.DayPlan {
	if s.asChosen() {
		return foreseen(s.listed)
	}
	d, all := s.listed, s.settlers()
	plans := make([]*plan.DayPlan, 1+len(all))
	plans[0] = d
	s.each(all, func(r *starter) {
		f := finisher{seeker: r.seeker}
		f.settleFrom(ctx, s, r.number)
		plans[1+r.number] = f.best
	})
	best := s.better(plans)
	if best == d {
		return d
	}
	best.Turns, best.Listed, best.Floor, best.Done = among(best.Steps(), d), d.Listed, d.Floor, d.Done
	best.Sequence, best.Aim = d.Sequence, s.effort.Aim
	return best
}

// foreseen is a day planned as it was chosen, with the later jobs named that moves are
// made for.
func foreseen(d *plan.DayPlan) *plan.DayPlan {
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

// settlers are those that settle a day side by side: one where no job leaves any choice
// of layout.
func (s *search) settlers() (all []*starter) {
	for n := range mostSettlers {
		k := s.seeker(settleSeed, n)
		k.inOrder, k.rules = true, plan.Rules{None: true} // the order isn't touched, whatever it breaks
		for i, st := range s.steps {
			l := &st.Layout
			k.laid[i] = s.jobs[i].Chosen.Lays(l.Slits, l.Shift)
		}
		if n == 0 || slices.ContainsFunc(s.tour().order, k.free) {
			all = append(all, &starter{number: n, seeker: k})
		}
	}
	return all
}

// settleFrom settles the day given from one of several beginnings: as it is, with
// layouts that suit each other better, and the same begun with centred ones. None of
// them is the best on all days.
func (f *finisher) settleFrom(ctx context.Context, s *search, beginning int) {
	t, ok := s.tour(), true
	switch beginning {
	case 0:
		for i, st := range s.steps {
			t.stands[i].Advance(&t.stands[i+1], s.jobs[i], st.Changeover.Holders)
		}
	case 1:
		t, ok = f.relaid(ctx, t)
	case 2:
		if t, ok = f.begin(s, true); ok {
			t, ok = f.relaid(ctx, t)
		}
	}
	if !ok {
		return
	}
	f.finish(ctx, t.clone()) // weaving leaves blades out
	f.weave(ctx, t, min(settlesPerJob*len(t.order), mostSettles), true)
	f.straighten()
	f.restore(ctx)
}

// relaid is the tour with layouts that a short search found to suit each other, and
// places to go with them. It is not ok where its layouts can't be set one after the
// other.
func (f *finisher) relaid(ctx context.Context, t *tour) (better *tour, ok bool) {
	f.still()
	energy := f.reckon(t, 0, changeover.Unreachable-1, nil, 0)
	if energy >= changeover.Unreachable {
		return t, false
	}
	rounds := min(relaidPerJob*len(t.order), mostRelaid)
	t, _ = f.anneal(t, energy, rounds, relaidWarmth, func(int, *tour) bool { return ctx.Err() == nil })
	return t, true
}

// How long a day is woven and laid out anew to settle it, and the seed of its chance: a
// sheet should be there at once.
const (
	mostSettlers  = 3
	settlesPerJob = 40
	mostSettles   = 1200
	relaidPerJob  = 80
	mostRelaid    = 2400
	relaidWarmth  = 0.1
	settleSeed    = 1
)
