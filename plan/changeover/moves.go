package changeover

import (
	"bide/plan"
	"slices"
)

// walk is a chain of moves in which each holder waits for the next: first to last
// by number, all bound the same way. Walks lie on stretches of rail that do not
// overlap.
type walk struct {
	first, last int       // holders, counted from 0
	up          bool      // bound for the drive side, so made from the last to the first
	reach       plan.Span // from the outermost place left or reached to the other
}

// walks finds the chains of moves along the beam. O(H).
//
// A holder bound for the drive side waits for its neighbour there only if it is to
// end beyond the pitch in front of where that one stands now; mirrored to the
// operator side. One that waits goes the same way as the one it waits for: if the
// neighbour stayed or came nearer, the new places would be nearer than a pitch. So
// waits form chains that run one way along the beam and never a circle: one
// straight move a holder is always enough.
func walks(c *plan.Changeover, pitch plan.Length) []walk {
	var out []walk
	for i := 0; i < len(c.Holders); i++ {
		from, to := c.From[i], c.Holders[i].At
		if from == to {
			continue
		}
		w := walk{first: i, last: i, up: to > from}
		for n := i + 1; n < len(c.Holders); n++ {
			if w.up && c.Holders[n-1].At <= c.From[n]-pitch || !w.up && c.Holders[n].At >= c.From[n-1]+pitch {
				break
			}
			w.last = n
		}
		if w.up {
			w.reach = plan.Span{From: from, To: c.Holders[w.last].At}
		} else {
			w.reach = plan.Span{From: to, To: c.From[w.last]}
		}
		out = append(out, w)
		i = w.last
	}
	return out
}

// inOrder lists the walk's holders in the order in which they must be moved.
func (w walk) inOrder() []int {
	out := make([]int, 0, w.last-w.first+1)
	for i := w.first; i <= w.last; i++ {
		out = append(out, i)
	}
	if w.up {
		slices.Reverse(out)
	}
	return out
}

// order puts the moves of a changeover in an order in which each can be made as it
// comes, straight and a pitch clear of its neighbours: for one carriage the order
// of its route, else along the beam.
func (p *Planner) order(c *plan.Changeover) []plan.Move {
	chains := walks(c, p.Pitch)
	var holders []int
	if p.Beam.Drive.Kind == plan.Shuttle {
		holders = routeOf(&p.Beam.Drive, c, chains)
	} else {
		holders = along(chains)
	}
	moves := make([]plan.Move, 0, len(holders))
	for _, h := range holders {
		moves = append(moves, plan.Move{Holder: h + 1, From: c.From[h], To: c.Holders[h].At, Why: p.why(c, h)})
	}
	return moves
}

// Hasten orders the moves like order, but leaves out reasons and, for one
// carriage, what acceleration would still gain.
func (p *Planner) Hasten(c *plan.Changeover) {
	chains := walks(c, p.Pitch)
	var holders []int
	if p.Beam.Drive.Kind == plan.Shuttle {
		holders = shortest(&p.Beam.Drive, chains)
	} else {
		holders = along(chains)
	}
	for _, h := range holders {
		c.Moves = append(c.Moves, plan.Move{Holder: h + 1, From: c.From[h], To: c.Holders[h].At})
	}
}

// along lists the holders of the chains up the beam.
func along(chains []walk) (holders []int) {
	for _, w := range chains {
		holders = append(holders, w.inOrder()...)
	}
	return holders
}

// why is the reason for holder i's move (counted from 0). In a plan with the
// fewest repositions an idle holder never moves without one: could it have stayed,
// the plan would have a reposition less.
func (p *Planner) why(c *plan.Changeover, i int) plan.Why {
	s, h, x := &p.Now, c.Holders[i], c.From[i]
	if h.Use == plan.Cutting {
		return plan.Why{Cause: plan.GoesToCut, Cut: h.Cut}
	}
	m := s.stays[i].before
	if m < len(s.cuts) && (m == 0 || s.cuts[m]-x <= x-s.cuts[m-1]) {
		m++ // the nearer cut, from 1
	}
	if m > 0 && plan.Abs(s.cuts[m-1]-x) < p.Pitch && p.servedNear(c, i, m) {
		return plan.Why{Cause: plan.NearCut, Cut: m, Distance: plan.Abs(s.cuts[m-1] - x)}
	}
	if !s.MayIdle(x) {
		return plan.Why{Cause: plan.OverWeb, Distance: max(s.web.From-x, x-s.web.To)}
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
		case plan.Abs(gap) < p.Pitch:
			return plan.Why{Cause: plan.MakesRoom, Holder: n, Distance: plan.Abs(gap)}
		default:
			return plan.Why{Cause: plan.MakesWay, Holder: n, Distance: -gap}
		}
	}
	return plan.Why{Cause: plan.StandsAhead}
}

// servedNear reports whether the holder that serves cut m stands nearer than a
// pitch to where holder i stood: with position_tolerance it may stand off its cut.
func (p *Planner) servedNear(c *plan.Changeover, i, m int) bool {
	for _, h := range c.Holders {
		if h.Cut == m {
			return plan.Abs(h.At-c.From[i]) < p.Pitch
		}
	}
	return false
}
