package plantest

import (
	"math/rand/v2"
	"slices"

	"bide/plan"
)

// Places draws n ascending places on a stretch, a pitch or more apart, each a
// whole number of grid steps from its start.
func Places(r *rand.Rand, n int, on plan.Span, pitch, grid plan.Length) []plan.Length {
	slack := int((on.Length() - plan.Length(n-1)*pitch) / grid)
	at := make([]plan.Length, n)
	for i := range at {
		at[i] = plan.Length(r.IntN(slack + 1))
	}
	slices.Sort(at)
	for i := range at {
		at[i] = on.From + at[i]*grid + plan.Length(i)*pitch
	}
	return at
}
