package material

import (
	"fmt"
	"math"
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
		if !slices.Contains([]float64{30, 45, 60}, g.Bevel) || !g.Bevels.Holds(g.Bevel) || !g.Tips.Holds(g.Tip) || g.ScoreMM <= 0 || g.ScoreMM > usual.ThicknessMM {
			t.Errorf("%s: bevel %v of %v, tip %v of %v, scored up to %v mm", g.Name, g.Bevel, g.Bevels, g.Tip, g.Tips, g.ScoreMM)
		}
		if g.CutN < 50 || g.CutN > 300 || g.SpeedMax <= 0 {
			t.Errorf("%s: cut-through %v N, speed %v m/min", g.Name, g.CutN, g.SpeedMax)
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

// TestTableIsTheTradesAdvice holds the table against advice typed from the notes of the trade:
// method, bevels, tips, and the need of pressure. What is said to run faster has the larger
// speed, and what needs more force the larger guess.
func TestTableIsTheTradesAdvice(t *testing.T) {
	needs := map[string]Level{"low": Low, "low-medium": Low, "medium": Medium, "medium-high": Medium, "high": High, "very high": High}
	grades := []string{"low", "low-medium", "medium", "medium-high"}
	rows := reference(t, "advice.csv")
	bySpeed, byNeed := map[int][]float64{}, map[int][]float64{}
	for _, row := range rows {
		g, ok := GroupNamed(row["group"])
		if !ok {
			t.Fatalf("no group %s", row["group"])
		}
		if row["best"] != "" && g.Method.String() != row["best"] {
			t.Errorf("%s: %s, want %s", g.Name, g.Method, row["best"])
		}
		if got := fmt.Sprintf("%g-%g", g.Bevels.Least, g.Bevels.Most); got != row["bevel"] || !g.Bevels.Holds(g.Bevel) {
			t.Errorf("%s: bevel %g of %s, want %s", g.Name, g.Bevel, got, row["bevel"])
		}
		if got := fmt.Sprintf("%.2f-%.2f", g.Tips.Least, g.Tips.Most); got != row["tip"] || math.Abs(g.Tip-(g.Tips.Least+g.Tips.Most)/2) > 0.0051 {
			t.Errorf("%s: tip %g of %s, want the middle of %s", g.Name, g.Tip, got, row["tip"]) // to a hundredth
		}
		if need, ok := needs[row["need"]]; !ok || g.Need != need {
			t.Errorf("%s: need %s, want %s", g.Name, g.Need, row["need"])
		}
		if grade := slices.Index(grades, row["speed"]); grade >= 0 {
			bySpeed[grade] = append(bySpeed[grade], g.SpeedMax)
		}
		byNeed[int(g.Need)] = append(byNeed[int(g.Need)], g.CutN)
	}
	if len(rows) != len(groups)-2 { // spunlace and roofing are from memory
		t.Errorf("%d groups held of %d", len(rows), len(groups))
	}
	for grade := 1; grade < len(grades); grade++ {
		if most, least := slices.Max(bySpeed[grade-1]), slices.Min(bySpeed[grade]); most >= least {
			t.Errorf("%s runs up to %v m/min, %s from %v", grades[grade-1], most, grades[grade], least)
		}
	}
	for need := int(Medium); need <= int(High); need++ {
		if most, least := slices.Max(byNeed[need-1]), slices.Min(byNeed[need]); most > least {
			t.Errorf("need %s is guessed at up to %v N, %s from %v", Level(need-1), most, Level(need), least)
		}
	}
}

// TestStartLimits: top speeds and thicknesses are those of the second copy, and no group
// starts above the 1000 ft/min below which razor is best (handbook on web handling,
// abstract, read), 304.8 m/min.
func TestStartLimits(t *testing.T) {
	rows := reference(t, "start_limits.csv")
	for _, row := range rows {
		g, ok := GroupNamed(row["group"])
		if speed := number(t, row["speed_max"]); !ok || g.SpeedMax != speed || g.SpeedMax > 304.8 {
			t.Errorf("%s: %v m/min, want %v", row["group"], g.SpeedMax, speed)
		}
		if mm := number(t, row["score_mm"]); g.ScoreMM != mm {
			t.Errorf("%s: score cuts up to %v mm, want %v", row["group"], g.ScoreMM, mm)
		}
	}
	if len(rows) != len(groups) {
		t.Errorf("%d groups held of %d", len(rows), len(groups))
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
