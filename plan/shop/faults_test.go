package shop

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/sequence"
)

// fault is a fault of a key with a reason as given.
func fault(key, why string) plan.Fault {
	return plan.NewFault(key, "%s", why)
}

// TestFaultsInTheDaysUnit: a day in inches on a beam in millimetres is told in
// inches. A web of 12 in is wider than 300 mm, 11.811 in.
func TestFaultsInTheDaysUnit(t *testing.T) {
	day := strings.NewReplacer(`"mm"`, `"in"`, "250.0", "12", "3 x 80", "3 x 3").Replace(smallDay)
	compare(t, []want{{"day.toml:7", "job 1 (A), web", []string{"12 in", "11.811 in"}}},
		read(t, files(map[string]string{dayFile: day})).JobProblems())
}

// TestFaultsTellTheAllowance: three slits of 80 mm and 7 % make 256.8 mm, 6.8 mm
// more than the web.
func TestFaultsTellTheAllowance(t *testing.T) {
	own := "[[material]]\nname = \"felt\"\ngroup = \"felt\"\nthickness_mm = 3\nadhesive = \"none\"\nwidth_allowance_pct = 7\n"
	s := read(t, files(map[string]string{materialsFile: own}))
	compare(t, []want{{"day.toml:8", "job 1 (A), slits", []string{"256.8 mm", "6.8 mm", "cut widths include the material's allowance of 7 %"}}},
		s.JobProblems())
	if p := s.ProblemOf(&s.Day.Jobs[0], fault("web", "the web is too wide")); strings.Contains(p.String(), "allowance") {
		t.Errorf("a fault of the web: %s", p)
	}
	plain := strings.Replace(smallDay, "3 x 80", "3 x 90", 1)
	if ps := read(t, files(map[string]string{dayFile: plain})).JobProblems(); len(ps) == 0 || strings.Contains(ps.Error(), "allowance") {
		t.Errorf("without an allowance:\n%v", ps)
	}
}

// TestRemedyNamesHolders: a holder at fault is named as what to mend first.
func TestRemedyNamesHolders(t *testing.T) {
	conditions := "[[holder]]\nnumber = 2\ncondition = \"stuck\"\n[[holder]]\nnumber = 4\ncondition = \"no cut\"\n[[holder]]\nnumber = 5\ncondition = \"out\"\n"
	s := read(t, files(map[string]string{beamFile: smallBeam + conditions}))
	// Four cuts; of the five holders 1, 2 and 3 may cut.
	compare(t, []want{{"day.toml:8", "job 1 (A), slits", []string{"4 cuts", "3 of the 5", "repair or exchange holder 4, 5, locked out", "or correct slits"}}},
		s.JobProblems())
	many := strings.Replace(smallDay, "3 x 80", "5 x 45", 1) // six cuts: five holders are too few, whatever their condition
	compare(t, []want{{"day.toml:8", "job 1 (A), slits", []string{"6 cuts", "3 of the 5", "correct slits"}}},
		read(t, files(map[string]string{beamFile: smallBeam + conditions, dayFile: many})).JobProblems())
	for _, p := range read(t, files(map[string]string{beamFile: smallBeam + conditions, dayFile: many})).JobProblems() {
		if strings.Contains(p.Remedy, "repair") {
			t.Errorf("mending can't help: %s", p)
		}
	}
	for why, remedy := range map[string]string{
		"holder 2 (stuck) is 3 mm from cut 4":                "free or exchange holder 2, locked out by your site's procedure; or correct slits",
		"on the drive side of holder 5 (out at 10 mm)":       "repair or exchange holder 5, locked",
		"holders 3 to 5 may not cut and must be idle":        "repair or exchange holder 4, 5, locked",
		"holder 2 is stuck at 1 mm; holder 4 may not cut":    "free or exchange holder 2, repair or exchange holder 4, locked",
		"4 idle holders find no room; 2 can be":              "correct slits",
		"holder 1 is in the way":                             "correct slits",
		"holders 4 to 999999999999999999999 are not on here": "repair or exchange holder 4, 5, locked",
	} {
		if got := s.ProblemOf(&s.Day.Jobs[0], fault("slits", why)).Remedy; !strings.HasPrefix(got, remedy) {
			t.Errorf("%s: remedy %q, want %q", why, got, remedy)
		}
	}
}

// TestRefusalNamesTheHolder: a web of 250 mm in the middle of 300 mm runs from 25 to
// 275 mm and is cut at 30, 110, 190 and 270 mm. Holder 2 is stuck at 50 mm, over the
// web and on no cut, where none may rest.
func TestRefusalNamesTheHolder(t *testing.T) {
	beam := strings.Replace(smallBeam, "[drive]", "rest_over_web = false\n[drive]", 1) + "[[holder]]\nnumber = 2\ncondition = \"stuck\"\n"
	standing := "units = \"mm\"\nholder = [{number=1, at=-100}, {number=2, at=50}, {number=3, at=360}, {number=4, at=380}, {number=5, at=400}]\n"
	s := read(t, files(map[string]string{beamFile: beam, positionsFile: standing}))
	d, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
	if err != nil || len(d.Refused()) != 1 {
		t.Fatalf("%v, plan %+v", err, d)
	}
	p := s.ProblemOf(d.Refused()[0].Job, d.Refused()[0].Faults[0])
	if !strings.Contains(p.What, "holder 2 (stuck)") || !strings.HasPrefix(p.Remedy, "free or exchange holder 2,") || p.Line != 8 {
		t.Errorf("%s", p)
	}
}

// TestEveryKeyHasARemedy: keys of the faults that plans and orders give.
func TestEveryKeyHasARemedy(t *testing.T) {
	s := read(t, files(nil))
	for _, key := range []string{"web", "slits", "trim", "positions", "fixed", "after"} {
		if s.ProblemOf(&s.Day.Jobs[0], fault(key, "x")).Remedy == "" {
			t.Errorf("%s: no remedy", key)
		}
	}
}

// TestDamagedBands: bands of the anvil reach the beam in order and joined, one in
// inches and one off the anvil too. The web of 250 mm runs from 25 to 275, so cuts
// stand at 30, 110, 190 and 270, and a least trim of 3 mm leaves 2 mm on either side.
func TestDamagedBands(t *testing.T) {
	band := func(from, to string) string { return "[[anvil.bad]]\nfrom = " + from + "\nto = " + to + "\n" }
	beam := smallBeam + "[anvil]\ndiameter = 150\n" + band("189", "190.5") + band("900", "950") + band("61", `"2.5 in"`) + band("62", "64")
	s := read(t, files(map[string]string{beamFile: beam}))
	bands := []plan.Span{{From: 61 * plan.Millimetre, To: 64 * plan.Millimetre}, {From: 189 * plan.Millimetre, To: 190*plan.Millimetre + plan.Millimetre/2},
		{From: 900 * plan.Millimetre, To: 950 * plan.Millimetre}}
	if !slices.Equal(s.Beam.Bad, bands) {
		t.Errorf("bands %v, want %v", s.Beam.Bad, bands)
	}
	compare(t, []want{{"day.toml:4", "job 1 (A), shift", []string{"cut 3 at 190 mm lies in the damaged band of the anvil from 189 to 190.5 mm", "beyond 0.5 mm to the drive side", `set shift = "free"`}}}, s.JobProblems())
	free := smallDay + "shift = \"free\"\n"
	if ps := read(t, files(map[string]string{beamFile: beam, dayFile: free})).JobProblems(); len(ps) > 0 {
		t.Errorf("with a free shift:\n%v", ps)
	}
	wide := smallBeam + "[anvil]\ndiameter = 150\n" + band("180", "200")
	compare(t, []want{{"day.toml:8", "job 1 (A), slits", []string{"no shift from -2 to 2 mm", "centred, cut 3 at 190 mm lies in the damaged band of the anvil from 180 to 200 mm"}}},
		read(t, files(map[string]string{beamFile: wide, dayFile: free})).JobProblems())
}
