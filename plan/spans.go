package plan

import (
	"cmp"
	"slices"
)

// Spans are stretches of the beam, ascending and apart.
type Spans []Span

// JoinSpans puts stretches in order and joins those that overlap or share an end.
// O(n log n).
func JoinSpans(all []Span) (out Spans) {
	all = slices.Clone(all)
	slices.SortFunc(all, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	for _, s := range all {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// At is the stretch that a place lies in. O(log n) for n stretches.
func (all Spans) At(place Length) (Span, bool) {
	if len(all) == 0 {
		return Span{}, false
	}
	i, _ := slices.BinarySearchFunc(all, place, func(s Span, at Length) int { return cmp.Compare(s.To, at) })
	if i == len(all) || all[i].From > place {
		return Span{}, false
	}
	return all[i], true
}

// Hold reports whether a place lies in one of the stretches.
func (all Spans) Hold(place Length) bool {
	_, in := all.At(place)
	return in
}

// Miss reports whether all places, ascending and shifted by a length, lie outside the
// stretches. O(k + n) for k places and n stretches.
func (all Spans) Miss(places []Length, by Length) bool {
	m := 0
	for _, s := range all {
		for m < len(places) && places[m]+by < s.From {
			m++
		}
		if m < len(places) && places[m]+by <= s.To {
			return false
		}
	}
	return true
}
