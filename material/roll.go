package material

import (
	"errors"
	"math"
)

// checkWound refuses diameters and thickness that no roll has. The core's diameter
// is its outside, where the web begins.
func checkWound(coreMM, thicknessMM float64) error {
	return errors.Join(
		inRange("core's outside diameter", coreMM, "mm", 0, 1e4),
		inRange("thickness", thicknessMM, "mm", 1e-4, 100))
}

// RollLength is the metres on a roll: the ring's area over the thickness,
// L = pi (D^2 - d^2) / (4 t). Diameters and thickness in mm; the core's diameter is
// its outside. Entrained air makes a roll thicker than its metres. Errors name
// numbers out of range, an outer diameter below the core's too.
func RollLength(outerMM, coreMM, thicknessMM float64) (float64, error) {
	err := errors.Join(checkWound(coreMM, thicknessMM), inRange("outer diameter", outerMM, "mm", coreMM, 1e5))
	if err != nil {
		return 0, err
	}
	return math.Pi * (outerMM - coreMM) * (outerMM + coreMM) / (4 * thicknessMM) / 1000, nil
}

// RollDiameter is the outer diameter in mm of a roll with that many metres, the
// inverse of RollLength.
func RollDiameter(metres, coreMM, thicknessMM float64) (float64, error) {
	err := errors.Join(checkWound(coreMM, thicknessMM), inRange("length", metres, "m", 0, 1e9))
	if err != nil {
		return 0, err
	}
	return math.Sqrt(coreMM*coreMM + 4*thicknessMM*metres*1000/math.Pi), nil
}

// RollWraps is the number of turns on a roll: the wound height over the thickness.
func RollWraps(outerMM, coreMM, thicknessMM float64) (float64, error) {
	err := errors.Join(checkWound(coreMM, thicknessMM), inRange("outer diameter", outerMM, "mm", coreMM, 1e5))
	if err != nil {
		return 0, err
	}
	return (outerMM - coreMM) / (2 * thicknessMM), nil
}

// RunTime is the seconds that a length takes from rest to rest: up to speed, along,
// and down. metres from 0, speed in m/min above 0, ramps up and down in m/s2, where
// 0 means at once. A run too short for full speed is a triangle: its peak v solves
// v^2/(2 up) + v^2/(2 down) = L.
func RunTime(metres, speed, up, down float64) (float64, error) {
	err := errors.Join(
		inRange("length", metres, "m", 0, 1e9), inRange("speed", speed, "m/min", 1e-3, 2e4),
		inRange("ramp up", up, "m/s2", 0, 1e3), inRange("ramp down", down, "m/s2", 0, 1e3))
	if err != nil {
		return 0, err
	}
	v := speed / 60
	slow := inverse(up) + inverse(down) // seconds of ramps for each m/s
	if v*v*slow/2 > metres {
		v = math.Sqrt(2 * metres / slow)
		return v * slow, nil
	}
	return metres/v + v*slow/2, nil
}

// inverse is 1/rate; a rate of 0 means at once, which takes no time.
func inverse(rate float64) float64 {
	if rate == 0 {
		return 0
	}
	return 1 / rate
}

// AnvilTurns is how often the anvil turns under a length: L / (pi D), metres and mm.
func AnvilTurns(metres, diameterMM float64) (float64, error) {
	err := errors.Join(inRange("length", metres, "m", 0, 1e9), inRange("diameter", diameterMM, "mm", 1, 1e4))
	if err != nil {
		return 0, err
	}
	return metres * 1000 / (math.Pi * diameterMM), nil
}
