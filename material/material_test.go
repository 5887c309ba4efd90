package material

import (
	"slices"
	"strings"
	"testing"
)

// TestGroupsAreComplete: every row of the built-in table says what a trial needs
// and where it comes from, within the ranges that the trade uses at all.
func TestGroupsAreComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range Groups() {
		if seen[g.Name] {
			t.Errorf("%s is twice in the table", g.Name)
		}
		seen[g.Name] = true
		for what, text := range map[string]string{
			"source": g.Source, "source of the method": g.MethodSource, "wicking": g.Wetting.Why,
			"reason": g.Why, "other methods": g.Otherwise, "edge": g.Edge, "cautions": strings.Join(g.Cautions, " "),
		} {
			if text == "" {
				t.Errorf("%s lacks the %s", g.Name, what)
			}
		}
		if !slices.Contains([]float64{30, 45, 60}, g.Bevel) || !g.Bevels.Holds(g.Bevel) || !g.Tips.Holds(g.Tip) || g.ScoreMM <= 0 || g.ScoreMM > StandardReachMM {
			t.Errorf("%s: bevel %v of %v, tip %v of %v, scored up to %v mm", g.Name, g.Bevel, g.Bevels, g.Tip, g.Tips, g.ScoreMM)
		}
		if g.CutThroughBar <= 0 || g.CutThroughBar > 6 || g.SpeedMax <= 0 {
			t.Errorf("%s: cut-through %v bar, speed %v m/min", g.Name, g.CutThroughBar, g.SpeedMax)
		}
	}
	for _, name := range []string{ // the kinds of goods that a score slitter is asked to part
		"paper tape", "film tape", "soft film tape", "cloth tape", "double-coated tape", "transfer adhesive", "foam tape", "foil", "glass cloth",
		"laminate", "light nonwoven", "spunlace", "heavy nonwoven", "woven", "soft film", "plain paper", "felt", "roofing", "rubber",
	} {
		if !seen[name] {
			t.Errorf("%s is not in the table", name)
		}
	}
}

// TestBladesAreInTheUsualRange holds the table against the usual ranges of bevel
// and tip radius (common practice, no source).
func TestBladesAreInTheUsualRange(t *testing.T) {
	ranges := map[string][4]float64{ // least and largest bevel, least and largest tip
		"paper tape": {30, 60, 0.10, 0.20}, "film tape": {30, 45, 0.05, 0.10}, "soft film tape": {30, 45, 0.05, 0.10},
		"cloth tape": {45, 60, 0.10, 0.20}, "double-coated tape": {45, 45, 0.10, 0.15}, "foam tape": {30, 30, 0.05, 0.10},
		"transfer adhesive": {30, 45, 0.05, 0.10}, "foil": {45, 60, 0.10, 0.20}, "laminate": {45, 60, 0.10, 0.20},
		"light nonwoven": {45, 60, 0.05, 0.30}, "heavy nonwoven": {60, 60, 0.20, 0.30}, "woven": {45, 60, 0.15, 0.25},
		"glass cloth": {60, 60, 0.20, 0.30}, "soft film": {30, 45, 0.05, 0.10}, "spunlace": {45, 60, 0.15, 0.30}, "roofing": {60, 60, 0.20, 0.30},
		"felt": {60, 60, 0.20, 0.30}, "rubber": {30, 45, 0.05, 0.15}, "plain paper": {30, 60, 0.10, 0.20},
	}
	for _, g := range Groups() {
		r, ok := ranges[g.Name]
		if !ok || g.Bevels != (Range{r[0], r[1]}) || g.Tips != (Range{r[2], r[3]}) || g.Bevel < r[0] || g.Bevel > r[1] || g.Tip < r[2] || g.Tip > r[3] {
			t.Errorf("%s: bevel %v, tip %v, usual %v", g.Name, g.Bevel, g.Tip, r)
		}
	}
}

func TestLookup(t *testing.T) {
	paper, _ := GroupNamed("paper tape")
	own := paper.Start("Creped paper")
	over := paper.Start("foil")
	over.Bevel = 33
	table := Table{own, over}

	if m, ok := table.Lookup("Creped paper"); !ok || m.Bevel != paper.Bevel || m.Group != "paper tape" {
		t.Errorf("own material: %+v, %v", m, ok)
	}
	if m, ok := table.Lookup("foil"); !ok || m.Bevel != 33 {
		t.Errorf("a shop's own entry must come before the group of its name: %+v, %v", m, ok)
	}
	if m, ok := table.Lookup("felt"); !ok || m.Group != "felt" || m.AllowancePct.Sign() != 0 {
		t.Errorf("a group is a material under its own name: %+v, %v", m, ok)
	}
	if m, ok := table.Lookup("no such thing"); ok {
		t.Errorf("found %+v", m)
	}
	if names := strings.Join(table.Names(), ","); !strings.HasPrefix(names, "Creped paper,foil,paper tape,") {
		t.Errorf("names %s", names)
	}
}

// TestGroupsAreNotShared: a caller can't change the built-in table.
func TestGroupsAreNotShared(t *testing.T) {
	mine := Groups()
	mine[0].Bevel, mine[0].Cautions[0] = 1, "mine"
	named, _ := GroupNamed("paper tape")
	named.Cautions[0] = "mine"
	if g, _ := GroupNamed("paper tape"); g.Bevel == 1 || g.Cautions[0] == "mine" {
		t.Error("the table was changed through Groups")
	}
}
