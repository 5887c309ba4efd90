package material

import (
	"errors"
	"fmt"
)

// Cut is what one blade of a job runs on the anvil's face. The place is whole
// nanometres, so that the band that a cut lies in never depends on rounding.
type Cut struct {
	At     int64   // nm, on the beam's scale
	Metres float64 // cut there
}

// Cuts are cuts of the same length at places in whole nanometres.
func Cuts[L ~int64](metres float64, places []L) []Cut {
	out := make([]Cut, len(places))
	for i, at := range places {
		out[i] = Cut{int64(at), metres}
	}
	return out
}

// mostBands bounds the bands of a face.
const mostBands = 1 << 20

// Face is the metres cut in each band of the anvil's face.
type Face struct {
	From, To, Band int64     // nm; the last band may be narrower
	Metres         []float64 // by band, from the operator side
	Worst          int       // the band with most metres, the first of equals; -1 when nothing was cut
}

// Wear adds up a day's cuts on the anvil's face from one place to another in bands
// of a width, all in nm. A cut on the line between two bands counts in the one on
// the drive side, one on the far end in the last, one beside the face in none. Errors name what is out of range:
// a face or band without width, more than a million bands, metres below 0.
func Wear(from, to, band int64, cuts []Cut) (*Face, error) {
	if to <= from || band <= 0 || from < -mostPlace || to > mostPlace {
		return nil, fmt.Errorf("a face from %d to %d nm in bands of %d nm has no bands", from, to, band)
	}
	band = min(band, to-from)
	bands := (to - from + band - 1) / band
	if bands > mostBands {
		return nil, fmt.Errorf("%d bands are more than the %d accepted", bands, mostBands)
	}
	f := &Face{From: from, To: to, Band: band, Metres: make([]float64, bands), Worst: -1}
	var errs []error
	for i, c := range cuts {
		if err := inRange(fmt.Sprintf("length of cut %d", i+1), c.Metres, "m", 0, 1e12); err != nil {
			errs = append(errs, err)
			continue
		}
		f.add(c)
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	f.findWorst()
	return f, nil
}

// mostPlace keeps differences of places inside 63 bits: 4 000 km in nm.
const mostPlace int64 = 4e15

func (f *Face) add(c Cut) {
	if c.At < f.From || c.At > f.To {
		return
	}
	f.Metres[min((c.At-f.From)/f.Band, int64(len(f.Metres)-1))] += c.Metres
}

func (f *Face) findWorst() {
	most := 0.0
	for i, m := range f.Metres {
		if m > most {
			f.Worst, most = i, m
		}
	}
}

// Span is where a band lies, nm.
func (f *Face) Span(band int) (from, to int64) {
	from = f.From + int64(band)*f.Band
	return from, min(from+f.Band, f.To)
}

// Total is the metres cut in all bands.
func (f *Face) Total() float64 {
	sum := 0.0
	for _, m := range f.Metres {
		sum += m
	}
	return sum
}

// Evenness is the mean over the most of the bands that were cut in, from above 0 to
// 1, where all wear alike; 0 when nothing was cut.
func (f *Face) Evenness() float64 {
	if f.Worst < 0 {
		return 0
	}
	used := 0
	for _, m := range f.Metres {
		if m > 0 {
			used++
		}
	}
	return f.Total() / float64(used) / f.Metres[f.Worst]
}
