package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"math"
	"math/rand/v2"
	"time"
)

// seeker searches for the best tour of a day's jobs: it changes the order, or a
// layout, looks at a sketch of the day, plans what that doesn't turn down anew from
// the first turn that the change touches, and keeps what is better or, while it is
// early, not much worse (simulated annealing: Kirkpatrick, Gelatt & Vecchi 1983,
// Science 220:671, doi:10.1126/science.220.4598.671). Every changeover that it plans is
// exact for its two layouts; what it looks for is the order, and layouts and resting
// places that suit the jobs to come.
type seeker struct {
	p       *changeover.Planner
	jobs    []*plan.Job
	windows []plan.Span  // shifts that each job allows
	begun   []*plan.Step // by job: its step where it is pinned, else nil
	pinned  []bool       // by job: it runs, or the beam is being set up for it, so it is as it stands
	laid    []bool       // by job: its layout was chosen and stays
	rules   plan.Rules
	aim     plan.Aim
	timed   bool // setup time is needed to compare orders
	due     bool // there are due times
	blind   bool // later jobs are not looked at
	inOrder bool // the order of jobs stays as it is
	move    time.Duration
	chance  *rand.Rand

	common [][]int   // by two jobs: most cuts they can have in common
	least  [][]int64 // by two jobs: the least energy of the changeover between them
	left   []int64   // by turn: the least energy of the turns after it

	view   changeover.Outlook
	change plan.Changeover // of the turn being planned
	rough  *sketch
	redo   []bool // by job: choose its layout anew
	slid   int    // the turn up to which layouts slide along with the one chosen anew
	wish   []changeover.Wish
	merged []changeover.Wish // memory for the next wishes
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
		if !k.turn(t, turn) {
			return math.MaxInt64
		}
		if e := energy(t.sums[turn+1], k.aim, k.move) + k.left[turn+1]; e > limit {
			return e
		}
	}
	return energy(t.sums[len(t.order)], k.aim, k.move)
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
	if begun := k.begun[j]; begun != nil && turn == 0 {
		k.goOn(t, *begun)
		return true
	}
	job, now, web := k.jobs[j], &t.stands[turn], k.p.Beam.WebOf(k.jobs[j].Web)
	k.p.Set(now.At, web, t.choices[j].cuts)
	if !k.p.Keep.Find(k.p) {
		return false
	}
	k.look(t, turn)
	step := plan.Step{Job: job, SetupStart: t.clocks[turn]}
	if !k.place(&step, now) {
		return false
	}
	if k.aim == plan.AimMinutes && !k.view.Rough && step.Setup.Swaps > 0 {
		k.trade(&step, now)
	}
	step.Clock()
	t.clocks[turn+1] = step.RunEnd
	t.sums[turn+1] = t.sums[turn]
	t.sums[turn+1].Add(&step)
	now.Advance(&t.stands[turn+1], job, step.Changeover.Holders)
	return true
}

// goOn lets the tour begin with a step that is begun already.
func (k *seeker) goOn(t *tour, step plan.Step) {
	t.clocks[1] = step.RunEnd
	t.sums[1] = t.sums[0]
	t.sums[1].Add(&step)
	t.stands[0].Advance(&t.stands[1], step.Job, step.Changeover.Holders)
}

// place sets the step's changeover and setup time from what stands now, in k.change's
// memory.
func (k *seeker) place(step *plan.Step, now *plan.Standing) (ok bool) {
	q := k.p.Places.Solve(&k.p.Now, &k.p.Keep, &k.view)
	if q < 0 {
		return false
	}
	k.p.ReadInto(&k.change, q)
	if k.timed {
		k.p.Hasten(&k.change)
	}
	step.Changeover = k.change
	step.Setup = k.p.Beam.SetupTime(now, step.Job, &k.change)
	return true
}

// trade lets holders move that needn't, where moving one takes less time than
// swapping its blade, and keeps that if the setup is shorter.
func (k *seeker) trade(step *plan.Step, now *plan.Standing) {
	kept := k.change
	k.change = plan.Changeover{}                        // place is to leave what is kept alone
	worth := max(int64(k.p.Beam.Setup.Blade/k.move), 1) // of a swap, in moves
	worth = min(worth, k.p.Places.Most(len(now.At)))
	for i := range k.view.Swaps {
		k.view.Swaps[i] *= changeover.StepsPerMove * worth
	}
	k.p.Keep.Loose(&k.p.Now)
	other := *step
	if k.place(&other, now) && other.Setup.Total() < step.Setup.Total() {
		*step = other
		return
	}
	k.change = kept
}

// look sets the outlook of a turn: the layouts that come, and what it costs each
// holder to cut the job.
func (k *seeker) look(t *tour, turn int) {
	k.view.Coming, k.view.Then = k.view.Coming[:0], nil
	if !k.blind {
		for _, j := range t.order[turn+1 : min(turn+1+changeover.Lookahead, len(t.order))] {
			k.view.Coming = append(k.view.Coming, plan.Layout{Cuts: t.choices[j].cuts})
		}
	}
	k.view.Carry(&t.stands[turn], k.jobs[t.order[turn]])
}

// anneal runs a number of rounds from the tour, whose energy is known, and returns
// the best tour met and its energy. Between rounds it asks whether to go on.
func (k *seeker) anneal(t *tour, energy int64, rounds int, warmth float64, goOn func(round int, best *tour) bool) (*tour, int64) {
	n := len(t.order)
	k.view.Rough = true
	defer func() { k.view.Rough = false }()
	k.still()
	t.guess = k.sketch(t)
	best, now, next := t.clone(), t, t.clone()
	least, heat := energy, k.cooling(t, rounds, warmth)
	for round := range rounds {
		if round%32 == 0 && !goOn(round, best) {
			break
		}
		from, alike, ok := k.propose(now, next)
		if !ok {
			continue
		}
		warm := heat(round)
		if next.guess = k.sketch(next); next.guess > now.guess+k.allow(warm)+guessed*k.move.Milliseconds() || next.like(now) {
			continue
		}
		next.stand(now, from)
		limit := energy + k.allow(warm)
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

// guessed is how many moves a sketch may be out to a tour's disadvantage before
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
func (k *seeker) cooling(t *tour, rounds int, warmth float64) func(round int) float64 {
	end := t.sums[len(t.order)]
	end.Late, end.LateJobs = 0, 0 // lateness that nothing mends must not keep the search warm
	cold := coldest * float64(k.move.Milliseconds())
	hot := max(warmth*hottest*float64(energy(end, k.aim, k.move))/float64(len(t.order)), cold)
	return func(round int) float64 { return hot * math.Pow(cold/hot, float64(round)/float64(rounds)) }
}

// still makes sketches choose nothing.
func (k *seeker) still() {
	clear(k.redo)
	k.slid = 0
}

// allow draws how much worse a tour may be at a temperature and still be kept.
func (k *seeker) allow(warm float64) int64 {
	return int64(warm * exponential[k.chance.IntN(len(exponential))])
}

// exponential holds the quantiles of the exponential distribution.
var exponential = func() (out [1024]float64) {
	for i := range out {
		out[i] = -math.Log((float64(i) + 0.5) / float64(len(out)))
	}
	return out
}()

// known is the tour itself where the rest of a day costs the same whenever it
// begins, and nil where due times make the clock matter.
func (k *seeker) known(t *tour) *tour {
	if k.due {
		return nil
	}
	return t
}

// free reports whether a job leaves any choice of layout.
func (k *seeker) free(j int) bool {
	return !k.pinned[j] && !k.laid[j] && (k.windows[j].Length() > 0 || k.jobs[j].Arrange != plan.AsListed && len(k.jobs[j].Entries) > 1)
}
