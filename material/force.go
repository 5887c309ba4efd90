package material

import (
	"errors"
	"math"
)

// The most that force and pressure are worked out for.
const (
	mostBar     = 1000.0
	mostBoreMM  = 1000.0
	mostPistons = 100
	mostForce   = 1e7 // N
)

// Force is what the pistons of one holder press with, in newtons: pressure times
// piston area times number, F = n p pi d^2 / 4. Pressure in bar above the air's,
// bore in mm. Friction and springs take some of it, which a trial includes. Range:
// 0 to 1000 bar, bore above 0 to 1000 mm, 1 to 100 pistons; errors name numbers
// outside. About 1 lbf for each psi on 1 in2.
func Force(bar, boreMM float64, pistons int) (float64, error) {
	err := errors.Join(inRange("pressure", bar, "bar", 0, mostBar), checkPistons(boreMM, pistons))
	if err != nil {
		return 0, err
	}
	return bar * MPaPerBar * area(boreMM, pistons), nil
}

// Pressure is the bar that one holder's pistons need for a force in newtons, the
// inverse of Force with the same range, forces up to 1e7 N.
func Pressure(newtons, boreMM float64, pistons int) (float64, error) {
	err := errors.Join(inRange("force", newtons, "N", 0, mostForce), checkPistons(boreMM, pistons))
	if err != nil {
		return 0, err
	}
	return newtons / area(boreMM, pistons) / MPaPerBar, nil
}

// area is the area of all pistons of one holder, mm2.
func area(boreMM float64, pistons int) float64 {
	return float64(pistons) * math.Pi / 4 * boreMM * boreMM
}

func checkPistons(boreMM float64, pistons int) error {
	return errors.Join(
		inRange("bore", boreMM, "mm", 0.1, mostBoreMM),
		inRange("number of pistons", float64(pistons), "", 1, mostPistons))
}
