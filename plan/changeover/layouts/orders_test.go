package layouts_test

import (
	"math/rand/v2"
	"testing"

	"bide/plan"
	"bide/plan/changeover/layouts"
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
