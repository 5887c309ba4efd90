package material

import (
	"testing"
)

// TestRollLengths are worked examples: the first printed (1499.39 in), the second's
// problem read, the others computed.
func TestRollLengths(t *testing.T) {
	for _, c := range []struct{ outer, core, thickness, want float64 }{ // mm, m
		{5 * MMPerInch, 2 * MMPerInch, 0.011 * MMPerInch, 1499.3965 * MMPerInch / 1000},
		{12 * MMPerInch, 3 * MMPerInch, 0.25 * MMPerInch, 424.115 * MMPerInch / 1000},
		{300, 89, 0.13, 495.8823},
		{300, 76.2, 0.13, 508.6574}, // the trap: the core's inside for its outside
		{24 * MMPerInch, 3.5 * MMPerInch, 0.004 * MMPerInch, Metres(9224.3378)},
	} {
		got, err := RollLength(c.outer, c.core, c.thickness)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "length", got, c.want, 5e-7)
		back, err := RollDiameter(got, c.core, c.thickness)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "diameter", back, c.outer, 1e-13)
	}
	wraps, _ := RollWraps(300, 89, 0.13)
	near(t, "wraps", wraps, 811.538, 1e-6)
}

// TestRollDiameters are the inverse, computed; a page prints 636 mm for 3000 m of film of
// 0.1 mm on a 150 mm core (read), held to the digits it prints.
func TestRollDiameters(t *testing.T) {
	for _, c := range []struct{ metres, core, thickness, want float64 }{
		{50, 89, 0.13, 127.26766}, {66, 82, 0.05, 104.52603}, {3000, 152.4, 0.1, 636.5514}, {3000, 150, 0.1, 635.981},
	} {
		got, err := RollDiameter(c.metres, c.core, c.thickness)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "diameter", got, c.want, 1e-6)
	}
	printed, _ := RollDiameter(3000, 150, 0.1)
	near(t, "printed diameter", printed, 636, 0.5/636)
}

// TestAnvilTurns: 100 mm, 120 m/min: 381.97186 turns a minute, 3183.0989 in 1000 m;
// 6 in at 300 turns run 471.2389 ft (computed).
func TestAnvilTurns(t *testing.T) {
	a, _ := AnvilTurns(120, 100)
	b, _ := AnvilTurns(1000, 100)
	c, _ := AnvilTurns(Metres(471.2389), 6*MMPerInch)
	near(t, "turns", a, 381.97186, 1e-7)
	near(t, "turns", b, 3183.0989, 1e-7)
	near(t, "turns", c, 300, 1e-7)
}

func TestRollRefuses(t *testing.T) {
	_, err := RollLength(50, 89, 0)
	refused(t, err, "outer diameter of 50 mm", "thickness of 0 mm")
	_, err = RollLength(nan, nan, inf)
	refused(t, err, "outer diameter", "core's outside diameter", "thickness")
	_, err = RollDiameter(-1, 89, nan)
	refused(t, err, "length of -1 m", "thickness")
	_, err = RollWraps(inf, -1, 0.1)
	refused(t, err, "outer diameter", "core's")
	_, err = AnvilTurns(-1, 0)
	refused(t, err, "length", "diameter of 0 mm")
}
