package changeover

import (
	"math/rand/v2"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
)

// drawn is a random beam of good holders that may rest anywhere, a standing and
// cuts on it, with room that ranges from tight to wide.
func drawn(r *rand.Rand, most int) (*Planner, []plan.Length, []plan.Length) {
	n := 1 + r.IntN(most)
	b := &plan.Beam{HolderWidth: 9, Clearance: 1, RestOverWeb: true, Holders: make([]plan.Condition, n)}
	slack := r.IntN(10*n + 2)
	b.Rail = plan.Span{From: 0, To: plan.Length(10*(n-1) + slack)}
	b.Web = b.Rail
	p, err := NewPlanner(b)
	if err != nil {
		panic(err)
	}
	return p, plantest.Places(r, n, b.Rail, 10, 1), plantest.Places(r, r.IntN(n+1), b.Rail, 10, 1)
}

// The two ways to count must agree wherever both apply, stay for stay.
func TestChainAgreesWithReach(t *testing.T) {
	t.Parallel()
	planned := 0
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 7))
		p, at, cuts := drawn(r, 40)
		p.Set(at, p.Beam.Web, cuts)
		if p.Scene.Impossible {
			continue
		}
		var byChain, byReach staySet
		chainOK := byChain.Find(&p.Scene)
		p.Scene.plain = false
		reachOK := byReach.Find(&p.Scene)
		if chainOK != reachOK || chainOK && byChain.most != byReach.most {
			t.Fatalf("seed %d: chain counts %d stays (%v), reach %d (%v)", seed, byChain.most, chainOK, byReach.most, reachOK)
		}
		if chainOK {
			planned++
		}
		for i := range at {
			if chainOK && byChain.may[i] != byReach.may[i] {
				t.Errorf("seed %d, holder %d: may stay %v by chain, %v by reach", seed, i+1, byChain.may[i], byReach.may[i])
			}
		}
	}
	if planned < 1000 {
		t.Errorf("only %d of the drawn worlds could be planned", planned)
	}
}

// Breaking ties must neither add nor lose a reposition.
func TestPlacesKeepTheCount(t *testing.T) {
	t.Parallel()
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 8))
		p, at, cuts := drawn(r, 60)
		l := plan.Layout{Web: p.Beam.Web, Cuts: cuts}
		n, ok := p.Count(at, l)
		c, faults := p.Changeover(at, l)
		if ok != (len(faults) == 0) {
			t.Fatalf("seed %d: counted %v, planned with faults %d", seed, ok, len(faults))
		}
		if ok && n != c.Repositions {
			t.Fatalf("seed %d: counted %d repositions, planned %d", seed, n, c.Repositions)
		}
	}
}
