package sequence

import (
	"math"
	"slices"

	"bide/plan"
	"bide/plan/changeover"
)

// evaluator plans the turns of candidates. Every changeover that it plans is exact for its
// two layouts; what is left to the search are the order, and layouts and resting places
// that suit the jobs to come.
//
// A search evaluates some ten thousand candidates, so an evaluator keeps its memory, gives
// a candidate up as soon as what is planned and the bound on what remains pass a limit, and
// copies the rest of a day that is known. It belongs to one goroutine.
type evaluator struct {
	*instance
	p      *changeover.Planner
	ahead  changeover.Lookahead
	change plan.Changeover // of the turn being planned
	remain []int64         // by turn: the least energy of the turns after it
}

// look is how turns are looked at.
type look struct {
	timed bool // the setup time is worked out, moves in order
	blind bool // later jobs are not looked at
	rough bool // without the places that only make travel shorter
}

// usual is how a search compares whole days.
func (in *instance) usual() look { return look{timed: in.timed()} }

func newEvaluator(in *instance) *evaluator {
	p, err := changeover.NewPlanner(in.beam)
	if err != nil {
		panic(err) // the listed sequence was planned on this beam
	}
	return &evaluator{instance: in, p: p}
}

// impossible is the energy of a candidate that can't be set.
const impossible = math.MaxInt64

// all plans all turns of a candidate and returns the day's energy; impossible where some
// layout can't be set.
func (e *evaluator) all(t *candidate, how look) int64 {
	return e.from(t, how, 0, impossible-1, nil, 0)
}

// from plans the candidate's turns from one on and returns the day's energy; it gives up
// as soon as that passes the limit. Where the candidate is like an old one from turn alike
// on and comes to the same positions as that did, the rest is known; nil is no old one.
func (e *evaluator) from(t *candidate, how look, turn int, limit int64, old *candidate, alike int) int64 {
	e.ahead.Rough = how.rough
	e.bound(t)
	for ; turn < len(t.order); turn++ {
		if old != nil && turn >= alike && t.joins(old, turn) {
			t.follow(old, turn)
			break
		}
		if !e.turn(t, how, turn) {
			return impossible
		}
		if energy := energy(t.sums[turn+1], e.aim, e.move) + e.remain[turn+1]; energy > limit {
			return energy
		}
	}
	return energy(t.sums[len(t.order)], e.aim, e.move)
}

// bound fills remain with what the turns after each cost at least, going by pairs of jobs
// alone.
func (e *evaluator) bound(t *candidate) {
	n := len(t.order)
	e.remain = append(e.remain[:0], make([]int64, n+1)...)
	for turn := n - 1; turn > 0; turn-- {
		e.remain[turn] = e.remain[turn+1] + e.least[t.order[turn-1]][t.order[turn]]
	}
}

// turn plans one turn of the candidate from the positions before it.
func (e *evaluator) turn(t *candidate, how look, turn int) (ok bool) {
	j := t.order[turn]
	if begun := e.begun[j]; begun != nil && turn == 0 {
		t.begin(begun)
		return true
	}
	job, now, web := e.jobs[j], &t.positions[turn], e.beam.WebOf(e.jobs[j].Web)
	e.p.Set(now.At, web, t.choices[j].cuts)
	if !e.p.Stays.Find(&e.p.Scene) {
		return false
	}
	e.lookAhead(t, how, turn)
	step := plan.Step{Job: job}
	if !e.place(&step, how, now) {
		return false
	}
	if e.aim == plan.AimMinutes && !how.rough && step.Setup.Swaps > 0 {
		e.trade(&step, how, now)
	}
	step.Clock(e.by(t.clocks[turn]))
	t.clocks[turn+1] = step.RunEnd
	t.sums[turn+1] = t.sums[turn]
	t.sums[turn+1].Add(&step)
	now.Advance(&t.positions[turn+1], job, step.Changeover.Holders)
	return true
}

// lookAhead sets what a turn looks ahead at: the layouts that come, and what it costs each
// holder to cut the job with the blade that it carries.
func (e *evaluator) lookAhead(t *candidate, how look, turn int) {
	e.ahead.Coming, e.ahead.Then = e.ahead.Coming[:0], nil
	if !how.blind {
		for _, j := range t.order[turn+1 : min(turn+1+changeover.Horizon, len(t.order))] {
			e.ahead.Coming = append(e.ahead.Coming, plan.Layout{Cuts: t.choices[j].cuts})
		}
	}
	e.ahead.Carry(&t.positions[turn], e.jobs[t.order[turn]])
}

// place sets the step's changeover and setup time from the positions of now, in e.change's
// memory.
func (e *evaluator) place(step *plan.Step, how look, now *plan.Positions) (ok bool) {
	q := e.p.Places.Solve(&e.p.Scene, &e.p.Stays, &e.ahead)
	if q < 0 {
		return false
	}
	e.p.ReadInto(&e.change, q)
	if how.timed {
		e.p.OrderFast(&e.change)
	}
	step.Changeover = e.change
	step.Setup = e.beam.SetupTime(now, step.Job, &e.change)
	return true
}

// A changeover has the fewest moves first, and a swap of blades counts for nothing beside
// one. Where the crew takes longer for a blade than the positioner for a move that is the
// wrong way round, so for minutes both are tried.

// trade lets holders move that needn't, where moving one takes less time than
// swapping its blade, and keeps that if the setup is shorter.
func (e *evaluator) trade(step *plan.Step, how look, now *plan.Positions) {
	kept := e.change
	e.change = plan.Changeover{}                                                              // place is to leave what is kept alone
	worth := max(int64(e.beam.Setup.Blade)/int64(e.move)/int64(max(e.beam.Setup.Crew, 1)), 1) // of a swap, in moves
	worth = min(worth, e.p.Places.Most(len(now.At)))
	for i := range e.ahead.Swaps {
		e.ahead.Swaps[i] *= changeover.StepsPerMove * worth
	}
	e.p.Stays.Loose(&e.p.Scene)
	other := *step
	if e.place(&other, how, now) && other.Setup.Total() < step.Setup.Total() {
		*step = other
		return
	}
	e.change = kept
}

// between finds the places for job j that cost least between the positions before it and
// those after it, nil where nothing comes after: for the two changeovers together exactly
// the fewest repositions, then parked, then travel. It is not ok where the cuts can't be
// set, and then leaves into alone.
func (e *evaluator) between(j int, cuts, before, after, into []plan.Length, rough bool) (ok bool) {
	e.p.Set(before, e.beam.WebOf(e.jobs[j].Web), cuts)
	e.p.Stays.Loose(&e.p.Scene)
	e.ahead.Coming, e.ahead.Then, e.ahead.Swaps, e.ahead.Rough = e.ahead.Coming[:0], after, nil, rough
	q := -1
	if !e.p.Scene.Impossible {
		q = e.p.Places.Solve(&e.p.Scene, &e.p.Stays, &e.ahead)
	}
	if q < 0 {
		return false
	}
	for i := range into {
		c := &e.p.Places.List[q]
		into[i], q = c.At, int(c.Next)
	}
	return true
}

// write makes a plan of the candidate from its positions.
func (e *evaluator) write(t *candidate) *plan.DayPlan {
	d := &plan.DayPlan{Beam: e.beam, Start: &t.positions[0], Begins: e.by(t.clocks[0])}
	now, clock := &t.positions[0], t.clocks[0]
	for turn, j := range t.order {
		job := e.jobs[j]
		l := e.beam.Lay(job, t.choices[j].slits, t.choices[j].shift)
		c := e.p.Between(now.At, l, t.positions[turn+1].At)
		s := &plan.Step{Job: job, Layout: l, Changeover: c}
		s.Setup = e.beam.SetupTime(now, job, &c)
		s.Clock(e.by(clock))
		if begun := e.begun[j]; begun != nil && turn == 0 {
			*s = *begun
			s.Changeover.Moves = slices.Clone(s.Changeover.Moves) // the next day's reasons are its own
		}
		d.Turns = append(d.Turns, plan.Turn{Job: job, Step: s})
		now, clock = now.After(s), s.RunEnd
	}
	d.Totals = plan.TotalsOf(d.Turns)
	return d
}
