package plan

// Length is an exact length or place on the beam in whole nanometres. 1/64 in is
// 396 875 nm, so every fraction a shop writes is exact and "the same place" never
// depends on rounding.
type Length int64

// The lengths that others are written in.
const (
	Nanometre  Length = 1
	Millimetre Length = 1_000_000
	Inch       Length = 25_400_000 // exact: international inch, 1959 (NIST SP 811, B.8)
)

// Unit is the unit a shop writes its lengths in.
type Unit uint8

// The two units of a shop.
const (
	Millimetres Unit = iota
	Inches
)

// Abs is how far l is from 0.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}
