package changeover

import (
	"bide/plan"
	"bide/plan/changeover/route"
)

// order puts the moves of a changeover in an order in which each can be made as it
// comes, straight and a pitch clear of its neighbours, with the reason for each.
func (p *Planner) order(c *plan.Changeover) []plan.Move {
	holders := route.Quickest(&p.Beam.Drive, p.Pitch, c)
	moves := make([]plan.Move, 0, len(holders))
	for _, h := range holders {
		moves = append(moves, plan.Move{Holder: h + 1, From: c.From[h], To: c.Holders[h].At, Why: p.why(c, h)})
	}
	return moves
}

// OrderFast orders the moves like order, but leaves out reasons and, for one
// carriage, what acceleration would still gain.
func (p *Planner) OrderFast(c *plan.Changeover) {
	for _, h := range route.Shortest(&p.Beam.Drive, p.Pitch, c) {
		c.Moves = append(c.Moves, plan.Move{Holder: h + 1, From: c.From[h], To: c.Holders[h].At})
	}
}

// why is the reason for holder i's move (counted from 0). In a plan with the
// fewest repositions an idle holder never moves without one: could it have stayed,
// the plan would have a reposition less.
func (p *Planner) why(c *plan.Changeover, i int) plan.Why {
	s, h, x := &p.Scene, c.Holders[i], c.From[i]
	if h.Use == plan.Cutting {
		return plan.Why{Cause: plan.ToCut, Cut: h.Cut}
	}
	m := s.stays[i].before
	if m < len(s.cuts) && (m == 0 || s.cuts[m]-x <= x-s.cuts[m-1]) {
		m++ // the nearer cut, from 1
	}
	if m > 0 && (s.cuts[m-1]-x).Abs() < p.Pitch && p.servedNear(c, i, m) {
		return plan.Why{Cause: plan.NearCut, Cut: m, Distance: (s.cuts[m-1] - x).Abs(), Least: p.Pitch}
	}
	if !s.MayIdle(x) {
		return plan.Why{Cause: plan.OverWeb, Distance: max(s.web.From-x, x-s.web.To), Least: s.web.From - s.idle.From}
	}
	// How far each neighbour's new place is from where this one stood, on its side.
	gaps := [2]plan.Length{p.Pitch, p.Pitch}
	if i+1 < len(c.Holders) {
		gaps[0] = c.Holders[i+1].At - x
	}
	if i > 0 {
		gaps[1] = x - c.Holders[i-1].At
	}
	for side, n := range [2]int{i + 2, i} {
		switch gap := gaps[side]; {
		case gap >= p.Pitch:
		case gap.Abs() < p.Pitch:
			return plan.Why{Cause: plan.MakesRoom, Holder: n, Distance: gap.Abs()}
		default:
			return plan.Why{Cause: plan.MakesWay, Holder: n, Distance: -gap}
		}
	}
	return plan.Why{Cause: plan.ForLaterJob}
}

// servedNear reports whether the holder that serves cut m stands nearer than a
// pitch to where holder i stood: with position_tolerance it may stand off its cut.
func (p *Planner) servedNear(c *plan.Changeover, i, m int) bool {
	for _, h := range c.Holders {
		if h.Cut == m {
			return (h.At - c.From[i]).Abs() < p.Pitch
		}
	}
	return false
}
