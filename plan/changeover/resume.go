package changeover

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/verify"
)

// Resume plans a job of a day as it has been begun or chosen, from the positions now.
//
// Of a changeover under way it plans the rest. It is Next, but goes on to the places
// that were chosen when it was begun, as long as they can be reached, and else keeps to
// the layout that is being set up, if the job still allows that one and none of its
// others takes fewer repositions: a plan that changes its mind half way would have what
// was made unmade. Where a holder was found elsewhere than thought, the places begun may
// ask for a move that nobody needs any more: then they are kept only if no other places
// of the layout take fewer repositions.
//
// Where the changeover was begun as Next plans it and moves were made as planned,
// the rest is what was left of it: a plan from here that was better in any of
// Next's aims would have been better from the beginning too, each holder moving
// once.
func (p *Planner) Resume(now *plan.Positions, clock plan.Clock, j *plan.Job) (plan.Turn, *plan.Positions) {
	return p.next(now, clock, j, func(at []plan.Length, j *plan.Job) (plan.Layout, plan.Changeover, []plan.Fault) {
		l, c, faults := p.chosen(at, j)
		if s := now.Begun; s != nil && s.Job == j.ID {
			kept := p.Beam.Lay(j, slices.Clone(s.Slits), s.Shift)
			asBegun, reached := p.goOn(at, j, kept, s.To)
			if reached && !s.Found {
				return kept, asBegun, nil
			}
			rest, wrong := p.Changeover(at, kept)
			if reached && (len(wrong) > 0 || asBegun.Repositions <= rest.Repositions) {
				return kept, asBegun, nil
			}
			worse := !reached && len(faults) == 0 && rest.Repositions > c.Repositions
			if len(wrong) == 0 && !worse && verify.Changeover(p.Beam, j, at, kept, rest) == nil {
				return kept, rest, nil
			}
		}
		return l, c, faults
	})
}

// chosen is Best, but takes the layout and the idle holders chosen earlier, where the job
// allows them and they can be set. A job that runs is laid out as the holders are.
func (p *Planner) chosen(at []plan.Length, j *plan.Job) (plan.Layout, plan.Changeover, []plan.Fault) {
	if j.State == plan.Running {
		if l, c, ok := p.running(at, j); ok {
			return l, c, nil
		}
	}
	if j.Chosen == nil || len(layouts.Faults(p.Beam, j)) > 0 || !layouts.Allows(p.Beam, j, j.Chosen) {
		return p.Best(at, j)
	}
	l := p.Beam.Lay(j, slices.Clone(j.Chosen.Slits), j.Chosen.Shift)
	if c, ok := p.asChosen(at, j, l); ok {
		return l, c, nil
	}
	c, faults := p.Changeover(at, l)
	if len(faults) > 0 {
		return p.Best(at, j)
	}
	return l, c, nil
}

// goOn is the changeover to the places that were chosen when it was begun, where
// that can still be made.
func (p *Planner) goOn(at []plan.Length, j *plan.Job, l plan.Layout, to []plan.Length) (plan.Changeover, bool) {
	return p.goTo(at, j, l, to, plan.AsBegun)
}

// goTo is the changeover of a job to places, where that can be made; the cause is that
// of moves which this changeover alone doesn't ask for.
func (p *Planner) goTo(at []plan.Length, j *plan.Job, l plan.Layout, to []plan.Length, cause plan.Cause) (plan.Changeover, bool) {
	if len(to) != len(at) || len(Misplaced(p.Beam, to)) > 0 {
		return plan.Changeover{}, false
	}
	c := p.Between(at, l, to)
	for i := range c.Moves {
		if c.Moves[i].Why.Cause == plan.ForLaterJob {
			c.Moves[i].Why = plan.Why{Cause: cause}
		}
	}
	return c, verify.Changeover(p.Beam, j, at, l, c) == nil
}

// Blocks is the number of the neighbour that is in the way of a move, with the
// holders where they stand: its holder would come nearer to it than the pitch. 0
// when the way is clear.
func Blocks(b *plan.Beam, at []plan.Length, m plan.Move) int {
	i := m.Holder - 1
	switch {
	case i < 0 || i >= len(at):
	case m.To > at[i] && i+1 < len(at) && at[i+1]-m.To < b.Pitch():
		return m.Holder + 1
	case m.To < at[i] && i > 0 && m.To-at[i-1] < b.Pitch():
		return m.Holder - 1
	}
	return 0
}

// Misplaced lists what is wrong with places of holders, by number: off the rail, out
// of their order, nearer than the pitch. Empty when holders can stand so.
func Misplaced(b *plan.Beam, at []plan.Length) []plan.Fault {
	var out []plan.Fault
	fault := func(words string, args ...any) { out = append(out, plan.NewFault("positions", words, args...)) }
	if len(at) != len(b.Holders) {
		fault("%d positions for %d holders", len(at), len(b.Holders))
	}
	for i, x := range at {
		if x < b.Rail.From || x > b.Rail.To {
			fault("holder %d at %s is off the rail, which runs from %s to %s", i+1, x, b.Rail.From, b.Rail.To)
		}
		if i == 0 {
			continue
		}
		switch before := at[i-1]; {
		case x < before:
			fault("holder %d at %s is on the operator side of holder %d at %s: holders can't pass each other", i+1, x, i, before)
		case x-before < b.Pitch():
			fault("holders %d and %d at %s and %s would be %s apart, nearer than the pitch of %s", i, i+1, before, x, plan.Unlike(x-before, b.Pitch()), plan.Unlike(b.Pitch(), x-before))
		}
	}
	return out
}
