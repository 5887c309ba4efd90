package material

import (
	"math"
	"strings"
	"testing"
)

// FuzzSettings: whatever the numbers, there are settings or an error that says which
// is at fault, never a panic, and no setting that isn't a number.
func FuzzSettings(f *testing.F) {
	f.Add(uint8(0), uint8(1), 0.15, 2.1, 45.0, 0.15, 250.0, 600.0, 1, 6.3, 0.8, 150.0, 64.0, 150.0)
	f.Add(uint8(16), uint8(0), 20.0, 90.0, 60.0, 0.3, 40.0, 80.0, 3, 6.3, 2.0, 0.0, 0.0, 1000.0)
	f.Add(uint8(3), uint8(2), math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, 0.0, -1, 1e300, 1e-300, 5e-324, -64.0, 0.0)
	f.Fuzz(func(t *testing.T, group, adhesive uint8, mm, bar, bevel, tip, most, area float64, pistons int, supply, margin, anvil, hrc, speed float64) {
		m := groups[int(group)%len(groups)].Start("m")
		m.Adhesive = Adhesives()[int(adhesive)%len(Adhesives())]
		m.ThicknessMM, m.CutThroughBar, m.Bevel, m.Tip, m.SpeedMax = mm, bar, bevel, tip, most
		s, err := SettingsFor(m, Machine{Cylinder: Cylinder{AreaMM2: area, Pistons: pistons, SupplyBar: supply, MarginBar: margin}, AnvilMM: anvil, AnvilHRC: hrc}, Run{Speed: speed})
		if err != nil {
			if !strings.Contains(err.Error(), "is outside") {
				t.Errorf("the error names no number: %v", err)
			}
			return
		}
		for _, v := range []float64{s.Air.SetBar, s.Air.SetN, s.WearIndex, s.Blade.HRC} {
			if !(v >= 0) || math.IsInf(v, 0) {
				t.Errorf("%v in %+v", v, s)
			}
		}
		if s.Refused == "" && s.Air.SetBar > supply {
			t.Errorf("set to %v bar, the supply gives %v", s.Air.SetBar, supply)
		}
		for _, l := range s.Lines {
			if strings.Contains(l.Value+l.Why, "NaN") || strings.Contains(l.Value+l.Why, "Inf") {
				t.Errorf("%+v", l)
			}
		}
	})
}

// FuzzBend: but for rounding, measured by what all the force would bend at the middle,
// the deflection is nowhere above the one found and nowhere below zero.
func FuzzBend(f *testing.F) {
	f.Add(1600.0, 150.0, 110.0, 300.0, 400.0, 900.0, 600.0, 1300.0, 500.0)
	f.Add(1.0, 1.0, 0.0, 0.0, 1e7, 1.0, 1e-300, 0.5, 0.0)
	f.Add(642.0, 1.0, 0.0, 0.0, 1e7, 5.0, 4e-300, 0.5, 0.0) // beside a load on a bearing, next to nothing
	f.Add(642.0, 1.0, 0.0, 1e-300, 1e-300, 5.0, 1e-310, 0.5, 0.0)
	f.Fuzz(func(t *testing.T, span, diameter, bore, x1, f1, x2, f2, x3, f3 float64) {
		b, err := Anvil{SpanMM: span, DiameterMM: diameter, BoreMM: bore}.Bend([]Press{{x1, f1}, {x2, f2}, {x3, f3}})
		if err != nil {
			if !strings.Contains(err.Error(), "is outside") {
				t.Errorf("the error names no number: %v", err)
			}
			return
		}
		rounding := 1e-13 * (f1 + f2 + f3) * span * span * span / (48 * b.stiffness)
		for _, y := range b.Line(50) {
			if !(y >= -rounding) || y > b.MostMM*(1+1e-9)+rounding+1e-300 {
				t.Errorf("%v is above %v at %v", y, b.MostMM, b.MostAt)
			}
		}
		if !(b.MostAt >= 0 && b.MostAt <= span) {
			t.Errorf("most at %v of %v", b.MostAt, span)
		}
	})
}

// FuzzContact: any tip in range has a contact whose pressure adds up to the force.
func FuzzContact(f *testing.F) {
	f.Add(90.0, 0.1, 100.0, 200.0)
	f.Add(1.0, 5.0, 1.0, 1e-9)
	f.Add(1e4, 0.001, 1e4, 1e7)
	f.Fuzz(func(t *testing.T, blade, tip, anvil, force float64) {
		c, err := Tip{blade, tip, anvil}.Contact(force)
		if err != nil {
			if !strings.Contains(err.Error(), "is outside") {
				t.Errorf("the error names no number: %v", err)
			}
			return
		}
		if sum := c.PeakMPa * 2 * math.Pi / 3 * c.MajorMM * c.MinorMM; !(math.Abs(sum-force) <= 1e-9*force) || !(c.MinorMM <= c.MajorMM) || !(c.ApproachMM > 0) {
			t.Errorf("%+v presses %v, not %v", c, sum, force)
		}
	})
}
