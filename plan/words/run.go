package words

import (
	"strings"

	"bide/plan"
)

// Uncounted names the stops that no time is counted for, of all runs or of some.
func Uncounted(u plan.Uncounted) (kinds []string) {
	if len(u.Sets) > 0 {
		kinds = append(kinds, "roll changes")
	}
	if len(u.Parents) > 0 {
		kinds = append(kinds, "parent roll changes")
	}
	return kinds
}

// Without says so in one phrase; empty where all is counted.
func Without(u plan.Uncounted) string {
	kinds := Uncounted(u)
	if len(kinds) == 0 {
		return ""
	}
	return "without " + strings.Join(kinds, " and ")
}

// WithoutBriefly is the same in few words.
func WithoutBriefly(u plan.Uncounted) string {
	switch {
	case len(u.Sets) > 0:
		return "without roll changes"
	case len(u.Parents) > 0:
		return "without parent rolls"
	}
	return ""
}

// Stops are a run's changes of rolls and what they take; empty where there are none.
func Stops(r plan.Run) string {
	var parts []string
	for _, c := range []struct {
		n    int
		what string
	}{{r.SetChanges, "roll change"}, {r.ParentChanges, "parent roll change"}} {
		if c.n > 0 {
			parts = append(parts, Count(c.n, c.what))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, ", ") + ", " + Minutes(r.Stops) + " min"
}
