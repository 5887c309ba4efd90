package shop

import (
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
// what is usual. The beam has two pistons of 28 mm and 6.3 bar: 12 bar for one are 6 for
// two, and 6.5 with the margin, so that it takes three.
func TestKnifeIsNoted(t *testing.T) {
	const usual = "group = 'paper tape'\nthickness_mm = 0.15\nadhesive = 'acrylic'"
	s := stocks(t, "", "", usual,
		"group = 'felt'\nthickness_mm = 14\nadhesive = 'none'",
		"group = 'paper tape'\nthickness_mm = 0.15\nadhesive = 'acrylic'\nbevel = 20\ntip = 0.02",
		"group = 'cloth tape'\nthickness_mm = 0.3\nadhesive = 'acrylic'\ncut_through_bar = 12")
	for _, want := range []string{
		"day.toml: jobs thicker than standard holders and blades cut: B (14 mm of 12.7)",
		"day.toml: jobs whose material should not be scored, and is planned all the same: B (MB, best by shear)",
		"day.toml: jobs whose blade is outside what is usual for their group: C (bevel 20, usual 30 to 60 degrees; tip 0.02, usual 0.1 to 0.2 mm)",
		"day.toml: jobs needing other pistons than fitted (no time is counted for fitting them): D (3 pistons of 28 mm)",
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

// Neck-in by hand: 3 * 25/1000 / 0.25 / 10 = 0.03 of the narrow width, so that 250 mm are
// 242.72 at the knife, 7.28 less. Centred there are 5 mm of trim on either side, of which
// 1.36 are left where both sides lose half; at an edge that is guided all are. A free shift
// may come to the least trim of 3 mm, and a web without tension loses nothing.
func TestTrimAtTheKnifeIsNoted(t *testing.T) {
	stock := "group = 'light nonwoven'\nthickness_mm = 0.25\nadhesive = 'none'\nmodulus_mpa = 10\npoisson = 3\n"
	for _, c := range []struct{ guide, job, want string }{
		{"centre", "", "trim down to 1.36 mm on the operator side, 1.36 mm on the drive side"},
		{"operator", "", "trim down to 5 mm on the operator side, -2.28 mm on the drive side"},
		{"drive", "shift = 'free'", "trim down to -4.28 mm on the operator side, 3 mm on the drive side"},
	} {
		beam := "[guide]\nweb_at = '" + c.guide + "'\n"
		noted(t, stocks(t, beam, c.job, stock+"tension_n_m = 25"), "A (242.72 mm instead of 250 mm at the knife, its "+c.want, true)
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
	on := s.Knife(s.Positions, d.Steps()).Turns[0].Settings // 250/1.06 = 235.849, 7.075 less on either side
	if e := on.Edges; e == nil || !e.Off() || !strings.Contains(strings.Join(on.Warnings, " "), "the trim left there is -2.08 mm (-0.082 in) on the operator side, -2.08 mm") {
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

// What the formulas refuse, the files do: a piston of 0.05 mm, an anvil of 3 HRC.
func TestRangesAgree(t *testing.T) {
	for keys, want := range map[string]string{"bore = 0.05": "bore", "[anvil]\ndiameter = 150\nhardness_hrc = 3": "hardness_hrc"} {
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
