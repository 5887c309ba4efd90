package sequence

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
)

// An idle holder that moves for two jobs goes at once to where the second has it, or stays
// for the first, where neighbours, the web and who cuts leave it so.
func TestIdleMovesOfATurnAreDropped(t *testing.T) {
	mm := func(places ...plan.Length) (out []plan.Length) {
		for _, x := range places {
			out = append(out, x*plan.Millimetre)
		}
		return out
	}
	for name, c := range map[string]struct {
		before, at, after, cuts, want []plan.Length
		store                         bool // idle holders may not rest over the web
	}{
		"at once":                {mm(0, 50, 90), mm(0, 33, 60), mm(0, 30, 60), mm(60), mm(0, 30, 60), false},
		"stays for the first":    {mm(0, 50, 90), mm(25, 36, 60), mm(25, 20, 60), mm(60), mm(25, 50, 60), false},
		"neither has room":       {mm(25, 55, 90), mm(25, 36, 60), mm(25, 30, 60), mm(60), mm(25, 36, 60), false},
		"room made by the next":  {mm(28, 45, 90), mm(20, 34, 60), mm(30, 40, 60), mm(60), mm(30, 40, 60), false},
		"who cuts stays":         {mm(0, 50, 90), mm(0, 40, 60), mm(0, 45, 70), mm(40, 60), mm(0, 40, 60), false},
		"over the web, no place": {mm(0, 10, 50), mm(0, 12, 60), mm(0, 40, 60), mm(60), mm(0, 10, 60), true},
	} {
		beam := &plan.Beam{HolderWidth: 9 * plan.Millimetre, Clearance: plan.Millimetre, Rail: plan.Span{From: 0, To: 100 * plan.Millimetre}, Web: plan.Span{From: 20 * plan.Millimetre, To: 100 * plan.Millimetre},
			ParkClearance: plan.Millimetre, RestOverWeb: !c.store, Holders: make([]plan.Condition, 3)}
		p, err := changeover.NewPlanner(beam)
		if err != nil {
			t.Fatal(err)
		}
		jobs := []*plan.Job{{ID: "A", Web: 80 * plan.Millimetre}, {ID: "B", Web: 80 * plan.Millimetre}}
		e := &evaluator{instance: &instance{beam: beam, jobs: jobs, pinned: make([]bool, 2), laid: make([]bool, 2)}, p: p}
		day := newCandidate(&plan.Positions{At: c.before}, time.Time{}, []choice{{cuts: c.cuts}, {}})
		day.positions[1].At, day.positions[2].At = slices.Clone(c.at), c.after
		spared := e.dropIdleMoves(day, 0)
		if got := day.positions[1].At; !slices.Equal(got, c.want) || spared == slices.Equal(c.at, c.want) {
			t.Errorf("%s: from %v by %v to %v it goes by %v, want %v (spared: %v)", name, c.before, c.at, c.after, got, c.want, spared)
		}
	}
}

// Of a day whose idle moves have been dropped, no turn has one left that could be, the last
// ones included.
func TestNoIdleMoveIsLeftToDrop(t *testing.T) {
	dropped := 0
	for seed := range uint64(400) {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 49)))
		listed, err := PlanDay(b, start, d)
		if err != nil || b.PositionTolerance > 0 || len(listed.Steps()) < 2 {
			continue
		}
		r := newRun(newInstance(listed, plan.AimMoves), 1, 0)
		day := r.given()
		if r.eval.all(day, look{timed: true, blind: true}) == impossible {
			continue
		}
		p := r.improver()
		if p.record(day); p.best == nil {
			continue
		}
		before := p.best.Totals.Repositions
		p.dropIdleMoves()
		if p.best.Totals.Repositions < before {
			dropped++
		}
		for turn := range len(p.from.order) - 1 {
			least := p.best.Totals.Repositions
			if c := p.from.clone(); p.eval.dropIdleMoves(c, turn) && p.noWorse(c) && p.best.Totals.Repositions < least {
				t.Errorf("seed %d: a move at turn %d of %d was left", seed, turn, len(p.from.order))
			}
		}
	}
	if dropped < 3 {
		t.Errorf("moves were dropped on %d days: too few to tell", dropped)
	}
}
