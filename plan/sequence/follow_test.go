package sequence

import (
	"math/rand/v2"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
)

// Where a candidate comes to the positions of the one that it was made from, the rest of
// the day is taken from that. Planned anew from the first turn that differs the day is the
// same, turn for turn: positions, sums, clocks and energy.
func TestFollowedDayIsTheDayPlannedAnew(t *testing.T) {
	followed, planned := 0, 0
	for seed := range uint64(plantest.Worlds(60, 100)) {
		chance := rand.New(rand.NewPCG(seed, 45))
		b, start, d := plantest.DrawQuickDay(chance)
		for i := range d.Jobs { // with due times nothing is followed
			d.Jobs[i].Due = time.Time{}
		}
		listed, err := PlanDay(b, start, d)
		if err != nil || len(listed.Steps()) < 3 {
			continue
		}
		r := newRun(newInstance(listed, plan.Aim(seed%2)), seed, 0)
		now, ok := r.begin(false)
		if !ok {
			continue
		}
		how := look{timed: r.timed(), rough: true}
		if r.eval.all(now, how) == impossible {
			continue
		}
		next := now.clone()
		for range 40 {
			from, alike, ok := r.propose(now, next)
			if !ok {
				continue
			}
			next.guess = r.estimate(next)
			next.copyPositions(now, from)
			anew := next.clone()
			got, want := r.eval.from(next, how, from, impossible-1, now, alike), r.eval.from(anew, how, from, impossible-1, nil, 0)
			if got != want {
				t.Fatalf("seed %d: energy %d, planned anew %d", seed, got, want)
			}
			if got == impossible {
				continue
			}
			planned++
			for turn := range next.positions {
				if !next.joins(anew, turn) || next.sums[turn] != anew.sums[turn] || !next.clocks[turn].Equal(anew.clocks[turn]) {
					t.Fatalf("seed %d: before turn %d holders are at %v, planned anew at %v", seed, turn, next.positions[turn].At, anew.positions[turn].At)
				}
			}
			for turn := max(alike, from+1); turn < len(next.order); turn++ {
				if next.joins(now, turn) {
					followed++
					break
				}
			}
			if r.eval.all(next, how) != impossible { // the turns before look ahead at the change
				now, next = next, now
			}
		}
	}
	if followed < planned/50 || planned < 200 {
		t.Errorf("of %d candidates %d join the one they were made from: too few to tell", planned, followed)
	}
}
