package sequence

import (
	"slices"

	"bide/plan"
)

// It wins 5.7 s and 14 moves on the demo, and nothing on the trials.
//
// A day that is improved for minutes, with blades to swap, keeps who cuts, and so choosing
// its places for moves alone would cost it swaps. What can still be spared are the moves of
// holders that don't cut.

// dropIdleMoves spares the best day found moves of idle holders: one that moves for two jobs
// one after the other goes for the first to where it is to stand for the second, or stays
// for the first where it stands, wherever nothing is in the way. Each job is tried by
// itself, and kept where that makes the day better. Every holder set otherwise spares a
// move, so it ends: O(n H) places looked at and n days written at a time for n jobs and H
// holders.
func (p *improver) dropIdleMoves() {
	if p.best == nil || p.beam.PositionTolerance > 0 {
		return
	}
	for better := true; better; {
		better = false
		for turn := range len(p.from.order) - 1 {
			if t := p.from.clone(); p.eval.dropIdleMoves(t, turn) && p.noWorse(t) {
				better = true
			}
		}
	}
}

// dropIdleMoves gives idle holders of a turn places that spare a move, and reports
// whether there were any.
func (e *evaluator) dropIdleMoves(t *candidate, turn int) (any bool) {
	j := t.order[turn]
	if e.pinned[j] {
		return false
	}
	before, at, after := t.positions[turn].At, t.positions[turn+1].At, t.positions[turn+2].At
	cuts := t.choices[j].cuts
	e.p.Set(before, e.beam.WebOf(e.jobs[j].Web), cuts)
	free := func(i int, x plan.Length) bool {
		return (i == 0 || x-at[i-1] >= e.p.Pitch) && (i == len(at)-1 || at[i+1]-x >= e.p.Pitch) && e.p.Scene.MayIdle(x)
	}
	for more := true; more; { // one may make room for the next
		more = false
		for i, x := range at {
			if _, cuts := slices.BinarySearch(cuts, x); cuts || x == before[i] || x == after[i] {
				continue
			}
			for _, to := range [2]plan.Length{after[i], before[i]} {
				if free(i, to) {
					at[i], more, any = to, true, true
					break
				}
			}
		}
	}
	return any
}
