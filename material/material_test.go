package material

import (
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
		if g.Source == "" || g.Wicking == "" {
			t.Errorf("%s lacks a source or the wicking", g.Name)
		}
		if g.CutThroughBar <= 0 || g.CutThroughBar > 6 || g.SpeedMax <= 0 {
			t.Errorf("%s: cut-through %v bar, speed %v m/min", g.Name, g.CutThroughBar, g.SpeedMax)
		}
	}
	if len(seen) != 15 {
		t.Errorf("%d groups, want 15", len(seen))
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
		"felt": {60, 60, 0.20, 0.30}, "rubber": {30, 45, 0.05, 0.15}, "plain paper": {30, 60, 0.10, 0.20},
	}
	for _, g := range Groups() {
		r, ok := ranges[g.Name]
		if !ok || g.Bevel < r[0] || g.Bevel > r[1] || g.Tip < r[2] || g.Tip > r[3] {
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
	Groups()[0].Bevel = 1
	if g, _ := GroupNamed("paper tape"); g.Bevel == 1 {
		t.Error("the table was changed through Groups")
	}
}
