package sequence

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
)

// Places between two sets of positions cost least for the two changeovers together: fewest
// repositions, then parked, by trying all placings. (Travel counts to the micrometre, and the
// beams tried are a few nanometres long.)
func TestBetweenIsBest(t *testing.T) {
	tried, none := 0, 0
	for seed := range uint64(2500) {
		r := rand.New(rand.NewPCG(seed, 46))
		b, start, d := tiny(r)
		listed, err := PlanDay(b, start, d)
		if err != nil || len(listed.Steps()) == 0 {
			continue
		}
		k := newRun(newInstance(listed, plan.AimMoves), 1, 0)
		all := placings(b)
		before, after := all[r.IntN(len(all))], all[r.IntN(len(all))]
		if r.IntN(5) == 0 {
			after = nil // nothing comes after
		}
		s := listed.Steps()[0]
		cost := func(at []plan.Length) (out [2]int) {
			out[0] = moved(before, at)
			if after != nil {
				out[0] += moved(at, after)
			}
			for _, x := range at {
				if x < s.Layout.Web.From || x > s.Layout.Web.To {
					out[1]++
				}
			}
			return out
		}
		compare := func(a, b []plan.Length) int {
			x, y := cost(a), cost(b)
			return slices.Compare(x[:], y[:])
		}
		can := slices.DeleteFunc(slices.Clone(all), func(at []plan.Length) bool { return !sets(b, s.Layout, at) })
		into := make([]plan.Length, len(b.Holders))
		ok := k.eval.between(0, s.Layout.Cuts, before, after, into, false)
		if ok != (len(can) > 0) {
			t.Fatalf("seed %d: found %v, there are %d", seed, ok, len(can))
		}
		if !ok {
			none++
			continue
		}
		tried++
		if least := slices.MinFunc(can, compare); !sets(b, s.Layout, into) || compare(into, least) != 0 {
			t.Fatalf("seed %d: from %v by %v to %v costs %v, by %v %v", seed, before, into, after, cost(into), least, cost(least))
		}
	}
	if tried < 1000 {
		t.Errorf("only %d tried (%d without any place)", tried, none)
	}
}
