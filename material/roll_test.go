package material

import (
	"math"
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

// TestRollDiameters are the inverse, computed; the last near the 636 mm that a page
// prints for 3000 m of film of 0.1 mm (read).
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
}

// TestRunTimes: 1000 m at 120 m/min take 500 s, and 504 with ramps of 0.5 m/s2; the
// rest are trapezoids and triangles in metres and m/s (data read or computed).
func TestRunTimes(t *testing.T) {
	for _, c := range []struct{ metres, speed, up, down, want float64 }{
		{1000, 120, 0, 0, 500}, {1000, 120, 0.5, 0.5, 504},
		{1.0, 0.25 * 60, 0.5, 0.5, 4.5}, {0.54, 15, 0.5, 0.5, 2.66}, {0.82, 15, 0.5, 0.5, 3.78},
		{0.125, 15, 0.5, 0.5, 1.0},       // just reaches its speed
		{0.05, 15, 0.5, 0.5, 0.63245553}, // a triangle
		{1.0, 15, 0.5, 1.0, 4.375},       // down faster than up
		{100, 20 * 60, 2, 4, 12.2474487}, // a triangle whose peak is 16.33 m/s (data read)
		{0, 120, 0.5, 0.5, 0}, {0, 120, 0, 0, 0},
		{100, 60, 0.5, 0, 101}, // up only: half of the 2 s ramp is lost
	} {
		got, err := RunTime(c.metres, c.speed, c.up, c.down)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got-c.want) > 1e-8*max(c.want, 1) {
			t.Errorf("%v: %v s", c, got)
		}
	}
}

// TestRunTimeLaws: longer takes longer, faster and steeper never do, and the time
// passes smoothly from triangle to trapezoid.
func TestRunTimeLaws(t *testing.T) {
	last := -1.0
	for m := 0.0; m < 40; m += 0.25 { // full speed is reached at 2*2/0.5 = 8 m
		got, _ := RunTime(m, 120, 0.5, 0.5)
		faster, _ := RunTime(m, 150, 0.5, 0.5)
		steeper, _ := RunTime(m, 120, 0.6, 0.5)
		if got <= last || faster > got+1e-12 || steeper > got+1e-12 {
			t.Errorf("%v m: %v after %v; faster %v, steeper %v", m, got, last, faster, steeper)
		}
		last = got
	}
	below, _ := RunTime(8-1e-9, 120, 0.5, 0.5)
	above, _ := RunTime(8+1e-9, 120, 0.5, 0.5)
	near(t, "at the corner", below, 8, 1e-9)
	near(t, "at the corner", above, 8, 1e-9)
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
	_, err = RunTime(nan, 0, -1, inf)
	refused(t, err, "length", "speed of 0", "ramp up of -1", "ramp down")
	_, err = AnvilTurns(-1, 0)
	refused(t, err, "length", "diameter of 0 mm")
}
