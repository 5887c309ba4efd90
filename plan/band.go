package plan

import (
	"cmp"
	"slices"
)

// Bands puts damaged bands in order and joins those that overlap or share an end,
// as Beam.Bad wants them. O(n log n).
func Bands(all []Span) (out []Span) {
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

// BandAt is the band that a place lies in. O(log n) for n bands.
func BandAt(bad []Span, at Length) (band Span, in bool) {
	if len(bad) == 0 {
		return Span{}, false
	}
	i, _ := slices.BinarySearchFunc(bad, at, func(s Span, at Length) int { return cmp.Compare(s.To, at) })
	if i == len(bad) || bad[i].From > at {
		return Span{}, false
	}
	return bad[i], true
}

// InBand reports whether a place lies in a band.
func InBand(bad []Span, at Length) bool {
	_, in := BandAt(bad, at)
	return in
}

// ClearOf reports whether all cuts, ascending and shifted by a length, keep out of
// the bands. O(k + n) for k cuts and n bands.
func ClearOf(bad []Span, cuts []Length, by Length) bool {
	m := 0
	for _, s := range bad {
		for m < len(cuts) && cuts[m]+by < s.From {
			m++
		}
		if m < len(cuts) && cuts[m]+by <= s.To {
			return false
		}
	}
	return true
}
