package changeover

import (
	"math/rand/v2"
	"slices"

	"bide/plan"
)

// Lookahead is what later changeovers make of the places chosen at this one. A place
// on a cut of the next job saves a reposition there if its holder can serve that
// cut; a place that the job after it wants too may save a second one, and so on.
type Lookahead struct {
	Coming []plan.Layout // the layouts that follow, the next first
	Then   []plan.Length // where each holder is at the next one, where that is known; else nil
	Swaps  []int64       // what it costs each holder to cut, in steps; empty nothing

	// Rough leaves out places that only make travel shorter: between two cuts those
	// counted from the drive side, and beyond the outermost cuts all but those that
	// hang on a holder that stays or a rail end. What can be set can be set without
	// them: idle holders slide to the operator side, or outwards beyond the cuts.
	Rough bool

	// Noise, when above 0, adds a chance cost below it to each candidate.
	Noise  int64
	Chance *rand.Rand

	shared []uses // of each shared place
	cuts   []uses // of each cut of the job itself
	now    *uses  // of the place considered, if it is a shared one
}

// uses are what each coming layout makes of a place: the number of the cut there
// from 0, or one of the following.
type uses [Horizon]int16

const (
	canStay int16 = -1 // an idle holder can stay there
	mustGo  int16 = -2 // whoever stands there must go
)

// Horizon is how many coming layouts are looked at. Each counts half of the one
// before it, and all together less than a reposition.
const Horizon = 4

// swap is what it costs holder i to cut, its blade being what it is.
func (o *Lookahead) swap(i int) int64 {
	if i < len(o.Swaps) {
		return o.Swaps[i]
	}
	return 0
}

// Carry sets what it costs each holder to cut a job with the blade it carries:
// little, so that it only decides between plans with equal repositions.
func (o *Lookahead) Carry(now *plan.Positions, j *plan.Job) {
	o.Swaps = o.Swaps[:0]
	if !j.Blade.Known() {
		return
	}
	for i := range now.At {
		cost := int64(0)
		if now.Blade(i) != j.Blade {
			cost = 1
		}
		o.Swaps = append(o.Swaps, cost)
	}
}

// anchor adds the places that the later changeovers want to the anchors.
func (o *Lookahead) anchor(s *Scene, a *anchors) {
	for j, x := range o.Then {
		a.kept = append(a.kept, x-plan.Length(j)*s.pitch)
	}
	if o.Then != nil {
		slices.Sort(a.kept)
	}
	for _, l := range o.Coming {
		for _, c := range l.Cuts {
			if s.MayIdle(c) {
				a.shared = append(a.shared, c)
			}
		}
	}
}

// usesOf are the uses of each of the places, which ascend as the cuts do; it takes the
// memory of into.
func (o *Lookahead) usesOf(into []uses, places []plan.Length, pitch plan.Length) []uses {
	into = slices.Grow(into[:0], len(places))[:len(places)]
	for q, l := range o.Coming {
		m := 0
		for v, at := range places {
			for m < len(l.Cuts) && l.Cuts[m] < at {
				m++
			}
			into[v][q] = useOf(&l, at, m, pitch)
		}
	}
	return into
}

// all is what a place loses that no coming layout can use.
func (o *Lookahead) all() int64 { return StepsPerMove - StepsPerMove>>len(o.Coming) }

// useAt is the use of any place.
func (o *Lookahead) useAt(at, pitch plan.Length) (seen uses) {
	for q, l := range o.Coming {
		m, _ := slices.BinarySearch(l.Cuts, at)
		seen[q] = useOf(&l, at, m, pitch)
	}
	return seen
}

// useOf is what the layout makes of a place, m cuts before it.
func useOf(l *plan.Layout, at plan.Length, m int, pitch plan.Length) int16 {
	switch {
	case m < len(l.Cuts) && l.Cuts[m] == at:
		return int16(m)
	case m < len(l.Cuts) && l.Cuts[m]-at < pitch, m > 0 && at-l.Cuts[m-1] < pitch:
		return mustGo
	}
	return canStay
}

// lost is what holder i of n loses at the coming changeovers with a place so seen,
// in steps: nothing where it can cut, the layout's whole weight elsewhere and once
// it has had to go.
func (o *Lookahead) lost(seen *uses, i, n int) int64 {
	lost, weight, gone := int64(0), int64(StepsPerMove/2), false
	for q := range o.Coming {
		m, cuts := int(seen[q]), len(o.Coming[q].Cuts)
		cuts -= m + 1 // behind that cut
		serves := m >= 0 && m <= i && cuts <= n-1-i
		gone = gone || !serves && seen[q] != canStay
		if gone || !serves {
			lost += weight
		}
		weight /= 2
	}
	return lost
}
