package plan_test

import (
	"slices"
	"testing"

	"bide/plan"
)

const mm = plan.Millimetre

// An order of entries is known also where several have one width, and a list made to
// waste time is given up on.
func TestArrangesByEntries(t *testing.T) {
	entries := func(counts ...int) (out []plan.Entry) {
		for _, n := range counts {
			out = append(out, plan.Entry{Count: n, Width: mm})
		}
		return append(out, plan.Entry{Count: 1, Width: 2 * mm})
	}
	slits := func(first, second int) []plan.Length {
		out := append(slices.Repeat([]plan.Length{mm}, first), 2*mm)
		return append(out, slices.Repeat([]plan.Length{mm}, second)...)
	}
	j := plan.Job{Arrange: plan.ByEntries, Entries: entries(4, 3, 3, 1)}
	if !j.Arranges(slits(6, 5)) || j.Arranges(slits(2, 9)) { // 3+3 and 4+1; no two are 2
		t.Error("entries of one width are mixed up")
	}
	var even []int
	for n := range 40 {
		even = append(even, 2*n+2)
	}
	j.Entries = entries(even...)
	if total := 40 * 41; j.Arranges(slits(total/2+1, total/2-1)) { // no even ones make an odd run
		t.Error("even runs make an odd one")
	}
}
