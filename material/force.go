package material

import (
	"errors"
	"math"
)

// The most that force and pressure are worked out for.
const (
	mostBar     = 1000.0
	mostAreaMM2 = 1e6
	mostPistons = 100
	mostForce   = 1e7 // N
)

// Force is what the pistons of one holder press with, in newtons: pressure times
// piston area times number, F = n p A. Pressure in bar above the air's, the area of one
// piston in mm2. Friction and springs take some of it, which a trial includes. Range: 0 to
// 1000 bar, area 0.001 to 1e6 mm2, 1 to 100 pistons; errors name numbers outside. About
// 1 lbf for each psi on 1 in2.
func Force(bar, areaMM2 float64, pistons int) (float64, error) {
	err := errors.Join(inRange("pressure", bar, "bar", 0, mostBar), checkPistons(areaMM2, pistons))
	if err != nil {
		return 0, err
	}
	return bar * MPaPerBar * areaMM2 * float64(pistons), nil
}

// Pressure is the bar that one holder's pistons need for a force in newtons, the
// inverse of Force with the same range, forces up to 1e7 N.
func Pressure(newtons, areaMM2 float64, pistons int) (float64, error) {
	err := errors.Join(inRange("force", newtons, "N", 0, mostForce), checkPistons(areaMM2, pistons))
	if err != nil {
		return 0, err
	}
	return newtons / (areaMM2 * float64(pistons)) / MPaPerBar, nil
}

// RoundArea is the area of a round piston, pi d^2 / 4, mm2.
func RoundArea(boreMM float64) float64 { return math.Pi / 4 * boreMM * boreMM }

func checkPistons(areaMM2 float64, pistons int) error {
	return errors.Join(
		inRange("piston area", areaMM2, "mm2", 1e-3, mostAreaMM2),
		inRange("number of pistons", float64(pistons), "", 1, mostPistons))
}
