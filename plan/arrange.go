package plan

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// Arranging the slits of a job so that its cuts fall where they are wished. Where
// a cut falls depends only on which slits lie before it, not on their order, so
// the best arrangement is a best path over what has been laid: sets of entries, or
// for any order, how many of each width.

// The largest searches that are made exactly: entries in any order, and vectors of
// counts of each width. Beyond, slits change places by chance.
const (
	mostEntries = 8
	mostVectors = 20_000
)

// arrange picks an arrangement of the job's slits: often the one that suits the
// wishes best at the present shift, else the present one with two parts exchanged.
func (k *seeker) arrange(j *Job, now choice, wishes []wish) choice {
	l := k.p.beam.Lay(j, now.slits, now.shift)
	first, edge := l.Web.From+l.Trim[0], l.Trim[0] > 0
	suit := k.chance.IntN(3) > 0
	if j.Arrange == ByEntries {
		order := slices.Clone(now.entries)
		if suit && len(order) <= mostEntries {
			order = arrangeEntries(j.Entries, first, edge, wishes, k.p.beam.Bad)
		} else {
			k.swapTwo(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
		}
		return choice{slits: laid(j.Entries, order), entries: order}
	}
	if suit && vectors(j.Entries) <= mostVectors {
		return choice{slits: arrangeAny(j.Entries, first, edge, wishes, k.p.beam.Bad)}
	}
	slits := slices.Clone(now.slits)
	k.swapTwo(len(slits), func(a, b int) { slits[a], slits[b] = slits[b], slits[a] })
	return choice{slits: slits}
}

// swapTwo lets two of n things, drawn by chance, change places.
func (k *seeker) swapTwo(n int, swap func(a, b int)) { swap(k.chance.IntN(n), k.chance.IntN(n)) }

// laid is the slits of entries in an order.
func laid(entries []Entry, order []int) []Length {
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

// bestOrder is the order of the job's slits in which the weight of wishes at its cuts
// is greatest, the first slit beginning at first.
func bestOrder(j *Job, first Length, edge bool, wishes []wish, bad []Span) []Length {
	if j.Arrange == ByEntries {
		return laid(j.Entries, arrangeEntries(j.Entries, first, edge, wishes, bad))
	}
	return arrangeAny(j.Entries, first, edge, wishes, bad)
}

// damage outweighs all wishes together.
const damage = 1 << 20

// worth is the weight of wishes at a place, less what a damaged band there takes.
func worth(wishes []wish, bad []Span, at Length) int {
	if inBand(bad, at) {
		return -damage
	}
	i, _ := slices.BinarySearchFunc(wishes, at, func(w wish, at Length) int {
		return int(min(max(w.at-at, -1), 1))
	})
	n := 0
	for ; i < len(wishes) && wishes[i].at == at; i++ {
		n += wishes[i].weight
	}
	return n
}

// arrangeEntries orders entries, each one's slits side by side, so that the weight
// of wishes at the cuts is greatest; the first slit begins at first, and edge says
// whether the outer edges are cuts. Exact, over all sets of entries laid:
// O(2^n n) for n entries, times their slits.
func arrangeEntries(entries []Entry, first Length, edge bool, wishes []wish, bad []Span) []int {
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
					got += worth(wishes, bad, at)
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
func widthOf(entries []Entry, set int) Length {
	w := Length(0)
	for ; set != 0; set &= set - 1 {
		e := entries[bits.TrailingZeros(uint(set))]
		w += Length(e.Count) * e.Width
	}
	return w
}

// widths sums entries up by width, widest first.
func widths(entries []Entry) (out []Entry) {
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

// vectors counts the vectors of how many slits of each width have been laid.
func vectors(entries []Entry) int {
	n := 1
	for _, e := range widths(entries) {
		n = min(n*(e.Count+1), mostVectors+1)
	}
	return n
}

// arrangeAny orders all slits so that the weight of wishes at the cuts is
// greatest. Exact, over all vectors of how many of each width have been laid:
// O(v w) for v vectors of w widths.
func arrangeAny(entries []Entry, first Length, edge bool, wishes []wish, bad []Span) []Length {
	kinds := widths(entries)
	total := vectors(entries)
	best, last := make([]int, total), make([]int, total)
	for v := 1; v < total; v++ {
		best[v] = math.MinInt
		at, stride := first, 1
		for _, e := range kinds {
			at += Length(v/stride%(e.Count+1)) * e.Width
			stride *= e.Count + 1
		}
		here := 0
		if edge || v < total-1 { // the web's own edge is no cut
			here = worth(wishes, bad, at)
		}
		stride = 1
		for w, e := range kinds {
			if v/stride%(e.Count+1) > 0 && best[v-stride]+here > best[v] {
				best[v], last[v] = best[v-stride]+here, w
			}
			stride *= e.Count + 1
		}
	}
	var out []Length
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
