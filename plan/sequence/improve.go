package sequence

import (
	"context"
	"math/rand/v2"

	"bide/plan"
)

// improver makes plans of candidates, and the best of them better: it writes a candidate
// down with its moves in order and their reasons, and goes over its places, which a search
// has only looked at one turn ahead of the other. It keeps the best plan written so far, so
// that no pass makes the day worse.
//
// What the passes win was measured on the demo and the three trials that have something to
// win, planned jointly in their listed order; each figure is what the setup of a day grows
// by when the pass is left out:
//
//	three starts        106.5, 121.7, 0 and 0 s
//	blind               0, 5.5, 22.0 and 0 s
//	perturbed places    0, 10.2, 5.9 and 0 s
//	reinsertion         0, 0, 8.5 and -1.2 s
//	idle moves dropped  5.7, 0, 0 and 0 s
//	plainer layouts     0 everywhere: they are for the eye
type improver struct {
	*instance
	eval   *evaluator
	chance *rand.Rand
	best   *plan.DayPlan
	least  plan.Score
	from   *candidate // that best was written from
}

// The bounds of improving. A few sweeps improve a day as far as they can; perturbing it
// finds the ways out of that which cost nothing at first.
const (
	mostSweeps = 12
	perturbs   = 4
)

// polish plans the candidate's day for good: looking ahead or not, with the places as
// they come or improved against both neighbours, whichever is best.
//
// Looking ahead sends a holder to where a later job cuts, which is wrong where something
// then drives it away again; blind, the sweeps that follow find the better places from the
// nearest ones. Either is the better beginning on some days, so both are tried.
func (p *improver) polish(ctx context.Context, t *candidate) {
	for _, blind := range [2]bool{false, true} {
		day := t.clone()
		if p.eval.all(day, look{timed: true, blind: blind}) == impossible {
			continue
		}
		p.record(day)
		if ctx.Err() != nil && p.best != nil {
			return
		}
		p.sweepOut(ctx, day)
		p.perturb(ctx, day)
	}
}

// reinsert reinserts the jobs of a candidate whose places are all known, and improves it.
func (p *improver) reinsert(ctx context.Context, c *chooser, t *candidate) {
	p.record(t)
	p.sweepOut(ctx, t)
	t = reinsert(ctx, p.eval, c, t)
	p.record(t)
	p.sweepOut(ctx, t)
	p.perturb(ctx, t)
}

// record writes the candidate down and keeps it if it is better than what there is; it
// reports whether to go on with it. A plan that moves a holder for nothing isn't kept:
// sweeping takes that away.
func (p *improver) record(t *candidate) (better bool) {
	d := p.eval.write(t)
	if !nameLaterJobs(d) || !held(d) {
		return true
	}
	sc := scoreOf(d.Steps())
	if better = p.best == nil || sc.Compare(p.least, p.aim) < 0; better {
		p.best, p.least, p.from = d, sc, t.clone()
	}
	return better
}

// noWorse writes the candidate down and keeps it if it is as good as the best so far in time
// and moves. Travel that takes no longer counts for nothing here: a millimetre less of it is no
// reason for a web to be shifted.
func (p *improver) noWorse(t *candidate) bool {
	d := p.eval.write(t)
	if !nameLaterJobs(d) || !held(d) {
		return false
	}
	sc := scoreOf(d.Steps())
	if inTimeAndMoves(sc).Compare(inTimeAndMoves(p.least), p.aim) > 0 {
		return false
	}
	p.best, p.least, p.from = d, sc, t
	return true
}

// inTimeAndMoves is a score with what breaks ties left out.
func inTimeAndMoves(s plan.Score) plan.Score {
	return plan.Score{Late: s.Late, LateJobs: s.LateJobs, Setup: s.Setup, Repositions: s.Repositions}
}

// held reports whether every cut is held: with position_tolerance a holder that was to stay
// beside its cut may have been set elsewhere for the job before, and then it
// would have to go to the cut itself.
func held(d *plan.DayPlan) bool {
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

// sweepOut sweeps the day until that gains nothing more.
func (p *improver) sweepOut(ctx context.Context, t *candidate) {
	for range mostSweeps {
		if ctx.Err() != nil && p.best != nil {
			return
		}
		if p.sweep(t); !p.record(t) {
			return
		}
	}
}

// perturb sweeps the day with places drawn by chance among those that cost as few
// repositions, and improves it again wherever that has saved one.
//
// A sweep moves one job's holders at a time and stops where no job alone gains. Among
// places that cost the same it always takes the same ones, so a saving that two jobs must
// make together stays out of its reach; other places of equal cost open the way.
func (p *improver) perturb(ctx context.Context, t *candidate) {
	moves := t.moves()
	for range perturbs {
		if ctx.Err() != nil {
			break
		}
		p.eval.ahead.Noise, p.eval.ahead.Chance = 1, p.chance
		p.sweep(t)
		p.eval.ahead.Noise = 0
		if n := t.moves(); n < moves {
			moves = n
			p.sweepOut(ctx, t)
		}
	}
	p.sweepOut(ctx, t)
}

// sweep chooses each turn's places again, from the last to the first, against the
// positions before it and those after it (see evaluator.between).
func (p *improver) sweep(t *candidate) {
	n := len(t.order)
	for turn := n - 1; turn >= 0; turn-- {
		j, after := t.order[turn], []plan.Length(nil)
		if turn+1 < n {
			after = t.positions[turn+2].At
		}
		if !p.pinned[j] {
			p.eval.between(j, t.choices[j].cuts, t.positions[turn].At, after, t.positions[turn+1].At, false)
		}
	}
}

// nameLaterJobs names, for each move without a reason of its own at its changeover, the
// later job that it is made for: the first at which its holder cuts where it now
// stands, else the last at which it still stands there. It reports whether there is
// one for each.
func nameLaterJobs(d *plan.DayPlan) (all bool) {
	all = true
	steps := d.Steps()
	for i, s := range steps {
		moves := s.Changeover.Moves
		for m := range moves {
			if moves[m].Why.Cause == plan.ForLaterJob {
				moves[m].Why = ahead(steps[i+1:], &moves[m])
				all = all && moves[m].Why.Job != ""
			}
		}
	}
	return all
}

// ahead is the job of the later steps that a move is made for, if there is one.
func ahead(later []*plan.Step, move *plan.Move) plan.Why {
	w := plan.Why{Cause: plan.ForLaterJob}
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
