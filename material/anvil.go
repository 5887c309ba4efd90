package material

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
)

// Steel's elastic constants (handbook values, from memory, unchecked).
const (
	SteelModulus = 207_000.0 // MPa
	SteelPoisson = 0.3
)

// Anvil is the hardened roll between its bearings: a round beam, hollow or not,
// simply supported at both.
type Anvil struct {
	FromMM     float64 // place of the operator-side bearing, on the scale of the loads
	SpanMM     float64 // between the bearings
	DiameterMM float64
	BoreMM     float64 // 0 is a solid roll
	ModulusMPa float64 // 0 is steel
	LimitMM    float64 // of the bend, the shop's own; 0 none
}

// Press is one blade's force on the anvil.
type Press struct{ AtMM, Newtons float64 }

// Presses are blades that press alike at places in whole nanometres.
func Presses[L ~int64](newtons float64, places []L) []Press {
	out := make([]Press, len(places))
	for i, at := range places {
		out[i] = Press{float64(at) / 1e6, newtons}
	}
	return out
}

// Bending is an anvil under load. Deflections are millimetres away from the blades,
// places on the scale of the loads.
type Bending struct {
	Anvil                 Anvil
	Presses               []Press // by place
	OperatorN, DriveN     float64 // load at the bearings
	MostMM, MostAt        float64 // the largest deflection and where it is
	MomentNmm, MomentAt   float64 // the largest bending moment and where it is
	StressMPa             float64 // at the surface under that moment
	stiffness, startSlope float64 // E I, N mm2; E I times the slope at the operator-side bearing
}

// Bend works out an anvil under the blades of a layout: point loads superposed on a
// simply supported beam, no self-weight, shear left out (Euler-Bernoulli; Roark,
// Shigley and Boresi have the same formulas). Sound for a span above some ten
// diameters; below that the real roll bends more: see Doubt.
//
// All loads press one way, so the moment is nowhere negative and the slope falls
// all along the roll: the largest deflection is where it passes zero, found by
// bisection over the loads and a quadratic between two, which needs no grid and no
// iteration to a tolerance. O(n log n) for the order, O(n) for each look. Exact but for rounding, some 1e-15 of what all the force
// together would bend at the middle.
//
// Range: span 1 to 100 000 mm, diameter 1 to 10 000 mm, bore from 0 to below it,
// loads 0 to 1e7 N between the bearings; all numbers outside are named.
func (a Anvil) Bend(presses []Press) (*Bending, error) {
	if a.ModulusMPa == 0 {
		a.ModulusMPa = SteelModulus
	}
	if err := a.check(presses); err != nil {
		return nil, err
	}
	b := &Bending{Anvil: a, Presses: slices.Clone(presses), MostAt: a.FromMM + a.SpanMM/2, MomentAt: a.FromMM + a.SpanMM/2}
	slices.SortStableFunc(b.Presses, func(p, q Press) int { return cmp.Compare(p.AtMM, q.AtMM) })
	b.stiffness = a.ModulusMPa * a.Inertia()
	b.support()
	if b.OperatorN+b.DriveN > 0 {
		b.findMoment()
		b.findMost()
	}
	return b, nil
}

// Inertia is the second moment of the roll's cross-section, pi (D^4 - d^4) / 64, mm4.
func (a Anvil) Inertia() float64 {
	return math.Pi / 64 * (math.Pow(a.DiameterMM, 4) - math.Pow(a.BoreMM, 4))
}

func (a Anvil) check(presses []Press) error {
	errs := []error{
		inRange("operator-side bearing", a.FromMM, "mm", -1e5, 1e5),
		inRange("span", a.SpanMM, "mm", 1, 1e5),
		inRange("diameter", a.DiameterMM, "mm", 1, 1e4),
		inRange("modulus", a.ModulusMPa, "MPa", 1, 1e7),
		inRange("bore", a.BoreMM, "mm", 0, 0.999*a.DiameterMM),
	}
	for i, p := range presses {
		errs = append(errs,
			inRange(fmt.Sprintf("position of blade %d", i+1), p.AtMM, "mm", a.FromMM, a.FromMM+a.SpanMM),
			inRange(fmt.Sprintf("force of blade %d", i+1), p.Newtons, "N", 0, mostForce))
	}
	return errors.Join(errs...)
}

// support works out the bearings' loads and the slope at the operator's side, which
// makes the deflection zero at the other.
func (b *Bending) support() {
	span := b.Anvil.SpanMM
	for _, p := range b.Presses {
		x := p.AtMM - b.Anvil.FromMM
		rest := span - x
		b.OperatorN += p.Newtons * rest / span
		b.DriveN += p.Newtons * x / span
		b.startSlope += p.Newtons * x * rest * (span + rest) / (6 * span)
	}
}

// At is the deflection in mm at a place between the bearings; 0 outside. By the
// formula for one load, F b x (L^2 - b^2 - x^2) / (6 L E I), x from the bearing on
// its far side and b the load's distance from the other, added up.
func (b *Bending) At(place float64) float64 {
	at, span := place-b.Anvil.FromMM, b.Anvil.SpanMM
	if !(at >= 0 && at <= span) {
		return 0
	}
	sum := 0.0
	for _, p := range b.Presses {
		x, rest := at, span-(p.AtMM-b.Anvil.FromMM)
		if place > p.AtMM {
			x, rest = span-at, p.AtMM-b.Anvil.FromMM
		}
		sum += p.Newtons * rest * x * (span*span - rest*rest - x*x) / (6 * span)
	}
	return sum / b.stiffness
}

// soundSpan is the span in diameters from which shear is small beside bending (common
// practice for beams, no source).
const soundSpan = 10.0

// Doubt says why the real roll bends more than calculated; empty where it hardly does. Shear,
// which isn't counted, adds 2 % to a solid roll and 5 % to a hollow one at ten diameters, a
// quarter and 60 % at three (load at the middle, Timoshenko's beam with Cowper's
// coefficients; from memory, unchecked).
func (b *Bending) Doubt() string {
	if b.Anvil.SpanMM >= soundSpan*b.Anvil.DiameterMM {
		return ""
	}
	return fmt.Sprintf("the real deflection is larger: shear isn't counted, and the span is only %s diameters", trimmed(b.Anvil.SpanMM/b.Anvil.DiameterMM, 1))
}

// BendMatters says when a bend matters, and what is left out of it.
const BendMatters = "Blades on air follow the roll as it bends, but its end bearings, which tilt, and the web, whose tension turns uneven, don't (common practice, no source); its own weight, shear and web tension are left out."

// Past says that the bend is above the shop's limit; empty where it isn't, or none is set.
func (b *Bending) Past() string {
	if limit := b.Anvil.LimitMM; limit > 0 && b.MostMM > limit {
		return fmt.Sprintf("a bend of %s is above the shop's max_bend of %s", lengths(b.MostMM, 3), lengths(limit, 3))
	}
	return ""
}

// Line is the deflection at n places evenly spread from bearing to bearing, for a
// picture; n from 2.
func (b *Bending) Line(n int) []float64 {
	out := make([]float64, max(n, 2))
	for i := range out {
		out[i] = b.At(b.Anvil.FromMM + b.Anvil.SpanMM*float64(i)/float64(len(out)-1))
	}
	return out
}

// slope is E I times the slope at x from the operator-side bearing, and the moment
// there: loads at x and beyond don't count yet.
func (b *Bending) slope(x float64) (slope, moment, shear float64) {
	slope, moment, shear = b.startSlope-b.OperatorN*x*x/2, b.OperatorN*x, b.OperatorN
	for _, p := range b.Presses {
		d := x - (p.AtMM - b.Anvil.FromMM)
		if d < 0 {
			break
		}
		slope += p.Newtons * d * d / 2
		moment -= p.Newtons * d
		shear -= p.Newtons
	}
	return slope, moment, shear
}

// findMost finds where the slope passes zero: in which gap between loads, then
// where in it. In a gap the slope falls as s - M u - V u^2/2 from its left end.
func (b *Bending) findMost() {
	knots := []float64{0}
	for _, p := range b.Presses {
		knots = append(knots, p.AtMM-b.Anvil.FromMM)
	}
	knots = append(knots, b.Anvil.SpanMM)
	first := sort.Search(len(knots), func(i int) bool { s, _, _ := b.slope(knots[i]); return s <= 0 })
	left := knots[max(first-1, 0)]
	s, moment, shear := b.slope(left)
	u := 0.0
	if s > 0 {
		// The root in the form 2/(m + sqrt(m^2 + 2v)): the other one cancels where the shear is
		// small. Divided by s first, since a force too small to square is one all the same.
		m, v := max(moment, 0)/s, shear/s
		u = 2 / (m + math.Sqrt(max(m*m+2*v, 0)))
	}
	if math.IsNaN(u) { // forces next to nothing: any place will do
		u = 0
	}
	b.MostAt = b.Anvil.FromMM + min(left+u, b.Anvil.SpanMM)
	b.MostMM = b.At(b.MostAt)
}

// findMoment finds the largest bending moment, always at a load since it is straight between
// two, and its stress.
func (b *Bending) findMoment() {
	for _, p := range b.Presses {
		if _, m, _ := b.slope(p.AtMM - b.Anvil.FromMM); m > b.MomentNmm {
			b.MomentNmm, b.MomentAt = m, p.AtMM
		}
	}
	b.StressMPa = b.MomentNmm * b.Anvil.DiameterMM / 2 / b.Anvil.Inertia()
}
