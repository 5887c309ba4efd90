package material

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// TestEllipticIntegrals holds K, E and the axes' ratio against 30-digit values.
func TestEllipticIntegrals(t *testing.T) {
	for _, row := range reference(t, "hertz_ratio.csv") {
		r := number(t, row["Rx_over_Ry"])
		c := axesRatio(r)
		k, d := ellipticKD(c)
		e := k - (1-c*c)*d
		near(t, fmt.Sprintf("a/b at %v", r), 1/c, number(t, row["k=a/b_exact"]), 1e-6)
		near(t, fmt.Sprintf("K at %v", r), k, number(t, row["K_exact"]), 1e-6)
		near(t, fmt.Sprintf("E at %v", r), e, number(t, row["E_exact"]), 1e-6)
	}
}

// TestLegendre: K E' + E K' - K K' = pi/2 for complementary moduli (Legendre's
// relation, Abramowitz and Stegun 17.3.13), which no table is needed for.
func TestLegendre(t *testing.T) {
	for _, c := range []float64{1e-6, 1e-3, 0.1, 0.3, 0.5, math.Sqrt(0.5), 0.9, 0.999, 1 - 1e-9} {
		other := math.Sqrt((1 - c) * (1 + c))
		k, d := ellipticKD(c)
		k2, d2 := ellipticKD(other)
		e, e2 := k-other*other*d, k2-c*c*d2
		near(t, fmt.Sprintf("Legendre's relation at %v", c), k*e2+e*k2-k*k2, math.Pi/2, 1e-13)
	}
}

// TestAxesRatio: the ratio of curvatures comes back, over all of its range, and the
// ellipse gets longer as it grows.
func TestAxesRatio(t *testing.T) {
	last := 1.0
	for exponent := 0.0; exponent <= 12; exponent += 1.0 / 16 {
		r := math.Pow(10, exponent)
		c := axesRatio(r)
		near(t, fmt.Sprintf("ratio %v", r), curvatureRatio(c), r, 1e-12)
		if c > last || c <= 0 {
			t.Errorf("ratio %v: b/a %v after %v", r, c, last)
		}
		last = c
	}
}

// TestFittedFormulas: Hamrock and Brewe's 1977 axes' ratio is within 3.5 % of the exact up to
// 50, most off for a circle, their simple one of 1983 more than 5 % off from 200 on: it is why the exact integrals are used under a blade, where the ratio is some 240.
func TestFittedFormulas(t *testing.T) {
	for _, row := range reference(t, "hertz_ratio.csv") {
		r := number(t, row["Rx_over_Ry"])
		exact := 1 / axesRatio(r)
		if off := math.Abs(1.0339*math.Pow(r, 0.636)/exact - 1); r <= 50 && off > 0.035 {
			t.Errorf("1977 formula at %v is off by %v", r, off)
		}
		if off := math.Abs(math.Pow(r, 2/math.Pi)/exact - 1); r >= 200 && off < 0.05 {
			t.Errorf("1983 formula at %v is off by %v only", r, off)
		}
	}
}

// coefficients are the handbooks' coefficients of a contact: semi-axes over
// (3P / (4 (A+B) E*))^(1/3), and the approach over (P^2 (A+B) / (0.75 E*^2))^(1/3).
func coefficients(t *testing.T, ratio float64) (major, minor, approach float64) {
	t.Helper()
	g := Curvature{1, ratio}
	c, err := g.Contact(100, 2e5)
	if err != nil {
		t.Fatal(err)
	}
	scale := math.Cbrt(3 * 100 / (4 * (g.A + g.B) * 2e5))
	return c.MajorMM / scale, c.MinorMM / scale, c.ApproachMM / math.Cbrt(100*100*(g.A+g.B)/(0.75*2e5*2e5))
}

// TestRoark holds the coefficients of Roark's table (from memory, unchecked) within
// its digits, and the exact ones to theirs.
func TestRoark(t *testing.T) {
	for _, row := range reference(t, "hertz_roark.csv") {
		cos := number(t, row["cos_theta"])
		a, b, y := coefficients(t, (1+cos)/(1-cos))
		for name, got := range map[string]float64{"alpha": a, "beta": b, "lambda": y} {
			near(t, fmt.Sprintf("%s at %v", name, cos), got, number(t, row[name+"_exact"]), 2e-5)
			near(t, fmt.Sprintf("printed %s at %v", name, cos), got, number(t, row[name+"_handbook"]), 2e-3)
		}
	}
}

// TestTimoshenko holds the coefficients of a table of handbook form (from memory, unchecked):
// the exact columns, computed apart, and the rounded ones within 3 in 1000 but for five
// entries where our copy is off.
func TestTimoshenko(t *testing.T) {
	wrong := map[string]bool{"0.5 m": true, "0.5 n": true, "10 n": true, "20 m": true, "20 n": true}
	for _, row := range reference(t, "hertz_timoshenko.csv") {
		m, n, _ := coefficients(t, number(t, row["B_over_A"]))
		for name, got := range map[string]float64{"m": m, "n": n} {
			entry := row["theta_deg"] + " " + name
			exact, printed := number(t, row[name+"_exact"]), number(t, row[name+"_handbook"])
			near(t, entry, got, exact, 5e-5)
			if off := printed/got - 1; !wrong[entry] && math.Abs(off) > 3e-3 {
				t.Errorf("%s: printed %v, exact %v: off by %v", entry, printed, got, off)
			}
		}
	}
}

// TestBoresi is Boresi and Schmidt, Advanced Mechanics of Materials, 6th edition,
// example 17.1 (data read in worked solutions): the exact answer computed with 30
// digits, and the book's, whose coefficients are read off a chart, within 3.5 %.
func TestBoresi(t *testing.T) {
	g, err := Between(60, 130, 80, 200, 60)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "A", g.A, 0.008380856, 1e-6)
	near(t, "B", g.B, 0.01254863, 1e-6)
	modulus, _ := ContactModulus(Elastic{200_000, 0.29}, Elastic{200_000, 0.29})
	c, err := g.Contact(4500, modulus)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"a", c.MajorMM, 1.30857}, {"b", c.MinorMM, 1.000029}, {"peak", c.PeakMPa, 1641.891},
		{"mean", c.MeanMPa, 1094.594}, {"approach", c.ApproachMM, 0.02690036},
	} {
		near(t, v.what, v.got, v.want, 1e-6)
	}
	near(t, "peak off the chart", c.PeakMPa, 1596.76, 0.035)
	near(t, "b off the chart", c.MinorMM, 0.965142, 0.04)
}

// TestBalls: a ball of 50 mm on a flat, and on another, 500 N, E 200 GPa, nu 0.3
// (problems read; answers computed with 30 digits).
func TestBalls(t *testing.T) {
	modulus, _ := ContactModulus(Elastic{200_000, 0.3}, Elastic{200_000, 0.3})
	near(t, "E*", modulus, 109890.11, 1e-7)
	for _, c := range []struct{ other, a, peak, approach float64 }{
		{inf, 0.4402211, 1231.883, 0.007751786}, {25, 0.3494037, 1955.493, 0.009766638},
	} {
		g, err := Between(25, 25, c.other, c.other, 0)
		if err != nil {
			t.Fatal(err)
		}
		got, err := g.Contact(500, modulus)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "a", got.MajorMM, c.a, 2e-7)
		near(t, "b", got.MinorMM, c.a, 2e-7)
		near(t, "peak", got.PeakMPa, c.peak, 1e-6)
		near(t, "approach", got.ApproachMM, c.approach, 1e-6)
	}
}

// TestLongEllipseIsALine: a very long ellipse is a line contact at its middle, with
// the line load q = pi b p0 / 2. Shigley, chapter 3: a cast-iron wheel of 6 in on flat
// steel, 400 lbf on the inch (problem read; elastic constants of Table A-5 from memory;
// answer computed), and two steel rolls of 100 mm under 100 N/mm (computed).
func TestLongEllipseIsALine(t *testing.T) {
	iron, steel := Elastic{14.5e6 * PascalsPerPsi / 1e6, 0.211}, Elastic{30e6 * PascalsPerPsi / 1e6, 0.292}
	wheel, _ := ContactModulus(iron, steel)
	rolls, _ := ContactModulus(Steel, Steel)
	for _, c := range []struct{ radius, modulus, b, peak, load float64 }{
		{3 * MMPerInch, wheel, 0.0121354 * MMPerInch, 20983.93 * PascalsPerPsi / 1e6, 400 * NPerMMPerLbfInch},
		{25, rolls, 0.167292, 380.5437, 100},
	} {
		g := Curvature{A: 1e-11 / (2 * c.radius), B: 1 / (2 * c.radius)}
		one, err := g.Contact(1, c.modulus)
		if err != nil {
			t.Fatal(err)
		}
		grown := c.b / one.MinorMM // all lengths grow with the cube root of the force
		peak := one.PeakMPa * grown
		near(t, "peak", peak, c.peak, 1e-5)
		near(t, "line load", math.Pi/2*c.b*peak, c.load, 1e-5)
	}
}

// TestBladesOnAnvils: blades on anvils, computed with 30 digits; the second case is
// the first under a quarter of the force.
func TestBladesOnAnvils(t *testing.T) {
	for _, c := range []struct {
		tip                           Tip
		force, a, b, peak, mean, near float64
	}{
		{Tip{90, 0.1, 100}, 200, 0.5321887, 0.01774682, 10110.79, 6740.526, 0.00755394},
		{Tip{90, 0.1, 100}, 50, 0.3352579, 0.0111798, 6369.398, 6369.398 * 2 / 3, 0.002997783},
		{Tip{80, 0.25, 100}, 300, 0.5651836, 0.03329976, 7610.829, 7610.829 * 2 / 3, 0.00940498},
		{Tip{100, 0.3, 150}, 400, 0.6923307, 0.03806712, 7246.657, 7246.657 * 2 / 3, 0.01040387},
	} {
		got, err := c.tip.Contact(c.force)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "a", got.MajorMM, c.a, 1e-6)
		near(t, "b", got.MinorMM, c.b, 1e-6)
		near(t, "peak", got.PeakMPa, c.peak, 1e-6)
		near(t, "mean", got.MeanMPa, c.mean, 1e-6)
		near(t, "approach", got.ApproachMM, c.near, 1e-6)
	}
	hv, _ := Vickers(60)
	near(t, "hardness of 60 HRC as a pressure", hv*NewtonsPerKg, 6835.2, 1e-5) // 697 kgf/mm2: why the elastic number is no stress
}

// TestContactLaws, drawn: sizes and pressure grow with the cube root of the force, the
// pressure adds up to the force, a length scale leaves the pressure alone when the
// force goes with its square, and a sharper tip presses harder.
func TestContactLaws(t *testing.T) {
	const seed = 11
	r := rand.New(rand.NewPCG(seed, 0))
	for range 300 {
		tip := Tip{40 + 100*r.Float64(), 0.02 + 0.4*r.Float64(), 60 + 200*r.Float64()}
		force, k := 10+500*r.Float64(), 0.2+5*r.Float64()
		one, err := tip.Contact(force)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		more, _ := tip.Contact(force * k)
		near(t, "peak with force", more.PeakMPa, one.PeakMPa*math.Cbrt(k), 1e-12)
		near(t, "axes with force", more.MajorMM*more.MinorMM, one.MajorMM*one.MinorMM*math.Cbrt(k*k), 1e-12)
		near(t, "approach with force", more.ApproachMM, one.ApproachMM*math.Cbrt(k*k), 1e-12)
		near(t, "force from pressure", one.PeakMPa*2*math.Pi/3*one.MajorMM*one.MinorMM, force, 1e-12)
		large, _ := Tip{2 * tip.BladeMM, 2 * tip.TipMM, 2 * tip.AnvilMM}.Contact(4 * force)
		near(t, "peak with size", large.PeakMPa, one.PeakMPa, 1e-11)
		sharp, _ := Tip{tip.BladeMM, tip.TipMM * 0.9, tip.AnvilMM}.Contact(force)
		if sharp.PeakMPa <= one.PeakMPa || one.MinorMM > one.MajorMM || t.Failed() {
			t.Fatalf("seed %d: %+v under %v: %+v, sharper %+v", seed, tip, force, one, sharp)
		}
	}
}

// TestWearIndex: 1 at its reference, the cube root of 8 at eight times the force.
func TestWearIndex(t *testing.T) {
	tip := Tip{90, 0.15, 150}
	one, err := tip.WearIndex(200)
	if err != nil {
		t.Fatal(err)
	}
	eight, _ := tip.WearIndex(1600)
	near(t, "reference", one, 1, 1e-15)
	near(t, "eight times the force", eight, 2, 1e-12)
	if sharp, _ := (Tip{90, 0.08, 150}).WearIndex(200); sharp <= 1 {
		t.Errorf("a sharper tip wears less: %v", sharp)
	}
}

func TestContactRefuses(t *testing.T) {
	_, err := Tip{0, nan, inf}.Contact(1)
	refused(t, err, "blade diameter of 0 mm", "tip radius of NaN", "anvil diameter")
	_, err = Tip{90, 0.1, 100}.WearIndex(nan)
	refused(t, err, "force of NaN N")
	_, err = Tip{90, 0.1, 100}.Contact(0)
	refused(t, err, "force of 0 N")
	_, err = Curvature{2, 1}.Contact(1, 1e5)
	refused(t, err, "curvature B")
	_, err = Curvature{nan, nan}.Contact(inf, nan)
	refused(t, err, "force", "contact modulus", "curvature A")
	_, err = Between(0, -1, nan, 1, inf)
	refused(t, err, "radius of 0", "radius of -1", "radius of NaN", "angle")
	_, err = ContactModulus(Elastic{0, 0.3}, Elastic{1, 0.6})
	refused(t, err, "modulus of 0", "ratio of 0.6")
}
