package plantest

import (
	"math/rand/v2"
	"slices"

	"bide/plan"
)

// Places draws n ascending places on a stretch from 0, a pitch or more apart.
func Places(r *rand.Rand, n int, length, pitch plan.Length) []plan.Length {
	out := make([]plan.Length, n)
	for i := range out {
		out[i] = plan.Length(r.Int64N(int64(length-plan.Length(n-1)*pitch) + 1))
	}
	slices.Sort(out)
	for i := range out {
		out[i] += plan.Length(i) * pitch
	}
	return out
}
