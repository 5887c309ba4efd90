package material

import (
	"math"
	"strings"
	"testing"
)

// TestRanges holds every range that a formula is promised for: both its ends are accepted,
// and the numbers next to them outside are refused.
func TestRanges(t *testing.T) {
	steel := Curvature{1.0 / 1024, 1}
	cylinder := func(change func(*Cylinder)) error {
		c := round(28, 1, 6, 0)
		change(&c)
		_, err := ChooseAir(0, c)
		return err
	}
	bend := func(change func(*Anvil, *Press)) error {
		a, p := Anvil{SpanMM: 1000, DiameterMM: 100, ModulusMPa: SteelModulus}, Press{AtMM: 500, Newtons: 1}
		change(&a, &p)
		_, err := a.Bend([]Press{p})
		return err
	}
	blade := func(hrc float64, change func(*Material)) error {
		m := of(t, "paper tape", 0.1, Acrylic)
		change(&m)
		_, err := AdviseBlade(m, hrc)
		return err
	}
	unfound := func(change func(*Cylinder)) error { // too thick for a guess: no pressure is chosen
		on := shop
		change(&on.Cylinder)
		_, err := SettingsFor(of(t, "felt", 14, NoAdhesive), on, Run{Speed: 30})
		return err
	}
	for _, c := range []struct {
		what        string
		least, most float64
		of          func(v float64) error
	}{
		{"span", 1, 100_000, func(v float64) error { return bend(func(a *Anvil, p *Press) { a.SpanMM, p.AtMM = v, 0 }) }},
		{"diameter", 1, 10_000, func(v float64) error { return bend(func(a *Anvil, _ *Press) { a.DiameterMM = v }) }},
		{"bore", 0, 99.9, func(v float64) error { return bend(func(a *Anvil, _ *Press) { a.BoreMM = v }) }},
		{"modulus", 1, 1e7, func(v float64) error { return bend(func(a *Anvil, _ *Press) { a.ModulusMPa = v }) }},
		{"operator-side bearing", -1e5, 1e5, func(v float64) error { return bend(func(a *Anvil, p *Press) { a.FromMM, p.AtMM = v, v }) }},
		{"place of blade 1", 20, 1020, func(v float64) error { return bend(func(a *Anvil, p *Press) { a.FromMM, p.AtMM = 20, v }) }},
		{"force of blade 1", 0, 1e7, func(v float64) error { return bend(func(_ *Anvil, p *Press) { p.Newtons = v }) }},

		{"pressure", 0, 1000, func(v float64) error { _, err := Force(v, 600, 1); return err }},
		{"piston area", 0.001, 1e6, func(v float64) error { _, err := Force(1, v, 1); return err }},
		{"force", 0, 1e7, func(v float64) error { _, err := Pressure(v, 600, 1); return err }},
		{"cut-through force", 0, 1e7, func(v float64) error { _, err := ChooseAir(v, round(28, 1, 6, 0)); return err }},
		{"supply", 0, 1000, func(v float64) error { return cylinder(func(c *Cylinder) { c.SupplyBar = v }) }},
		{"margin", 0, 1000, func(v float64) error { return cylinder(func(c *Cylinder) { c.MarginBar = v }) }},
		{"supply", 0, 1000, func(v float64) error { return unfound(func(c *Cylinder) { c.SupplyBar = v }) }},
		{"margin", 0, 1000, func(v float64) error { return unfound(func(c *Cylinder) { c.MarginBar = v }) }},
		{"piston area", 0.001, 1e6, func(v float64) error { return unfound(func(c *Cylinder) { c.AreaMM2 = v }) }},
		{"margin", 0, 1000, func(v float64) error { _, err := Limits{}.CheckMargin(v); return err }},
		{"supply", 0, 1000, func(v float64) error { _, err := CheckSupply(v); return err }},

		{"anvil hardness", 20, 70, func(v float64) error { return blade(v, func(*Material) {}) }},
		{"bevel", 5, 150, func(v float64) error { return blade(64, func(m *Material) { m.Bevel = v }) }},
		{"tip radius", 0.001, 5, func(v float64) error { return blade(64, func(m *Material) { m.Tip = v }) }},
		{"blade hardness", 20, 70, func(v float64) error { _, err := CheckHardness(v, 64); return err }},
		{"anvil hardness", 20, 70, func(v float64) error { _, err := CheckHardness(60, v); return err }},
		{"thickness", 0, 1000, func(v float64) error { _, err := Advise(of(t, "felt", v, NoAdhesive), Limits{}); return err }},
		{"thickness", 0, 1000, func(v float64) error { _, err := Limits{}.CheckThickness(v); return err }},
		{"speed", 0.001, 20_000, func(v float64) error { _, err := AdviseSpeed(v, 100, Limits{}); return err }},
		{"the material's speed", 0.001, 20_000, func(v float64) error { _, err := AdviseSpeed(100, v, Limits{}); return err }},

		{"core's outside diameter", 0, 10_000, func(v float64) error { _, err := RollLength(1e5, v, 0.1); return err }},
		{"thickness", 0.0001, 100, func(v float64) error { _, err := RollLength(300, 89, v); return err }},
		{"outer diameter", 89, 100_000, func(v float64) error { _, err := RollLength(v, 89, 0.1); return err }},
		{"outer diameter", 89, 100_000, func(v float64) error { _, err := RollWraps(v, 89, 0.1); return err }},
		{"length", 0, 1e9, func(v float64) error { _, err := RollDiameter(v, 89, 0.1); return err }},
		{"length", 0, 1e9, func(v float64) error { _, err := AnvilTurns(v, 100); return err }},
		{"diameter", 1, 10_000, func(v float64) error { _, err := AnvilTurns(100, v); return err }},

		{"tension", 0, 10_000, func(v float64) error { _, err := Web{v, 0.1, 1000, 0.3}.NeckIn(); return err }},
		{"thickness", 0.0001, 100, func(v float64) error { _, err := Web{0.1, v, 1000, 0.3}.NeckIn(); return err }},
		{"modulus", 0.001, 1e6, func(v float64) error { _, err := Web{0.1, 0.1, v, 0.3}.NeckIn(); return err }},
		{"Poisson's ratio", 0, 20, func(v float64) error { _, err := Web{0.1, 0.1, 1000, v}.NeckIn(); return err }},
		{"stretch", 0, 0.1, func(v float64) error { _, err := Web{v, 1, 1, 0.3}.NeckIn(); return err }}, // T / (t E)

		{"modulus", 0.001, 1e7, func(v float64) error { _, err := ContactModulus(Elastic{v, 0.3}, Steel); return err }},
		{"modulus", 0.001, 1e7, func(v float64) error { _, err := ContactModulus(Steel, Elastic{v, 0.3}); return err }},
		{"Poisson's ratio", -0.99, 0.5, func(v float64) error { _, err := ContactModulus(Elastic{1, v}, Steel); return err }},
		{"Poisson's ratio", -0.99, 0.5, func(v float64) error { _, err := ContactModulus(Steel, Elastic{1, v}); return err }},
		{"radius", 1e-9, math.MaxFloat64, func(v float64) error { _, err := Between(v, 1, 1, 1, 0); return err }}, // or infinite, which is flat
		{"angle", -360, 360, func(v float64) error { _, err := Between(1, 2, 3, 4, v); return err }},
		{"force", 1e-9, 1e7, func(v float64) error { _, err := steel.Contact(v, 1e5); return err }},
		{"contact modulus", 0.001, 1e7, func(v float64) error { _, err := steel.Contact(1, v); return err }},
		{"curvature A", 1e-18, 1e9, func(v float64) error { _, err := Curvature{v, 1e9}.Contact(1, 1e5); return err }},
		{"curvature B", 1, 1e9, func(v float64) error { _, err := Curvature{1, v}.Contact(1, 1e5); return err }},
		{"ratio of curvatures", 1, 1e12, func(v float64) error { _, err := Curvature{1.0 / 1024, v / 1024}.Contact(1, 1e5); return err }},
		{"blade diameter", 1, 10_000, func(v float64) error { _, err := Tip{v, 0.1, 100}.Contact(1); return err }},
		{"tip radius", 0.001, 5, func(v float64) error { _, err := Tip{90, v, 100}.Contact(1); return err }},
		{"anvil diameter", 1, 10_000, func(v float64) error { _, err := Tip{90, 0.1, v}.Contact(1); return err }},

		{"length of cut 1", 0, 1e12, func(v float64) error { _, err := Wear(0, 10, 1, []Cut{{1, v}}); return err }},
	} {
		for _, v := range []float64{c.least, c.most} { // where another number may be out of its own
			if err := c.of(v); err != nil && strings.Contains(err.Error(), c.what+" of ") {
				t.Errorf("%s of %v: %v", c.what, v, err)
			}
		}
		for _, v := range []float64{math.Nextafter(c.least, math.Inf(-1)), math.Nextafter(c.most, inf)} {
			if c.of(v) == nil && !(math.IsInf(v, 1) && c.what == "radius") {
				t.Errorf("%s of %v is accepted", c.what, v)
			}
		}
	}
	for n, well := range map[int]bool{0: false, 1: true, 100: true, 101: false} {
		if _, err := Force(1, 600, n); (err == nil) != well {
			t.Errorf("%d pistons: %v", n, err)
		}
	}
	for n, well := range map[int64]bool{1 << 20: true, 1<<20 + 1: false} {
		if _, err := Wear(0, n, 1, nil); (err == nil) != well {
			t.Errorf("%d bands: %v", n, err)
		}
	}
	const far int64 = 4e15 // nm, as far as places go
	for _, c := range []struct {
		from, to int64
		well     bool
	}{{-far, far, true}, {-far - 1, far, false}, {-far, far + 1, false}} {
		if _, err := Wear(c.from, c.to, far, nil); (err == nil) != c.well {
			t.Errorf("a face from %d to %d: %v", c.from, c.to, err)
		}
	}
}
