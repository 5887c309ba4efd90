package sequence

import (
	"math"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// annealer searches for the best candidate of a day: it changes the order, or a layout,
// looks at an estimate of the day, plans what that doesn't turn down anew from the first
// turn that the change touches, and keeps what is better or, while it is early, not much
// worse (simulated annealing: Kirkpatrick, Gelatt & Vecchi 1983, Science 220:671,
// doi:10.1126/science.220.4598.671).
type annealer struct {
	*chooser
	eval  *evaluator
	rough *estimator
	anew  []bool // by job: its layout is to be chosen anew
	slid  int    // the turn up to which layouts slide along with the one chosen anew
}

func newAnnealer(eval *evaluator, c *chooser) *annealer {
	return &annealer{chooser: c, eval: eval, rough: newEstimator(c.instance), anew: make([]bool, len(c.jobs))}
}

// anneal runs a number of rounds from the candidate, whose energy is known, and returns
// the best one met and its energy. Between rounds it asks whether to go on.
func (a *annealer) anneal(t *candidate, energy int64, rounds int, warmth float64, goOn func(round int, best *candidate) bool) (*candidate, int64) {
	n, how := len(t.order), look{timed: a.timed(), rough: true}
	a.still()
	t.guess = a.estimate(t)
	best, now, next := t.clone(), t, t.clone()
	least, temperature := energy, a.cooling(t, rounds, warmth)
	for round := range rounds {
		if round%32 == 0 && !goOn(round, best) {
			break
		}
		from, alike, ok := a.propose(now, next)
		if !ok {
			continue
		}
		warm := temperature(round)
		if next.guess = a.estimate(next); next.guess > now.guess+a.worse(warm)+guessed*a.move.Milliseconds() || next.like(now) {
			continue
		}
		next.copyPositions(now, from)
		limit := energy + a.worse(warm)
		if e := a.eval.from(next, how, from, limit, a.known(now), alike); e <= limit {
			now, next, energy = next, now, e
			if e < least {
				least = e
				best.take(now)
				best.copyPositions(now, n)
			}
		}
	}
	return best, least
}

// guessed is how many moves an estimate may be out to a candidate's disadvantage before
// that is turned down.
const guessed = 2

// The temperatures between which a search cools down, evenly in its logarithm: the
// hot one in parts of a turn's share of the day's cost, the cold one in moves. At
// less than the one a search never leaves the order it began with.
const (
	hottest = 0.8
	coldest = 0.9
)

// cooling is the temperature of each round.
func (a *annealer) cooling(t *candidate, rounds int, warmth float64) func(round int) float64 {
	end := t.sums[len(t.order)]
	end.Late, end.LateJobs = 0, 0 // lateness that nothing mends must not keep the search warm
	cold := coldest * float64(a.move.Milliseconds())
	hot := max(warmth*hottest*float64(energy(end, a.aim, a.move))/float64(len(t.order)), cold)
	return func(round int) float64 { return hot * math.Pow(cold/hot, float64(round)/float64(rounds)) }
}

// known is the candidate itself where the rest of a day costs the same whenever it
// begins, and nil where due times make the clock matter.
func (a *annealer) known(t *candidate) *candidate {
	if a.due {
		return nil
	}
	return t
}

// still lets estimates choose nothing.
func (a *annealer) still() {
	clear(a.anew)
	a.slid = 0
}

// estimate chooses the layouts that are to be chosen anew, and returns about what the
// candidate's day costs.
func (a *annealer) estimate(t *candidate) int64 {
	a.rough.begin(t.positions[0].At, t.clocks[0])
	for turn, j := range t.order {
		if a.anew[j] {
			was := t.choices[j].shift
			a.aimAt(t, turn)
			t.choices[j] = a.choose(j, t.choices[j])
			a.slide(t, turn+1, t.choices[j].shift-was)
		}
		a.rough.turn(t, turn)
	}
	return a.rough.end(t)
}

// aimAt sets the targets of a turn, the turns before it having been estimated.
func (a *annealer) aimAt(t *candidate, turn int) {
	a.targets = a.targets[:0]
	for _, p := range a.rough.kept {
		a.targets = append(a.targets, layouts.Target{At: p.at, Weight: targetWeights[0]})
	}
	for n := 1; n < len(targetWeights) && turn+n < len(t.order); n++ {
		a.add(t.choices[t.order[turn+n]].cuts, targetWeights[n])
	}
}

// slide shifts the layouts of the turns that slide with the one before them, as far
// as their jobs allow.
func (a *annealer) slide(t *candidate, from int, by plan.Length) {
	for turn := from; turn < a.slid; turn++ {
		j := t.order[turn]
		c := t.choices[j]
		if c.shift+by >= a.windows[j].From && c.shift+by <= a.windows[j].To && a.beam.Bad.Miss(c.cuts, by) {
			c.shift, c.cuts = c.shift+by, shifted(c.cuts, by)
			t.choices[j] = c
		}
	}
}
