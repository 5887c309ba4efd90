package sequence

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/floor"
)

// Where every layout is fixed the estimate counts what the floor counts, which is
// counted another way: by maps of places and sorted intervals.
func TestEstimateCountsLikeTheFloor(t *testing.T) {
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 81))
		b := &plan.Beam{
			HolderWidth: 9 * plan.Millimetre, Clearance: plan.Millimetre, Holders: make([]plan.Condition, 2+r.IntN(8)),
			Rail: plan.Span{From: 0, To: 300 * plan.Millimetre}, Web: plan.Span{From: 50 * plan.Millimetre, To: 250 * plan.Millimetre},
			RestOverWeb: r.IntN(3) > 0, ParkClearance: plan.Length(r.IntN(10)) * plan.Millimetre,
		}
		var start []plan.Length
		for i := range b.Holders {
			start = append(start, plan.Length(10*i)*plan.Millimetre)
		}
		jobs, layouts := make([]*plan.Job, 2+r.IntN(8)), [][]plan.Length(nil)
		var n []floor.Needs
		for i := range jobs {
			jobs[i] = &plan.Job{Web: plan.Length(100+20*r.IntN(6)) * plan.Millimetre}
			var cuts []plan.Length
			for at := 60 + 5*r.IntN(6); at < 240 && len(cuts) < len(b.Holders); at += 10 + 5*r.IntN(8) {
				cuts = append(cuts, plan.Length(at)*plan.Millimetre)
			}
			layouts = append(layouts, cuts)
			n = append(n, floor.Needs{Cuts: len(cuts), Fixed: cuts, Web: b.WebOf(jobs[i].Web)})
		}
		s, arrivals := newEstimator(&instance{beam: b, jobs: jobs}), 0
		s.begin(start, time.Time{})
		for i, cuts := range layouts {
			arrivals += s.pass(i, n[i].Web, cuts)
		}
		arrivals += s.scarce(func(turn int) int { return len(layouts[turn]) })
		if want := floor.Keeping(b, slices.Clone(start), n); arrivals != want {
			t.Fatalf("seed %d: the estimate counts %d, the floor %d", seed, arrivals, want)
		}
	}
}
