package material

import (
	"math"
	"strings"
	"testing"
)

// TestForceIsTheTable holds force and its inverse against a table computed outside,
// metric and inch-pound, to the digits that it prints.
func TestForceIsTheTable(t *testing.T) {
	for _, row := range reference(t, "cylinder_force.csv") {
		bore, bar, want := number(t, row["bore"]), number(t, row["pressure"])/MPaPerBar, number(t, row["force"])
		digit := 0.005
		if strings.HasSuffix(row["bore"], "in") {
			bore, bar, want, digit = bore*MMPerInch, Bar(number(t, row["pressure"])), want*NewtonsPerPound, 0.0005*NewtonsPerPound
		}
		n := int(number(t, row["pistons"]))
		got, err := Force(bar, RoundArea(bore), n)
		if err != nil || math.Abs(got-want) > digit*1.01 {
			t.Errorf("%v: %v N, %v; want %v", row, got, err, want)
		}
		back, err := Pressure(got, RoundArea(bore), n)
		if err != nil {
			t.Error(err)
		}
		near(t, "pressure", back, bar, 1e-14)
	}
}

// TestForceExamples: worked examples, computed with 30 digits from the stated data.
func TestForceExamples(t *testing.T) {
	for _, c := range []struct{ bore, bar, want float64 }{
		{20, 6, 188.4956}, {25, 6, 294.5243}, {32, 6, 482.5486},
		{1 * MMPerInch, Bar(60), 47.12389 * NewtonsPerPound},
		{0.75 * MMPerInch, Bar(80), 35.34292 * NewtonsPerPound},
		{1.125 * MMPerInch, Bar(60), 59.64117 * NewtonsPerPound},
	} {
		got, err := Force(c.bar, RoundArea(c.bore), 1)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "force", got, c.want, 3e-7)
	}
}

// TestForceOfAnArea: 2.5 bar are 0.25 N/mm2: 65 N on 260 mm2, 195 on three of them.
func TestForceOfAnArea(t *testing.T) {
	for n, want := range map[int]float64{1: 65, 3: 195} {
		got, err := Force(2.5, 260, n)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "force", got, want, 1e-14)
	}
}

func TestForceRefuses(t *testing.T) {
	for _, bad := range []float64{nan, inf, -1} {
		_, err := Force(bad, bad, 0)
		refused(t, err, "pressure", "piston area", "number of pistons")
		_, err = Pressure(bad, bad, -1)
		refused(t, err, "force", "piston area", "number of pistons")
	}
	_, err := Force(1, 0, 1)
	refused(t, err, "piston area of 0 mm2")
}

// TestTwoPistonsReach is a worked example: 250 N from a 20 mm bore at 0.6 MPa with a
// margin of 0.05 MPa. One piston needs 0.7957747 MPa, beyond the supply; two need
// 0.3978874 and are set to 0.4478874 MPa.
func TestTwoPistonsReach(t *testing.T) {
	one, _ := Pressure(250, RoundArea(20), 1)
	near(t, "one piston", one*MPaPerBar, 0.7957747, 1e-7)
	a, err := ChooseAir(250, round(20, 1, 6, 0.5))
	if err != nil || a.Pistons != 2 || a.BoreMM != 20 || a.Own {
		t.Fatalf("%+v, %v", a, err)
	}
	near(t, "cut-through", a.CutThroughBar*MPaPerBar, 0.3978874, 2e-7)
	near(t, "set pressure", a.SetBar*MPaPerBar, 0.4478874, 2e-7)
	if !strings.Contains(a.Why, "8.5 bar") || !strings.Contains(a.Why, "6.0") { // 7.957747 + 0.5 and the supply
		t.Errorf("why: %s", a.Why)
	}
}

// TestAirIsTheLeastThatFits: over many forces and shops, what is chosen reaches the
// force within the supply, the shop's own pistons are kept whenever they do, no
// setting of fewer changes does, and what is refused nothing reaches.
func TestAirIsTheLeastThatFits(t *testing.T) {
	for _, bore := range []float64{12, 20, 28, 40, 63} {
		for own := 1; own <= 4; own++ {
			for force := 5.0; force < 4000; force *= 1.17 {
				c := round(bore, own, 6.3, 0.8)
				a, err := ChooseAir(force, c)
				fits := func(bore float64, n int) bool {
					bar, _ := Pressure(force, RoundArea(bore), n)
					return bar+0.8 <= 6.3
				}
				switch most := max(own, 3); {
				case err != nil:
					if fits(max(bore, 40), most) {
						t.Errorf("%v N, %+v: refused, %v", force, c, err)
					}
					refused(t, err, "6.3", "bar", "need")
				case a.Own != fits(bore, own), !fits(a.BoreMM, a.Pistons):
					t.Errorf("%v N, %+v: %+v", force, c, a)
				case !a.Own && a.BoreMM > bore && fits(bore, most):
					t.Errorf("%v N, %+v: a larger bore where more pistons do: %+v", force, c, a)
				case !a.Own && a.Pistons > 1 && fits(a.BoreMM, a.Pistons-1) && (a.BoreMM > bore || a.Pistons-1 > own):
					t.Errorf("%v N, %+v: more pistons than needed: %+v", force, c, a)
				default:
					got, _ := Force(a.SetBar-0.8, RoundArea(a.BoreMM), a.Pistons)
					near(t, "force at cut-through", got, force, 1e-12)
				}
			}
		}
	}
}

func TestChooseAirRefuses(t *testing.T) {
	_, err := ChooseAir(nan, Cylinder{AreaMM2: nan, SupplyBar: inf, MarginBar: -1})
	refused(t, err, "cut-through force", "piston area", "pistons", "supply", "margin")
}

// TestMargin: 10 to 15 psi, 0.7 to 1.0 bar, is usual (common practice, no source).
func TestMargin(t *testing.T) {
	for bar, want := range map[float64]string{0: "below", 0.5: "below", 0.7: "", 0.8: "", 1.0: "", 1.2: "blunts"} {
		got, err := Limits{}.CheckMargin(bar)
		if err != nil || (want == "") != (got == "") || !strings.Contains(got, want) {
			t.Errorf("%v bar: %q, %v", bar, got, err)
		}
	}
	_, err := Limits{}.CheckMargin(nan)
	refused(t, err, "margin")
}

// TestSpeeds: standard holders to 1000 ft/min = 304.8 m/min, larger pistons to 3000 =
// 914.4 (common practice, no source; a foot is 0.3048 m).
func TestSpeeds(t *testing.T) {
	near(t, "standard", usual.HolderSpeed, 304.8, 1e-15)
	near(t, "fast", usual.FastHolderSpeed, 914.4, 1e-15)
	for _, c := range []struct {
		speed, material float64
		holders         string
		warnings        int
	}{
		{150, 200, "standard", 0}, {304.8, 400, "standard", 0}, {305, 400, "larger pistons", 1},
		{305, 300, "larger pistons", 2}, {915, 1000, "beyond", 1}, {1000, 100, "beyond", 2}, {250, 200, "standard", 1},
	} {
		a, err := AdviseSpeed(c.speed, c.material, Limits{})
		if err != nil || !strings.Contains(a.Holders, c.holders) || len(a.Warnings) != c.warnings || a.Max > c.material {
			t.Errorf("%v: %+v, %v", c, a, err)
		}
	}
	_, err := AdviseSpeed(0, nan, Limits{})
	refused(t, err, "speed of 0 m/min", "the material's speed")
}

// Speeds are shown in both units and to a tenth, and a speed is above another only by more
// than people's rounding: 150 m/min are 492.126 ft/min, which they write as 492.13, 150.0012
// m/min.
func TestSpeedsAreTold(t *testing.T) {
	for speed, want := range map[float64]string{
		492.13 * MetresPerFoot: "", 150: "", 150.4: "150.4 m/min (493 ft/min) is above the material's limit of 150 m/min (492 ft/min).",
	} {
		a, err := AdviseSpeed(speed, 150, Limits{})
		if err != nil || strings.Join(a.Warnings, " ") != want {
			t.Errorf("%v m/min: %q, %v, want %q", speed, a.Warnings, err, want)
		}
	}
}

// A supply written in psi is far above shop air: 90 psi are 90 * 0.06894757 = 6.2 bar.
func TestSupplyInPsi(t *testing.T) {
	for bar, want := range map[float64]string{6.3: "", 10: "", 90: "(90 psi would be 6.2 bar)"} {
		text, err := CheckSupply(bar)
		if err != nil || (text == "") != (want == "") || !strings.Contains(text, want) {
			t.Errorf("%v bar: %q, %v", bar, text, err)
		}
	}
	_, err := CheckSupply(nan)
	refused(t, err, "supply of NaN bar")
	on := shop
	on.Cylinder.SupplyBar = 90
	if all := settings(t, of(t, "paper tape", 0.15, RubberResin), on, 150).Warnings; !strings.Contains(strings.Join(all, " "), "above the 10 of usual shop air") {
		t.Errorf("%q", all)
	}
}

// TestAboveIsByMoreThanRounding: half a tenth above is none, the next number is.
func TestAboveIsByMoreThanRounding(t *testing.T) {
	for _, most := range []float64{150, usual.HolderSpeed, usual.FastHolderSpeed} {
		if edge := most + 0.05; faster(edge, most) || !faster(math.Nextafter(edge, inf), most) {
			t.Errorf("%v and %v m/min", most, edge)
		}
	}
}

// TestNextLargerBore: the bores that pneumatic cylinders usually come in (ISO 6432 and 15552,
// from memory, unchecked). What three pistons of one bore just don't press takes the next larger,
// as few as do.
func TestNextLargerBore(t *testing.T) {
	bores := []float64{10, 12, 16, 20, 25, 32, 40}
	for i := 1; i < len(bores); i++ {
		force, _ := Force(6, RoundArea(bores[i-1]), 3)
		force *= 1.01
		want := 1
		for n := 1; n <= 3; n++ {
			if got, _ := Force(6, RoundArea(bores[i]), n); got >= force {
				want = n
				break
			}
		}
		a, err := ChooseAir(force, round(8, 1, 6, 0))
		if err != nil || a.BoreMM != bores[i] || a.Pistons != want {
			t.Errorf("%v N: %+v, %v; want %d of %v mm", force, a, err, want, bores[i])
		}
	}
	most, _ := Force(6, RoundArea(40), 3)
	if _, err := ChooseAir(most*1.01, round(8, 1, 6, 0)); err == nil {
		t.Errorf("%v N are accepted", most*1.01)
	}
}

// TestOtherPistonsFit: what is proposed can be had in the holder. A holder with room for 13 mm
// gets no bore above 12, and is refused what three of those don't press, 0.55 * 339.29 = 186.6 N
// under 5.5 bar; one with room for 9 mm has its own bore alone, three times: 0.55 * 190.85 = 105.0 N.
func TestOtherPistonsFit(t *testing.T) {
	for _, c := range []struct {
		room, force float64
		want        string // empty is refused
	}{
		{13, 104, "3 pistons of 9 mm"}, {13, 106, "3 pistons of 10 mm"}, {13, 186, "3 pistons of 12 mm"}, {13, 187, ""},
		{9, 104, "3 pistons of 9 mm"}, {9, 106, ""},
	} {
		a, err := ChooseAir(c.force, Cylinder{AreaMM2: RoundArea(9), BoreMM: 9, RoomMM: c.room, Pistons: 1, SupplyBar: 6.3, MarginBar: 0.8})
		if c.want == "" {
			refused(t, err, "nothing reaches", map[float64]string{13: "3 pistons of 12 mm", 9: "3 pistons of 9 mm"}[c.room])
			continue
		}
		if err != nil || a.Fitted() != c.want {
			t.Errorf("%v: %+v, %v", c, a, err)
		}
	}
}

// TestLargerAreas: pistons of another shape are taken more of, then larger. Under 5.5 bar two of
// 260 mm2 press 286 N and three 429 N; 500 N take 500/0.55/3 = 303.03 mm2 of each of three, in
// tens 310; 520 mm2, twice their own, press 858 N, and 860 N are refused.
func TestLargerAreas(t *testing.T) {
	for force, want := range map[float64]string{286: "2 pistons of 260 mm2", 287: "3 pistons of 260 mm2", 429: "3 pistons of 260 mm2", 500: "3 pistons of 310 mm2", 858: "3 pistons of 520 mm2", 860: ""} {
		a, err := ChooseAir(force, Cylinder{AreaMM2: 260, RoomMM: 10, Pistons: 2, SupplyBar: 6.3, MarginBar: 0.8})
		if want == "" {
			refused(t, err, "860 N", "2 pistons of 260 mm2 would need 17.3 bar", "3 pistons of 520 mm2 6.3") // 860/52 + 0.8; 860/156 + 0.8 = 6.313
			continue
		}
		if err != nil || a.Fitted() != want || a.Own != (force == 286) {
			t.Errorf("%v N: %+v, %v", force, a, err)
		}
	}
}
