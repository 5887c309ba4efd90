package route

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
)

// change is the changeover between two lists of places.
func change(from, to []plan.Length) *plan.Changeover {
	c := &plan.Changeover{From: from}
	for _, at := range to {
		c.Holders = append(c.Holders, plan.Stand{At: at})
	}
	return c
}

// wayOf is how far a carriage goes from home and back over the moves.
func wayOf(home plan.Length, c *plan.Changeover, order []int) plan.Length {
	at, sum := home, plan.Length(0)
	for _, h := range order {
		sum += (c.From[h] - at).Abs() + (c.Holders[h].At - c.From[h]).Abs()
		at = c.Holders[h].At
	}
	return sum + (home - at).Abs()
}

// clearAll reports whether the moves can be made in the order, each straight and
// a pitch clear of its neighbours, by moving them one after the other.
func clearAll(c *plan.Changeover, order []int, pitch plan.Length) bool {
	at := append([]plan.Length(nil), c.From...)
	for _, h := range order {
		lo, hi := min(at[h], c.Holders[h].At), max(at[h], c.Holders[h].At)
		if h > 0 && lo-at[h-1] < pitch || h+1 < len(at) && at[h+1]-hi < pitch {
			return false
		}
		at[h] = c.Holders[h].At
	}
	return true
}

// leastWay tries every order of the moves.
func leastWay(home plan.Length, c *plan.Changeover, pitch plan.Length, visit func(order []int, way plan.Length)) {
	var movers []int
	for h := range c.From {
		if c.From[h] != c.Holders[h].At {
			movers = append(movers, h)
		}
	}
	var permute func(k int)
	permute = func(k int) {
		if k == len(movers) {
			if clearAll(c, movers, pitch) {
				visit(movers, wayOf(home, c, movers))
			}
			return
		}
		for i := k; i < len(movers); i++ {
			movers[k], movers[i] = movers[i], movers[k]
			permute(k + 1)
			movers[k], movers[i] = movers[i], movers[k]
		}
	}
	permute(0)
}

func TestTwoHoldersTheSameWay(t *testing.T) {
	c := change([]plan.Length{10, 20}, []plan.Length{25, 35})
	order := Shortest(&plan.Drive{}, 5, c)
	if len(order) != 2 || order[0] != 1 || wayOf(0, c, order) != 100 {
		t.Errorf("order %v, way %d; want holder 2 then 1, and 100", order, wayOf(0, c, order))
	}
}

// The closed form against every order of the moves, home anywhere on the rail.
func TestRouteIsShortest(t *testing.T) {
	const pitch = 10
	for seed := range uint64(4000) {
		r := rand.New(rand.NewPCG(seed, 21))
		n := 1 + r.IntN(6)
		rail := plan.Length(10*(n-1) + r.IntN(60))
		c := change(plantest.Places(r, n, plan.Span{To: rail}, 10, 1), plantest.Places(r, n, plan.Span{To: rail}, 10, 1))
		d := &plan.Drive{Home: plan.Length(r.IntN(int(rail) + 1))}
		order := Shortest(d, pitch, c)
		if !clearAll(c, order, pitch) {
			t.Fatalf("seed %d: order %v can't be made from %v to %v", seed, order, c.From, c.Holders)
		}
		best := plan.Length(-1)
		leastWay(d.Home, c, pitch, func(_ []int, way plan.Length) {
			if best < 0 || way < best {
				best = way
			}
		})
		if got := wayOf(d.Home, c, order); got != best {
			t.Fatalf("seed %d: way %d, least %d; home %d, from %v to %v", seed, got, best, d.Home, c.From, c.Holders)
		}
	}
}

// With acceleration the route may change, but only for the better, and it must
// stay one that can be made.
func TestRouteIsNeverSlowerThanTheShortest(t *testing.T) {
	const pitch = 10
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 22))
		n := 1 + r.IntN(12)
		rail := plan.Length(10*(n-1) + r.IntN(200))
		c := change(plantest.Places(r, n, plan.Span{To: rail}, 10, 1), plantest.Places(r, n, plan.Span{To: rail}, 10, 1))
		b := &plan.Beam{HolderWidth: pitch, Drive: plan.Drive{Home: plan.Length(r.IntN(int(rail) + 1)), Speed: 30, Acceleration: 10}}
		moves := func(order []int) (out []plan.Move) {
			for _, h := range order {
				out = append(out, plan.Move{Holder: h + 1, From: c.From[h], To: c.Holders[h].At})
			}
			return out
		}
		short := Shortest(&b.Drive, pitch, c)
		before, _ := b.PositionerTime(moves(short))
		quick := Quickest(&b.Drive, pitch, c)
		after, _ := b.PositionerTime(moves(quick))
		if after > before || len(quick) != len(short) || !clearAll(c, quick, pitch) {
			t.Fatalf("seed %d: %v from %v, %v from %v", seed, after, quick, before, short)
		}
		if len(quick) < 3 { // of two the order with the least way stays
			continue
		}
		// No single move made earlier or later saves time any more, past the moves that have
		// nothing to do with it.
		for i, h := range quick {
			for _, step := range [2]int{-1, 1} {
				other := slices.Clone(quick)
				for j := i; j+step >= 0 && j+step < len(quick) && !sameChain(chainsOf(c, pitch), h, other[j+step]); j += step {
					other[j], other[j+step] = other[j+step], other[j]
					if took, _ := b.PositionerTime(moves(other)); took < after {
						t.Fatalf("seed %d: %v takes %v, %v takes %v", seed, quick, after, other, took)
					}
				}
			}
		}
	}
}

// sameChain reports whether two holders lie in one of the chains.
func sameChain(chains []chain, a, b int) bool {
	return slices.ContainsFunc(chains, func(w chain) bool { return w.first <= min(a, b) && max(a, b) <= w.last })
}
