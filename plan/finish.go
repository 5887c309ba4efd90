package plan

import "slices"

// Finishing a tour: its resting places are settled against both neighbours, and it
// becomes a plan with moves in order and reasons.

// finish plans the tour's day for good: looking ahead or not, with the places as
// they come or settled against both neighbours, whichever is best.
func (k *seeker) finish(t *tour) *DayPlan {
	clear(k.redo)
	k.timed = true
	var best *DayPlan
	var least score
	keep := func(d *DayPlan) (better bool) {
		sc := scoreOf(d.Steps)
		if better = best == nil || sc.compare(least, k.aim) < 0; better {
			best, least = d, sc
		}
		return better
	}
	for _, k.blind = range [2]bool{false, true} {
		day := t.clone()
		if k.reckon(day, 0, unreachable-1) == unreachable {
			continue
		}
		keep(k.write(day))
		for range mostSweeps {
			if k.sweep(day); !keep(k.write(day)) {
				break
			}
		}
	}
	return best
}

// mostSweeps bounds how often the places of a day are settled over; a few suffice.
const mostSweeps = 12

// sweep settles each turn's places again, from the last to the first, against what
// stands before it and what is to stand after it: for the two changeovers together
// exactly the fewest repositions, then parked, then travel.
func (k *seeker) sweep(t *tour) {
	n := len(t.order)
	for turn := n - 1; turn >= 0; turn-- {
		j := t.order[turn]
		k.p.set(t.stands[turn].At, k.p.beam.web(k.jobs[j].Web), t.choices[j].cuts)
		k.p.keep.loose(&k.p.now)
		k.view.coming, k.view.then, k.view.swaps = k.view.coming[:0], nil, nil
		if turn+1 < n {
			k.view.then = t.stands[turn+2].At
		}
		q := k.p.places.solve(&k.p.now, &k.p.keep, &k.view)
		if q < 0 {
			continue
		}
		for i := range t.stands[turn+1].At {
			c := &k.p.places.list[q]
			t.stands[turn+1].At[i] = c.at
			q = int(c.next)
		}
	}
}

// write makes a plan of the tour from the places in its standings.
func (k *seeker) write(t *tour) *DayPlan {
	d := &DayPlan{Beam: k.p.beam, Start: &t.stands[0]}
	now, clock := &t.stands[0], t.clocks[0]
	for turn, j := range t.order {
		job := k.jobs[j]
		l := k.p.beam.Lay(job, t.choices[j].slits, t.choices[j].shift)
		c := k.p.between(now.At, l, t.stands[turn+1].At)
		s := Step{Job: job, Layout: l, Changeover: c, SetupStart: clock}
		s.Setup = k.p.beam.setupTime(now, job, &c)
		s.clock()
		stands := &Standing{}
		now.advance(stands, job, c.Holders)
		stands.Recorded = s.RunEnd
		d.Steps = append(d.Steps, s)
		now, clock = stands, s.RunEnd
	}
	d.foresee()
	d.Totals = Sum(d.Steps)
	return d
}

// foresee names, for each move without a reason of its own at its changeover, the
// later job that it is made for: the first at which its holder cuts where it now
// stands, else the last at which it still stands there.
func (d *DayPlan) foresee() {
	for turn := range d.Steps {
		for m := range d.Steps[turn].Changeover.Moves {
			if move := &d.Steps[turn].Changeover.Moves[m]; move.Why.Cause == StandsAhead {
				move.Why = d.ahead(turn, move)
			}
		}
	}
}

func (d *DayPlan) ahead(turn int, move *Move) Why {
	w := Why{Cause: StandsAhead}
	for _, s := range d.Steps[turn+1:] {
		h := s.Changeover.Holders[move.Holder-1]
		if h.At != move.To {
			break
		}
		w.Job = s.Job.ID
		if w.Cut = h.Cut; h.Use == Cutting {
			break
		}
	}
	return w
}

// loose fills k for a scene in which any holder may move or stay.
func (k *keep) loose(s *scene) {
	k.may, k.must = k.may[:0], k.must[:0]
	for i, c := range s.condition {
		k.may = append(k.may, s.stays[i].can)
		k.must = append(k.must, !c.Moves())
	}
}

// between is the changeover from places to the places of a layout, with uses,
// moves and reasons.
func (p *Planner) between(from []Length, l Layout, to []Length) Changeover {
	p.set(from, l.Web, l.Cuts)
	c := Changeover{From: slices.Clone(from), Holders: make([]Stand, 0, len(to))}
	cut := 0
	for i, at := range to {
		h := Stand{At: at}
		switch {
		case cut < len(l.Cuts) && abs(at-l.Cuts[cut]) <= p.beam.InPlace && p.beam.Holders[i].Cuts():
			cut++
			h.Use, h.Cut = Cutting, cut
		case p.now.over(at):
			h.Use = Resting
		default:
			h.Use = Parked
		}
		c.count(h, from[i])
	}
	c.Moves = p.order(&c)
	return c
}
