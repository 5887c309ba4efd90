package material

import (
	"errors"
	"math"
)

// Elastic is a body's elastic constants.
type Elastic struct{ ModulusMPa, Poisson float64 }

// Steel is hardened steel.
var Steel = Elastic{SteelModulus, SteelPoisson}

// ContactModulus is E* of two bodies: 1/E* = (1-nu1^2)/E1 + (1-nu2^2)/E2, MPa.
func ContactModulus(a, b Elastic) (float64, error) {
	err := errors.Join(
		inRange("modulus", a.ModulusMPa, "MPa", 1e-3, 1e7), inRange("modulus", b.ModulusMPa, "MPa", 1e-3, 1e7),
		inRange("Poisson's ratio", a.Poisson, "", -0.99, 0.5), inRange("Poisson's ratio", b.Poisson, "", -0.99, 0.5))
	if err != nil {
		return 0, err
	}
	return 1 / ((1-a.Poisson*a.Poisson)/a.ModulusMPa + (1-b.Poisson*b.Poisson)/b.ModulusMPa), nil
}

// Curvature is the gap between two bodies before they press: z = A x^2 + B y^2 with
// A <= B, 1/mm.
type Curvature struct{ A, B float64 }

// Between is the curvature of a gap between two bodies with principal radii r1 and
// r1p, r2 and r2p in mm (infinite is flat, all on the outside) whose planes are
// turned by an angle in degrees:
// A + B = (1/r1 + 1/r1p + 1/r2 + 1/r2p)/2, and (B - A) from the differences as
// vectors at twice the angle (Boresi and Schmidt, Advanced Mechanics of Materials,
// ch. 17; Johnson 4.1).
func Between(r1, r1p, r2, r2p, degrees float64) (Curvature, error) {
	var errs []error
	for _, r := range []float64{r1, r1p, r2, r2p} {
		errs = append(errs, inRange("radius", r, "mm", 1e-9, math.Inf(1)))
	}
	if err := errors.Join(append(errs, inRange("angle", degrees, "degrees", -360, 360))...); err != nil {
		return Curvature{}, err
	}
	sum := (1/r1 + 1/r1p + 1/r2 + 1/r2p) / 2
	d1, d2 := 1/r1-1/r1p, 1/r2-1/r2p
	turn := 2 * degrees * math.Pi / 180
	diff := math.Hypot(d1+d2*math.Cos(turn), d2*math.Sin(turn)) / 2
	return Curvature{(sum - diff) / 2, (sum + diff) / 2}, nil
}

// Contact is the ellipse in which two bodies touch.
type Contact struct {
	MajorMM, MinorMM float64 // semi-axes
	PeakMPa, MeanMPa float64 // pressure; the mean is two thirds of the peak
	ApproachMM       float64 // of the bodies
}

// mostRatio is the largest ratio of curvatures worked out: beyond it float64 has
// lost its digits, and the contact is a line.
const mostRatio = 1e12

// Contact is the elastic contact of two bodies by Hertz's theory, exact elliptic
// integrals (Johnson, Contact Mechanics, 4.2; no fitted formula):
// a^3 = 3 P D / (2 pi E* A), b = a c, p0 = 3 P / (2 pi a b), approach
// 3 P K / (2 pi a E*), with c = b/a from B/A.
//
// Elastic only. Under a blade's tip the pressure it gives is above what steel bears:
// the number compares one tip with another and says nothing of safe or real stress.
// Force above 0 to 1e7 N, E* in MPa, B/A from 1 to 1e12; errors name numbers outside.
func (g Curvature) Contact(newtons, contactModulus float64) (Contact, error) {
	err := errors.Join(
		inRange("force", newtons, "N", 1e-9, mostForce), inRange("contact modulus", contactModulus, "MPa", 1e-3, 1e7),
		inRange("curvature A", g.A, "1/mm", 1e-18, 1e9), inRange("curvature B", g.B, "1/mm", g.A, 1e9),
		inRange("ratio of curvatures", g.B/g.A, "", 1, mostRatio))
	if err != nil {
		return Contact{}, err
	}
	c := axesRatio(g.B / g.A)
	k, d := ellipticKD(c)
	load := 3 * newtons / (2 * math.Pi)
	a := math.Cbrt(load * d / (contactModulus * g.A))
	peak := load / (a * a * c)
	return Contact{a, a * c, peak, peak * 2 / 3, load * k / (a * contactModulus)}, nil
}

// Tip is a blade's edge on the anvil: a disc with a rounded rim on a roll whose axis
// is parallel to its own.
type Tip struct {
	BladeMM float64 // diameter of the blade
	TipMM   float64 // radius of the rounded edge
	AnvilMM float64 // diameter of the anvil
}

// Contact is the tip's elastic contact, steel on steel, under a force in newtons.
// Range: diameters 1 to 10 000 mm, tip 0.001 to 5 mm.
func (t Tip) Contact(newtons float64) (Contact, error) {
	err := errors.Join(
		inRange("blade diameter", t.BladeMM, "mm", 1, 1e4), inRange("tip radius", t.TipMM, "mm", 0.001, 5),
		inRange("anvil diameter", t.AnvilMM, "mm", 1, 1e4))
	if err != nil {
		return Contact{}, err
	}
	modulus, err := ContactModulus(Steel, Steel)
	if err != nil {
		return Contact{}, err
	}
	along, across := 1/t.BladeMM+1/t.AnvilMM, 1/(2*t.TipMM)
	return Curvature{min(along, across), max(along, across)}.Contact(newtons, modulus)
}

// What wear is compared with: a tip of this radius under this force.
const (
	referenceTip   = 0.15  // mm
	referenceForce = 200.0 // N
)

// WearIndex is the tip's peak pressure over that of a tip of 0.15 mm on the same
// blade and anvil under 200 N: 1 is the same, above it tip and sleeve wear sooner.
// It is for comparison only: no stress, no life and no limit. It grows with the cube root of
// the force and as the tip gets sharper.
func (t Tip) WearIndex(newtons float64) (float64, error) {
	here, err := t.Contact(newtons)
	if err != nil {
		return 0, err
	}
	there, _ := Tip{t.BladeMM, referenceTip, t.AnvilMM}.Contact(referenceForce) // in range as the one here is
	return here.PeakMPa / there.PeakMPa, nil
}
