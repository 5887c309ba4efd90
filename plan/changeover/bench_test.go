package changeover_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// Speed on beams as shops have them: holders 12.3 mm apart, a web that takes two
// thirds of the rail, and a standing left by the jobs before. Wanted, at 140
// holders: the count alone, all good and free to rest, in 20 microseconds without
// allocating, and in 2 ms otherwise; the whole changeover in 20 ms, better 5; with
// free shift in 100 ms, better 50. Each benchmark goes round a few drawn pairs of
// jobs, and every plan it makes has passed the verifier before.

// pairs is how many pairs of jobs each benchmark goes round.
const pairs = 4

// setting is what is planned: a job from a standing.
type setting struct {
	beam     *plan.Beam
	planner  *changeover.Planner
	standing []plan.Length
	job      *plan.Job
	centred  plan.Layout
}

// newSetting plans a few jobs one after the other, the last of them as fine as
// before says, and sets the next one up.
func newSetting(tb testing.TB, n int, seed uint64, before, next fineness, worse func(b *plan.Beam)) *setting {
	tb.Helper()
	r := rand.New(rand.NewPCG(uint64(n), seed))
	s := &setting{beam: benchBeam(n)}
	if worse != nil {
		worse(s.beam)
	}
	var err error
	if s.planner, err = changeover.NewPlanner(s.beam); err != nil {
		tb.Fatal(err)
	}
	s.standing = evenly(s.beam)
	for _, f := range []fineness{mixed, next, before} {
		j := benchJob(r, s.beam, f, 12)
		j.Shift = plan.Centred
		_, c, faults := s.planner.Best(s.standing, j)
		if len(faults) > 0 {
			continue // a beam at its worst may refuse one; the holders stay
		}
		for i, h := range c.Holders {
			s.standing[i] = h.At
		}
	}
	s.job = benchJob(r, s.beam, next, 12)
	return s
}

// benchBeam is a beam of n good holders.
func benchBeam(n int) *plan.Beam {
	length := plan.Length(n) * 123 * mm / 10
	return &plan.Beam{HolderWidth: 12 * mm, Clearance: 3 * mm / 10, RestOverWeb: true, ParkClearance: 15 * mm, Holders: make([]plan.Condition, n),
		Rail: plan.Span{From: -length / 4, To: length * 11 / 10}, Web: plan.Span{To: length * 17 / 20}}
}

// fineness is the slit widths of a job, in hundredths of a millimetre.
type fineness []int

var (
	dense  = fineness{1905, 2000, 2540, 2500}
	mixed  = fineness{2540, 3810, 5080, 4800, 3000}
	sparse = fineness{7500, 9600, 10160, 14400}
)

// benchJob fills the web area with runs of slits; room to 12 mm more of it is left
// to shift in.
func benchJob(r *rand.Rand, b *plan.Beam, f fineness, room int) *plan.Job {
	j := &plan.Job{ID: "bench", Trim: 3 * mm, Shift: plan.Free}
	most := b.Web.Length() - plan.Length(20+room+r.IntN(50))*mm
	used := plan.Length(0)
	for {
		width := plan.Length(f[r.IntN(len(f))]) * mm / 100
		n := min(4+r.IntN(9), int((most-used)/width))
		if n < 1 {
			break
		}
		j.Entries = append(j.Entries, plan.Entry{Count: n, Finished: width, Width: width})
		used += plan.Length(n) * width
	}
	j.Web = used + 6*mm + plan.Length(room)*mm + plan.Length(r.IntN(120))*mm/10
	return j
}

// verify passes the plans that a benchmark will make through the verifier, and
// reports how many of its two jobs, centred and shifted, the beam can run.
func (s *setting) verify(tb testing.TB) (runs int) {
	tb.Helper()
	s.centred = s.beam.Lay(s.job, s.job.Slits(), 0)
	c, faults := s.planner.Changeover(s.standing, s.centred)
	n, ok := s.planner.Count(s.standing, s.centred)
	if ok != (len(faults) == 0) || n != c.Repositions && ok {
		tb.Fatalf("count %d %v, changeover %d %v", n, ok, c.Repositions, plantest.Reasons(faults))
	}
	if ok {
		runs++
		if err := verify.Changeover(s.beam, s.job, s.standing, s.centred, c); err != nil {
			tb.Fatal(err)
		}
	}
	l, best, faults := s.planner.Best(s.standing, s.job)
	if len(faults) > 0 {
		return runs
	}
	if err := verify.Changeover(s.beam, s.job, s.standing, l, best); err != nil {
		tb.Fatal(err)
	}
	if ok && best.Repositions > c.Repositions {
		tb.Fatalf("%d repositions over all shifts, %d centred", best.Repositions, c.Repositions)
	}
	return runs + 1
}

// round runs one piece of work over the pairs in turn. Easy ones must all run.
func round(b *testing.B, name string, easy bool, set func(seed uint64) *setting, do func(s *setting)) {
	b.Run(name, func(b *testing.B) {
		var all []*setting
		for seed := range uint64(pairs) {
			s := set(seed)
			if runs := s.verify(b); easy && runs < 2 {
				b.Fatalf("pair %d can't be run", seed)
			}
			all = append(all, s)
		}
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			do(all[i%pairs])
		}
	})
}

func count(s *setting) { s.planner.Count(s.standing, s.centred) }

func solveFixed(s *setting) { s.planner.Changeover(s.standing, s.centred) }

func best(s *setting) { s.planner.Best(s.standing, s.job) }

// BenchmarkCount counts with all holders good and free to rest.
func BenchmarkCount(b *testing.B) {
	for _, n := range plantest.Sizes(60, 140, 500) {
		round(b, fmt.Sprintf("holders=%d", n), true, func(seed uint64) *setting { return newSetting(b, n, seed, mixed, mixed, nil) }, count)
	}
}

// hardships are beams where the simple test for room does not do.
var hardships = []struct {
	name  string
	worse func(b *plan.Beam)
}{
	{"no-cut", func(b *plan.Beam) { b.Holders[len(b.Holders)/3], b.Holders[len(b.Holders)/2] = plan.NoCut, plan.NoCut }},
	{"stuck", func(b *plan.Beam) { b.Holders[len(b.Holders)/8] = plan.Stuck }},
	{"no-rest", noRest},
	{"no-cut-no-rest", func(b *plan.Beam) { b.Holders[2] = plan.NoCut; noRest(b) }},
	{"in-place", func(b *plan.Beam) { b.PositionTolerance = mm / 2 }},
}

// noRest forbids resting over the web, on a rail long enough to park every holder
// on either side.
func noRest(b *plan.Beam) {
	b.RestOverWeb = false
	all := plan.Length(len(b.Holders)) * b.Pitch()
	b.Rail = plan.Span{From: b.Web.From - all, To: b.Web.To + all}
}

func BenchmarkCountHard(b *testing.B) {
	for _, h := range hardships {
		for _, n := range plantest.Sizes(60, 140, 500) {
			round(b, fmt.Sprintf("%s/holders=%d", h.name, n), false, func(seed uint64) *setting { return newSetting(b, n, seed, mixed, mixed, h.worse) }, count)
		}
	}
}

// BenchmarkChangeover plans one layout with all tie-breaks, moves and reasons.
func BenchmarkChangeover(b *testing.B) {
	for _, n := range plantest.Sizes(60, 140, 500) {
		round(b, fmt.Sprintf("holders=%d", n), true, func(seed uint64) *setting { return newSetting(b, n, seed, mixed, mixed, nil) }, solveFixed)
	}
}

// BenchmarkBest plans one job over all its shifts.
func BenchmarkBest(b *testing.B) {
	for _, c := range []struct {
		name         string
		before, next fineness
	}{
		{"similar", mixed, mixed}, {"sparse-to-dense", sparse, dense}, {"dense-to-sparse", dense, sparse}, {"dense-to-dense", dense, dense},
	} {
		for _, n := range plantest.Sizes(60, 140, 500) {
			round(b, fmt.Sprintf("%s/holders=%d", c.name, n), true, func(seed uint64) *setting { return newSetting(b, n, seed, c.before, c.next, nil) }, best)
		}
	}
}

// BenchmarkBestHard shifts by up to 40 mm on the worse beams, from a standing that
// no job left: no two distances alike, so there is all the more to look at.
func BenchmarkBestHard(b *testing.B) {
	for _, h := range hardships {
		for _, n := range plantest.Sizes(60, 140) {
			round(b, fmt.Sprintf("%s/holders=%d", h.name, n), false, func(seed uint64) *setting {
				s := newSetting(b, n, seed, mixed, mixed, h.worse)
				r := rand.New(rand.NewPCG(uint64(n), seed+50))
				s.standing = plantest.Places(r, n, s.beam.Rail, s.beam.Pitch(), plan.Nanometre)
				s.job = benchJob(r, s.beam, mixed, 30)
				return s
			}, best)
		}
	}
}
