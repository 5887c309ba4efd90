package route

import (
	"slices"

	"bide/plan"
)

// chain is a run of moves in which each holder waits for the next: first to last
// by number, all bound the same way. Chains lie on stretches of rail that do not
// overlap.
type chain struct {
	first, last int       // holders, counted from 0
	up          bool      // bound for the drive side, so made from the last to the first
	reach       plan.Span // from the outermost place left or reached to the other
}

// chainsOf finds the chains of moves along the beam. O(H).
//
// A holder bound for the drive side waits for its neighbour there only if it is to
// end beyond the pitch in front of where that one stands now; mirrored to the
// operator side. One that waits goes the same way as the one it waits for: if the
// neighbour stayed or came nearer, the new places would be nearer than a pitch. So
// waits form chains that run one way along the beam and never a circle: one
// straight move a holder is always enough.
func chainsOf(c *plan.Changeover, pitch plan.Length) []chain {
	var out []chain
	for i := 0; i < len(c.Holders); i++ {
		from, to := c.From[i], c.Holders[i].At
		if from == to {
			continue
		}
		w := chain{first: i, last: i, up: to > from}
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

// inOrder lists the chain's holders in the order in which they must be moved.
func (w chain) inOrder() []int {
	out := make([]int, 0, w.last-w.first+1)
	for i := w.first; i <= w.last; i++ {
		out = append(out, i)
	}
	if w.up {
		slices.Reverse(out)
	}
	return out
}

// along lists the holders of the chains up the beam.
func along(chains []chain) (holders []int) {
	for _, w := range chains {
		holders = append(holders, w.inOrder()...)
	}
	return holders
}
