package sequence_test

import (
	"math/rand/v2"
	"testing"

	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// All drives, and drawn days: every plan of a day passes.
func TestDrawnDaysVerify(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		b, start, d := plantest.DrawDay(r)
		p, err := sequence.PlanDay(b, start, d)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := verify.DayOf(p, d); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
	}
}
