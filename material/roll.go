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

// AnvilTurns is how often the anvil turns under a length: L / (pi D), metres and mm.
func AnvilTurns(metres, diameterMM float64) (float64, error) {
	err := errors.Join(inRange("length", metres, "m", 0, 1e9), inRange("diameter", diameterMM, "mm", 1, 1e4))
	if err != nil {
		return 0, err
	}
	return metres * 1000 / (math.Pi * diameterMM), nil
}
