// Package floor proves how few repositions a day can take: in the order given, and in any
// order that its rules allow.
//
// What it promises: no plan that the verifier passes has fewer repositions than a floor says.
// Each floor counts something that every plan must do, whatever its layouts, resting places
// or order: leave places that it can't have kept (floor_keep.go), go from one job's places to
// another's (floor_distance.go, floor_orders.go), or come to places that nobody stands at.
// The greatest is the floor; where none is proven there is none. With a position tolerance a
// holder may cut from beside its cut, which no count here allows for, and so there is none.
package floor

import (
	"slices"

	"bide/plan"
)

// Needs is what a job asks of the beam whatever layout it takes. Damaged bands of the
// anvil are left out: they only take layouts away, so what bounds all from below
// bounds those that are left.
type Needs struct {
	Cuts    int           // how many holders it takes
	Fixed   []plan.Length // places of its cuts where every allowed layout has them; nil when it may shift or be arranged anew
	Web     plan.Span
	Listed  []plan.Length   // its cuts centred and as listed
	Window  plan.Span       // shifts it allows
	centred [][]plan.Length // the centred cuts of every order that its slits may have; none where those are too many
}

// The orders of entries that a job's layouts are distinguished by, and of two jobs
// together.
const (
	mostLaid  = 6
	mostPairs = 8
)

// NeedsOf is what the jobs need, in their order.
func NeedsOf(b *plan.Beam, jobs []*plan.Job) []Needs {
	out := make([]Needs, len(jobs))
	for i, j := range jobs {
		l := b.Lay(j, j.Slits(), 0)
		n := Needs{Cuts: len(l.Cuts), Web: l.Web, Listed: l.Cuts}
		n.Window.From, n.Window.To = b.Window(j)
		for _, slits := range allOrders(j) {
			n.centred = append(n.centred, b.Lay(j, slits, 0).Cuts)
		}
		if len(n.centred) == 1 && n.Window.Length() == 0 {
			n.Fixed = l.Cuts
		}
		out[i] = n
	}
	return out
}

// allOrders are all orders that a job allows its slits, the listed one first; none
// where there are too many to distinguish.
func allOrders(j *plan.Job) (all [][]plan.Length) {
	switch kinds := len(plan.Widths(j.Entries)); {
	case j.Arrange == plan.AsListed || kinds < 2:
		return [][]plan.Length{j.Slits()}
	case j.Arrange == plan.AnyArrange || factorial(len(j.Entries)) > mostLaid:
		return nil
	}
	plan.Orders(len(j.Entries), func(order []int) {
		slits := plan.Laid(j.Entries, order)
		if !slices.ContainsFunc(all, func(o []plan.Length) bool { return slices.Equal(o, slits) }) {
			all = append(all, slits)
		}
	})
	return all
}

// factorial of n, or more than any limit here where it is large.
func factorial(n int) int {
	f := 1
	for i := 2; i <= min(n, 12); i++ {
		f *= i
	}
	return f
}

// OfOrder is a lower bound on the repositions of the jobs in their order,
// idle holders' moves counted; nil where none above 0 is proven. With
// position_tolerance above 0 a place needn't be met exactly, and nothing is proven.
//
// The changeovers are split into windows, each bounded by itself: by the distance
// between the positions before it and its last job, or by what can't have been kept in
// it. Windows that don't overlap count different moves, so the best split is a
// longest path. O(n^2) windows for n jobs; what can't have been kept is counted in the
// whole day and in windows of few jobs, whose costs grow with their length.
func OfOrder(b *plan.Beam, start []plan.Length, jobs []*plan.Job) *plan.Floor {
	if b.PositionTolerance > 0 || len(jobs) == 0 {
		return nil
	}
	n := NeedsOf(b, jobs)
	return OfNeeds(b, start, n, Distances(b, start, jobs, n))
}

// mostInWindow is how many changeovers a window has, at most, in which it is counted what
// can't have been kept.
const mostInWindow = 40

// OfNeeds is OfOrder where needs and distances are known.
func OfNeeds(b *plan.Beam, start []plan.Length, n []Needs, apart [][]int) *plan.Floor {
	whole := Keeping(b, start, n)
	least := make([]int, len(n)+1) // moves up to each job, counted from 1
	for v := range n {
		least[v+1] = apart[len(n)][v]
		for u := range v {
			window := apart[u][v]
			if v-u <= mostInWindow {
				window = max(window, keptSince(b, n[u:v+1]))
			}
			least[v+1] = max(least[v+1], least[u+1]+window)
		}
		if v < mostInWindow {
			least[v+1] = max(least[v+1], Keeping(b, start, n[:v+1]))
		}
	}
	return largest(plan.Floor{Repositions: whole, By: plan.ByKeeping}, plan.Floor{Repositions: least[len(n)], By: plan.ByDistance})
}

// OfAnyOrder is a lower bound on the repositions of the jobs in whatever order that
// keeps the rules; nil where none above 0 is proven. The rows of distances are as
// distances gives them.
func OfAnyOrder(start []plan.Length, n []Needs, apart [][]int, r *plan.Rules) *plan.Floor {
	places := map[plan.Length]bool{}
	for i := range n {
		for _, c := range n[i].Fixed {
			if _, stands := slices.BinarySearch(start, c); !stands {
				places[c] = true
			}
		}
	}
	return largest(plan.Floor{Repositions: len(places), By: plan.ByDistinct}, plan.Floor{Repositions: longestWay(apart, r), By: plan.ByOrders})
}

// largest is the largest of the bounds, the first of equal ones, nil if none is
// above 0.
func largest(floors ...plan.Floor) *plan.Floor {
	best := plan.Floor{}
	for _, f := range floors {
		if f.Repositions > best.Repositions {
			best = f
		}
	}
	if best.Repositions == 0 {
		return nil
	}
	return &best
}
