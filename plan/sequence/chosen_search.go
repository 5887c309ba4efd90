package sequence

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover"
)

// A day that a search has found is saved as choices in the shop's files. Planned again it must
// come out as it was found, to the last holder: people have seen it, printed it and set blades
// out for it, and another plan of equal cost would only confuse them. So what is still as it
// was chosen is left alone, and everything else is planned anew.

// asChosen reports whether every job of the day is planned as it was chosen, for what it
// was, and costs no more, or is planned as it was begun; and whether each move that is
// made ahead is made for a job that still comes.
func (s *instance) asChosen() bool {
	if s.aim != s.listed.Aim {
		return false
	}
	chosen := false
	for i, st := range s.steps {
		if s.pinned[i] {
			continue
		}
		c := st.Job.Chosen
		if chosen = c != nil && c.Idle != nil && c.Lays(st.Layout.Slits, st.Layout.Shift); !chosen {
			return false
		}
		to, ok := changeover.IdlePlaces(c.Idle, s.beam, st.Changeover.From, st.Layout.Cuts)
		if !ok || st.Changeover.Repositions > c.Idle.Moves || st.Setup.Total() > c.Idle.Setup || !slices.EqualFunc(st.Changeover.Holders, to, func(h plan.Stand, at plan.Length) bool { return h.At == at }) {
			return false
		}
	}
	return chosen && !movesForNothing(s.listed)
}

// movesForNothing reports whether an idle holder moves as it was chosen to, and could as
// well have stayed for all the jobs that it then stands still for: the one that it was
// moved for may be gone.
func movesForNothing(d *plan.DayPlan) bool {
	p, err := changeover.NewPlanner(d.Beam)
	if err != nil {
		return false
	}
	steps := d.Steps()
	for i, s := range steps {
		for _, m := range s.Changeover.Moves {
			if m.Why.Cause == plan.AsChosen && couldStay(p, steps[i:], m) {
				return true
			}
		}
	}
	return false
}

// couldStay reports whether the holder of a move at the first step would have been in
// nobody's way had it not moved, as long as it doesn't move again.
func couldStay(p *changeover.Planner, steps []*plan.Step, m plan.Move) bool {
	for _, s := range steps {
		c, l := &s.Changeover, &s.Layout
		h := m.Holder - 1
		if c.Holders[h].At != m.To {
			break
		}
		p.Set(c.From, l.Web, l.Cuts)
		switch {
		case c.Holders[h].Use == plan.Cutting || !p.Scene.MayIdle(m.From),
			h > 0 && m.From-c.Holders[h-1].At < p.Pitch,
			h+1 < len(c.Holders) && c.Holders[h+1].At-m.From < p.Pitch:
			return false
		}
	}
	return true
}
