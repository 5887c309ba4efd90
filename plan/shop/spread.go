package shop

import "bide/plan"

// spread stands the holders evenly over the rail, the first and the last at its
// ends: rounded towards nought to 0.1 mm, exact where that would leave the rail or
// break the pitch. Exact places keep the pitch, since the rail holds them all.
func spread(b *plan.Beam) *plan.Positions {
	n := len(b.Holders)
	at := make([]plan.Length, n)
	exact := make([]bool, n)
	for again := true; again; {
		again = false
		for i := range at {
			at[i] = evenly(b.Rail, i, n, exact[i])
		}
		for i := range at {
			off := at[i] < b.Rail.From || at[i] > b.Rail.To
			near := i > 0 && at[i]-at[i-1] < b.Pitch() || i < n-1 && at[i+1]-at[i] < b.Pitch()
			if (off || near) && !exact[i] {
				exact[i], again = true, true
			}
		}
	}
	return &plan.Positions{At: at, Blades: make([]plan.Blade, n), Assumed: true}
}

// evenly is the place of holder i of n.
func evenly(rail plan.Span, i, n int, exact bool) plan.Length {
	const step = plan.Millimetre / 10
	at := rail.From + rail.Length()*plan.Length(i)/plan.Length(max(n-1, 1))
	if !exact {
		at -= at % step // Go's remainder has the sign of at: towards nought
	}
	return at
}
