package material

import (
	"fmt"
	"strconv"
	"strings"
)

// Figures as people read them: rounded, metric first, inch-pound in brackets.

const notKnown = "not known"

// trimmed shows a number rounded to some decimals, without zeros at their end.
func trimmed(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals == 0 { // the zeros are the number's own
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// lengths shows a length in mm, and in inches with a decimal more.
func lengths(mm float64, decimals int) string {
	return fmt.Sprintf("%s mm (%s in)", trimmed(mm, decimals), trimmed(Inches(mm), decimals+1))
}

// bars shows a pressure to a hundredth of a bar, and in psi.
func bars(bar float64) string {
	return fmt.Sprintf("%s bar (%.0f psi)", trimmed(bar, 2), Psi(bar))
}

// speeds shows a line speed.
func speeds(speed float64) string {
	return fmt.Sprintf("%s m/min (%.0f ft/min)", trimmed(speed, 1), Feet(speed))
}

// hardness shows a hardness in both scales where the table has it.
func hardness(hrc float64) string {
	text := fmt.Sprintf("%g HRC", hrc)
	if hv, err := Vickers(hrc); err == nil {
		text += fmt.Sprintf(" (%.0f HV)", hv)
	}
	return text
}

// inMinutes shows a time.
func inMinutes(seconds float64) string { return trimmed(seconds/60, 1) + " min" }

// text shows a range for people.
func (r Range) text(unit string) string {
	if r.Least == r.Most {
		return fmt.Sprintf("%g %s", r.Least, unit)
	}
	return fmt.Sprintf("%g to %g %s", r.Least, r.Most, unit)
}

// count shows how many pistons.
func count(n int) string {
	if n == 1 {
		return "1 piston"
	}
	return fmt.Sprintf("%d pistons", n)
}
