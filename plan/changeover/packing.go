package changeover

import "bide/plan"

// Counting when some holders may not cut or not move, when idle ones may not rest
// over the web, or when a holder near a cut may serve it. Then room alone doesn't
// decide, and the beam is packed from the operator side instead.

// packing packs holders one by one. For each number of cuts served so far it keeps
// the places that the last holder can have reached and the most stays on the way.
// Of two ways with the same number of cuts, one that stands further to the
// operator side with no fewer stays can do all the other can, since what follows
// only asks for a pitch between neighbours; so a front of ways that beat each
// other in one of the two is enough. O(H k F) for k cuts and fronts of length F,
// which never exceeds H + 1; over the web fronts are short, since little fits
// between two cuts.
type packing struct {
	ways  [][]way // by cuts served
	least int     // fewest cuts served by any of them
	stays []int   // by holder: most stays up to and with it, when it stays; never when it can't
}

// way is one way to have set the holders so far: the last one's place, and how
// many stayed. Fronts are sorted by place, and so by stays.
type way struct {
	at    plan.Length
	stays int
}

// most is the most holders of the scene that can stay; it leaves r.stays filled.
func (r *packing) most(s *Scene) (stays int, ok bool) {
	r.start(s)
	for i := range s.At {
		r.stays = append(r.stays, never)
		// Before holder i at most i cuts are served, and enough holders that may
		// cut must follow for the rest.
		goods := s.goodsBefore[len(s.At)] - s.goodsBefore[i+1]
		least := max(0, len(s.cuts)-goods)
		for m := min(i+1, len(s.cuts)); m >= least; m-- { // from above: the ways with a cut less are still those before
			r.step(s, i, m)
		}
		for ; r.least < least; r.least++ {
			r.ways[r.least] = r.ways[r.least][:0]
		}
	}
	last := r.ways[len(s.cuts)]
	if len(last) == 0 {
		return 0, false
	}
	return last[len(last)-1].stays, true
}

// start empties the fronts but for the one way to have set no holder.
func (r *packing) start(s *Scene) {
	for len(r.ways) <= len(s.cuts) {
		r.ways = append(r.ways, nil)
	}
	for m := range r.ways {
		r.ways[m] = r.ways[m][:0]
	}
	r.ways[0] = append(r.ways[0], way{at: s.Rail.From - s.pitch})
	r.stays, r.least = r.stays[:0], 0
}

// step makes the front for m cuts served before holder i the one after it.
func (r *packing) step(s *Scene, i, m int) {
	c, st, stays, stay := s.condition[i], &s.stays[i], 0, false
	if st.can && st.after == m {
		stays, stay = best(r.ways[st.before], s.At[i]-s.pitch)
	}
	front := r.ways[m]
	if !c.Moves() {
		front = front[:0]
	} else {
		if len(front) > 0 {
			front = s.idled(front, m)
		}
		if m > 0 && len(r.ways[m-1]) > 0 && c.Cuts() {
			if stays, ok := best(r.ways[m-1], s.cuts[m-1]-s.pitch); ok {
				front = add(front, way{s.cuts[m-1], stays})
			}
		}
	}
	if stay {
		r.stays[i] = stays + 1
		front = add(front, way{s.At[i], stays + 1})
	}
	r.ways[m] = front
}

// idled makes a front the one after one more holder that stands idle, m cuts served
// before it, as far to the operator side as it can.
func (s *Scene) idled(front []way, m int) []way {
	to := s.Rail.To
	if m < len(s.cuts) { // room for the holder that serves the next cut
		to = min(to, s.cuts[m]+s.tolerance-s.pitch)
	}
	n := 0
	for _, w := range front {
		at := w.at + s.pitch
		if !s.MayIdle(at) {
			at = s.idle.To
		}
		if at > to {
			break
		}
		if n > 0 && front[n-1].at == at { // both at the park edge
			n--
		}
		front[n] = way{at, w.stays}
		n++
	}
	return front[:n]
}

// best is the most stays of the ways that reach no further than to.
func best(front []way, to plan.Length) (stays int, ok bool) {
	for i := len(front) - 1; i >= 0; i-- {
		if front[i].at <= to {
			return front[i].stays, true
		}
	}
	return 0, false
}

// add puts a way into a front and drops those it beats.
func add(front []way, w way) []way {
	lo := len(front)
	for lo > 0 && front[lo-1].at >= w.at {
		lo--
	}
	if lo > 0 && front[lo-1].stays >= w.stays {
		return front
	}
	hi := lo // front[lo:hi] stand further out with no more stays
	for hi < len(front) && front[hi].stays <= w.stays {
		hi++
	}
	if lo < len(front) && hi == lo && front[lo].at == w.at {
		return front
	}
	tail := len(front) - hi
	front = append(front, way{})
	if hi == lo {
		copy(front[lo+1:], front[lo:])
	} else {
		copy(front[lo+1:], front[hi:hi+tail])
		front = front[:lo+1+tail]
	}
	front[lo] = w
	return front
}
