package material

import "fmt"

// StandardReachMM is the thickest material that a standard holder's stroke and
// blade can part, about half an inch (common practice, no source).
const StandardReachMM = 0.5 * MMPerInch

// CheckThickness compares a thickness in mm with the reach of standard holders and
// says what is wrong; empty where nothing is wrong. 0 is unknown. Range 0 to 1000 mm.
func CheckThickness(mm float64) (string, error) {
	if err := inRange("thickness", mm, "mm", 0, 1000); err != nil {
		return "", err
	}
	switch {
	case mm == 0:
		return "The thickness is unknown: check it against stroke and blade.", nil
	case mm > StandardReachMM:
		return fmt.Sprintf("%g mm is beyond the %g mm that standard holders and blades can cut.", mm, StandardReachMM), nil
	}
	return "", nil
}
