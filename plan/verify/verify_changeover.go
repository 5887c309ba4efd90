package verify

import "bide/plan"

// The verifier's part for one changeover: where the holders end, and the moves.

// changeover: positions that can be, places that hold every cut, true counts, and
// moves that lead there one after the other.
func (v *verifier) changeover(from []plan.Length, l plan.Layout, c plan.Changeover) {
	n := len(v.beam.Holders)
	if !v.must(len(from) == n && len(c.From) == n && len(c.Holders) == n,
		"%d holders with %d positions before, %d given and %d after", n, len(from), len(c.From), len(c.Holders)) {
		return
	}
	to := make([]plan.Length, n)
	for i, h := range c.Holders {
		to[i] = h.At
		if !v.must(h.Use <= plan.Parked, "holder %d has use %d", i+1, h.Use) {
			return
		}
		v.must(c.From[i] == from[i], "holder %d starts at %s instead of %s", i+1, mm(c.From[i]), mm(from[i]))
	}
	v.spaced("before", from)
	v.spaced("after", to)
	v.cuts(from, l, c)
	v.uses(l, c)
	v.fixed(from, l, c)
	v.counts(from, c)
	if v.moves(from, c) {
		v.way(from, c.Moves)
		v.reasons(from, l, c)
	}
}

// spaced: all on the rail, in order, no two nearer than the pitch.
func (v *verifier) spaced(when string, at []plan.Length) {
	pitch := v.beam.HolderWidth + v.beam.Clearance
	for i, x := range at {
		v.must(x >= v.beam.Rail.From && x <= v.beam.Rail.To, "%s: holder %d at %s is off the rail", when, i+1, mm(x))
		if i > 0 {
			v.must(x-at[i-1] >= pitch, "%s: holders %d and %d at %s and %s are nearer than the pitch of %s",
				when, i, i+1, mm(at[i-1]), mm(x), mm(pitch))
		}
	}
}

// cuts: none where the anvil is damaged, every one held once, in order, by a holder that may cut and stands on it;
// one that did not move may stand within position_tolerance of it.
func (v *verifier) cuts(from []plan.Length, l plan.Layout, c plan.Changeover) {
	held := 0
	for m, cut := range l.Cuts {
		v.must(v.sound(cut), "cut %d at %s lies in a damaged band of the anvil", m+1, mm(cut))
	}
	for i, h := range c.Holders {
		if h.Use != plan.Cutting {
			v.must(h.Cut == 0, "idle holder %d holds cut %d", i+1, h.Cut)
			continue
		}
		held++
		if !v.must(h.Cut == held && held <= len(l.Cuts), "holder %d holds cut %d of %d where cut %d is next", i+1, h.Cut, len(l.Cuts), held) {
			continue
		}
		cut, allowed := l.Cuts[h.Cut-1], plan.Length(0)
		if h.At == from[i] {
			allowed = v.beam.PositionTolerance
		}
		v.must(apart(h.At, cut) <= allowed, "holder %d at %s is not on cut %d at %s", i+1, mm(h.At), h.Cut, mm(cut))
		v.must(v.sound(h.At), "holder %d cuts at %s, in a damaged band of the anvil", i+1, mm(h.At))
		v.must(v.beam.Holders[i] == plan.Good || v.beam.Holders[i] == plan.Stuck, "holder %d may not cut (%v)", i+1, v.beam.Holders[i])
	}
	v.must(held == len(l.Cuts), "%d of %d cuts are held", held, len(l.Cuts))
}

// sound reports whether the anvil is good at a place: the ends of a band are damaged.
func (v *verifier) sound(at plan.Length) bool {
	for _, band := range v.beam.Bad {
		if band.From <= at && at <= band.To {
			return false
		}
	}
	return true
}

// uses: idle holders where they may stand, each use by its right name. The edge of
// the web is not outside.
func (v *verifier) uses(l plan.Layout, c plan.Changeover) {
	gap := max(v.beam.ParkClearance, plan.Nanometre)
	for i, h := range c.Holders {
		if h.Use == plan.Cutting {
			continue
		}
		use := plan.Parked
		if h.At >= l.Web.From && h.At <= l.Web.To {
			use = plan.Resting
		}
		v.must(h.Use == use, "holder %d at %s is %v, not %v", i+1, mm(h.At), use, h.Use)
		v.must(v.beam.RestOverWeb || h.At <= l.Web.From-gap || h.At >= l.Web.To+gap,
			"idle holder %d at %s is over the web or within %s of it", i+1, mm(h.At), mm(gap))
	}
}

// fixed: holders that can't move did not, and those that serve no cut leave every
// cut its pitch.
func (v *verifier) fixed(from []plan.Length, l plan.Layout, c plan.Changeover) {
	pitch := v.beam.HolderWidth + v.beam.Clearance
	for i, h := range c.Holders {
		if condition := v.beam.Holders[i]; condition == plan.Good || condition == plan.NoCut {
			continue
		}
		v.must(h.At == from[i], "holder %d can't move (%v) and went from %s to %s", i+1, v.beam.Holders[i], mm(from[i]), mm(h.At))
		for m, cut := range l.Cuts {
			v.must(h.Cut == m+1 || apart(from[i], cut) >= pitch, "holder %d can't move (%v) and is %s from cut %d",
				i+1, v.beam.Holders[i], mm(apart(from[i], cut)), m+1)
		}
	}
}

// counts: the numbers reported are those of the places.
func (v *verifier) counts(from []plan.Length, c plan.Changeover) {
	repositions, travel, idle := 0, plan.Length(0), [3]int{}
	for i, h := range c.Holders {
		travel += apart(from[i], h.At)
		idle[h.Use]++
		if from[i] != h.At {
			repositions++
		}
	}
	v.must(c.Repositions == repositions, "%d repositions reported, %d made", c.Repositions, repositions)
	v.must(c.Travel == travel, "travel of %s reported, %s made", mm(c.Travel), mm(travel))
	v.must(c.Parked == idle[plan.Parked], "%d parked reported, %d are", c.Parked, idle[plan.Parked])
	v.must(c.Resting == idle[plan.Resting], "%d resting reported, %d are", c.Resting, idle[plan.Resting])
}

// moves: one for each holder whose place changes, none for another. It reports
// whether that is so.
func (v *verifier) moves(from []plan.Length, c plan.Changeover) bool {
	ok := true
	moved := make([]bool, len(from))
	for k, m := range c.Moves {
		if !v.must(m.Holder >= 1 && m.Holder <= len(from), "move %d is of holder %d", k+1, m.Holder) {
			return false
		}
		i := m.Holder - 1
		ok = v.must(!moved[i], "holder %d moves twice", m.Holder) && ok
		ok = v.must(m.From != m.To, "holder %d is moved to where it is", m.Holder) && ok
		ok = v.must(m.From == from[i] && m.To == c.Holders[i].At, "holder %d moves from %s to %s instead of from %s to %s",
			m.Holder, mm(m.From), mm(m.To), mm(from[i]), mm(c.Holders[i].At)) && ok
		moved[i] = true
	}
	for i, h := range c.Holders {
		ok = v.must(moved[i] || h.At == from[i], "holder %d has no move from %s to %s", i+1, mm(from[i]), mm(h.At)) && ok
	}
	return ok
}

// way: made one after the other, no move brings its holder nearer than the pitch
// to a neighbour or past one. Its path is straight, so its far end decides.
func (v *verifier) way(from []plan.Length, moves []plan.Move) {
	pitch := v.beam.HolderWidth + v.beam.Clearance
	at := append([]plan.Length(nil), from...)
	for k, m := range moves {
		i := m.Holder - 1
		low, high := min(m.From, m.To), max(m.From, m.To)
		if i > 0 {
			v.must(low-at[i-1] >= pitch, "move %d: holder %d comes to %s, holder %d is at %s", k+1, m.Holder, mm(low), i, mm(at[i-1]))
		}
		if i < len(at)-1 {
			v.must(at[i+1]-high >= pitch, "move %d: holder %d comes to %s, holder %d is at %s", k+1, m.Holder, mm(high), i+2, mm(at[i+1]))
		}
		at[i] = m.To
	}
}

// reasons: each move's reason is true, number by number.
func (v *verifier) reasons(from []plan.Length, l plan.Layout, c plan.Changeover) {
	for _, m := range c.Moves {
		h, w := c.Holders[m.Holder-1], m.Why
		v.must(h.Use != plan.Cutting || w.Cause == plan.ToCut, "holder %d moves to cut %d and is said to move for another reason", m.Holder, h.Cut)
		v.must(v.reason(m, h, from, l, c), "holder %d moves from %s to %s: the reason is not true: %+v", m.Holder, mm(m.From), mm(m.To), w)
	}
}

// reason reports whether the reason for a move is true and names nothing that it
// does not need. Whether a later job cuts at a place is for the day to check.
func (v *verifier) reason(m plan.Move, h plan.Stand, from []plan.Length, l plan.Layout, c plan.Changeover) bool {
	w, pitch, idle := m.Why, v.beam.HolderWidth+v.beam.Clearance, h.Use != plan.Cutting
	switch w.Cause {
	case plan.ToCut:
		return !idle && w == plan.Why{Cause: plan.ToCut, Cut: h.Cut}
	case plan.NearCut:
		return idle && w.Cut >= 1 && w.Cut <= len(l.Cuts) && w.Distance == apart(m.From, l.Cuts[w.Cut-1]) && w.Distance < pitch &&
			w == plan.Why{Cause: plan.NearCut, Cut: w.Cut, Distance: w.Distance, Least: pitch}
	case plan.OverWeb:
		outside := max(l.Web.From-m.From, m.From-l.Web.To) // negative over the web
		least := max(v.beam.ParkClearance, plan.Nanometre) // on the edge is not outside
		return idle && !v.beam.RestOverWeb && outside < least && w == plan.Why{Cause: plan.OverWeb, Distance: outside, Least: least}
	case plan.MakesRoom, plan.MakesWay:
		return idle && v.giveWay(m, from, c)
	case plan.AsBegun, plan.AsChosen:
		return idle && w == plan.Why{Cause: w.Cause}
	case plan.ForLaterJob:
		return idle && w.Job != "" && w == plan.Why{Cause: plan.ForLaterJob, Job: w.Job, Cut: w.Cut} // the day says whether it is so
	}
	return false
}

// giveWay reports whether the neighbour named comes that near to where the holder
// stood, or goes that far past it.
func (v *verifier) giveWay(m plan.Move, from []plan.Length, c plan.Changeover) bool {
	w, pitch := m.Why, v.beam.HolderWidth+v.beam.Clearance
	n := w.Holder - 1
	if n < 0 || n >= len(from) || apart(plan.Length(n), plan.Length(m.Holder-1)) != 1 {
		return false
	}
	past := m.From - c.Holders[n].At // how far a neighbour from above went past
	if w.Holder < m.Holder {
		past = -past
	}
	if w.Cause == plan.MakesRoom {
		return past > -pitch && past < pitch && w == plan.Why{Cause: plan.MakesRoom, Holder: w.Holder, Distance: apart(past, 0)}
	}
	return past >= pitch && w == plan.Why{Cause: plan.MakesWay, Holder: w.Holder, Distance: past}
}

// apart is the distance between two places.
func apart(a, b plan.Length) plan.Length { return max(a-b, b-a) }
