package sequence

import (
	"context"
	"math"
	"slices"

	"bide/plan"
)

// Reinsertion improves a day whose places are all known: one job is taken out and set in
// again, with another layout and with the places that cost least between the job before it
// and the one behind it, the two changeovers together exactly (see evaluator.between). That
// is a large neighbourhood search that ruins one job at a time and recreates it (Shaw 1998,
// Lecture Notes in Computer Science 1520:417, doi:10.1007/3-540-49481-2_30; Schrimpf et al.
// 2000, Journal of Computational Physics 159:139, doi:10.1006/jcph.1999.6413), with worse days
// kept at first as in annealing.
//
// Annealing compares days by changeovers that look ahead, and sweeping keeps every layout;
// here alone a layout is judged by the best places on both sides of it. What it costs to come
// to a job depends on the places at that job and at the one before, so a round plans one
// changeover exactly and costs two anew: O(n) for n jobs besides, for the sum.
//
// Blades are left out of the places, and counted when the day is written. The order stays:
// reversing runs of jobs here and moving them was tried, and won not one move in 24 drawn
// days searched, after a search that had tried ten thousands of orders.

// How long jobs are reinserted, in rounds a job and at most, and how warm, in moves.
//
// On the trial whose entries may change places, none costs 6 moves of 215; elsewhere it costs
// 2 moves of 876. Twice as many rounds win nothing on the demo and the trials and 4 moves of
// 2356 on 30 drawn days, for a quarter more time.
const (
	reinsertsPerJob = 20
	mostReinserts   = 600
	reinsertHottest = 4.0
	reinsertColdest = 0.3
)

// reinserter is one day whose jobs are being reinserted.
type reinserter struct {
	*chooser
	eval  *evaluator
	day   *candidate
	costs []plan.Score // by turn: what it costs to come to it, lateness left out
	into  []plan.Length
}

// reinsert is the best day met from the candidate on. With position_tolerance above 0 a place
// is good only behind the one it was chosen for, and nothing is done.
func reinsert(ctx context.Context, eval *evaluator, c *chooser, t *candidate) *candidate {
	n := len(t.order)
	if c.beam.PositionTolerance > 0 || n == 0 {
		return t
	}
	w := &reinserter{chooser: c, eval: eval, day: t.clone(), costs: make([]plan.Score, n), into: slices.Clone(t.positions[0].At)}
	for turn := range n {
		w.costs[turn] = w.cost(turn)
	}
	best, now := t.clone(), w.energy()
	least, cold := now, reinsertColdest*float64(c.move.Milliseconds())
	rounds := min(reinsertsPerJob*n, mostReinserts)
	for round := range rounds {
		if round%32 == 0 && ctx.Err() != nil {
			break
		}
		warm := cold * math.Pow(reinsertHottest/reinsertColdest, 1-float64(round)/float64(rounds))
		if now = w.replace(c.chance.IntN(n), now, now+c.worse(warm)); now < least {
			least = now
			w.save(best)
		}
	}
	return best
}

// save writes the present day into a candidate; only layouts and places.
func (w *reinserter) save(t *candidate) {
	copy(t.choices, w.day.choices)
	for turn := range t.order {
		copy(t.positions[turn+1].At, w.day.positions[turn+1].At)
	}
}

// energy is that of the day.
func (w *reinserter) energy() int64 {
	sum, clock := plan.Score{}, w.day.clocks[0]
	for turn, j := range w.day.order {
		sum = sum.Plus(w.costs[turn])
		if w.due {
			clock = w.run(&sum, clock, j, w.costs[turn].Setup)
		}
	}
	return energy(sum, w.aim, w.move)
}

// cost is what it costs to come to a turn from the positions before it.
func (w *reinserter) cost(turn int) (c plan.Score) {
	t := w.day
	j, from, to := t.order[turn], t.positions[turn].At, t.positions[turn+1].At
	c.Repositions = differing(from, to)
	switch {
	case w.aim == plan.AimMinutes || w.due:
		l := w.beam.Lay(w.jobs[j], t.choices[j].slits, t.choices[j].shift)
		change := w.eval.p.Between(from, l, to)
		before := t.positions[0]
		if turn > 0 {
			before = jobLeft(w.jobs[t.order[turn-1]], w.jobs[j])
		}
		setup := w.beam.SetupTime(&before, w.jobs[j], &change)
		setup.Crew = 0
		c.Setup = setup.Total()
	case turn > 0:
		c.Setup = w.setup[t.order[turn-1]][j]
	default:
		c.Setup = w.first[j]
	}
	return c
}

// replace sets the job of a turn in again, and keeps that within the limit. It returns the
// day's energy, which is now.
//
// A quarter of the times the layout stays: other places for it may be what is missing.
func (w *reinserter) replace(turn int, now, limit int64) int64 {
	t := w.day
	j, before, after := t.order[turn], t.positions[turn].At, []plan.Length(nil)
	if w.pinned[j] {
		return now
	}
	if turn+1 < len(t.order) {
		after = t.positions[turn+2].At
	}
	c := t.choices[j]
	if w.chance.IntN(4) > 0 {
		w.targets = w.targets[:0]
		w.add(before, 2)
		w.add(after, 2)
		c = w.choose(j, c)
	}
	if !w.eval.between(j, c.cuts, before, after, w.into, true) {
		return now
	}
	was, at, costs := t.choices[j], t.positions[turn+1].At, slices.Clone(w.costs[turn:min(turn+2, len(w.costs))])
	t.choices[j], t.positions[turn+1].At = c, w.into
	for i := range costs {
		w.costs[turn+i] = w.cost(turn + i)
	}
	if e := w.energy(); e <= limit {
		w.into = at
		return e
	}
	t.choices[j], t.positions[turn+1].At = was, at
	copy(w.costs[turn:], costs)
	return now
}
