package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"context"
	"slices"
)

// Finishing a tour: its resting places are settled against both neighbours, and it
// becomes a plan with moves in order and reasons.

// finish plans the tour's day for good: looking ahead or not, with the places as
// they come or settled against both neighbours, whichever is best.
func (f *finisher) finish(ctx context.Context, t *tour) {
	clear(f.redo)
	f.timed = true
	for _, f.blind = range [2]bool{false, true} {
		day := t.clone()
		if f.reckon(day, 0, changeover.Unreachable-1, nil, 0) == changeover.Unreachable {
			continue
		}
		f.keep(day)
		if ctx.Err() != nil && f.best != nil {
			return
		}
		f.settle(ctx, day)
		f.shake(ctx, day)
	}
}

// weave weaves a tour whose places are all known, and finishes it.
func (f *finisher) weave(ctx context.Context, t *tour, rounds int, locked bool) {
	f.keep(t)
	f.settle(ctx, t)
	t = f.seeker.weave(ctx, t, rounds, locked)
	f.keep(t)
	f.settle(ctx, t)
	f.shake(ctx, t)
}

// finisher keeps the best plan written so far.
type finisher struct {
	*seeker
	best  *plan.DayPlan
	least plan.Score
	tour  *tour // that best was written from
}

// The bounds of finishing. A few sweeps settle a day; shakes find the ways out of
// it that cost nothing at first.
const (
	mostSweeps = 12
	mostShakes = 24
	fewShakes  = 3
	shakesOf   = 5000 // turns times holders that may be shaken on a larger day
)

// keep writes the tour down and keeps it if it is better than what there is. A
// plan that moves a holder for nothing isn't kept: settling takes that away.
func (f *finisher) keep(t *tour) (better bool) {
	d := f.write(t)
	if !foresee(d) || !allHeld(d) {
		return true
	}
	sc := scoreOf(d.Steps())
	if better = f.best == nil || sc.Compare(f.least, f.aim) < 0; better {
		f.best, f.least, f.tour = d, sc, t.clone()
	}
	return better
}

// held reports whether every cut is held: with position_tolerance a holder that was to stay
// beside its cut may have been settled elsewhere for the job before, and then it
// would have to go to the cut itself.
func allHeld(d *plan.DayPlan) bool {
	for _, s := range d.Steps() {
		cutting := 0
		for _, h := range s.Changeover.Holders {
			if h.Use == plan.Cutting {
				cutting++
			}
		}
		if cutting != len(s.Layout.Cuts) {
			return false
		}
	}
	return true
}

// settle sweeps the day until that gains nothing more.
func (f *finisher) settle(ctx context.Context, t *tour) {
	for range mostSweeps {
		if ctx.Err() != nil && f.best != nil {
			return
		}
		if f.sweep(t, false); !f.keep(t) {
			return
		}
	}
}

// shake sweeps the day with places drawn by chance among those that cost as few
// repositions, and settles it again wherever that has saved one.
func (f *finisher) shake(ctx context.Context, t *tour) {
	moves, size := t.moves(), len(t.order)*len(f.p.Beam.Holders)
	for range min(max(fewShakes, shakesOf/max(size, 1)), mostShakes) {
		if ctx.Err() != nil {
			break
		}
		f.sweep(t, true)
		if n := t.moves(); n < moves {
			moves = n
			f.settle(ctx, t)
		}
	}
	f.settle(ctx, t)
}

// moves counts the repositions from standing to standing.
func (t *tour) moves() (n int) {
	for turn := range t.order {
		for i, at := range t.stands[turn].At {
			if t.stands[turn+1].At[i] != at {
				n++
			}
		}
	}
	return n
}

// sweep settles each turn's places again, from the last to the first, against what
// stands before it and what is to stand after it: for the two changeovers together
// exactly the fewest repositions, then parked, then travel, or by chance among
// those with as few repositions when shaken.
func (k *seeker) sweep(t *tour, shaken bool) {
	k.view.Shake, k.view.Chance = 0, k.chance
	if shaken {
		k.view.Shake = 1
	}
	n := len(t.order)
	for turn := n - 1; turn >= 0; turn-- {
		j, after := t.order[turn], []plan.Length(nil)
		if turn+1 < n {
			after = t.stands[turn+2].At
		}
		if !k.pinned[j] {
			k.settleJob(j, t.choices[j].cuts, t.stands[turn].At, after, t.stands[turn+1].At)
		}
	}
	k.view.Shake = 0
}

// settleJob finds the places for job j that cost least between what stands before
// it and what is to stand after it, nil where nothing is. It is not ok where the
// cuts can't be set, and then leaves into alone.
func (k *seeker) settleJob(j int, cuts, before, after, into []plan.Length) (ok bool) {
	k.p.Set(before, k.p.Beam.WebOf(k.jobs[j].Web), cuts)
	k.p.Keep.Loose(&k.p.Now)
	k.view.Coming, k.view.Then, k.view.Swaps = k.view.Coming[:0], after, nil
	q := -1
	if !k.p.Now.Impossible {
		q = k.p.Places.Solve(&k.p.Now, &k.p.Keep, &k.view)
	}
	if q < 0 {
		return false
	}
	for i := range into {
		c := &k.p.Places.List[q]
		into[i], q = c.At, int(c.Next)
	}
	return true
}

// write makes a plan of the tour from the places in its standings.
func (k *seeker) write(t *tour) *plan.DayPlan {
	d := &plan.DayPlan{Beam: k.p.Beam, Start: &t.stands[0]}
	now, clock := &t.stands[0], t.clocks[0]
	for turn, j := range t.order {
		job := k.jobs[j]
		l := k.p.Beam.Lay(job, t.choices[j].slits, t.choices[j].shift)
		c := k.p.Between(now.At, l, t.stands[turn+1].At)
		s := &plan.Step{Job: job, Layout: l, Changeover: c, SetupStart: clock}
		s.Setup = k.p.Beam.SetupTime(now, job, &c)
		s.Clock()
		if begun := k.begun[j]; begun != nil && turn == 0 {
			*s = *begun
			s.Changeover.Moves = slices.Clone(s.Changeover.Moves) // the next day's reasons are its own
		}
		d.Turns = append(d.Turns, plan.Turn{Job: job, Step: s})
		now, clock = now.After(s), s.RunEnd
	}
	d.Totals = plan.Sum(d.Turns)
	return d
}

// foresee names, for each move without a reason of its own at its changeover, the
// later job that it is made for: the first at which its holder cuts where it now
// stands, else the last at which it still stands there. It tells whether there is
// one for each.
func foresee(d *plan.DayPlan) (all bool) {
	all = true
	steps := d.Steps()
	for i, s := range steps {
		moves := s.Changeover.Moves
		for m := range moves {
			if moves[m].Why.Cause == plan.StandsAhead {
				moves[m].Why = ahead(steps[i+1:], &moves[m])
				all = all && moves[m].Why.Job != ""
			}
		}
	}
	return all
}

// ahead is the job of the later steps that a move is made for, if there is one.
func ahead(later []*plan.Step, move *plan.Move) plan.Why {
	w := plan.Why{Cause: plan.StandsAhead}
	for _, s := range later {
		h := s.Changeover.Holders[move.Holder-1]
		if h.At != move.To {
			break
		}
		w.Job, w.Cut = s.Job.ID, h.Cut
		if h.Use == plan.Cutting {
			break
		}
	}
	return w
}
