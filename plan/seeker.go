package plan

import (
	"math"
	"math/rand/v2"
	"slices"
	"time"
)

// seeker searches for the best tour of a day's jobs: it changes the order, or a
// layout, plans the day anew from the first turn that the change touches, and
// keeps what is better or, while it is early, not much worse (simulated annealing:
// Kirkpatrick, Gelatt & Vecchi 1983, Science 220:671, doi:10.1126/science.220.4598.671).
// Every changeover that it plans is exact for its two layouts; what it looks for
// is the order, and layouts and resting places that suit the jobs to come.
type seeker struct {
	p       *Planner
	jobs    []*Job
	windows []Span // shifts that each job allows
	rules   rules
	aim     Aim
	timed   bool // setup time is needed to compare orders
	blind   bool // later jobs are not looked at
	move    time.Duration
	chance  *rand.Rand

	view   outlook
	change Changeover // of the turn being planned
	redo   []bool     // by job: choose its layout anew

	wish          []wish
	meets, shifts []bounded
}

// reckon plans the tour's turns from one on, keeping the outlook on later jobs,
// and returns the day's energy; it gives up as soon as that passes the limit.
func (k *seeker) reckon(t *tour, from int, limit int64) int64 {
	for turn := from; turn < len(t.order); turn++ {
		j := t.order[turn]
		if k.redo[j] {
			t.choices[j] = k.choose(t, turn)
		}
		if !k.turn(t, turn) {
			return math.MaxInt64
		}
		if e := t.sums[turn+1].energy(k.aim, k.move); e > limit {
			return e
		}
	}
	return t.sums[len(t.order)].energy(k.aim, k.move)
}

// turn plans one turn of the tour from what stands before it.
func (k *seeker) turn(t *tour, turn int) (ok bool) {
	j := t.order[turn]
	job, now, web := k.jobs[j], &t.stands[turn], k.p.beam.web(k.jobs[j].Web)
	k.p.set(now.At, web, t.choices[j].cuts)
	if !k.p.keep.find(k.p) {
		return false
	}
	k.look(t, turn)
	q := k.p.places.solve(&k.p.now, &k.p.keep, &k.view)
	if q < 0 {
		return false
	}
	k.p.readInto(&k.change, q)
	step := Step{Job: job, Changeover: k.change, SetupStart: t.clocks[turn]}
	if k.timed {
		k.p.hasten(&k.change)
		step.Changeover.Moves = k.change.Moves
	}
	step.Setup = k.p.beam.setupTime(now, job, &step.Changeover)
	step.clock()
	t.clocks[turn+1] = step.RunEnd
	t.sums[turn+1] = t.sums[turn]
	t.sums[turn+1].add(&step)
	now.advance(&t.stands[turn+1], job, k.change.Holders)
	return true
}

// look sets the outlook of a turn: the layouts that come, and what it costs each
// holder to cut the job.
func (k *seeker) look(t *tour, turn int) {
	k.view.coming, k.view.then = k.view.coming[:0], nil
	if !k.blind {
		for _, j := range t.order[turn+1 : min(turn+1+lookahead, len(t.order))] {
			k.view.coming = append(k.view.coming, Layout{Cuts: t.choices[j].cuts})
		}
	}
	k.view.carry(&t.stands[turn], k.jobs[t.order[turn]])
}

// anneal runs a number of rounds from the tour, whose energy is known, and returns
// the best tour met. Between rounds it asks whether to go on.
func (k *seeker) anneal(t *tour, energy int64, rounds int, goOn func(round int, best *tour) bool) *tour {
	n := len(t.order)
	best, now, next := t.clone(), t, t.clone()
	least := energy
	hot := float64(energy) / float64(8*n)
	cold := 0.3 * float64(k.move.Milliseconds())
	for round := range rounds {
		if round%32 == 0 && !goOn(round, best) {
			break
		}
		from, ok := k.propose(now, next)
		if !ok {
			continue
		}
		left := 1 - float64(round)/float64(rounds)
		limit := energy + int64((hot*left*left*left+cold)*exponential[k.chance.IntN(len(exponential))])
		if e := k.reckon(next, from, limit); e <= limit {
			now, next, energy = next, now, e
			if e < least {
				least = e
				best.take(now)
				best.stand(now, n)
			}
		}
	}
	return best
}

// exponential holds the quantiles of the exponential distribution: how much worse,
// in units of the temperature, a tour may be and still be kept.
var exponential = func() (out [1024]float64) {
	for i := range out {
		out[i] = -math.Log((float64(i) + 0.5) / float64(len(out)))
	}
	return out
}()

// propose makes next a neighbour of now: two jobs exchanged, one job moved, a run
// of jobs turned round, or the layout of one or two jobs chosen anew. It returns
// the first turn that changes; ok is false when the neighbour breaks a rule.
func (k *seeker) propose(now, next *tour) (from int, ok bool) {
	n := len(now.order)
	a, b := k.chance.IntN(n), k.chance.IntN(n)
	next.take(now)
	clear(k.redo)
	order := next.order
	switch kind := k.chance.IntN(8); {
	case kind < 2:
		order[a], order[b] = order[b], order[a]
		k.redo[order[a]], k.redo[order[b]] = true, true
	case kind < 5:
		j := order[a]
		next.order = slices.Insert(slices.Delete(order, a, a+1), b, j)
		k.redo[j] = true
	case kind < 6:
		a, b = min(a, b), max(a, b)
		slices.Reverse(order[a : b+1])
		for _, j := range order[a : b+1] {
			k.redo[j] = true
		}
	default:
		k.redo[order[a]] = true
		if a+1 < n && k.chance.IntN(2) == 0 {
			k.redo[order[a+1]] = true
		}
		b = a
		if !k.free(order[a]) && (a+1 == n || !k.free(order[a+1])) {
			return 0, false
		}
	}
	if a == b && !k.redo[order[a]] || !k.rules.kept(next.order) {
		return 0, false
	}
	from = min(a, b)
	next.stand(now, from)
	return from, true
}

// free reports whether a job leaves any choice of layout.
func (k *seeker) free(j int) bool {
	return k.windows[j].Length() > 0 || k.jobs[j].Arrange != AsListed && len(k.jobs[j].Entries) > 1
}
