package sequence

import (
	"bide/plan"
	"context"
	"math"
	"slices"
)

// Weaving: improving a day whose places are all known, one job at a time. What it
// costs to go from one job to the next depends on the places that both have, so a
// day is a way through its jobs whose length changes only where something changes:
// a run of jobs set elsewhere keeps its places, and a job taken out and set between
// two others gets the places that cost least between these (the two changeovers
// together exactly, as when a tour is settled). Blades are left out, and counted
// when the day is written.

// How long and how warm a day is woven, in rounds for each job and in moves.
const (
	weavesPerJob = 160
	weaveHottest = 4.0
	weaveColdest = 0.3
)

// weaver is one day being woven.
type weaver struct {
	*seeker
	day     *tour // where it began
	order   []int
	choices []choice        // by job
	places  [][]plan.Length // by job, and behind the last those at the start
	costs   [][]plan.Score  // from one to the next, lateness left out; unknown where repositions are below nought
	into    []plan.Length
	held    [][2]plan.Score // costs to and from a job, while others are tried
}

// weave improves the tour for a number of rounds; the order stays where it is
// locked. With position_tolerance above nought a place is good only behind the one it was
// chosen for, and nothing is done.
func (k *seeker) weave(ctx context.Context, t *tour, rounds int, locked bool) *tour {
	n := len(t.order)
	if k.p.Beam.InPlace > 0 || n == 0 {
		return t
	}
	k.view.Rough = true
	defer func() { k.view.Rough = false }()
	w := newWeaver(k, t)
	best, now := t.clone(), w.energy(w.order)
	least, cold := now, weaveColdest*float64(k.move.Milliseconds())
	for round := range rounds {
		if round%32 == 0 && ctx.Err() != nil {
			break
		}
		warm := cold * math.Pow(weaveHottest/weaveColdest, 1-float64(round)/float64(rounds))
		limit := now + k.allow(warm)
		if locked || n < 3 || k.chance.IntN(10) >= 4 {
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

func newWeaver(k *seeker, t *tour) *weaver {
	n := len(t.order)
	w := &weaver{
		seeker: k, day: t, order: slices.Clone(t.order), choices: slices.Clone(t.choices),
		places: make([][]plan.Length, n+1), costs: make([][]plan.Score, n+1),
		into: make([]plan.Length, len(t.stands[0].At)), held: make([][2]plan.Score, n+1),
	}
	w.places[n] = t.stands[0].At
	for turn, j := range t.order {
		w.places[j] = slices.Clone(t.stands[turn+1].At)
	}
	for u := range w.costs {
		w.costs[u] = make([]plan.Score, n)
		for j := range w.costs[u] {
			w.costs[u][j].Repositions = -1
		}
	}
	return w
}

// save writes the present day into a tour; only places, order and layouts.
func (w *weaver) save(t *tour) {
	copy(t.order, w.order)
	copy(t.choices, w.choices)
	for turn, j := range w.order {
		t.stands[turn+1].At = append(t.stands[turn+1].At[:0], w.places[j]...)
	}
}

// energy is that of the day in an order.
func (w *weaver) energy(order []int) int64 {
	sum, last, clock := plan.Score{}, len(w.order), w.day.clocks[0]
	for _, j := range order {
		c := w.cost(last, j)
		sum, last = sum.Plus(c), j
		if w.due {
			clock = w.hand(&sum, clock, j, c.Setup)
		}
	}
	return energy(sum, w.aim, w.move)
}

// cost is what it costs to come to job j from what stands with u, or at the start.
func (w *weaver) cost(u, j int) plan.Score {
	c := &w.costs[u][j]
	if c.Repositions >= 0 {
		return *c
	}
	*c = plan.Score{Repositions: differing(w.places[u], w.places[j])}
	switch {
	case w.aim == plan.AimMinutes || w.due:
		l := w.p.Beam.Lay(w.jobs[j], w.choices[j].slits, w.choices[j].shift)
		change := w.p.Between(w.places[u], l, w.places[j])
		before := w.day.stands[0]
		if u < len(w.order) {
			before = jobLeft(w.jobs[u])
		}
		before.Blades = nil
		c.Setup = w.p.Beam.SetupTime(&before, w.jobs[j], &change).Total()
	case u < len(w.order):
		c.Setup = w.rough.setup[u][j]
	default:
		c.Setup = w.rough.first[j]
	}
	return *c
}

// differing counts the holders that stand elsewhere.
func differing(a, b []plan.Length) (n int) {
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}

// reorder sets a run of jobs elsewhere or turns one round, their places as they
// are, and keeps that within the limit. It returns the day's energy.
func (w *weaver) reorder(now, limit int64) int64 {
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
func (w *weaver) replace(now, limit int64, locked bool) int64 {
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
		w.wish = w.wish[:0]
		w.wishFor(before, 2)
		w.wishFor(after, 2)
		c = w.suit(j, c, w.wish)
	}
	if !w.settleJob(j, c.cuts, before, after, w.into) {
		return now
	}
	return w.try(j, c, next, now, limit)
}

// try gives job j a layout and the places in w.into, in an order, and takes them
// back where the day's energy passes the limit.
func (w *weaver) try(j int, c choice, next []int, now, limit int64) int64 {
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
