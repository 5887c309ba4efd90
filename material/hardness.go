package material

// softest is the lowest Rockwell C hardness of the table.
const softest = 44

// vickers lists the Vickers hardness from 44 to 68 HRC in whole steps (ASTM E140,
// table for non-austenitic steels, from a reprint).
var vickers = [...]float64{
	434, 446, 458, 471, 484, 498, 513, 528, 544, 560, 577, 595, 613,
	633, 653, 674, 697, 720, 746, 772, 800, 832, 865, 900, 940,
}

// Vickers converts Rockwell C hardness to Vickers (HV, kgf/mm2) for hardened steel,
// straight between whole HRC. Range 44 to 68 HRC; the error names a number outside.
// Conversions between scales are approximate; the standard says so itself.
func Vickers(hrc float64) (float64, error) {
	if err := inRange("hardness", hrc, "HRC", softest, softest+float64(len(vickers)-1)); err != nil {
		return 0, err
	}
	i := min(int(hrc)-softest, len(vickers)-2)
	part := hrc - softest - float64(i)
	return vickers[i] + part*(vickers[i+1]-vickers[i]), nil
}
