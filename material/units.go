package material

// The definitions that people's units rest on, exact: international inch and pound
// of 1959 and standard gravity, as in NIST SP 811, appendix B.8. The constants are
// untyped, so products of them are exact until they meet a number.
const (
	MMPerInch        = 25.4
	MetresPerFoot    = 0.3048
	NewtonsPerPound  = 0.45359237 * 9.80665 // pound-force
	NewtonsPerKg     = 9.80665              // kilogram-force; HV counts in it
	PascalsPerBar    = 1e5
	PascalsPerPsi    = NewtonsPerPound / (0.0254 * 0.0254)
	BarPerPsi        = PascalsPerPsi / PascalsPerBar
	MPaPerBar        = 0.1
	NPerMMPerLbfInch = NewtonsPerPound / MMPerInch // line load, N/mm in one lbf/in
)

// Psi is a pressure in bar as pound-force on the square inch.
func Psi(bar float64) float64 { return bar / BarPerPsi }

// Bar is a pressure in pound-force on the square inch as bar.
func Bar(psi float64) float64 { return psi * BarPerPsi }

// Pounds is a force in newtons as pound-force.
func Pounds(newtons float64) float64 { return newtons / NewtonsPerPound }

// Feet is a length in metres, or a speed in m/min, as feet, or ft/min.
func Feet(metres float64) float64 { return metres / MetresPerFoot }

// Metres is a length in feet, or a speed in ft/min, as metres, or m/min.
func Metres(feet float64) float64 { return feet * MetresPerFoot }

// Inches is a length in millimetres as inches.
func Inches(mm float64) float64 { return mm / MMPerInch }
