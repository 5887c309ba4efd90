package layouts_test

import (
	"math/bits"
	"math/rand/v2"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/plantest"
)

// Of a centred job whose slits may change places an order that keeps out of the damaged
// bands is found exactly where there is one, by trying all orders; also where no exchange of
// two of them leads from the order listed to it.
func TestOrderIsFoundWhereThereIsOne(t *testing.T) {
	found, none, further := 0, 0, 0
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 87))
		j := &plan.Job{Trim: 1, Arrange: plan.Arrange(1 + r.IntN(2)), Web: 2}
		for range 4 + r.IntN(2) {
			w := plan.Length(10 + r.IntN(8))
			j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w, Width: w})
			j.Web += w
		}
		b := &plan.Beam{HolderWidth: 9, Clearance: 1, Rail: plan.Span{To: 200}, Web: plan.Span{To: j.Web}, Holders: make([]plan.Condition, 10)}
		var bands []plan.Span
		for range 6 + r.IntN(6) {
			from := 2 + plan.Length(r.IntN(int(j.Web)-4)) // the edges are cut in any order
			bands = append(bands, plan.Span{From: from, To: from + plan.Length(r.IntN(2))})
		}
		b.Bad = plan.JoinSpans(bands)
		there, near := false, false
		plan.Orders(len(j.Entries), func(order []int) {
			elsewhere := 0
			for i, e := range order {
				if i != e {
					elsewhere++
				}
			}
			if b.Bad.Miss(b.Lay(j, plan.Laid(j.Entries, order), 0).Cuts, 0) {
				there, near = true, near || elsewhere <= 2
			}
		})
		slits, ok := layouts.Order(b, j)
		if ok != there || ok && !b.Bad.Miss(b.Lay(j, slits, 0).Cuts, 0) {
			t.Fatalf("seed %d: an order keeps clear: %v, found: %v (%v, bands %v)", seed, there, ok, slits, b.Bad)
		}
		switch {
		case !there:
			none++
		case near:
			found++
		default:
			further++
		}
	}
	if min(found, none, further) < 50 {
		t.Errorf("for %d jobs an order is listed or an exchange away, for %d further, for %d there is none: too few to tell", found, further, none)
	}
}

// Many slits of two widths in any order have few different orders, and are looked at exactly
// too: by trying all of them.
func TestOrderOfManySlitsIsFound(t *testing.T) {
	const slits = 10
	found, none := 0, 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 88))
		j := &plan.Job{Trim: 1, Arrange: plan.AnyArrange, Web: 2}
		wide := 0
		for range slits {
			w := []plan.Length{10, 13}[r.IntN(2)]
			if w == 13 {
				wide++
			}
			j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w, Width: w})
			j.Web += w
		}
		b := &plan.Beam{HolderWidth: 9, Clearance: 1, Rail: plan.Span{To: 200}, Web: plan.Span{To: j.Web}, Holders: make([]plan.Condition, 12)}
		var bands []plan.Span
		for range 20 {
			from := 2 + plan.Length(r.IntN(int(j.Web)-4))
			bands = append(bands, plan.Span{From: from, To: from + plan.Length(r.IntN(3))})
		}
		b.Bad = plan.JoinSpans(bands)
		there := false
		for set := range uint(1 << slits) {
			if bits.OnesCount(set) != wide {
				continue
			}
			order := make([]plan.Length, slits)
			for i := range order {
				order[i] = 10 + 3*plan.Length(set>>i&1)
			}
			there = there || b.Bad.Miss(b.Lay(j, order, 0).Cuts, 0)
		}
		if there {
			found++
		} else {
			none++
		}
		if _, ok := layouts.Order(b, j); ok != there {
			t.Fatalf("seed %d: an order keeps clear: %v, found: %v (bands %v)", seed, there, ok, b.Bad)
		}
	}
	if min(found, none) < 30 {
		t.Errorf("for %d jobs there is an order, for %d none: too few to tell", found, none)
	}
}

// Where entries are too many for all of their sets, the look for an order is short.
func TestOrderOfManyEntriesEnds(t *testing.T) {
	j := &plan.Job{Trim: 1, Arrange: plan.ByEntries, Web: 2}
	for i := range plan.Length(22) {
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: 10 + i, Width: 10 + i})
		j.Web += 10 + i
	}
	b := &plan.Beam{HolderWidth: 9, Clearance: 1, Rail: plan.Span{To: j.Web}, Web: plan.Span{To: j.Web}, Holders: make([]plan.Condition, 24), Bad: plan.Spans{{From: 5, To: 60}}}
	plantest.Within(t, time.Second, func() {
		if _, ok := layouts.Order(b, j); ok {
			t.Error("an order keeps clear of a band wider than every slit")
		}
	})
}
