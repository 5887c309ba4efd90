package changeover_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// Brute force: on a beam a few nanometres long every place is a whole number, so
// trying all of them is an exact answer to "what is the best changeover". The
// rules below are those of the model in words, tried one placing after the other.

// answer is the best changeover found so far.
type answer struct {
	found           bool
	layout          plan.Layout
	moved, parked   int
	travel, shifted plan.Length
	at              []plan.Length
}

// better orders answers by the aim of one changeover. Places are tried smallest
// first and shifts from the operator side, so of two equal ones the first is best.
func (a answer) better(b answer) bool {
	switch {
	case !b.found || a.moved != b.moved:
		return !b.found || a.moved < b.moved
	case a.parked != b.parked:
		return a.parked < b.parked
	case a.travel != b.travel:
		return a.travel < b.travel
	}
	return a.shifted < b.shifted
}

// tryPlacings tries every placing of the holders for one layout.
func tryPlacings(b *plan.Beam, standing []plan.Length, l plan.Layout, best *answer) {
	for m := range l.Cuts {
		if m > 0 && l.Cuts[m]-l.Cuts[m-1] < b.HolderWidth+b.Clearance {
			return // a slit narrower than the pitch
		}
		if l.Cuts[m] < b.Rail.From || l.Cuts[m] > b.Rail.To {
			return // no holder can go there
		}
		if damaged(b, l.Cuts[m]) {
			return
		}
	}
	at := make([]plan.Length, len(standing))
	var place func(i int, from plan.Length)
	place = func(i int, from plan.Length) {
		if i == len(at) {
			if a := judge(b, standing, l, at); a.found && a.better(*best) {
				a.at, a.layout = slices.Clone(at), l
				*best = a
			}
			return
		}
		to := b.Rail.To
		if c := b.Holders[i]; c == plan.Stuck || c == plan.Out {
			from, to = max(from, standing[i]), standing[i]
		}
		for x := from; x <= to; x++ {
			at[i] = x
			place(i+1, x+b.HolderWidth+b.Clearance)
		}
	}
	place(0, b.Rail.From)
}

// damaged reports whether the anvil is damaged at a place.
func damaged(b *plan.Beam, x plan.Length) bool {
	return slices.ContainsFunc(b.Bad, func(band plan.Span) bool { return x >= band.From && x <= band.To })
}

// judge says whether holders may stand so, and what that costs.
func judge(b *plan.Beam, standing []plan.Length, l plan.Layout, at []plan.Length) answer {
	a := answer{found: true, shifted: max(l.Shift, -l.Shift)}
	held := 0
	for i, x := range at {
		condition, stays := b.Holders[i], x == standing[i]
		if !stays {
			a.moved++
			a.travel += max(x-standing[i], standing[i]-x)
		}
		serves := slices.IndexFunc(l.Cuts, func(cut plan.Length) bool {
			return x == cut || stays && x >= cut-b.PositionTolerance && x <= cut+b.PositionTolerance
		})
		if condition == plan.Stuck || condition == plan.Out {
			for m, cut := range l.Cuts {
				if m != serves && x > cut-b.Pitch() && x < cut+b.Pitch() {
					return answer{}
				}
			}
		}
		if serves >= 0 {
			if condition == plan.NoCut || condition == plan.Out || damaged(b, x) {
				return answer{} // and nobody else can come to that cut
			}
			held++
			continue
		}
		if x < l.Web.From || x > l.Web.To {
			a.parked++
		}
		gap := max(b.ParkClearance, 1)
		if !b.RestOverWeb && x > l.Web.From-gap && x < l.Web.To+gap {
			return answer{}
		}
	}
	a.found = held == len(l.Cuts)
	return a
}

// best tries every shift that the job allows.
func (w *world) best() answer {
	var best answer
	for shift := -w.job.Web; shift <= w.job.Web; shift++ {
		l := lay(&w.beam, &w.job, shift)
		if w.allows(l) {
			tryPlacings(&w.beam, w.standing, l, &best)
		}
	}
	return best
}

// allows reports whether the job may be laid out so.
func (w *world) allows(l plan.Layout) bool {
	trimmed := l.Trim[0]+l.Trim[1] > 0
	switch {
	case l.Trim[0]+l.Trim[1] < 0 || w.job.Web > w.beam.Web.Length():
		return false
	case trimmed && (l.Trim[0] < w.job.Trim || l.Trim[1] < w.job.Trim):
		return false
	}
	return l.Shift == 0 || trimmed && w.job.Shift == plan.Free
}

// compare holds the planner's answers against brute force.
func (w *world) compare(p *changeover.Planner) error {
	centred := lay(&w.beam, &w.job, 0)
	if w.allows(centred) {
		var want answer
		tryPlacings(&w.beam, w.standing, centred, &want)
		if err := compareFixed(p, &w.beam, w.standing, centred, want); err != nil {
			return fmt.Errorf("centred: %w", err)
		}
	}
	want := w.best()
	l, got, faults := p.Best(w.standing, &w.job)
	if err := compareOne(want, l, got, faults); err != nil {
		return fmt.Errorf("best: %w", err)
	}
	if want.found {
		return verify.Changeover(&w.beam, &w.job, w.standing, l, got)
	}
	return nil
}

// compareFixed holds Changeover and Count for one layout against what is wanted.
func compareFixed(p *changeover.Planner, b *plan.Beam, standing []plan.Length, l plan.Layout, want answer) error {
	got, faults := p.Changeover(standing, l)
	if err := compareOne(want, l, got, faults); err != nil {
		return err
	}
	if n, ok := p.Count(standing, l); ok != want.found || ok && n != want.moved {
		return fmt.Errorf("count %d %v, brute force %d %v", n, ok, want.moved, want.found)
	}
	if !want.found {
		return nil
	}
	return verify.Changeover(b, nil, standing, l, got)
}

func compareOne(want answer, l plan.Layout, got plan.Changeover, faults []plan.Fault) error {
	if (len(faults) == 0) != want.found {
		return fmt.Errorf("refused %v, brute force finds %+v", plantest.Reasons(faults), want)
	}
	if !want.found {
		for _, why := range plantest.Reasons(faults) {
			if why == "" {
				return fmt.Errorf("refused without a reason")
			}
		}
		return nil
	}
	var at []plan.Length
	for _, h := range got.Holders {
		at = append(at, h.At)
	}
	same := got.Repositions == want.moved && got.Parked == want.parked && got.Travel == want.travel &&
		l.Shift == want.layout.Shift && slices.Equal(l.Cuts, want.layout.Cuts) && slices.Equal(at, want.at)
	if !same {
		return fmt.Errorf("repositions %d parked %d travel %d shift %d places %v, brute force %d %d %d %d %v (cuts %v)",
			got.Repositions, got.Parked, got.Travel, l.Shift, at, want.moved, want.parked, want.travel, want.layout.Shift, want.at, want.layout.Cuts)
	}
	return nil
}

// Drawn worlds of up to five holders: all conditions, resting on and off, store
// gaps, in place, shift fixed and free.
func TestBruteForceDrawn(t *testing.T) {
	t.Parallel()
	n := plantest.Worlds(5_000, 100_000)
	planned, failed := 0, 0
	for seed := range uint64(n) {
		w := drawWorld(rand.New(rand.NewPCG(seed, 1)))
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			t.Fatalf("seed %d: %v\n%v", seed, err, w)
		}
		if err := w.compare(p); err != nil {
			t.Errorf("seed %d: %v\n%v", seed, err, w)
			if failed++; failed == 5 {
				t.FailNow()
			}
		}
		if w.best().found {
			planned++
		}
	}
	if planned < n/4 || planned > n*9/10 {
		t.Errorf("%d of %d worlds can be planned: the draw shows too little of one side", planned, n)
	}
}

// Every world of up to three holders on a short rail: all standings, all
// conditions, all cuts, webs and rules.
func TestBruteForceAll(t *testing.T) {
	t.Parallel()
	type size struct{ holders, pitch, rail, inPlace plan.Length }
	sizes := []size{{1, 2, 4, 0}, {2, 2, 5, 0}, {2, 3, 6, 1}, {2, 4, 8, 1}, {3, 2, 6, 0}, {3, 3, 8, 1}}
	if !plantest.IsLong() {
		sizes = sizes[:2]
	}
	cases := 0
	for _, s := range sizes {
		b := plan.Beam{HolderWidth: s.pitch - 1, Clearance: 1, PositionTolerance: s.inPlace, Rail: plan.Span{To: s.rail}}
		for conditions := range 1 << (2 * s.holders) {
			b.Holders = b.Holders[:0]
			for i := range s.holders {
				b.Holders = append(b.Holders, plan.Condition(conditions>>(2*i)&3))
			}
			cases += everyRule(t, b)
		}
	}
	t.Logf("%d cases", cases)
}

// everyRule tries all webs, resting rules, standings and cuts on a beam.
func everyRule(t *testing.T, b plan.Beam) int {
	cases := 0
	for edge := range plan.Length(3) {
		b.Web = plan.Span{From: b.Rail.From + edge, To: b.Rail.To - 1}
		for gap := plan.Length(-1); gap <= 2; gap++ {
			b.RestOverWeb, b.ParkClearance = gap < 0, max(gap, 0)
			p, err := changeover.NewPlanner(&b)
			if err != nil {
				t.Fatalf("%+v: %v", b, err)
			}
			for _, cuts := range spacedOut(b.Web.From+1, b.Web.To-1, b.Pitch(), 4) {
				l := plan.Layout{Web: b.Web, Cuts: cuts}
				for _, standing := range spacedOut(b.Rail.From, b.Rail.To, b.Pitch(), len(b.Holders)) {
					if len(standing) < len(b.Holders) {
						continue
					}
					cases++
					var want answer
					tryPlacings(&b, standing, l, &want)
					if err := compareFixed(p, &b, standing, l, want); err != nil {
						t.Fatalf("%v\nbeam %+v\nstanding %v web %v cuts %v", err, b, standing, l.Web, cuts)
					}
				}
			}
		}
	}
	return cases
}

// spacedOut lists every ascending choice of up to n places on a stretch, a pitch or
// more apart.
func spacedOut(from, to, pitch plan.Length, n int) [][]plan.Length {
	out := [][]plan.Length{nil}
	if n == 0 {
		return out
	}
	for x := from; x <= to; x++ {
		for _, rest := range spacedOut(x+pitch, to, pitch, n-1) {
			out = append(out, append([]plan.Length{x}, rest...))
		}
	}
	return out
}
