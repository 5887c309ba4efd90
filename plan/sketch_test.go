package plan

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// Where every layout is fixed the sketch counts what the floor counts, which is
// reckoned another way: by maps of places and sorted intervals.
func TestSketchCountsLikeTheFloor(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 81))
		b := &Beam{
			HolderWidth: 9 * Millimetre, Clearance: Millimetre, Holders: make([]Condition, 2+r.IntN(8)),
			Rail: Span{0, 300 * Millimetre}, Web: Span{50 * Millimetre, 250 * Millimetre},
			RestOverWeb: r.IntN(3) > 0, StoreGap: Length(r.IntN(10)) * Millimetre,
		}
		var start []Length
		for i := range b.Holders {
			start = append(start, Length(10*i)*Millimetre)
		}
		jobs, layouts := make([]*Job, 2+r.IntN(8)), [][]Length(nil)
		var n []needs
		for i := range jobs {
			jobs[i] = &Job{Web: Length(100+20*r.IntN(6)) * Millimetre}
			var cuts []Length
			for at := 60 + 5*r.IntN(6); at < 240 && len(cuts) < len(b.Holders); at += 10 + 5*r.IntN(8) {
				cuts = append(cuts, Length(at)*Millimetre)
			}
			layouts = append(layouts, cuts)
			n = append(n, needs{cuts: len(cuts), fixed: cuts, web: b.web(jobs[i].Web)})
		}
		s, arrivals := newSketch(b, &Standing{At: start}, jobs), 0
		s.begin(start)
		for i, cuts := range layouts {
			arrivals += s.pass(i, n[i].web, cuts)
		}
		arrivals += s.scarce(func(turn int) int { return len(layouts[turn]) })
		if want := keeping(b, slices.Clone(start), n); arrivals != want {
			t.Fatalf("seed %d: the sketch counts %d, the floor %d", seed, arrivals, want)
		}
	}
}
