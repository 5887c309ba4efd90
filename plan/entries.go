package plan

import (
	"cmp"
	"slices"
)

// Laid is the slits of entries in an order.
func Laid(entries []Entry, order []int) []Length {
	var out []Length
	for _, e := range order {
		for range entries[e].Count {
			out = append(out, entries[e].Width)
		}
	}
	return out
}

// mostTries bounds the search for an order of entries. Of entries that differ in width
// each try is right; only those of one width in several counts need more than one.
const mostTries = 10_000

// entryOrder is an order of the entries in which their slits are those given. It tries
// the entries one after the other wherever a run of slits begins, those of one count
// once. It is not ok where there is none, or none among the tries that it may make.
func entryOrder(entries []Entry, slits []Length) (order []int, ok bool) {
	used, tries := make([]bool, len(entries)), 0
	var from func(slits []Length) bool
	from = func(slits []Length) bool {
		if len(slits) == 0 {
			return len(order) == len(entries)
		}
		var counts []int // tried here
		for e := range entries {
			n := entries[e].Count
			if used[e] || slices.Contains(counts, n) || n < 1 || n > len(slits) || !allOf(slits[:n], entries[e].Width) {
				continue
			}
			if tries++; tries > mostTries {
				return false
			}
			counts, used[e], order = append(counts, n), true, append(order, e)
			if from(slits[n:]) {
				return true
			}
			used[e], order = false, order[:len(order)-1]
		}
		return false
	}
	ok = from(slits)
	return order, ok
}

// allOf reports whether all slits are of the width.
func allOf(slits []Length, width Length) bool {
	return !slices.ContainsFunc(slits, func(s Length) bool { return s != width })
}

// Widths sums entries up by width, widest first.
func Widths(entries []Entry) (out []Entry) {
	for _, e := range entries {
		i := slices.IndexFunc(out, func(o Entry) bool { return o.Width == e.Width })
		if i < 0 {
			out = append(out, e)
		} else {
			out[i].Count += e.Count
		}
	}
	slices.SortFunc(out, func(a, b Entry) int { return cmp.Compare(b.Width, a.Width) })
	return out
}
