package material

import (
	"math/big"
	"testing"
)

// TestNeckIn: stress, stretch and narrowing are the examples of a trade column on Poisson's
// ratio (read). The knives' places follow from the ratio's definition, change in width
// divided by the original width (encyclopedia, read): by hand 10 in less 3 % are 9.7 in, 25 mm
// less 1/225 are 24.888889. Tension in lbf/in, modulus in psi.
func TestNeckIn(t *testing.T) {
	for _, c := range []struct {
		tension, thickness, modulus, poisson float64
		stress, stretch, narrowing           float64
		relaxed, knives                      float64
	}{
		{3, 0.003, 1e6, 0.3, 1000, 0.001, 0.0003, 0, 0},
		{1, 0.01, 1e4, 3, 100, 0.01, 0.03, 10, 9.7},
		{1, 0.003, 3e4, 0.4, 1000.0 / 3, 0.0111111, 0.0044444, 25, 24.888889},
	} {
		w := Web{c.tension * NPerMMPerLbfInch, c.thickness * MMPerInch, c.modulus * PascalsPerPsi / 1e6, c.poisson}
		n, err := w.NeckIn()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "stress", n.StressMPa, c.stress*PascalsPerPsi/1e6, 1e-12)
		near(t, "stretch", n.Stretch, c.stretch, 2e-6)
		near(t, "narrowing", n.Narrowing, c.narrowing, 2e-5)
		pct, _ := n.Allowance().Float64()
		near(t, "knives", c.relaxed*(1+pct/100), c.knives, 5e-6) // half a thousandth of a percent
		if step := new(big.Rat).Mul(n.Allowance(), big.NewRat(1000, 1)); !step.IsInt() || step.Sign() >= 0 {
			t.Errorf("allowance %v is no whole thousandth below zero", n.Allowance())
		}
	}
}

// TestNeckInLaws: proportional to tension, against thickness and modulus.
func TestNeckInLaws(t *testing.T) {
	w := Web{0.2, 0.1, 500, 0.4}
	one, _ := w.NeckIn()
	for _, c := range []struct {
		web  Web
		want float64
	}{{Web{0.4, 0.1, 500, 0.4}, 2}, {Web{0.2, 0.2, 500, 0.4}, 0.5}, {Web{0.2, 0.1, 1000, 0.4}, 0.5}, {Web{0.2, 0.1, 500, 0.8}, 2}} {
		n, _ := c.web.NeckIn()
		near(t, "narrowing", n.Narrowing, c.want*one.Narrowing, 1e-12)
	}
	if rest, err := (Web{0, 0.1, 500, 0.4}).NeckIn(); err != nil || rest.Allowance().Sign() != 0 {
		t.Errorf("no tension: %v, %v", rest, err)
	}
}

func TestNeckInRefuses(t *testing.T) {
	_, err := Web{nan, 0, -1, inf}.NeckIn()
	refused(t, err, "tension", "thickness of 0", "modulus of -1", "Poisson's ratio")
	_, err = Web{1, 0.01, 100, 0.3}.NeckIn() // 1 / (0.01 * 100): stretched to twice its length
	refused(t, err, "stretch of 1")
}

func TestAllowanceText(t *testing.T) {
	for _, c := range []struct {
		pct  *big.Rat
		want string
	}{
		{nil, ""}, {new(big.Rat), ""},
		{big.NewRat(4, 5), "cut 0.8 % wider than finished"},
		{big.NewRat(-1, 4), "cut 0.25 % narrower than finished"},
	} {
		if got := AllowanceText(c.pct); got != c.want {
			t.Errorf("%v: %q, want %q", c.pct, got, c.want)
		}
	}
}
