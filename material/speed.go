package material

import (
	"errors"
	"fmt"
)

// SpeedAdvice is a job's speed against what material and holders are good for.
type SpeedAdvice struct {
	Speed, Max float64 // the job's; the material's and the standard holder's, whichever is less, m/min
	Holders    string  // the holders that the speed asks for
	OfHolders  float64 // what standard holders are good for, m/min
	Warnings   []string
}

// AdviseSpeed compares a job's speed with the material's, both m/min. Range: above
// 0 to 20 000 m/min; errors name numbers outside.
func AdviseSpeed(speed, materialMax float64, l Limits) (SpeedAdvice, error) {
	l = l.OrUsual()
	err := errors.Join(
		inRange("speed", speed, "m/min", 1e-3, 20_000),
		inRange("the material's speed", materialMax, "m/min", 1e-3, 20_000))
	if err != nil {
		return SpeedAdvice{}, err
	}
	a := SpeedAdvice{Speed: speed, Max: min(materialMax, l.HolderSpeed), Holders: "standard holders", OfHolders: l.HolderSpeed}
	switch {
	case faster(speed, l.FastHolderSpeed):
		a.Holders = "beyond usual holders"
		a.warn("%s is above the %s of any usual holder%s.", speeds(speed), speeds(l.FastHolderSpeed), limitFrom(l.FastHolderSpeed, usual.FastHolderSpeed))
	case faster(speed, l.HolderSpeed):
		a.Holders = "larger pistons with matching bearings"
		a.warn("%s is above the %s that standard holders are good for%s.", speeds(speed), speeds(l.HolderSpeed), limitFrom(l.HolderSpeed, usual.HolderSpeed))
	}
	if faster(speed, materialMax) {
		a.warn("%s is above the material's limit of %s.", speeds(speed), speeds(materialMax))
	}
	return a, nil
}

// do says how fast to run at most: the least of job, material and standard holders.
func (a SpeedAdvice) do() string {
	switch {
	case !faster(a.Speed, a.Max):
		return "run no faster"
	case a.Max < a.OfHolders:
		return "run no faster than the material's limit of " + speeds(a.Max)
	}
	return "run no faster than the " + speeds(a.Max) + " of standard holders"
}

// faster reports whether a speed is above another by more than people's rounding between
// ft/min and m/min, a tenth of either.
func faster(speed, most float64) bool { return speed > most+0.05 }

func (a *SpeedAdvice) warn(format string, args ...any) {
	a.Warnings = append(a.Warnings, fmt.Sprintf(format, args...))
}
