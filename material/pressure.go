package material

import (
	"errors"
	"fmt"
)

// GuessBoreMM is the piston that the groups' guessed pressures are for.
const GuessBoreMM = 28.0

// usualMargin is what is set above cut-through: 10 to 15 psi, shown to people as
// 0.7 to 1.0 bar (common practice, no source). More only blunts the blade.
var usualMargin = Range{Bar(10), Bar(15)}

// larger lists the bores that a holder may be had with, mm, and most the pistons
// (common practice, no source).
var larger = []float64{10, 12, 16, 20, 25, 32, 40}

const usualMost = 3

// Cylinder is what presses one holder.
type Cylinder struct {
	BoreMM    float64
	Pistons   int
	SupplyBar float64 // the most that can be set
	MarginBar float64 // set above cut-through
}

// Air is a pressure that parts the material: which pistons, and what to set.
type Air struct {
	BoreMM        float64
	Pistons       int
	CutThroughBar float64 // with these pistons
	SetBar        float64 // cut-through and margin
	CutN, SetN    float64 // force of one blade at either, N
	Own           bool    // the shop's pistons do
	Why           string  // which others do, and what its own would need; empty if its own do
}

// Fitted names the pistons in words.
func (a Air) Fitted() string { return pistons(a.Pistons, a.BoreMM) }

// ChooseAir finds the pistons that reach a force at cut-through, in newtons, within
// the supply: the shop's own; else more of them, up to three (or its own number);
// else the next larger bore, fewest pistons first. The margin is added to the pressure, whichever
// pistons. Nothing that fits is an error with the numbers. Ranges as Force;
// margin and supply 0 to 1000 bar.
func ChooseAir(newtons float64, c Cylinder) (Air, error) {
	err := errors.Join(
		inRange("cut-through force", newtons, "N", 0, mostForce), checkPistons(c.BoreMM, c.Pistons),
		inRange("supply", c.SupplyBar, "bar", 0, mostBar), inRange("margin", c.MarginBar, "bar", 0, mostBar))
	if err != nil {
		return Air{}, err
	}
	own := c.set(newtons, c.BoreMM, c.Pistons)
	if c.reaches(own) {
		own.Own = true
		return own, nil
	}
	for _, bore := range append([]float64{c.BoreMM}, larger...) {
		if bore < c.BoreMM {
			continue
		}
		for n := 1; n <= c.mostPistons(); n++ { // as many as the shop's, or fewer, don't reach with its bore
			if a := c.set(newtons, bore, n); c.reaches(a) {
				a.Why = fmt.Sprintf("%s would need %.1f bar, and the supply gives %.1f: use %s of %g mm",
					pistons(c.Pistons, c.BoreMM), own.SetBar, c.SupplyBar, count(n), bore)
				return a, nil
			}
		}
	}
	return Air{}, c.refuse(own, newtons)
}

// reaches reports whether the supply gives what is to be set. A pressure that is the
// supply's own may come out of the sums a little above it.
func (c Cylinder) reaches(a Air) bool {
	const slack = 1e-9 // bar
	return a.SetBar <= c.SupplyBar+slack
}

// mostPistons is how many pistons a holder is assumed to have at most.
func (c Cylinder) mostPistons() int { return max(usualMost, c.Pistons) }

// set is the pressure to set with some pistons.
func (c Cylinder) set(newtons, bore float64, n int) Air {
	cut := newtons / area(bore, n) / MPaPerBar
	a := Air{BoreMM: bore, Pistons: n, CutThroughBar: cut, SetBar: cut + c.MarginBar, CutN: newtons}
	a.SetN = a.SetBar * MPaPerBar * area(bore, n)
	return a
}

// refuse says what nothing reaches.
func (c Cylinder) refuse(own Air, newtons float64) error {
	bore, n := max(c.BoreMM, larger[len(larger)-1]), c.mostPistons()
	best := c.set(newtons, bore, n)
	return fmt.Errorf("nothing reaches the %.0f N of a cut: %s would need %.1f bar, %s of %g mm %.1f, and the supply gives %.1f",
		newtons, pistons(c.Pistons, c.BoreMM), own.SetBar, count(n), bore, best.SetBar, c.SupplyBar)
}

// CheckMargin says what is wrong with a margin above cut-through, in bar, and the
// usual one; empty where nothing is wrong. Range 0 to 1000 bar.
func CheckMargin(bar float64) (string, error) {
	if err := inRange("margin", bar, "bar", 0, mostBar); err != nil {
		return "", err
	}
	const slack = 0.02 // bar; people write 0.7 and 1.0, and mean 10 and 15 psi
	switch {
	case bar < usualMargin.Least-slack:
		return fmt.Sprintf("A margin of %.2g bar is below the usual 0.7 to 1.0: some blades may not cut through.", bar), nil
	case bar > usualMargin.Most+slack:
		return fmt.Sprintf("A margin of %.2g bar is above the usual 0.7 to 1.0: more only blunts the blade.", bar), nil
	}
	return "", nil
}

// MostUsualBar is the most that shop air usually has (common practice, no source). A
// supply above it was likely written in psi.
const MostUsualBar = 10.0

// CheckSupply says what is wrong with the pressure of an air supply, in bar; empty where nothing is wrong.
// Range 0 to 1000 bar.
func CheckSupply(bar float64) (string, error) {
	err := inRange("supply", bar, "bar", 0, mostBar)
	if err != nil || bar <= MostUsualBar {
		return "", err
	}
	return fmt.Sprintf("A supply of %g bar is above the %g of usual shop air (%g psi would be %.1f bar): check the gauge before you set anything.",
		bar, MostUsualBar, bar, Bar(bar)), nil
}

// cutForce is the force of one blade at cut-through, N, for a shop's one piston: by
// its own trial, or the group's guess, which is for a piston of GuessBoreMM.
func cutForce(m Material, g Group, boreMM float64) (newtons float64, guessed bool, err error) {
	if m.tried(g) {
		newtons, err = Force(m.CutThroughBar, boreMM, 1)
		return newtons, false, err
	}
	newtons, err = Force(m.CutThroughBar, GuessBoreMM, 1)
	return newtons, true, err
}
