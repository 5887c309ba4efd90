package sequence

import (
	"cmp"
	"context"
	"math/rand/v2"
	"slices"
	"sync"

	"bide/plan"
)

// A search is made in heats. In the first several runs search from the same candidate,
// each by its own chance; in the others the best of them go on, cooler. What a run finds is
// a matter of chance, so on a short day many runs and a choice do better than one long run;
// on a long day a short run doesn't get far enough.
const (
	mostRuns    = 8
	jobsOfRuns  = 96 // runs times jobs
	finalists   = 2
	firstHeat   = 0.7 // its share of the rounds
	laterHeats  = 2   // of the finalists
	laterWarmth = 0.3
	cooler      = 0.5 // the second of these beside the first

	// Up to so many jobs every order is tried with the finalists' layouts, and the
	// best few of them are polished too.
	fewJobs = 5
	fewDays = 2
)

// runs is how many begin on a day of that many jobs: as many rounds in all whatever their
// number, so that a long day isn't left with runs too short to cool down.
func runs(jobs int) int { return min(max(jobsOfRuns/max(jobs, 1), finalists), mostRuns) }

// run is one of those that search side by side, with a chance and memory of its own.
type run struct {
	number int
	*annealer
	best   *candidate // so far
	energy int64
	rounds int
}

func newRun(in *instance, seed uint64, number int) *run {
	chance := rand.New(rand.NewPCG(seed, uint64(number)))
	return &run{number: number, annealer: newAnnealer(newEvaluator(in), &chooser{instance: in, chance: chance})}
}

func (r *run) improver() *improver {
	return &improver{instance: r.instance, eval: r.eval, chance: r.chance}
}

// plan searches and improves what the finalists found. Two are improved and not the best one
// alone, since they are compared by changeovers that look ahead: which of two near ones is
// the better day shows only when both are swept.
func (s *search) plan(ctx context.Context) []*plan.DayPlan {
	all := make([]*run, runs(len(s.jobs)))
	first := int(firstHeat*float64(s.effort.Rounds)) / len(all)
	second := (s.effort.Rounds - first*len(all)) / finalists
	for n := range all {
		all[n] = newRun(s.instance, s.effort.Seed, n)
	}
	sideBySide(all, func(r *run) {
		if t, ok := r.begin(r.number%2 == 0); ok {
			r.best, r.energy = t, energy(t.sums[len(s.jobs)], s.aim, s.move)
			s.heat(ctx, r, first, 1)
		}
	})
	all = slices.DeleteFunc(all, func(r *run) bool { return r.best == nil })
	slices.SortStableFunc(all, func(a, b *run) int { return cmp.Compare(a.energy, b.energy) })
	all = all[:min(finalists, len(all))]
	plans := make([]*plan.DayPlan, len(all))
	sideBySide(all, func(r *run) {
		for n, warmth := 0, laterWarmth; n < laterHeats; n, warmth = n+1, warmth*cooler {
			s.heat(ctx, r, second/laterHeats, warmth)
		}
		p := r.improver()
		p.reinsert(ctx, r.chooser, r.best)
		for _, t := range append([]*candidate{r.best}, r.everyOrder(ctx, r.best)...) {
			p.polish(ctx, t)
		}
		p.dropIdleMoves()
		p.plainerLayouts(ctx)
		plans[slices.Index(all, r)] = p.best
	})
	return plans
}

// everyOrder lists the best few of all orders of few jobs, with the layouts of a
// candidate; nothing where there are more jobs.
func (r *run) everyOrder(ctx context.Context, t *candidate) []*candidate {
	if len(t.order) > fewJobs || ctx.Err() != nil {
		return nil
	}
	type day struct {
		*candidate
		energy int64
	}
	var days []day
	plan.Orders(len(t.order), func(order []int) {
		if !r.rules.Kept(order) {
			return
		}
		d := t.clone()
		copy(d.order, order)
		days = append(days, day{d, r.eval.all(d, r.usual())})
	})
	slices.SortStableFunc(days, func(a, b day) int { return cmp.Compare(a.energy, b.energy) })
	var out []*candidate
	for _, d := range days[:min(fewDays, len(days))] {
		out = append(out, d.candidate)
	}
	return out
}

// sideBySide lets the runs work side by side. A panic in one of them is the caller's.
func sideBySide(all []*run, work func(*run)) {
	var wg sync.WaitGroup
	caught := make([]any, len(all))
	for i, r := range all {
		wg.Go(func() {
			defer func() { caught[i] = recover() }()
			work(r)
		})
	}
	wg.Wait()
	for _, c := range caught {
		if c != nil {
			panic(c)
		}
	}
}

// heat lets a run search on for some rounds, from a warmth of at most 1.
func (s *search) heat(ctx context.Context, r *run, rounds int, warmth float64) {
	if r.locked() {
		return
	}
	r.best, r.energy = r.anneal(r.best, r.energy, rounds, warmth, func(round int, best *candidate) bool {
		s.report(r.number, r.rounds+round, best)
		return ctx.Err() == nil
	})
	r.rounds += rounds
}

// begin is the candidate that a run starts from: the sequence given, mended where it
// breaks a rule, with the layouts that were chosen for it one after the other, or
// centred ones, as near as they can be set. Neither start is the better one on all
// days, so half of the runs take each.
func (r *run) begin(centred bool) (*candidate, bool) {
	t := r.given()
	for j, job := range r.jobs {
		if !centred || !r.free(j) {
			continue
		}
		if l, _, faults := r.eval.p.Nearest(r.start.At, job); len(faults) == 0 {
			t.choices[j].slits, t.choices[j].shift, t.choices[j].cuts = l.Slits, l.Shift, l.Cuts
		}
	}
	var ok bool
	if t.order, ok = r.rules.Mend(t.order); !ok {
		return nil, false
	}
	return t, r.eval.all(t, r.usual()) < impossible
}
