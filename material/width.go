package material

import (
	"errors"
	"fmt"
	"math"
	"math/big"
)

// Web is a web under tension.
type Web struct {
	TensionNMM  float64 // N for each mm of width
	ThicknessMM float64
	ModulusMPa  float64 // along the web
	Poisson     float64 // narrowing for stretch; paper and film below 0.5, nonwovens up to 3 and more
}

// NeckIn is what tension does to a web.
type NeckIn struct {
	StressMPa float64
	Stretch   float64 // along the web, as a part of its length
	Narrowing float64 // across, as a part of the relaxed width
}

// NeckIn works out the elastic neck-in of a web: stress s = T/t, stretch e = s/E (a trade
// column on Poisson's ratio, read), narrowing nu e of the unstretched width, as Poisson's
// ratio is defined (encyclopedia, read; free edges). Range: stretch up to 0.1, beyond which
// a web doesn't stay elastic, narrowing up to a half; tension and Poisson's ratio from 0;
// errors name numbers outside. What a soft film or a
// nonwoven doesn't give back is not in it: measure relaxed.
func (w Web) NeckIn() (NeckIn, error) {
	err := errors.Join(
		inRange("tension", w.TensionNMM, "N/mm", 0, 1e4), inRange("thickness", w.ThicknessMM, "mm", 1e-4, 100),
		inRange("modulus", w.ModulusMPa, "MPa", 1e-3, 1e6), inRange("Poisson's ratio", w.Poisson, "", 0, 20))
	if err != nil {
		return NeckIn{}, err
	}
	n := NeckIn{StressMPa: w.TensionNMM / w.ThicknessMM}
	n.Stretch = n.StressMPa / w.ModulusMPa
	n.Narrowing = w.Poisson * n.Stretch
	return n, errors.Join(inRange("stretch", n.Stretch, "", 0, 0.1), inRange("narrowing", n.Narrowing, "", 0, 0.5))
}

// allowanceStep is the step that allowances are suggested in: a thousandth of a
// percent, a hundredth of a millimetre on a metre.
const allowanceStep = 1000

// Allowance is the width allowance in percent that neck-in alone needs: knives stand
// closer together than the finished width, cut = finished * (1 - narrowing), so that the
// strip has its width when it is relaxed. It is exact in thousandths of a percent,
// ready for a material's AllowancePct; cuts are then widened and rounded once where
// the job is read, and their sums kept exact. Never above 0.
func (n NeckIn) Allowance() *big.Rat {
	return big.NewRat(int64(math.Round(-100*n.Narrowing*allowanceStep)), allowanceStep)
}

// AllowanceText says what a width allowance does to the cuts; empty for none.
func AllowanceText(pct *big.Rat) string {
	if pct == nil || pct.Sign() == 0 {
		return ""
	}
	way := "wider"
	if pct.Sign() < 0 {
		way = "narrower"
	}
	size, _ := new(big.Rat).Abs(pct).Float64()
	return fmt.Sprintf("cut %.4g %% %s than finished", size, way)
}
