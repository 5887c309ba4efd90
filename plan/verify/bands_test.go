package verify_test

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// The verifier finds a cut in a band by itself, on the band's ends too.
func TestVerifierKnowsBands(t *testing.T) {
	b := plantest.SmallBeam(nil, true)
	b.PositionTolerance = mm
	at := []plan.Length{-100 * mm, -60 * mm, 20 * mm, 75 * mm, 105*mm + mm/2, 135 * mm, 165 * mm, 195 * mm, 225 * mm, 360 * mm}
	j := &plan.Job{ID: "A", Web: 200 * mm, Trim: 6 * mm, Entries: []plan.Entry{{Count: 5, Finished: 30 * mm, Width: 30 * mm}}}
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	l, c, faults := p.Best(at, j)
	if len(faults) > 0 || c.Repositions > 0 {
		t.Fatalf("%d moves, refused %v; want all to stay", c.Repositions, plantest.Reasons(faults))
	}
	for _, v := range []struct {
		from, to plan.Length
		wants    string
	}{
		{135 * mm, 140 * mm, "cut 3 at 135 lies in a damaged band"},
		{130 * mm, 135 * mm, "cut 3 at 135 lies in a damaged band"},
		{135*mm + 1, 140 * mm, ""},
		{130 * mm, 135*mm - 1, ""},
		{105*mm + 1, 106 * mm, "holder 5 cuts at 105.5, in a damaged band"}, // in place, beside its cut
		{20 * mm, 20 * mm, ""},                                              // an idle holder presses on nothing
		{700 * mm, 800 * mm, ""},
	} {
		damaged := *b
		damaged.Bad = []plan.Span{{From: v.from, To: v.to}}
		err := verify.Changeover(&damaged, j, at, l, c)
		if (err == nil) != (v.wants == "") || err != nil && !strings.Contains(err.Error(), v.wants) {
			t.Errorf("band %v to %v: %v; want %q", v.from, v.to, err, v.wants)
		}
	}
}
