package changeover_test

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
)

// What a refusal says must be so. The words expected are worked out by hand: job A has
// a web of 200 mm from 50 to 250 and five slits of 30, so cuts at 75, 105, ... 225.
func TestRefusalsSayTheTrueShortage(t *testing.T) {
	a := &plan.Job{ID: "A", Web: 200 * mm, Trim: 6 * mm, Entries: []plan.Entry{{Count: 5, Finished: 30 * mm, Width: 30 * mm}}}
	places := func(at ...float64) (out []plan.Length) {
		for _, x := range at {
			out = append(out, plan.Length(x*float64(mm)))
		}
		return out
	}
	for _, c := range []struct {
		name       string
		conditions map[int]plan.Condition
		rest       bool
		at         []plan.Length
		wants      string
	}{
		// Behind holder 3, on cut 5 itself, there is one cut; before it four, for two holders.
		{"stuck on a cut", map[int]plan.Condition{3: plan.Stuck}, true, places(-100, -80, 195, 210, 230, 250, 270, 300, 320, 340),
			"on the operator side of holder 3 (stuck at 195 mm): 4 cuts to be held, and 2 holders there may cut"},
		// All six cuts lie between 60 and 240 mm, and one holder.
		{"one holder between two stuck ones", map[int]plan.Condition{3: plan.Stuck, 5: plan.Stuck}, true, places(-100, -80, 60, 100, 240, 260, 280, 300, 320, 340),
			"between holder 3 (stuck at 60 mm) and holder 5 (stuck at 240 mm): 6 cuts to be held, and 1 holder there may cut"},
		// Gaps of 30 mm take one idle holder, not four; three may cut on each side, so three cuts lie before them.
		{"four side by side that may not cut", map[int]plan.Condition{4: plan.NoCut, 5: plan.NoCut, 6: plan.NoCut, 7: plan.NoCut}, true,
			places(-100, -80, -60, -40, -20, 260, 280, 300, 320, 340),
			"holders 4 to 7 may not cut and must be idle side by side; with the holders on either side that may cut, that is behind 3 of the 6 cuts, where there is room for at most 1"},
		// Four may cut before holder 5 and five behind it, so one to four of six cuts lie before it: over the web.
		{"may not cut nor rest", map[int]plan.Condition{5: plan.NoCut}, false, places(-100, -80, -60, -40, -20, 260, 280, 300, 320, 340),
			"holder 5 may not cut and must be idle; with the holders on either side that may cut, that is behind 1 to 4 of the 6 cuts, where there is room for at most 0 (idle holders may not rest over the web)"},
	} {
		p, err := changeover.NewPlanner(plantest.SmallBeam(c.conditions, c.rest))
		if err != nil {
			t.Fatal(err)
		}
		_, _, faults := p.Best(c.at, a)
		var got []string
		for _, f := range faults {
			got = append(got, f.Why(plan.Millimetres))
		}
		if len(got) != 1 || got[0] != c.wants {
			t.Errorf("%s:\n  got %s\n want %s", c.name, strings.Join(got, "\n      "), c.wants)
		}
	}
}
