package shop

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
)

func TestSpread(t *testing.T) {
	tests := []struct {
		name    string
		holders int
		pitch   plan.Length
		rail    plan.Span
		want    []plan.Length
	}{
		// -639.92 is rounded towards nought, which is onto the rail: -639.9.
		{"inwards", 3, 12_300_000, plan.Span{From: -639_920_000, To: 2_239_920_000}, []plan.Length{-639_900_000, 800_000_000, 2_239_900_000}},
		// 5.05 rounded would be 5.0, off the rail: exact.
		{"off the rail", 2, 12_300_000, plan.Span{From: 5_050_000, To: 105_000_000}, []plan.Length{5_050_000, 105_000_000}},
		{"off the far end", 2, 12_300_000, plan.Span{From: -105_000_000, To: -5_050_000}, []plan.Length{-105_000_000, -5_050_000}},
		// As near as the pitch of 12.34 allows: rounding would break it.
		{"at the pitch", 3, 12_340_000, plan.Span{From: 0, To: 24_680_000}, []plan.Length{0, 12_340_000, 24_680_000}},
		{"one", 1, 12_300_000, plan.Span{From: -100_000_000, To: 400_000_000}, []plan.Length{-100_000_000}},
	}
	for _, test := range tests {
		b := &plan.Beam{HolderWidth: test.pitch, Rail: test.rail, Holders: make([]plan.Condition, test.holders)}
		if got := spread(b).At; !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
}

// TestSpreadStandsRight: on any rail that holds them, the holders stand on it, a
// pitch apart, at most 0.1 mm from even.
func TestSpreadStandsRight(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewPCG(seed, seed))
	for range 2000 {
		n := 1 + r.IntN(60)
		b := &plan.Beam{HolderWidth: plan.Length(1 + r.IntN(20_000_000)), Holders: make([]plan.Condition, n)}
		b.Rail.From = plan.Length(r.IntN(2_000_000_000) - 1_000_000_000)
		b.Rail.To = b.Rail.From + b.Pitch()*plan.Length(n-1) + plan.Length(r.IntN(1<<r.IntN(31)))
		at := spread(b).At
		for i, x := range at {
			even := b.Rail.From + b.Rail.Length()*plan.Length(i)/plan.Length(max(n-1, 1))
			if x < b.Rail.From || x > b.Rail.To || i > 0 && x-at[i-1] < b.Pitch() || max(x-even, even-x) >= plan.Millimetre/10 {
				t.Fatalf("seed %d: beam %+v: holder %d at %d of %v", seed, b, i+1, x, at)
			}
		}
	}
}
