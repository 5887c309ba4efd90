package material

import (
	"strings"
	"testing"
)

// of is a material of a group.
func of(t *testing.T, group string, mm float64, a Adhesive) Material {
	t.Helper()
	g, ok := GroupNamed(group)
	if !ok {
		t.Fatalf("no group %s", group)
	}
	m := g.Start("my " + group)
	m.ThicknessMM, m.Adhesive = mm, a
	return m
}

// TestMethods holds the advice for goods of each kind against what the trade does
// (common practice, no source; heat to seal cloth from textile notes, read).
func TestMethods(t *testing.T) {
	for _, c := range []struct {
		group    string
		mm       float64
		adhesive Adhesive
		method   Method
		score    Fit
		warnings int
	}{
		{"paper tape", 0.15, RubberResin, Score, Good, 0},
		{"paper tape", 0.5, RubberResin, Score, Good, 0}, // the usual 0.5 mm, and three times that
		{"paper tape", 0.8, RubberResin, Score, Fair, 1},
		{"paper tape", 1.5, RubberResin, Score, Fair, 1},
		{"paper tape", 1.51, RubberResin, Shear, Poor, 2},
		{"rubber", 12.7, NoAdhesive, Razor, Poor, 2}, // beyond three times 3.2 mm
		{"film tape", 0.06, Acrylic, Score, Good, 0},
		{"film tape", 0.06, NoAdhesive, Razor, Fair, 0},
		{"soft film", 0.05, NoAdhesive, Razor, Fair, 0},
		{"foam tape", 1, Acrylic, Score, Good, 0},
		{"transfer adhesive", 2, Acrylic, Shear, Poor, 2},
		{"rubber", 6, NoAdhesive, Razor, Poor, 2},
		{"plain paper", 1.2, NoAdhesive, Shear, Fair, 1}, // three times the usual 0.4 mm
		{"plain paper", 1.3, NoAdhesive, Shear, Poor, 2},
		{"foam tape", 9, Acrylic, Score, Fair, 1}, // usual up to 3.2 mm
		{"foam tape", 12, Acrylic, Razor, Poor, 2},
		{"foam tape", 20, Acrylic, Razor, Poor, 2},
		{"paper tape", 2, RubberResin, Shear, Poor, 2},
		{"foil", 0.05, Acrylic, Shear, Fair, 0},
		{"foil", 0.5, Acrylic, Shear, Poor, 2},
		{"woven", 0.3, NoAdhesive, HotStill, Fair, 0},
		{"woven", 0.5, NoAdhesive, HotStill, Fair, 0},
		{"woven", 0.51, NoAdhesive, HotTurning, Fair, 0},
		{"felt", 0, NoAdhesive, Shear, Poor, 1},
		{"heavy nonwoven", 1, NoAdhesive, Shear, Poor, 1},
		{"roofing", 1.5, NoAdhesive, Shear, Poor, 1},
	} {
		a, err := Advise(of(t, c.group, c.mm, c.adhesive), Limits{})
		if err != nil || a.Method != c.method || a.Score != c.score || len(a.Warnings) != c.warnings {
			t.Errorf("%v: %v, %v, %q, %v", c, a.Method, a.Score, a.Warnings, err)
		}
		if a.Why == "" || a.Otherwise == "" || a.Source == "" {
			t.Errorf("%v: no reason, source or other way: %+v", c, a)
		}
	}
}

// TestThickerIsNeverEasier: a score cut's grade never gets better as goods get
// thicker, and what is poor always says so.
func TestThickerIsNeverEasier(t *testing.T) {
	for _, g := range Groups() {
		last := Good
		for mm := 0.01; mm < 30; mm *= 1.1 {
			a, err := Advise(of(t, g.Name, mm, Acrylic), Limits{})
			warned := strings.Contains(strings.Join(a.Warnings, " "), "should not be scored")
			if err != nil || a.Score < last || warned != (a.Score == Poor) || a.Score == Poor && a.Method == Score {
				t.Errorf("%s of %v mm: %+v after %v, %v", g.Name, mm, a, last, err)
			}
			last = a.Score
		}
	}
}

func TestAdviseRefuses(t *testing.T) {
	_, err := Advise(Material{Name: "mine", Group: "stone"}, Limits{})
	refused(t, err, `"mine"`, `"stone"`)
	_, err = Advise(of(t, "felt", nan, NoAdhesive), Limits{})
	refused(t, err, "thickness of NaN mm")
}

// TestReach: standard holders cut about half an inch, 12.7 mm (common practice).
func TestReach(t *testing.T) {
	for mm, want := range map[float64]string{0: "unknown", 0.1: "", 12.7: "", 12.8: "beyond the 12.7 mm"} {
		got, err := Limits{}.CheckThickness(mm)
		if err != nil || (want == "") != (got == "") || !strings.Contains(got, want) {
			t.Errorf("%v mm: %q, %v", mm, got, err)
		}
	}
	_, err := Limits{}.CheckThickness(-1)
	refused(t, err, "thickness of -1 mm")
}

// TestBlade: the blade is softer than the anvil, and what lies outside the usual says
// what it does: too sharp blunts at once, too blunt won't cut (common practice).
func TestBlade(t *testing.T) {
	for _, c := range []struct {
		bevel, tip, anvil float64
		want              string
	}{
		{45, 0.15, 64, ""}, {45, 0.15, 0, ""}, {45, 0.05, 64, "blunts at once"}, {45, 0.4, 64, "may not cut through"},
		{25, 0.15, 64, "may chip"}, {75, 0.15, 64, "more force"}, {45, 0.15, 62, "grooves sooner"},
		{45, 0.15, 58, "A blade of 60 HRC on an anvil of 58 HRC: the anvil wears"},
	} {
		m := of(t, "paper tape", 0.15, RubberResin)
		m.Bevel, m.Tip = c.bevel, c.tip
		a, err := AdviseBlade(m, c.anvil)
		got := strings.Join(a.Warnings, " ")
		if err != nil || (c.want == "") != (got == "") || !strings.Contains(got, c.want) || a.HRC >= a.AnvilHRC {
			t.Errorf("%v: %+v, %v", c, a, err)
		}
	}
	m := of(t, "paper tape", 0.15, RubberResin)
	m.Bevel, m.Tip = nan, 0
	_, err := AdviseBlade(m, 81)
	refused(t, err, "bevel of NaN", "tip radius of 0 mm", "anvil hardness of 81 HRC")
}

// TestUnusualBlade: a bevel is unusual from more than 5 degrees beside the usual, as another
// grinder's may be so far off; a tip is outside its range.
func TestUnusualBlade(t *testing.T) {
	for _, c := range []struct {
		bevel, tip float64
		want       string
	}{ // paper tape: 30 to 60 degrees, 0.10 to 0.20 mm
		{25, 0.1, ""}, {65, 0.2, ""}, {24.9, 0.15, "bevel 24.9, usual 30 to 60 degrees"}, {65.1, 0.15, "bevel 65.1, usual 30 to 60 degrees"},
		{45, 0.09, "tip 0.09, usual 0.1 to 0.2 mm"}, {45, 0.21, "tip 0.21, usual 0.1 to 0.2 mm"}, {70, 0.3, "bevel 70, usual 30 to 60 degrees; tip 0.3, usual 0.1 to 0.2 mm"},
	} {
		m := of(t, "paper tape", 0.15, RubberResin)
		m.Bevel, m.Tip = c.bevel, c.tip
		a, err := AdviseBlade(m, 64)
		if got := a.Unusual(); err != nil || got != c.want {
			t.Errorf("%v: %q, %v", c, got, err)
		}
	}
}

func TestHardness(t *testing.T) {
	for _, c := range []struct {
		blade, anvil float64
		well         bool
	}{{60, 64, true}, {64, 64, false}, {66, 64, false}} {
		got, err := CheckHardness(c.blade, c.anvil)
		if err != nil || (got == "") != c.well {
			t.Errorf("%v: %q, %v", c, got, err)
		}
	}
	_, err := CheckHardness(nan, inf)
	refused(t, err, "blade hardness", "anvil hardness")
}

// TestWicking holds the kinds against the trade's habit (common practice, no source):
// what has no adhesive runs dry, what fouls much gets the bar, rubber runs wet.
func TestWicking(t *testing.T) {
	for _, c := range []struct {
		group    string
		adhesive Adhesive
		want     Wick
	}{
		{"paper tape", RubberResin, WickEach}, {"paper tape", Acrylic, NoWick}, {"film tape", Silicone, WickEach},
		{"transfer adhesive", Acrylic, WickBar}, {"cloth tape", RubberResin, WickBar}, {"foil", Acrylic, WickEach}, {"soft film tape", Acrylic, WickEach}, {"laminate", RubberResin, WickEach},
		{"plain paper", NoAdhesive, NoWick}, {"rubber", NoAdhesive, WickBar}, {"roofing", NoAdhesive, WickBar},
	} {
		a, err := AdviseWicking(of(t, c.group, 0, c.adhesive))
		if err != nil || a.Wick != c.want || (a.Fluid == "") != (c.want == NoWick) || a.Why == "" || a.Source == "" {
			t.Errorf("%v: %+v, %v", c, a, err)
		}
	}
	_, err := AdviseWicking(Material{Group: "stone"})
	refused(t, err, "stone")
}

// The reason for a wicking fits its kind: what is wetted for its adhesive says with what or
// why, and what isn't says none; a bar is never called light.
func TestWickingTextIsOfItsKind(t *testing.T) {
	for _, g := range Groups() {
		for _, adhesive := range Adhesives() {
			a, err := AdviseWicking(of(t, g.Name, 0, adhesive))
			none := strings.HasPrefix(a.Why, "none needed: ") || strings.HasPrefix(a.Why, "no adhesive")
			if err != nil || none && a.Wick != NoWick || a.Wick == WickBar && strings.Contains(a.Why, "light") || a.Wick == NoWick && strings.HasPrefix(a.Why, "a light wick") {
				t.Errorf("%s, %s: %+v, %v", g.Name, adhesive, a, err)
			}
			if adhesive != NoAdhesive && a.Why != g.Wetting.Why {
				t.Errorf("%s, %s: %q isn't the group's text", g.Name, adhesive, a.Why)
			}
		}
	}
}

// What is too thick isn't said to be cut cleanly by a rounded edge: the reason is that of the
// method named.
func TestTooThickHasItsOwnReason(t *testing.T) {
	for group, mm := range map[string]float64{"paper tape": 3, "foam tape": 14, "cloth tape": 13} {
		a, err := Advise(of(t, group, mm, Acrylic), Limits{})
		if err != nil || !strings.Contains(a.Why, "too thick to press through") || a.Method == Score || a.Otherwise == "" {
			t.Errorf("%s: %+v, %v", group, a, err)
		}
	}
}

// TestNoSiliconeOil: whatever wets the blades is said to be free of silicone.
func TestNoSiliconeOil(t *testing.T) {
	for _, g := range Groups() {
		for _, adhesive := range Adhesives() {
			a, err := AdviseWicking(of(t, g.Name, 0, adhesive))
			if err != nil || a.Fluid != "" && !strings.Contains(a.Fluid, "free of silicone") && !strings.Contains(a.Fluid, "no silicone") {
				t.Errorf("%s, %s: %+v, %v", g.Name, adhesive, a, err)
			}
		}
	}
}

// TestSiliconeAsksForProof: a job that must be free of silicone, or whose adhesive
// is silicone, is not wetted with what merely holds none by name.
func TestSiliconeAsksForProof(t *testing.T) {
	free := of(t, "transfer adhesive", 0, Acrylic)
	free.SiliconeFree = true
	for _, m := range []Material{free, of(t, "transfer adhesive", 0, Silicone)} {
		if a, err := AdviseWicking(m); err != nil || !strings.Contains(a.Fluid, "proven") || a.SiliconeFree != m.SiliconeFree {
			t.Errorf("%+v: %+v, %v", m, a, err)
		}
	}
}

func TestCleanDown(t *testing.T) {
	free, not := Material{SiliconeFree: true}, Material{}
	if !CleanDown(not, free) || CleanDown(free, free) || CleanDown(not, not) || CleanDown(free, not) {
		t.Error("a clean-down is needed just when silicone may be there and must not be")
	}
}
