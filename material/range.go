package material

import "fmt"

// inRange refuses a number that is not finite or lies outside what the formula or
// the machine can mean. The error names the number, its unit and the range.
func inRange(what string, v float64, unit string, least, most float64) error {
	if v >= least && v <= most { // false for NaN
		return nil
	}
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Errorf("%s of %g%s is outside %g to %g%s", what, v, unit, least, most, unit)
}
