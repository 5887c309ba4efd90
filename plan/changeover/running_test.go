package changeover

import (
	"testing"

	"bide/plan"
)

// A look for the order of slits that the holders stand for ends within its bound: here a
// holder is near enough to every cut, of fourteen widths each set is another way to go on
// (16 384), and no order is the right one.
func TestLookForAnOrderEnds(t *testing.T) {
	b := &plan.Beam{HolderWidth: 1, Rail: plan.Span{To: 1 << 17}, PositionTolerance: 1 << 17, Holders: make([]plan.Condition, 1)}
	j := &plan.Job{Arrange: plan.AnyArrange}
	for i := range 14 {
		w := plan.Length(1) << i
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w, Width: w})
	}
	f := finder{beam: b, at: []plan.Length{0}, total: 14, dead: map[string]bool{}, set: func([]plan.Length, plan.Length) bool { return false }}
	f.parts(j)
	if f.from(0, nil) || len(f.dead) > mostOrders {
		t.Errorf("%d ways were gone, the bound is %d", len(f.dead), mostOrders)
	}
	if len(f.dead) < mostOrders/2 {
		t.Errorf("only %d ways were gone: too few to meet the bound of %d", len(f.dead), mostOrders)
	}
}
