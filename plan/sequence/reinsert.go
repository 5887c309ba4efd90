package sequence

import (
	"context"
	"math"
	"slices"

	"bide/plan"
)

// Reinsertion: improving a day whose places are all known, one job at a time (a large
// neighbourhood search: Shaw 1998, Lecture Notes in Computer Science 1520:417,
// doi:10.1007/3-540-49481-2_30, with one job taken out at a time). What it
// costs to go from one job to the next depends on the places that both have, so a
// day is a way through its jobs whose length changes only where something changes:
// a run of jobs set elsewhere keeps its places, and a job taken out and set between
// two others gets the places that cost least between these (the two changeovers
// together exactly: see evaluator.between). Blades are left out, and counted
// when the day is written; so a day that gains here may lose when its blades are counted.
//
// Sweeping sets one job's holders at a time and keeps every layout; here a job gets another
// layout, and another number in the sequence, together with the places that go with it. That
// wins 8.5 s and 7 moves on one trial. On another the day ends 1.2 s worse than without it:
// the improver keeps the best of what it has written, but not what perturbing would have found
// had nothing been reinserted. Perturbing that day too, with a chance of its own, wins the
// 1.2 s back and takes a tenth longer; of the four other days planned in their order none
// changes, of five searched one, by 0.4 s.

// How long and how warm jobs are reinserted, in rounds for each job and in moves.
const (
	reinsertsPerJob = 160
	reinsertHottest = 4.0
	reinsertColdest = 0.3
)

// reinserter is one day whose jobs are being reinserted.
type reinserter struct {
	*chooser
	eval    *evaluator
	day     *candidate // where it began
	order   []int
	choices []choice        // by job
	places  [][]plan.Length // by job, and behind the last those at the start
	costs   [][]plan.Score  // from one to the next, lateness left out; unknown where repositions are below 0
	into    []plan.Length
	held    [][2]plan.Score // costs to and from a job, while others are tried
}

// reinsert improves the candidate for a number of rounds; the order stays where it is
// locked. With position_tolerance above 0 a place is good only behind the one it was
// chosen for, and nothing is done.
func reinsert(ctx context.Context, eval *evaluator, c *chooser, t *candidate, rounds int, locked bool) *candidate {
	n := len(t.order)
	if c.beam.PositionTolerance > 0 || n == 0 {
		return t
	}
	w := newReinserter(eval, c, t)
	best, now := t.clone(), w.energy(w.order)
	least, cold := now, reinsertColdest*float64(c.move.Milliseconds())
	for round := range rounds {
		if round%32 == 0 && ctx.Err() != nil {
			break
		}
		warm := cold * math.Pow(reinsertHottest/reinsertColdest, 1-float64(round)/float64(rounds))
		limit := now + c.worse(warm)
		if locked || n < 3 || c.chance.IntN(10) >= 4 {
			now = w.replace(now, limit, locked)
		} else {
			now = w.reorder(now, limit)
		}
		if now < least {
			least = now
			w.save(best)
		}
	}
	return best
}

func newReinserter(eval *evaluator, c *chooser, t *candidate) *reinserter {
	n := len(t.order)
	w := &reinserter{
		chooser: c, eval: eval, day: t, order: slices.Clone(t.order), choices: slices.Clone(t.choices),
		places: make([][]plan.Length, n+1), costs: make([][]plan.Score, n+1),
		into: make([]plan.Length, len(t.positions[0].At)), held: make([][2]plan.Score, n+1),
	}
	w.places[n] = t.positions[0].At
	for turn, j := range t.order {
		w.places[j] = slices.Clone(t.positions[turn+1].At)
	}
	for u := range w.costs {
		w.costs[u] = make([]plan.Score, n)
		for j := range w.costs[u] {
			w.costs[u][j].Repositions = -1
		}
	}
	return w
}

// save writes the present day into a candidate; only places, order and layouts.
func (w *reinserter) save(t *candidate) {
	copy(t.order, w.order)
	copy(t.choices, w.choices)
	for turn, j := range w.order {
		t.positions[turn+1].At = append(t.positions[turn+1].At[:0], w.places[j]...)
	}
}

// energy is that of the day in an order.
func (w *reinserter) energy(order []int) int64 {
	sum, last, clock := plan.Score{}, len(w.order), w.day.clocks[0]
	for _, j := range order {
		c := w.cost(last, j)
		sum, last = sum.Plus(c), j
		if w.due {
			clock = w.run(&sum, clock, j, c.Setup)
		}
	}
	return energy(sum, w.aim, w.move)
}

// cost is what it costs to come to job j from the positions of u, or at the start.
func (w *reinserter) cost(u, j int) plan.Score {
	c := &w.costs[u][j]
	if c.Repositions >= 0 {
		return *c
	}
	*c = plan.Score{Repositions: differing(w.places[u], w.places[j])}
	switch {
	case w.aim == plan.AimMinutes || w.due:
		l := w.beam.Lay(w.jobs[j], w.choices[j].slits, w.choices[j].shift)
		change := w.eval.p.Between(w.places[u], l, w.places[j])
		before := w.day.positions[0]
		if u < len(w.order) {
			before = jobLeft(w.jobs[u])
		}
		before.Blades = nil
		c.Setup = w.beam.SetupTime(&before, w.jobs[j], &change).Total()
	case u < len(w.order):
		c.Setup = w.setup[u][j]
	default:
		c.Setup = w.first[j]
	}
	return *c
}

// reorder sets a run of jobs elsewhere or turns one round, their places as they
// are, and keeps that within the limit. It returns the day's energy.
func (w *reinserter) reorder(now, limit int64) int64 {
	n := len(w.order)
	a, b := w.chance.IntN(n), w.chance.IntN(n)
	next := slices.Clone(w.order)
	if w.chance.IntN(3) == 0 {
		slices.Reverse(next[min(a, b) : max(a, b)+1])
	} else {
		run := slices.Clone(next[a : a+1+w.chance.IntN(min(4, n-a))])
		rest := slices.Delete(next, a, a+len(run))
		next = slices.Insert(rest, w.chance.IntN(len(rest)+1), run...)
	}
	if !w.rules.Kept(next) {
		return now
	}
	e := w.energy(next)
	if e > limit {
		return now
	}
	w.order = next
	return e
}

// replace takes one job out and sets it in, often elsewhere and with another
// layout, at the places that cost least between its new neighbours, and keeps that
// within the limit. It returns the day's energy.
func (w *reinserter) replace(now, limit int64, locked bool) int64 {
	n := len(w.order)
	from := w.chance.IntN(n)
	j, to := w.order[from], from
	if w.pinned[j] {
		return now
	}
	next := slices.Delete(slices.Clone(w.order), from, from+1)
	if !locked && n > 1 && w.chance.IntN(3) > 0 {
		if to = w.chance.IntN(n); w.chance.IntN(2) == 0 {
			to = 1 + w.suited(next, j)
		}
	}
	next = slices.Insert(next, to, j)
	if !w.rules.Kept(next) {
		return now
	}
	before, after := w.places[n], []plan.Length(nil)
	if to > 0 {
		before = w.places[next[to-1]]
	}
	if to+1 < n {
		after = w.places[next[to+1]]
	}
	c := w.choices[j]
	if to != from || w.chance.IntN(4) > 0 {
		w.targets = w.targets[:0]
		w.add(before, 2)
		w.add(after, 2)
		c = w.choose(j, c)
	}
	if !w.eval.between(j, c.cuts, before, after, w.into, true) {
		return now
	}
	return w.try(j, c, next, now, limit)
}

// try gives job j a layout and the places in w.into, in an order, and takes them
// back where the day's energy passes the limit.
func (w *reinserter) try(j int, c choice, next []int, now, limit int64) int64 {
	order, was, at := w.order, w.choices[j], w.places[j]
	for u := range w.costs {
		w.held[u][0] = w.costs[u][j]
		w.costs[u][j].Repositions = -1
		if u < len(order) {
			w.held[u][1] = w.costs[j][u]
			w.costs[j][u].Repositions = -1
		}
	}
	w.choices[j], w.places[j] = c, w.into
	if e := w.energy(next); e <= limit {
		w.order, w.into = next, at
		return e
	}
	w.choices[j], w.places[j] = was, at
	for u := range w.costs {
		w.costs[u][j] = w.held[u][0]
		if u < len(order) {
			w.costs[j][u] = w.held[u][1]
		}
	}
	return now
}
