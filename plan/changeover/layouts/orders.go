package layouts

import (
	"math"
	"math/bits"
	"slices"

	"bide/plan"
)

// Orders are chosen exactly where that is cheap. Exchanging two slits at a time misses what
// three must do together, so a job would be refused that can be run, or keep a cut less; and
// a sum over the cuts laid so far depends on which slits those are, not on their order, so all
// sets stand for all orders.

// The largest searches that are made exactly: entries in any order, and vectors of
// counts of each width. Beyond, slits change places by chance.
const (
	MostEntries = 8
	MostVectors = 20_000
)

// bestOrder is the order of the job's slits in which the weight of targets at its cuts
// is greatest, the first slit beginning at first.
func bestOrder(j *plan.Job, first plan.Length, edge bool, targets []Target, bad plan.Spans) []plan.Length {
	if j.Arrange == plan.ByEntries {
		return plan.Laid(j.Entries, ArrangeEntries(j.Entries, first, edge, targets, bad))
	}
	return ArrangeAny(j.Entries, first, edge, targets, bad)
}

// damage outweighs all targets together.
const damage = 1 << 20

// worth is the weight of targets at a place, less what a damaged band there takes.
func worth(targets []Target, bad plan.Spans, at plan.Length) int {
	if bad.Hold(at) {
		return -damage
	}
	i, _ := slices.BinarySearchFunc(targets, at, func(t Target, at plan.Length) int {
		return int(min(max(t.At-at, -1), 1))
	})
	n := 0
	for ; i < len(targets) && targets[i].At == at; i++ {
		n += targets[i].Weight
	}
	return n
}

// ArrangeEntries orders entries, each one's slits side by side, so that the weight
// of targets at the cuts is greatest; the first slit begins at first, and edge says
// whether the outer edges are cuts. Exact, over all sets of entries laid:
// O(2^n n) for n entries, times their slits.
func ArrangeEntries(entries []plan.Entry, first plan.Length, edge bool, targets []Target, bad plan.Spans) []int {
	n := len(entries)
	full := 1<<n - 1
	best, last := make([]int, full+1), make([]int, full+1)
	for set := 1; set <= full; set++ {
		best[set] = math.MinInt
		for e := range n {
			if set&(1<<e) == 0 {
				continue
			}
			before := set &^ (1 << e)
			at, got := first+widthOf(entries, before), best[before]
			for q := range entries[e].Count {
				at += entries[e].Width
				if edge || set != full || q < entries[e].Count-1 { // the web's own edge is no cut
					got += worth(targets, bad, at)
				}
			}
			if got > best[set] {
				best[set], last[set] = got, e
			}
		}
	}
	order := make([]int, 0, n)
	for set := full; set > 0; set &^= 1 << last[set] {
		order = append(order, last[set])
	}
	slices.Reverse(order)
	return order
}

// widthOf is how wide the entries of a set are together.
func widthOf(entries []plan.Entry, set int) plan.Length {
	w := plan.Length(0)
	for ; set != 0; set &= set - 1 {
		e := entries[bits.TrailingZeros(uint(set))]
		w += plan.Length(e.Count) * e.Width
	}
	return w
}

// Vectors counts the vectors of how many slits of each width have been laid.
func Vectors(entries []plan.Entry) int {
	n := 1
	for _, e := range plan.Widths(entries) {
		n = min(n*(e.Count+1), MostVectors+1)
	}
	return n
}

// ArrangeAny orders all slits so that the weight of targets at the cuts is
// greatest. Exact, over all vectors of how many of each width have been laid:
// O(v w) for v vectors of w widths.
func ArrangeAny(entries []plan.Entry, first plan.Length, edge bool, targets []Target, bad plan.Spans) []plan.Length {
	kinds := plan.Widths(entries)
	total := Vectors(entries)
	best, last := make([]int, total), make([]int, total)
	for v := 1; v < total; v++ {
		best[v] = math.MinInt
		at, stride := first, 1
		for _, e := range kinds {
			at += plan.Length(v/stride%(e.Count+1)) * e.Width
			stride *= e.Count + 1
		}
		here := 0
		if edge || v < total-1 { // the web's own edge is no cut
			here = worth(targets, bad, at)
		}
		stride = 1
		for w, e := range kinds {
			if v/stride%(e.Count+1) > 0 && best[v-stride]+here > best[v] {
				best[v], last[v] = best[v-stride]+here, w
			}
			stride *= e.Count + 1
		}
	}
	var out []plan.Length
	for v := total - 1; v > 0; {
		stride := 1
		for w := range last[v] {
			stride *= kinds[w].Count + 1
		}
		out = append(out, kinds[last[v]].Width)
		v -= stride
	}
	slices.Reverse(out)
	return out
}

// Target is a place that a cut had better be at, and how much so.
type Target struct {
	At     plan.Length
	Weight int
}
