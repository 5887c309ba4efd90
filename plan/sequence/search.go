package sequence

import (
	"context"
	"slices"
	"sync"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/floor"
)

// Effort is what a search for the best day may spend. The result depends on it,
// the jobs and the positions alone: never on the clock or the number of processors.
type Effort struct {
	Aim    plan.Aim
	Rounds int    // candidates tried; 0 takes the beam's DefaultRounds
	Seed   uint64 // of the search's chance
	Report func(Progress)
}

// Progress is what a running search reports now and then.
type Progress struct {
	Rounds, Of int
	Best       plan.Totals
	Floor      *plan.Floor // over all orders; nil where nothing is proven
}

// DefaultRounds is how many candidates a search tries for that many jobs, when it
// is given none: more for more jobs, until jobs and holders are so many that a
// candidate takes long to plan, longer still where counting has to pack the beam
// (see Planner.Count).
func DefaultRounds(b *plan.Beam, jobs int) int {
	most := mostHolderJobs / max(jobs*len(b.Holders), 1)
	if b.PositionTolerance > 0 || slices.ContainsFunc(b.Holders, func(c plan.Condition) bool { return c != plan.Good }) {
		most /= 2
	}
	return min(20_000+4200*jobs, max(most, leastRounds))
}

// How many holders of jobs a search by default looks at in all, and the fewest
// candidates that it tries however large the day is.
const (
	mostHolderJobs = 780_000_000
	leastRounds    = 20_000
)

// Search plans the day in the best order it finds, with the layouts that each job
// allows: least lateness, then the aim, then the other of setup time and
// repositions, then parked, then travel. A cancelled context ends it early with
// the best so far. It is never worse than the listed order wherever that keeps the
// rules of turn and after. Where no order that keeps them can be set it is the listed
// order, planned jointly. The error says why no day can be planned.
func Search(ctx context.Context, b *plan.Beam, start *plan.Positions, d *plan.Day, e Effort) (*plan.DayPlan, error) {
	listed, err := planDay(b, start, d)
	if err != nil {
		return nil, err
	}
	if e.Rounds == 0 {
		e.Rounds = DefaultRounds(b, len(listed.Steps()))
	}
	s := &search{instance: newInstance(listed, e.Aim), effort: e}
	s.floor = s.provenFloor()
	plans := s.plan(ctx)
	before := s.fallback(listed)
	best := better(append(before, plans...), e.Aim) // what gains nothing changes nothing
	if best == nil {                                // no order that keeps the rules can be set
		best = s.planJointly(ctx)
		best.Floor = s.listedFloor()
		return best, nil
	}
	if len(before) > 0 && !s.beats(best) { // the listed order may come to more when planned jointly
		best = better([]*plan.DayPlan{s.planJointly(ctx), best}, e.Aim)
	}
	// For minutes a search weighs blades by the way; planned jointly in its order the day
	// gains more of them. For moves there is next to nothing left to gain.
	if e.Aim == plan.AimMinutes && best != listed && ctx.Err() == nil {
		best = better([]*plan.DayPlan{best, newInstance(best, e.Aim).planJointly(ctx)}, e.Aim)
	}
	best.Turns, best.Listed, best.Done = among(best.Steps(), listed), listed.Listed, listed.Done
	best.Floor = s.floor
	best.Sequence, best.Aim, best.Rounds, best.Seed = plan.SequenceBest, e.Aim, e.Rounds, e.Seed
	return best, nil
}

// search is one call of Search.
type search struct {
	*instance
	effort Effort
	floor  *plan.Floor // over all orders

	mu   sync.Mutex // guards what follows
	done [mostRuns]int
	best plan.Totals
	seen bool
}

// beats reports whether a day is proven better than any plan of the listed order.
func (s *search) beats(d *plan.DayPlan) bool {
	if s.aim != plan.AimMoves || d.Totals.Late > 0 {
		return false
	}
	floor := s.listedFloor()
	return floor != nil && d.Totals.Repositions < floor.Repositions
}

// listedFloor is floor.OfOrder for the listed order.
func (s *search) listedFloor() *plan.Floor {
	if s.beam.PositionTolerance > 0 {
		return nil
	}
	return floor.OfNeeds(s.beam, s.start.At, floor.NeedsOf(s.beam, s.jobs), s.apart)
}

// provenFloor is the floor over all orders that keep the rules, which may be a single
// one.
func (s *search) provenFloor() *plan.Floor {
	if s.beam.PositionTolerance > 0 {
		return nil
	}
	proven := floor.OfAnyOrder(s.start.At, floor.NeedsOf(s.beam, s.jobs), s.apart, &s.rules)
	if order, one := s.rules.Only(); one {
		jobs := make([]*plan.Job, len(order))
		for turn, j := range order {
			jobs[turn] = s.jobs[j]
		}
		if f := floor.OfOrder(s.beam, s.start.At, jobs); f != nil && (proven == nil || f.Repositions > proven.Repositions) {
			proven = f
		}
	}
	return proven
}

// report says how far the searches are, now and then.
func (s *search) report(n, round int, best *candidate) {
	if s.effort.Report == nil {
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.done[n] = round
	last := best.sums[len(best.order)]
	totals := plan.Totals{Jobs: len(best.order), Repositions: last.Repositions, Setup: last.Setup, LateJobs: last.LateJobs, Late: last.Late}
	if !s.seen || totals.Score().Compare(s.best.Score(), s.aim) < 0 {
		s.best, s.seen = totals, true
	}
	sum := 0
	for _, d := range s.done {
		sum += d
	}
	s.effort.Report(Progress{Rounds: sum, Of: s.effort.Rounds, Best: s.best, Floor: s.floor})
}

// better is the best of the plans, the first of equal ones; nil ones are passed
// over.
func better(plans []*plan.DayPlan, aim plan.Aim) *plan.DayPlan {
	var best *plan.DayPlan
	var least plan.Score
	for _, p := range plans {
		if p == nil {
			continue
		}
		sc := scoreOf(p.Steps())
		if best == nil || sc.Compare(least, aim) < 0 {
			best, least = p, sc
		}
	}
	return best
}

// scoreOf sums the steps up.
func scoreOf(steps []*plan.Step) plan.Score {
	var sc plan.Score
	for _, s := range steps {
		sc.Add(s)
	}
	return sc
}

// fallback are the plans of the listed order, with the shift as allowed and
// centred, where that order keeps the rules: the search is never worse.
func (s *search) fallback(listed *plan.DayPlan) []*plan.DayPlan {
	order := make([]int, len(s.jobs))
	for i := range order {
		order[i] = i
	}
	if !s.rules.Kept(order) {
		return nil
	}
	p, err := changeover.NewPlanner(s.beam)
	if err != nil {
		return nil
	}
	jobs := make([]plan.Job, len(s.jobs))
	for i, j := range s.jobs {
		jobs[i] = *j
	}
	turns := runDay(s.start, s.clock, &plan.Day{Jobs: jobs}, p.NextCentred)
	for i := range turns {
		if turns[i].Refused() {
			return []*plan.DayPlan{listed}
		}
		turns[i].Job, turns[i].Step.Job = s.jobs[i], s.jobs[i]
	}
	centred := &plan.DayPlan{Beam: s.beam, Start: s.start, Begins: s.clock, Turns: turns, Totals: plan.TotalsOf(turns)}
	return []*plan.DayPlan{listed, centred}
}

// among are the turns of steps and of the jobs that the listed day refuses. Where the
// steps are in the listed order these keep their number, else they come last.
func among(steps []*plan.Step, listed *plan.DayPlan) []plan.Turn {
	if !slices.EqualFunc(steps, listed.Steps(), func(a, b *plan.Step) bool { return a.Job == b.Job }) {
		return append(plan.Planned(steps), listed.Refused()...)
	}
	turns := slices.Clone(listed.Turns)
	for i := range turns {
		if t := &turns[i]; !t.Refused() {
			t.Step, steps = steps[0], steps[1:]
		}
	}
	return turns
}
