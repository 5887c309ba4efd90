package plan_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
)

// Bands come out in order and apart, and hold the same places.
func TestBandsAreJoined(t *testing.T) {
	in := func(bands []plan.Span, x plan.Length) bool {
		return slices.ContainsFunc(bands, func(s plan.Span) bool { return s.From <= x && x <= s.To })
	}
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 81))
		var all []plan.Span
		for range r.IntN(6) {
			from := plan.Length(r.IntN(30))
			all = append(all, plan.Span{From: from, To: from + plan.Length(r.IntN(8))})
		}
		joined := plan.JoinSpans(all)
		for i, s := range joined {
			if s.From > s.To || i > 0 && s.From <= joined[i-1].To {
				t.Fatalf("seed %d: %v of %v", seed, joined, all)
			}
		}
		for x := plan.Length(-1); x < 40; x++ {
			if in(all, x) != in(joined, x) {
				t.Fatalf("seed %d: %v and %v differ at %d", seed, all, joined, x)
			}
		}
	}
}
