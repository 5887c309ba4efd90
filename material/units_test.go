package material

import (
	"math"
	"testing"
)

// TestUnitsAreTheDefined holds every factor against the table of factors: the exact
// ones are definitions (NIST SP 811, appendix B.8, prints the others to 6 or 7 digits), the
// rest computed from them.
func TestUnitsAreTheDefined(t *testing.T) {
	ours := map[string]float64{
		"in mm": MMPerInch, "ft m": MetresPerFoot, "lbf N": NewtonsPerPound, "kgf N": NewtonsPerKg, "psi Pa": PascalsPerPsi,
		"bar kPa": PascalsPerBar / 1000, "MPa psi": Psi(1 / MPaPerBar), "bar psi": Psi(1), "lbf/in (pli) N/m": 1000 * NPerMMPerLbfInch,
		"ft/min m/min": Metres(1), "in/s mm/s": MMPerInch,
	}
	held := 0
	for _, row := range reference(t, "units.csv") {
		if got, ok := ours[row["from"]+" "+row["to"]]; ok {
			near(t, row["from"]+" in "+row["to"], got, number(t, row["factor"]), 1e-15)
			held++
		}
	}
	if held != len(ours) {
		t.Errorf("%d of %d factors held", held, len(ours))
	}
}

// TestUnitsThereAndBack: a conversion and its inverse give the number back.
func TestUnitsThereAndBack(t *testing.T) {
	for _, v := range []float64{0, 1e-9, 0.7, 1, 6.3, 1000, 1e12} {
		near(t, "bar", Bar(Psi(v)), v, 4e-16)
		near(t, "metres", Metres(Feet(v)), v, 4e-16)
		near(t, "pounds", Pounds(v)*NewtonsPerPound, v, 4e-16)
		near(t, "inches", Inches(v)*MMPerInch, v, 4e-16)
	}
}

// TestPeelUnits: the two peel values that Commercial Item Description A-A-180C (read)
// prints in both units, to the digits printed; a line load is force over width.
func TestPeelUnits(t *testing.T) {
	near(t, "16 lbf/in in N/100 mm", 16*NPerMMPerLbfInch*100, 280.2, 0.05/280.2)
	near(t, "25 ozf/in in N/100 mm", 25.0/16*NPerMMPerLbfInch*100, 27.36, 0.005/27.36)
}

// TestVickersIsTheTable holds the table against a second typed copy, against slips of the
// pen; the copy says where its rows are from.
func TestVickersIsTheTable(t *testing.T) {
	rows := reference(t, "hrc_hv.csv")
	for _, row := range rows {
		hrc := number(t, row["HRC"])
		got, err := Vickers(hrc)
		if want := number(t, row["HV"]); err != nil || got != want {
			t.Errorf("%v HRC is %v HV, %v; want %v", hrc, got, err, want)
		}
	}
	if len(rows) != len(vickers) {
		t.Errorf("%d rows, %d in the table", len(rows), len(vickers))
	}
}

// TestVickersBetween: straight between whole steps, always rising, refused outside.
func TestVickersBetween(t *testing.T) {
	half, _ := Vickers(63.5)
	near(t, "63.5 HRC", half, (772+800)/2.0, 1e-12)
	last := 0.0
	for hrc := 44.0; hrc <= 68; hrc += 1.0 / 64 {
		hv, err := Vickers(hrc)
		if err != nil || hv <= last {
			t.Fatalf("%v HRC: %v after %v, %v", hrc, hv, last, err)
		}
		last = hv
	}
	for _, bad := range []float64{43.99, 68.01, 0, -1, nan, inf, math.Inf(-1)} {
		_, err := Vickers(bad)
		refused(t, err, "hardness", "HRC", "44 to 68")
	}
}
