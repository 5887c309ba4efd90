package shop

import (
	"math"
	"strings"
	"testing"

	"bide/plan/sequence"
)

// stocks is a shop of one job for each of some materials, a web of 250 mm with slits of
// 3 x 80 mm, and what stands behind both.
func stocks(t *testing.T, beam, job string, all ...string) *Shop {
	t.Helper()
	day, table := smallDay[:strings.Index(smallDay, "[[job]]")], ""
	for i, stock := range all {
		name := string(rune('A' + i))
		day += "[[job]]\nid = '" + name + "'\nmaterial = 'M" + name + "'\nweb = 250.0\nslits = ['3 x 80']\nlength_m = 1000\n" + job + "\n"
		table += "[[material]]\nname = 'M" + name + "'\n" + stock + "\n"
	}
	return read(t, files(map[string]string{beamFile: smallBeam + beam, dayFile: day, materialsFile: table}))
}

func noted(t *testing.T, s *Shop, want string, is bool) {
	t.Helper()
	if notes := strings.Join(s.Notes, "\n"); strings.Contains(notes, want) != is {
		t.Errorf("noted %v: %s\nnotes:\n%s", !is, want, notes)
	}
}

// What is unusual at the knife is noted of the jobs that it is of, once each, and nothing of
// what is usual. The beam has two pistons and 6.3 bar: 6 bar for them are 6.5 with the
// margin, so that it takes three.
func TestKnifeIsNoted(t *testing.T) {
	const usual = "group = 'paper tape'\nthickness_mm = 0.15\nadhesive = 'acrylic'"
	s := stocks(t, "", "", usual,
		"group = 'felt'\nthickness_mm = 14\nadhesive = 'none'",
		"group = 'paper tape'\nthickness_mm = 0.15\nadhesive = 'acrylic'\nbevel = 20\ntip = 0.02",
		"group = 'cloth tape'\nthickness_mm = 0.3\nadhesive = 'acrylic'\ncut_through_bar = 6")
	for _, want := range []string{
		"day.toml: jobs thicker than holders and blades cut: B (14 mm of 12.7)",
		"day.toml: jobs whose material should not be scored, and is planned all the same: B (MB, best by shear)",
		"day.toml: jobs whose blade is outside what is usual for their group: C (bevel 20, usual 30 to 60 degrees; tip 0.02, usual 0.1 to 0.2 mm)",
		"day.toml: jobs needing other pistons than fitted (no time is counted for fitting them): D (3 pistons of 260 mm2)",
	} {
		noted(t, s, want, true)
	}
	for _, not := range []string{"A (", "off their web", "rolls larger"} {
		noted(t, s, not, false)
	}
}

// A roll of a kilometre of 6 mm is 2.8 m thick: sqrt(89^2 + 4 * 6 * 1e6 / pi) = 2765 mm.
func TestLargeRollsAreNoted(t *testing.T) {
	const thick = "group = 'foam tape'\nthickness_mm = 6\nadhesive = 'none'"
	noted(t, stocks(t, "", "roll_m = 1000", thick), "finished rolls larger than usual (is thickness_mm right, or roll_m missing?): A (2765 mm)", true)
	noted(t, stocks(t, "", "roll_m = 100", thick), "larger than usual", false)
}

// Neck-in by hand: 3 * 25/1000 / 0.25 / 10 = 0.03 of the relaxed width, so that 250 mm are
// 242.5 at the knife, 7.5 less. Centred there are 5 mm of trim on either side, of which
// 1.25 are left where both sides lose half; at an edge that is guided all are. A free shift
// may come to the least trim of 3 mm, and a web without tension loses nothing.
func TestTrimAtTheKnifeIsNoted(t *testing.T) {
	stock := "group = 'light nonwoven'\nthickness_mm = 0.25\nadhesive = 'none'\nmodulus_mpa = 10\npoisson = 3\n"
	for _, c := range []struct{ guide, job, want string }{
		{"centre", "", "trim down to 1.25 mm on the operator side, 1.25 mm on the drive side"},
		{"operator", "", "trim down to 5 mm on the operator side, -2.5 mm on the drive side"},
		{"drive", "shift = 'free'", "trim down to -4.5 mm on the operator side, 3 mm on the drive side"},
	} {
		beam := "[guide]\nweb_at = '" + c.guide + "'\n"
		noted(t, stocks(t, beam, c.job, stock+"tension_n_m = 25"), "A (242.5 mm instead of 250 mm at the knife, its "+c.want, true)
		noted(t, stocks(t, beam, c.job, stock+"tension_n_m = 0.1"), "at the knife", false)
	}
}

// A planned step's settings tell of the edges of its own layout.
func TestTrimAtTheKnifeOfAPlan(t *testing.T) {
	s := stocks(t, "", "", "group = 'light nonwoven'\nthickness_mm = 0.25\nadhesive = 'none'\nmodulus_mpa = 10\npoisson = 3\ntension_n_m = 50")
	d, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
	if err != nil || len(d.Steps()) != 1 {
		t.Fatal(d, err)
	}
	on := s.Knife(s.Positions, d.Steps()).Turns[0].Settings // 250 * 0.06 = 15 less, 7.5 on either side
	if e := on.Edges; e == nil || !e.Off() || !strings.Contains(strings.Join(on.Warnings, " "), "the trim left there is -2.5 mm (-0.098 in) on the operator side, -2.5 mm") {
		t.Errorf("%+v, %q", e, on.Warnings)
	}
}

// What is likely meant otherwise is noted at its key, and what is usual isn't.
func TestOddAnvilAndMaterialAreNoted(t *testing.T) {
	const stock = "group = 'film tape'\nthickness_mm = 0.05\nadhesive = 'none'\n"
	anvil := func(keys string) string { return "[anvil]\ndiameter = 150\n" + keys }
	for _, c := range []struct{ beam, stock, want string }{
		{anvil("hardness_hrc = 30"), stock, "beam.toml, [anvil], hardness_hrc: 30 HRC is not what"},
		{anvil("hardness_hrc = 64\nspan = 300"), stock, ""},
		{anvil("span = 200"), stock, "beam.toml, [anvil], span: bearings at 50 and 250 mm leave a part of the web area, 0 to 300 mm"},
		{anvil("span = 320\nbearing = -50"), stock, "span: bearings at -50 and 270 mm leave"},
		{anvil("span = 350\nbearing = -50"), stock, ""},
		{anvil("[[anvil.bad]]\nfrom = 310\nto = 318"), stock, "a band from 310 to 318 mm is outside the web area, 0 to 300 mm"},
		{anvil("[[anvil.bad]]\nfrom = 300\nto = 318"), stock, ""},
		{"", stock + "width_allowance_pct = -50", "materials.toml, material 1 (MA), width_allowance_pct: -50 % is more than an allowance usually is"},
		{"", stock + "width_allowance_pct = 0.8", ""},
		{"", stock + "modulus_mpa = 2000", "modulus_mpa: neck-in isn't worked out without poisson and tension_n_m"},
		{"", stock + "tension_n_m = 100\npoisson = 0.4", "poisson: neck-in isn't worked out without modulus_mpa"},
		{"", stock + "modulus_mpa = 2000\ntension_n_m = 100\npoisson = 0.4", ""},
	} {
		job := "arrange = 'any'\nshift = 'free'"
		if strings.Contains(c.stock, "-50") {
			job = "state = 'hold'" // its slits are too narrow
		}
		s := stocks(t, c.beam, job, c.stock)
		for _, key := range []string{"hardness_hrc: ", "span: ", "from: ", "_pct: ", "modulus_mpa: ", "poisson: "} {
			noted(t, s, key, c.want != "" && strings.Contains(c.want, key) || strings.Contains(c.want, "a band") && key == "from: ")
		}
		noted(t, s, c.want, true)
	}
}

// What the formulas refuse, the files do: a piston of 0.05 mm or of 0.001 mm2, an anvil of 3 HRC.
func TestRangesAgree(t *testing.T) {
	for keys, want := range map[string]string{"bore = 0.05": "bore", "piston_area = 0.001": "piston_area", "[anvil]\ndiameter = 150\nhardness_hrc = 3": "hardness_hrc"} {
		beam := strings.Replace(smallBeam, "[cylinder]\n", "[cylinder]\n"+keys+"\n", 1)
		if strings.HasPrefix(keys, "[") {
			beam = smallBeam + keys
		}
		_, problems := Read(files(map[string]string{beamFile: beam}))
		if len(problems) != 1 || !strings.Contains(problems[0].Place+problems[0].What, want) {
			t.Errorf("%s: %v", keys, problems)
		}
	}
	s := read(t, files(map[string]string{beamFile: strings.Replace(smallBeam, "[cylinder]\n", "[cylinder]\nbore = 0.1\n", 1)}))
	if on := s.Settings(&s.Day.Jobs[0]); on == nil {
		t.Error("a piston of 0.1 mm has no settings: " + s.Unset(&s.Day.Jobs[0]))
	}
}

// A round piston must fit its holder: 12 mm less a wall of 1 mm on each side leave 10. One in
// inches is held against the same, and one that is given as an area too is asked about. An area
// says nothing of a width.
func TestPistonsFitTheHolder(t *testing.T) {
	for keys, want := range map[string]string{
		"bore = 10": "", "bore = 10.001": "a round piston of 10.001 mm doesn't fit a holder 12 mm wide, which with a wall of 1 mm on each side has room for 10 mm",
		"bore = '3/8'": "", "bore = '1/2'": "a round piston of 12.7 mm doesn't fit",
		"piston_area = 5000": "", "bore = 9\npiston_area = 64": "piston_area is given too",
	} {
		s, problems := Read(files(map[string]string{beamFile: strings.Replace(smallBeam, "[cylinder]\n", "[cylinder]\n"+keys+"\n", 1)}))
		if want != "" {
			if len(problems) != 1 || problems[0].What != want && !strings.HasPrefix(problems[0].What, want) || !strings.Contains(problems[0].Remedy, "piston_area") {
				t.Errorf("%s: %v", keys, problems)
			}
			continue
		}
		if len(problems) > 0 {
			t.Errorf("%s: %v", keys, problems)
			continue
		}
		if area := map[string]float64{"bore = 10": 78.5398, "bore = '3/8'": 71.2557, "piston_area = 5000": 5000}[keys]; math.Abs(s.Beam.Supply.Area-area) > 1e-4 { // pi/4 * 9.525^2
			t.Errorf("%s: %v mm2, want %v", keys, s.Beam.Supply.Area, area)
		}
	}
}

// Why nothing is known of a job's settings is the reason that it is.
func TestUnsetTellsWhy(t *testing.T) {
	s := read(t, files(nil))
	j := s.Day.Jobs[0]
	if got := s.Unset(&j); got != "" {
		t.Errorf("known: %q", got)
	}
	j.Material = "unheard of"
	if got := s.Unset(&j); got != "its material is in no table" {
		t.Errorf("unknown: %q", got)
	}
	j.Material, j.Speed = "felt", -1
	if got := s.Unset(&j); !strings.Contains(got, "speed of -1 m/min") {
		t.Errorf("out of range: %q", got)
	}
}

// The shop's own limits are read in the file's units and count in place of the usual ones:
// 820.2100 ft/min are 250 m/min, 1/4 in 6.35 mm. One that contradicts another is refused.
func TestLimitsAreRead(t *testing.T) {
	inches := strings.NewReplacer(`"mm"`, `"in"`, "12.0", "0.5", "0.3", "0.01", "[-100.0, 400.0]", "[-4, 16]", "[0.0, 300.0]", "[0, 12]").Replace(smallBeam)
	got := read(t, files(map[string]string{beamFile: inches + "[limits]\nholder_speed = 820.21\nthickness = '1/4'\ncore = '82 mm'\n"})).Limits
	if math.Abs(got.HolderSpeed-250) > 1e-4 || got.ThicknessMM != 6.35 || got.CoreMM != 82 || got.FastHolderSpeed != 0 {
		t.Errorf("%+v", got)
	}
	s := stocks(t, "[limits]\nthickness = 2\nroll_diameter = 300\n", "roll_m = 100", "group = 'foam tape'\nthickness_mm = 3\nadhesive = 'none'")
	noted(t, s, "jobs thicker than holders and blades cut: A (3 mm of 2)", true)
	noted(t, s, "finished rolls larger than usual (is thickness_mm right, or roll_m missing?): A (624 mm)", true) // sqrt(89^2 + 4 * 3 * 1e5 / pi)
	for keys, want := range map[string]string{
		"holder_speed = 950": "fast_holder_speed", "most_margin_bar = 0.5": "most_margin_bar", "thicknes = 3": "thicknes", "neck_in_pct = 0": "neck_in_pct",
	} {
		_, problems := Read(files(map[string]string{beamFile: smallBeam + "[limits]\n" + keys + "\n"}))
		if len(problems) != 1 || !strings.Contains(problems[0].Place+problems[0].What, want) {
			t.Errorf("%s: %v", keys, problems)
		}
	}
}

// A holder with thinner walls takes a larger bore.
func TestWallIsTheShops(t *testing.T) {
	for wall, fits := range map[string]bool{"0.5": true, "0.6": false} {
		_, problems := Read(files(map[string]string{beamFile: strings.Replace(smallBeam, "[cylinder]\n", "[cylinder]\nbore = 11\nwall = "+wall+"\n", 1)}))
		if (len(problems) == 0) != fits {
			t.Errorf("wall %s: %v", wall, problems)
		}
	}
}

// The bend of four blades at 30, 110, 190 and 270 mm with bearings at -300 and 600: of two
// equal loads F, each a from its bearing, F a (3 L^2 - 4 a^2)/(24 E I) at the middle, as in
// TestKnifeBendsTheAnvil. With a of 330 and 410, L 900, F 0.29 * 520 = 150.8 N and I
// 17.6636e6 mm4 by hand: 150.8 * 1 378 768 000 / 8.7753e13 = 0.002369 mm.
func TestBendAboveItsLimitIsNoted(t *testing.T) {
	const stock = "group = 'paper tape'\nthickness_mm = 0.15\nadhesive = 'none'\ncut_through_bar = 2.4"
	for limit, above := range map[string]bool{"max_bend = 0.0023": true, "max_bend = 0.0024": false, "": false} {
		s := stocks(t, "[anvil]\ndiameter = 150\nbore = 110\nspan = 900\n"+limit+"\n", "", stock)
		noted(t, s, "bend the anvil further than its max_bend, centred (fewer blades at once, or a stiffer roll): A (0.002 mm of 0.0023 mm)", above)
		d, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Knife(s.Positions, d.Steps()).Turns[0].Bending.Past(); (got != "") != above {
			t.Errorf("%q: %q", limit, got)
		}
	}
}
