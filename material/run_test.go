package material

import (
	"math"
	"math/big"
	"strings"
	"testing"
)

// lineOf is one setting with its why and its source; empty where there is none.
func lineOf(s *Settings, id ID) string {
	l := s.Line(id)
	if l == (Line{}) {
		return ""
	}
	return l.Value + " | " + l.Why + " | " + l.Source
}

// ran are the settings of a run on the usual machine.
func ran(t *testing.T, m Material, on Machine, r Run) *Settings {
	t.Helper()
	s, err := SettingsFor(m, on, r)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestWoundRolls: 50 m of 0.13 mm on a core of 89 mm are 127.26766 mm thick (computed),
// and a roll as thick has 50 m on it; 1000 m make 20 of them. 495.8823 m go on a roll of
// 300 mm (computed).
func TestWoundRolls(t *testing.T) {
	m := of(t, "paper tape", 0.13, Acrylic)
	for _, roll := range []Roll{{Metres: 50, CoreMM: 89}, {DiameterMM: 127.26766, CoreMM: 89}} {
		w := ran(t, m, shop, Run{Speed: 100, Metres: 1000, Roll: roll}).Wound
		near(t, "metres", w.Metres, 50, 1e-6)
		near(t, "diameter", w.DiameterMM, 127.26766, 1e-6)
		near(t, "wraps", w.Wraps, (127.26766-89)/0.26, 1e-6)
		if w.Whole || w.CoreAssumed || roll.Metres > 0 && w.Sets != 20 {
			t.Errorf("%+v", w)
		}
	}
	w := ran(t, m, shop, Run{Speed: 100, Metres: 495.8823}).Wound
	near(t, "all on one", w.DiameterMM, 300, 1e-6)
	if !w.Whole || !w.CoreAssumed || w.Sets != 1 || w.CoreMM != 89 {
		t.Errorf("%+v", w)
	}
	s := ran(t, m, shop, Run{Speed: 100, Metres: 495.8823})
	if line := lineOf(s, IDRoll); !strings.Contains(line, "300 mm (11.81 in), 495.9 m on a core of 89 mm (3.5 in), assumed; if wound in one | ") ||
		!strings.Contains(line, "812 turns") || !strings.Contains(line, "; no file has roll_m or roll_diameter") || !strings.Contains(line, "common practice, no source") {
		t.Errorf("%s", line)
	}
}

// TestSets: what is left makes one more roll, and rounding doesn't.
func TestSets(t *testing.T) {
	for _, c := range []struct {
		run, roll float64
		want      int
	}{{1000, 50, 20}, {1001, 50, 21}, {999, 50, 20}, {40, 50, 1}, {0.3, 0.1, 3}, {3600, 3600, 1}, {1e7, 0, 1 << 30}} {
		if got := sets(c.run, c.roll); got != c.want {
			t.Errorf("%v m in rolls of %v m: %d, want %d", c.run, c.roll, got, c.want)
		}
	}
}

// TestRunWithRamps: 1000 m at 120 m/min take 500 s, and with ramps in two lengths 508, as
// the run says. In 1000 m an anvil of 100 mm turns 3183.0989 times (computed).
func TestRunWithRamps(t *testing.T) {
	m := of(t, "paper tape", 0.13, Acrylic)
	on := shop
	on.AnvilMM = 100
	for roll, ramped := range map[float64]Run{500: {RampedS: 508, Legs: 2}, 2000: {RampedS: 504, Legs: 1}} {
		s := ran(t, m, on, Run{Speed: 120, Metres: 1000, Roll: Roll{Metres: roll}, RampedS: ramped.RampedS, Legs: ramped.Legs})
		near(t, "at speed", s.Times.SpeedS, 500, 1e-12)
		near(t, "turns", s.Times.Turns, 3183.0989, 1e-7)
		if shorter := strings.Contains(strings.Join(s.Warnings, " "), "shorter than one finished roll"); shorter != (roll == 2000) {
			t.Errorf("rolls of %v m: %v", roll, s.Warnings)
		}
		want := map[float64]string{500: "8.5 min with ramps, 2 times from rest to rest | ", 2000: "8.4 min with ramps | "}[roll]
		if line := lineOf(s, IDRunTime); !strings.HasPrefix(line, want) || !strings.Contains(line, "alone 8.3 min") {
			t.Errorf("%s", line)
		}
	}
	if s := ran(t, m, on, Run{Speed: 120, Metres: 1000}); s.Times.RampedS != 0 || !strings.Contains(lineOf(s, IDRunTime), "without ramps") {
		t.Errorf("without ramps: %+v, %s", s.Times, lineOf(s, IDRunTime))
	}
}

// TestNothingOfAnUnknownRun: without length, thickness, anvil or elastic data nothing is
// said of them.
func TestNothingOfAnUnknownRun(t *testing.T) {
	on := shop
	on.AnvilMM = 0
	s := ran(t, of(t, "paper tape", 0, Acrylic), on, Run{Speed: 100, Metres: 1000, Roll: Roll{Metres: 50}, Slits: []Slit{{50, 50}}})
	if s.Wound != nil || s.NeckIn != nil || s.Times.Turns != 0 || s.Times.SpeedS != 600 {
		t.Errorf("%+v", s)
	}
	for _, id := range []ID{IDRoll, IDAnvilTurns, IDNeckIn, IDWidths, IDAllowance} {
		if line := lineOf(s, id); line != "" {
			t.Errorf("%s is shown: %s", id, line)
		}
	}
	if line := lineOf(ran(t, of(t, "paper tape", 0.1, Acrylic), on, Run{Speed: 100}), IDRunTime); line != "" {
		t.Errorf("a run without length takes %s", line)
	}
}

// TestNeckInOfAMaterial: the trade column's second example in metric units: 1 lbf/in on
// 0.01 in with a modulus of 10 000 psi and a ratio of 3 narrows by 3 %, so a strip cut at
// 9.7 in relaxes to 10 and one at 49 mm to 49 / 0.97 = 50.515; a web of 1000 mm is 970 under tension.
func TestNeckInOfAMaterial(t *testing.T) {
	m := of(t, "spunlace", 0.254, NoAdhesive)
	m.TensionNM, m.ModulusMPa, m.Poisson = 1000*NPerMMPerLbfInch, 1e4*PascalsPerPsi/1e6, 3
	m.AllowancePct = big.NewRat(-2, 1)
	s := ran(t, m, shop, Run{Speed: 100, WebMM: 1000, Slits: []Slit{{254, 9.7 * 25.4}, {50, 49}}})
	near(t, "narrowing", s.NeckIn.Narrowing, 0.03, 1e-9)
	near(t, "relaxed", s.NeckIn.Relaxed(9.7*25.4), 254, 1e-7)
	for id, want := range map[ID]string{
		IDNeckIn:    "a web of 1000 mm (39.37 in) is 970 mm (38.189 in) wide at the knife, 3 % narrower than relaxed",
		IDWidths:    "254 mm (10 in): cut at 246.38, relaxed 254; 50 mm (1.9685 in): cut at 49, relaxed 50.515",
		IDAllowance: "cut 2 % narrower than finished | cut = finished * (1 + allowance/100), below 0 for what grows after the cut, above 0 for what stays narrower than cut; rounded once for each slit, sums exact; for neck-in alone: cut 3 % narrower than finished",
	} {
		if line := lineOf(s, id); !strings.HasPrefix(line, want) {
			t.Errorf("%s: %s", id, line)
		}
	}
	m.TensionNM *= 20 // stretched by a fifth
	s = ran(t, m, shop, Run{Speed: 100})
	if s.NeckIn != nil || !strings.Contains(strings.Join(s.Warnings, " "), "Its neck-in can't be calculated: stretch of 0.2") {
		t.Errorf("%+v, %v", s.NeckIn, s.Warnings)
	}
	var many []Slit
	for i := range 9 {
		many = append(many, Slit{float64(10 + i), float64(11 + i)})
	}
	if line := lineOf(ran(t, m, shop, Run{Speed: 100, Slits: many}), IDWidths); !strings.Contains(line, "13 mm (0.5118 in): cut at 14; and 5 more") {
		t.Errorf("of many widths: %s", line)
	}
}

// FuzzRun: whatever is asked of a run, there are settings whose numbers are such, or a
// warning or an error that says which is at fault.
func FuzzRun(f *testing.F) {
	f.Add(100.0, 1000.0, 50.0, 0.0, 89.0, 0.13, 605.0, 150.0, 2000.0, 0.4)
	f.Add(100.0, 1e7, 0.0, 50.0, 89.0, 100.0, 1e3, 1e6, 1e-3, 20.0)
	f.Add(1.0, math.NaN(), math.Inf(1), -1.0, math.NaN(), 1e-4, math.Inf(1), math.NaN(), -1.0, math.Inf(-1))
	f.Fuzz(func(t *testing.T, speed, metres, roll, thick, core, mm, ramped, tension, modulus, poisson float64) {
		m := groups[0].Start("m")
		m.ThicknessMM, m.TensionNM, m.ModulusMPa, m.Poisson = mm, tension, modulus, poisson
		s, err := SettingsFor(m, shop, Run{Speed: speed, Metres: metres, RampedS: ramped, WebMM: 1000, Slits: []Slit{{50, 51}}, Roll: Roll{roll, thick, core}})
		if err != nil {
			return
		}
		for _, l := range s.Lines {
			if strings.Contains(l.Value+l.Why, "NaN") || strings.Contains(l.Value+l.Why, "Inf") {
				t.Errorf("%+v", l)
			}
		}
		if w := s.Wound; w != nil && (w.DiameterMM < w.CoreMM || w.Wraps < 0 || w.Sets < 1) {
			t.Errorf("%+v", w)
		}
		if !(s.Times.RampedS >= 0) {
			t.Errorf("%+v", s.Times)
		}
	})
}

// A kilometre of 6 mm is wound to 2765 mm, sqrt(89^2 + 4 * 6 * 1e6 / pi), which is doubted;
// where nothing says that it is one roll the doubt is no warning.
func TestAbsurdRollIsDoubted(t *testing.T) {
	for _, c := range []struct {
		roll          Roll
		doubt, warned bool
	}{{Roll{Metres: 1000}, true, true}, {Roll{}, true, false}, {Roll{Metres: 100}, false, false}} {
		s, err := SettingsFor(of(t, "foam tape", 6, NoAdhesive), shop, Run{Speed: 40, Metres: 1000, Roll: c.roll})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Line(IDRoll).Value; strings.Contains(got, "larger than usual") != c.doubt {
			t.Errorf("%+v: %q", c, got)
		}
		if got := strings.Join(s.Warnings, " "); strings.Contains(got, "A finished roll of 2765 mm") != c.warned {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestFaultsAreOfWhatTheyName: a run of 2e9 m, a core of 1e5 mm and a web stretched by a
// half, T / (t E) = 50 / (0.1 * 1000), are each reported for the one thing they spoil, and the
// knife is set all the same.
func TestFaultsAreOfWhatTheyName(t *testing.T) {
	thin := of(t, "paper tape", 0.1, Acrylic)
	stretched := thin
	stretched.TensionNM, stretched.ModulusMPa, stretched.Poisson = 50_000, 1000, 0.3
	for _, c := range []struct {
		m    Material
		r    Run
		want string
	}{
		{of(t, "paper tape", 0, Acrylic), Run{Speed: 100, Metres: 2e9}, "Its run time can't be calculated: length of 2e+09 m is outside 0 to 1e+09 m."},
		{thin, Run{Speed: 100, Metres: 1000, Roll: Roll{CoreMM: 1e5}}, "Its finished roll can't be calculated: core's outside diameter of 100000 mm is outside 0 to 10000 mm."},
		{stretched, Run{Speed: 100}, "Its neck-in can't be calculated: stretch of 0.5 is outside 0 to 0.1."},
	} {
		s := ran(t, c.m, shop, c.r)
		if got := strings.Join(s.Warnings, " "); !strings.Contains(got, c.want) || strings.Count(got, "can't be calculated") != 1 || s.Air.SetBar == 0 {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestShortestRun: a metre at 100 m/min takes 0.6 s, and a roll of it is wound.
func TestShortestRun(t *testing.T) {
	s := ran(t, of(t, "paper tape", 0.1, Acrylic), shop, Run{Speed: 100, Metres: 1})
	near(t, "a metre", s.Times.SpeedS, 0.6, 1e-12)
	if s.Wound == nil || s.Wound.Metres != 1 {
		t.Errorf("%+v", s.Wound)
	}
}

// TestTurnsOfTheAnvil: 100 mm at 120 m/min turns 381.97186 times a minute, 3183.0989 times
// in 1000 m (computed).
func TestTurnsOfTheAnvil(t *testing.T) {
	on := shop
	on.AnvilMM = 100
	if got := ran(t, of(t, "paper tape", 0.1, Acrylic), on, Run{Speed: 120, Metres: 1000}).Line(IDAnvilTurns).Value; got != "3183, 382 a minute" {
		t.Errorf("%s", got)
	}
	// 0.3 m are less than the circumference, 0.95 turns.
	if got := ran(t, of(t, "paper tape", 0.1, Acrylic), on, Run{Speed: 120, Metres: 0.3}).Line(IDAnvilTurns).Value; got != "1, 382 a minute" {
		t.Errorf("less than a turn: %q", got)
	}
}

// TestLargestUsualRoll: 2000 mm is not doubted, and what is thicker is.
func TestLargestUsualRoll(t *testing.T) {
	for mm, doubted := range map[float64]bool{2000: false, 2001: true} {
		s := ran(t, of(t, "foam tape", 6, NoAdhesive), shop, Run{Speed: 40, Metres: 1000, Roll: Roll{DiameterMM: mm}})
		if strings.Contains(s.Line(IDRoll).Value, "larger than usual") != doubted || strings.Contains(strings.Join(s.Warnings, " "), "larger than the usual 2000 mm") != doubted {
			t.Errorf("%v mm: %s, %q", mm, s.Line(IDRoll).Value, s.Warnings)
		}
	}
}

// TestNeckInNeedsAllFour: without modulus, Poisson's ratio, tension or thickness nothing is
// known of it, and the web is not said to keep its width.
func TestNeckInNeedsAllFour(t *testing.T) {
	for i := range 5 {
		m := of(t, "spunlace", 0.254, NoAdhesive)
		m.TensionNM, m.ModulusMPa, m.Poisson = 254, 100, 0.3
		if lacks := []*float64{&m.TensionNM, &m.ModulusMPa, &m.Poisson, &m.ThicknessMM}; i < len(lacks) {
			*lacks[i] = 0
		}
		if s := ran(t, m, shop, Run{Speed: 100}); (s.NeckIn != nil) != (i == 4) {
			t.Errorf("lacking number %d of the four: %+v", i, s.NeckIn)
		}
	}
}

// TestWidthsAreListed: four widths are listed, and of more the number left out; a web that
// only necks in is cut at the finished width.
func TestWidthsAreListed(t *testing.T) {
	m := of(t, "spunlace", 0.254, NoAdhesive)
	m.TensionNM, m.ModulusMPa, m.Poisson = 254, 100, 0.3 // stretched by 254 / 254 MPa / 100 = 1 %, narrowed by 0.3 %
	four := []Slit{{10, 10}, {20, 20}, {30, 30}, {40, 40}}
	s := ran(t, m, shop, Run{Speed: 100, Slits: four})
	if got := s.Line(IDWidths).Value; !strings.HasSuffix(got, "40 mm (1.5748 in): cut at 40, relaxed 40.12") {
		t.Errorf("four widths: %q", got)
	}
	if got := s.Line(IDWidths).Why; got != "cut width from finished width; relaxed from neck-in alone" {
		t.Errorf("why: %q", got)
	}
	if got := s.Line(IDAllowance); got.Value != "none: cut at the finished width" || !strings.HasSuffix(got.Why, "for neck-in alone: cut 0.3 % narrower than finished") {
		t.Errorf("no allowance: %+v", got)
	}
	still := m
	still.TensionNM, still.AllowancePct = 0, big.NewRat(1, 1)
	if got := ran(t, still, shop, Run{Speed: 100, Slits: []Slit{{50, 50.5}}}).Line(IDWidths); got.Value != "50 mm (1.9685 in): cut at 50.5" || got.Why != "cut width from finished width" {
		t.Errorf("without neck-in: %+v", got)
	}
	if got := ran(t, m, shop, Run{Speed: 100, Slits: append(four, Slit{50, 50})}).Line(IDWidths).Value; !strings.HasSuffix(got, "relaxed 40.12; and 1 more") {
		t.Errorf("five widths: %q", got)
	}
}
