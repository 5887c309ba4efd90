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

	common [][]int   // by two jobs: most cuts they can have in common
	least  [][]int64 // by two jobs: the least energy of the changeover between them
	left   []int64   // by turn: the least energy of the turns after it

	view   outlook
	change Changeover // of the turn being planned
	redo   []bool     // by job: choose its layout anew

	wish          []wish
	meets, shifts []bounded
}

// reckon plans the tour's turns from one on, keeping the outlook on later jobs,
// and returns the day's energy; it gives up as soon as that passes the limit. Where
// the tour is like an old one from turn alike on and comes to stand as that did,
// the rest is known.
func (k *seeker) reckon(t *tour, from int, limit int64, old *tour, alike int) int64 {
	k.foretell(t)
	for turn := from; turn < len(t.order); turn++ {
		if old != nil && turn >= alike && t.joins(old, turn) {
			t.follow(old, turn)
			break
		}
		j := t.order[turn]
		if k.redo[j] {
			t.choices[j] = k.choose(t, turn)
		}
		if !k.turn(t, turn) {
			return math.MaxInt64
		}
		if e := t.sums[turn+1].energy(k.aim, k.move) + k.left[turn+1]; e > limit {
			return e
		}
	}
	return t.sums[len(t.order)].energy(k.aim, k.move)
}

// foretell fills left with what the turns after each cost at least, going by pairs
// of jobs alone.
func (k *seeker) foretell(t *tour) {
	n := len(t.order)
	k.left = append(k.left[:0], make([]int64, n+1)...)
	for turn := n - 1; turn > 0; turn-- {
		k.left[turn] = k.left[turn+1] + k.least[t.order[turn-1]][t.order[turn]]
	}
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
// the best tour met and its energy. Between rounds it asks whether to go on.
func (k *seeker) anneal(t *tour, energy int64, rounds int, warmth float64, goOn func(round int, best *tour) bool) (*tour, int64) {
	n := len(t.order)
	k.view.rough = true
	defer func() { k.view.rough = false }()
	best, now, next := t.clone(), t, t.clone()
	least := energy
	// Lateness that nothing mends must not keep the search warm.
	end := t.sums[n]
	end.late, end.lateJobs = 0, 0
	hot := float64(end.energy(k.aim, k.move)) / float64(12*n)
	cold := 0.3 * float64(k.move.Milliseconds())
	for round := range rounds {
		if round%32 == 0 && !goOn(round, best) {
			break
		}
		from, alike, ok := k.propose(now, next)
		if !ok {
			continue
		}
		left := warmth * (1 - float64(round)/float64(rounds))
		limit := energy + int64((float64(hot*left*left)+cold)*exponential[k.chance.IntN(len(exponential))])
		if e := k.reckon(next, from, limit, k.known(now), alike); e <= limit {
			now, next, energy = next, now, e
			if e < least {
				least = e
				best.take(now)
				best.stand(now, n)
			}
		}
	}
	return best, least
}

// exponential holds the quantiles of the exponential distribution: how much worse,
// in units of the temperature, a tour may be and still be kept.
var exponential = func() (out [1024]float64) {
	for i := range out {
		out[i] = -math.Log((float64(i) + 0.5) / float64(len(out)))
	}
	return out
}()

// known is the tour itself where the rest of a day costs the same whenever it
// begins, and nil where due times make the clock matter.
func (k *seeker) known(t *tour) *tour {
	for _, j := range k.jobs {
		if !j.Due.IsZero() {
			return nil
		}
	}
	return t
}

// propose makes next a neighbour of now: two jobs exchanged, one job moved, a run
// of jobs turned round, or the layout of one or two jobs chosen anew. It returns
// the first turn that changes and the first from which all is alike again; ok is
// false when the neighbour breaks a rule.
func (k *seeker) propose(now, next *tour) (from, alike int, ok bool) {
	n := len(now.order)
	a, b := k.chance.IntN(n), k.chance.IntN(n)
	next.take(now)
	clear(k.redo)
	order := next.order
	from, alike = min(a, b), max(a, b)+1
	switch kind := k.chance.IntN(12); {
	case kind < 7 && a == b:
		return 0, 0, false
	case kind < 2: // two exchanged
		order[a], order[b] = order[b], order[a]
		k.redo[order[a]], k.redo[order[b]] = true, true
	case kind < 4: // one moved, behind a job that it suits or anywhere
		j := order[a]
		rest := slices.Delete(order, a, a+1)
		if k.chance.IntN(4) > 0 {
			b = min(1+k.suited(rest, j), n-1)
		}
		next.order = slices.Insert(rest, b, j)
		from, alike = min(a, b), max(a, b)+1
		k.redo[j] = true
	case kind < 6: // a run moved
		run := 1 + k.chance.IntN(min(4, n-from))
		moved := slices.Clone(order[from:min(from+run, n)])
		rest := slices.Delete(order, from, from+len(moved))
		if len(rest) == 0 {
			return 0, 0, false
		}
		to := min(1+k.suited(rest, moved[0]), len(rest))
		next.order = slices.Insert(rest, to, moved...)
		from, alike = min(from, to), max(from, to)+len(moved)
		k.redo[moved[0]] = k.chance.IntN(2) == 0
		if alike < n {
			k.redo[next.order[alike]] = k.chance.IntN(2) == 0
			alike++
		}
	case kind < 7: // a run turned round
		slices.Reverse(order[from:alike])
		for _, j := range order[from:alike] {
			k.redo[j] = true
		}
	case kind < 9: // a run slid along the beam, its layouts keeping together
		from, alike = a, min(a+1+k.chance.IntN(5), n)
		if !k.free(order[a]) {
			return 0, 0, false
		}
		next.stand(now, from)
		k.slide(next, from, alike)
		return from, alike, true
	default: // layouts chosen anew
		from, alike = a, min(a+1+k.chance.IntN(2), n)
		for _, j := range order[from:alike] {
			k.redo[j] = true
		}
		if !k.free(order[from]) && !k.free(order[alike-1]) {
			return 0, 0, false
		}
	}
	if !k.rules.kept(next.order) {
		return 0, 0, false
	}
	next.stand(now, from)
	return from, alike, true
}

// slide chooses the layout of a turn anew and shifts those of the turns after it,
// up to a turn, by as much as their jobs allow.
func (k *seeker) slide(t *tour, from, to int) {
	j := t.order[from]
	was := t.choices[j].shift
	t.choices[j] = k.choose(t, from)
	by := t.choices[j].shift - was
	for _, j := range t.order[from+1 : to] {
		c := t.choices[j]
		if c.shift+by < k.windows[j].From || c.shift+by > k.windows[j].To {
			continue
		}
		c.shift += by
		c.cuts = slices.Clone(c.cuts)
		for m := range c.cuts {
			c.cuts[m] += by
		}
		t.choices[j] = c
	}
}

// suited is the turn, of three drawn by chance, of the job that has most cuts in
// common with job j at the best of their shifts.
func (k *seeker) suited(order []int, j int) int {
	best := k.chance.IntN(len(order))
	for range 2 {
		if t := k.chance.IntN(len(order)); k.common[order[t]][j] > k.common[order[best]][j] {
			best = t
		}
	}
	return best
}

// free reports whether a job leaves any choice of layout.
func (k *seeker) free(j int) bool {
	return k.windows[j].Length() > 0 || k.jobs[j].Arrange != AsListed && len(k.jobs[j].Entries) > 1
}
