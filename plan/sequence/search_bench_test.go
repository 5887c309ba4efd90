package sequence

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/floor"
	"bide/plan/plantest"
)

// benchDay is a day of jobs with a free shift on a beam with that many holders, and
// the run that a search would begin with.
func benchDay(b *testing.B, holders, jobs int) (*run, *candidate) {
	beam := &plan.Beam{
		HolderWidth: 12 * plan.Millimetre, Clearance: 300 * 1000, Rail: plan.Span{From: -640 * plan.Millimetre, To: 2240 * plan.Millimetre},
		Web: plan.Span{From: 0, To: 1600 * plan.Millimetre}, RestOverWeb: true, Holders: make([]plan.Condition, holders),
		Drive: plan.Drive{Speed: 400 * plan.Millimetre, Acceleration: 800 * plan.Millimetre, Pick: time.Second, Set: time.Second},
	}
	start := &plan.Positions{}
	for i := range holders {
		start.At = append(start.At, beam.Rail.From+plan.Length(i)*beam.Rail.Length()/plan.Length(holders-1))
	}
	r := rand.New(rand.NewPCG(1, 91))
	d := &plan.Day{}
	for i := range jobs {
		w := plan.Length([]int{13, 15, 19, 25, 30, 38, 50, 75, 100}[r.IntN(9)]) * plan.Millimetre
		n := min(int(1400*plan.Millimetre/w), holders-2)
		d.Jobs = append(d.Jobs, plan.Job{ID: fmt.Sprint(i), Web: 1500 * plan.Millimetre, Trim: 6 * plan.Millimetre, Shift: plan.Free, Metres: 1000, Speed: 100,
			Entries: []plan.Entry{{Count: 1 + r.IntN(n), Finished: w, Width: w}}})
	}
	listed, err := PlanDay(beam, start, d)
	if err != nil {
		b.Fatal(err)
	}
	k := newRun(newInstance(listed, plan.AimMoves), 1, 0)
	t, ok := k.begin(false)
	if !ok || len(t.order) != jobs {
		b.Fatalf("%d of %d jobs planned", len(t.order), jobs)
	}
	return k, t
}

// BenchmarkDay plans a whole day as a search does: each changeover exactly, with a
// look at what comes.
func BenchmarkDay(b *testing.B) {
	for _, size := range plantest.Sizes([2]int{84, 12}, [2]int{130, 40}) {
		b.Run(fmt.Sprintf("holders=%d/jobs=%d", size[0], size[1]), func(b *testing.B) {
			k, t := benchDay(b, size[0], size[1])
			b.ReportAllocs()
			for b.Loop() {
				k.eval.all(t, look{rough: true})
			}
		})
	}
}

// BenchmarkEstimate estimates the same days.
func BenchmarkEstimate(b *testing.B) {
	for _, size := range plantest.Sizes([2]int{84, 12}, [2]int{130, 40}) {
		b.Run(fmt.Sprintf("holders=%d/jobs=%d", size[0], size[1]), func(b *testing.B) {
			k, t := benchDay(b, size[0], size[1])
			k.still()
			b.ReportAllocs()
			for b.Loop() {
				k.estimate(t)
			}
		})
	}
}

// BenchmarkOfOrder bounds long days of fixed layouts, which take it longest.
func BenchmarkOfOrder(b *testing.B) {
	for _, jobs := range plantest.Sizes(40, 500) {
		b.Run(fmt.Sprintf("holders=84/jobs=%d", jobs), func(b *testing.B) {
			k, t := benchDay(b, 84, jobs)
			for _, j := range k.jobs {
				j.Shift = plan.Centred
			}
			for b.Loop() {
				floor.OfOrder(k.beam, t.positions[0].At, k.jobs)
			}
		})
	}
}

// A search tries more for more jobs, and less where a beam takes longer to plan.
func TestDefaultRounds(t *testing.T) {
	beam := func(holders int) *plan.Beam { return &plan.Beam{Holders: make([]plan.Condition, holders)} }
	worn, near := beam(130), beam(130)
	worn.Holders[60], near.PositionTolerance = plan.NoCut, 500_000
	small, usual, large := DefaultRounds(beam(60), 10), DefaultRounds(beam(84), 24), DefaultRounds(beam(130), 40)
	if usual <= small || usual != DefaultRounds(beam(120), 24) {
		t.Errorf("%d rounds for 10 jobs, %d for 24 on 84 holders, %d on 120", small, usual, DefaultRounds(beam(120), 24))
	}
	if w, n := DefaultRounds(worn, 40), DefaultRounds(near, 40); w >= large || n != w {
		t.Errorf("40 jobs on 130 holders: %d rounds, with one that may not cut %d, with position_tolerance %d", large, w, n)
	}
	if vast := DefaultRounds(beam(150), 2000); vast <= 0 || vast > small {
		t.Errorf("%d rounds for 2000 jobs on 150 holders", vast)
	}
}
