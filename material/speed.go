package material

import (
	"errors"
	"fmt"
)

// Line speeds that holders are good for, m/min (common practice, no source):
// standard ones about 1000 ft/min, ones with larger pistons and matching bearings
// up to about 3000 ft/min.
const (
	StandardSpeed = 1000 * MetresPerFoot
	FastSpeed     = 3000 * MetresPerFoot
)

// SpeedAdvice is a job's speed against what material and holders are good for.
type SpeedAdvice struct {
	Speed, Max float64 // the job's; the material's and the standard holder's, whichever is less, m/min
	Holders    string  // the holders that the speed asks for
	Warnings   []string
}

// AdviseSpeed compares a job's speed with the material's, both m/min. Range: above
// 0 to 20 000 m/min; errors name numbers outside.
func AdviseSpeed(speed, materialMax float64) (SpeedAdvice, error) {
	err := errors.Join(
		inRange("speed", speed, "m/min", 1e-3, 20_000),
		inRange("the material's speed", materialMax, "m/min", 1e-3, 20_000))
	if err != nil {
		return SpeedAdvice{}, err
	}
	a := SpeedAdvice{Speed: speed, Max: min(materialMax, StandardSpeed), Holders: "standard holders"}
	if speed > StandardSpeed {
		a.Holders = "larger pistons with matching bearings"
		a.warn("%.0f m/min is above the %.0f that standard holders are good for.", speed, StandardSpeed)
	}
	if speed > FastSpeed {
		a.Holders = "beyond usual holders"
		a.warn("%.0f m/min is above the %.0f of any usual holder.", speed, FastSpeed)
	}
	if speed > materialMax {
		a.warn("%.0f m/min is above the material's %.0f.", speed, materialMax)
	}
	return a, nil
}

func (a *SpeedAdvice) warn(format string, args ...any) {
	a.Warnings = append(a.Warnings, fmt.Sprintf(format, args...))
}
