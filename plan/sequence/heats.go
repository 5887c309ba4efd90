package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"cmp"
	"context"
	"slices"
	"sync"
)

// A search is run in heats. In the first several starters search from the same
// tour, each by its own chance; in the others the best of them go on, cooler. What
// a starter finds is as uneven as the ground it walks on, so on a short day many
// starters and a choice do better than one long walk; a long day needs the walk.
const (
	mostStarters = 8
	jobsStarted  = 96 // starters times jobs
	finalists    = 2
	firstHeat    = 0.7 // its share of the rounds
	laterHeats   = 2   // of the finalists
	laterWarmth  = 0.3
	cooler       = 0.5 // the second of these beside the first
	// Up to so many jobs every order is tried with the finalists' layouts, and the
	// best few of them are finished too.
	fewJobs = 5
	fewDays = 8
)

// starters is how many begin on a day of that many jobs.
func starters(jobs int) int { return min(max(jobsStarted/max(jobs, 1), finalists), mostStarters) }

// run searches and finishes what the finalists found.
func (s *search) run(ctx context.Context) []*plan.DayPlan {
	all := make([]*starter, starters(len(s.jobs)))
	first := int(firstHeat*float64(s.effort.Rounds)) / len(all)
	second := (s.effort.Rounds - first*len(all)) / finalists
	for n := range all {
		all[n] = &starter{number: n, seeker: s.seeker(s.effort.Seed, n)}
	}
	s.each(all, func(r *starter) {
		if t, ok := r.seeker.begin(s, r.number%2 == 0); ok {
			r.tour, r.energy = t, energy(t.sums[len(s.jobs)], s.effort.Aim, r.seeker.move)
			s.heat(ctx, r, first, 1)
		}
	})
	all = slices.DeleteFunc(all, func(r *starter) bool { return r.tour == nil })
	slices.SortStableFunc(all, func(a, b *starter) int { return cmp.Compare(a.energy, b.energy) })
	all = all[:min(finalists, len(all))]
	plans := make([]*plan.DayPlan, len(all))
	s.each(all, func(r *starter) {
		for n, warmth := 0, laterWarmth; n < laterHeats; n, warmth = n+1, warmth*cooler {
			s.heat(ctx, r, second/laterHeats, warmth)
		}
		f := finisher{seeker: r.seeker}
		f.weave(ctx, r.tour, min(weavesPerJob*len(s.jobs), s.effort.Rounds), false)
		for _, t := range append([]*tour{r.tour}, r.seeker.everyOrder(ctx, r.tour)...) {
			f.finish(ctx, t)
		}
		f.straighten()
		f.restore(ctx)
		plans[slices.Index(all, r)] = f.best
	})
	return plans
}

// everyOrder lists the best few of all orders of few jobs, with the layouts of a
// tour; nothing where there are more jobs.
func (k *seeker) everyOrder(ctx context.Context, t *tour) []*tour {
	if len(t.order) > fewJobs || ctx.Err() != nil {
		return nil
	}
	clear(k.redo)
	type day struct {
		*tour
		energy int64
	}
	var days []day
	plan.Orders(len(t.order), func(order []int) {
		if !k.rules.Kept(order) {
			return
		}
		d := t.clone()
		copy(d.order, order)
		days = append(days, day{d, k.reckon(d, 0, changeover.Unreachable-1, nil, 0)})
	})
	slices.SortStableFunc(days, func(a, b day) int { return cmp.Compare(a.energy, b.energy) })
	var out []*tour
	for _, d := range days[:min(fewDays, len(days))] {
		out = append(out, d.tour)
	}
	return out
}

// starter is one of the searches.
type starter struct {
	number int
	seeker *seeker
	tour   *tour // best so far
	energy int64
	rounds int
}

// each lets the starters work side by side. A panic in one of them is the caller's.
func (s *search) each(all []*starter, work func(*starter)) {
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

// heat lets a starter search on for some rounds, from a warmth of at most 1.
func (s *search) heat(ctx context.Context, r *starter, rounds int, warmth float64) {
	if r.seeker.locked() {
		return
	}
	r.tour, r.energy = r.seeker.anneal(r.tour, r.energy, rounds, warmth, func(round int, best *tour) bool {
		s.report(r.number, r.rounds+round, best)
		return ctx.Err() == nil
	})
	r.rounds += rounds
}

// begin is the tour that a search starts from: the order given, mended where it
// breaks a rule, with the layouts that were chosen for it one after the other, or
// centred ones, as near as they can be set. Neither start is the better one on all
// days, so half of the starters take each.
func (k *seeker) begin(s *search, centred bool) (*tour, bool) {
	t := s.tour()
	for j, job := range k.jobs {
		if !centred || !k.free(j) {
			continue
		}
		if l, _, faults := k.p.Nearest(s.start.At, job); len(faults) == 0 {
			t.choices[j].slits, t.choices[j].shift, t.choices[j].cuts = l.Slits, l.Shift, l.Cuts
		}
	}
	var ok bool
	if t.order, ok = k.rules.Mend(t.order); !ok {
		return nil, false
	}
	const all = int64(1) << 62
	return t, k.reckon(t, 0, all, nil, 0) <= all
}

// tour is the order given with its layouts; what stands in between is not set.
func (s *search) tour() *tour {
	choices := make([]choice, len(s.jobs))
	for i, st := range s.steps {
		l := &st.Layout
		choices[i] = choice{slits: l.Slits, shift: l.Shift, cuts: l.Cuts}
		choices[i].entries = plan.EntriesOf(s.jobs[i], l.Slits)
	}
	return newTour(s.start, s.clock, choices)
}

// locked reports whether there is nothing to search for: one order, and no choice
// of layouts.
func (k *seeker) locked() bool {
	fixed := 0
	for j, turn := range k.rules.Turn {
		if k.free(j) {
			return false
		}
		if turn >= 0 {
			fixed++
		}
	}
	return len(k.jobs)-fixed < 2
}
