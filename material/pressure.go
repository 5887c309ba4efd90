package material

import (
	"cmp"
	"errors"
	"fmt"
	"math"
)

// larger lists the bores that round pistons may be had with, mm (common practice, no source).
var larger = []float64{6, 8, 10, 12, 16, 20, 25, 32, 40}

const (
	usualMost  = 3    // pistons in one holder, unless the shop says how many (common practice, no source)
	usualTimes = 2    // the area that another piston may have in that of the shop's, unless it says (a guess)
	areaStep   = 10.0 // mm2; a larger area is named in steps of it
)

// Cylinder is what presses one holder.
type Cylinder struct {
	AreaMM2   float64 // of one piston
	BoreMM    float64 // of a round one; 0 is another shape
	RoomMM    float64 // the largest bore that the holder has room for
	Pistons   int
	SupplyBar float64 // the most that can be set
	MarginBar float64 // set above cut-through
	// What other holders may be had with; 0 is the usual.
	MostPistons int
	MostAreaMM2 float64 // of one piston that isn't round
}

// Air is a pressure that parts the material: which pistons, and what to set.
type Air struct {
	AreaMM2       float64 // of one piston
	BoreMM        float64 // of a round one; 0 is another shape
	Pistons       int
	CutThroughBar float64 // with these pistons
	SetBar        float64 // cut-through and margin
	CutN, SetN    float64 // force of one blade at either, N
	Own           bool    // the shop's pistons do
	Why           string  // which others do, and what its own would need; empty if its own do
}

// Fitted names the pistons in words.
func (a Air) Fitted() string { return count(a.Pistons) + " of " + a.size() }

// size names one piston.
func (a Air) size() string {
	if a.BoreMM > 0 {
		return fmt.Sprintf("%g mm", a.BoreMM)
	}
	return fmt.Sprintf("%.6g mm2", a.AreaMM2)
}

// total is the area of all pistons, mm2.
func (a Air) total() float64 { return a.AreaMM2 * float64(a.Pistons) }

// ChooseAir finds the pistons that reach a force at cut-through, in newtons, within
// the supply: the shop's own; else more of them, up to as many as a holder may have;
// else larger ones, see others. The margin is added to the pressure, whichever
// pistons. Nothing that fits is an error with the numbers. Ranges as Force;
// margin and supply 0 to 1000 bar.
func ChooseAir(newtons float64, c Cylinder) (Air, error) {
	if err := errors.Join(inRange("cut-through force", newtons, "N", 0, mostForce), c.check()); err != nil {
		return Air{}, err
	}
	own := c.set(newtons, c.own(), c.Pistons)
	if c.reaches(own) {
		own.Own = true
		return own, nil
	}
	for _, one := range append([]Air{c.own()}, c.others(newtons)...) {
		for n := 1; n <= c.mostPistons(); n++ { // as many as the shop's, or fewer, don't reach with its own
			if a := c.set(newtons, one, n); c.reaches(a) {
				a.Why = fmt.Sprintf("%s would need %.1f bar, and the supply gives %.1f: use %s", own.Fitted(), own.SetBar, c.SupplyBar, a.Fitted())
				return a, nil
			}
		}
	}
	return Air{}, c.refuse(own, newtons)
}

func (c Cylinder) check() error {
	return errors.Join(checkPistons(c.AreaMM2, c.Pistons),
		inRange("supply", c.SupplyBar, "bar", 0, mostBar), inRange("margin", c.MarginBar, "bar", 0, mostBar))
}

// own is the shop's own piston.
func (c Cylinder) own() Air { return Air{AreaMM2: c.AreaMM2, BoreMM: c.BoreMM} }

// others are larger pistons for a force, the smallest first: round ones whose bore the holder
// has room for, or, where the shop's have another shape, the area that as many as may be need.
func (c Cylinder) others(newtons float64) (out []Air) {
	if c.BoreMM == 0 {
		need := newtons / ((c.SupplyBar - c.MarginBar) * MPaPerBar * float64(c.mostPistons()))
		if area := math.Ceil(need/areaStep) * areaStep; need > 0 && area <= c.mostArea() {
			out = append(out, Air{AreaMM2: area})
		}
		return out
	}
	for _, bore := range larger {
		if bore > c.BoreMM && bore <= c.RoomMM {
			out = append(out, Air{AreaMM2: RoundArea(bore), BoreMM: bore})
		}
	}
	return out
}

// largest is the largest piston that others may be.
func (c Cylinder) largest() Air {
	if c.BoreMM == 0 {
		return Air{AreaMM2: c.mostArea()}
	}
	all := append([]Air{c.own()}, c.others(0)...)
	return all[len(all)-1]
}

func (c Cylinder) mostArea() float64 {
	return max(cmp.Or(c.MostAreaMM2, usualTimes*c.AreaMM2), c.AreaMM2)
}

// reaches reports whether the supply gives what is to be set. A pressure that is the
// supply's own may come out of the sums a little above it.
func (c Cylinder) reaches(a Air) bool {
	const slack = 1e-9 // bar
	return a.SetBar <= c.SupplyBar+slack
}

// mostPistons is how many pistons a holder may have.
func (c Cylinder) mostPistons() int { return max(cmp.Or(c.MostPistons, usualMost), c.Pistons) }

// set is the pressure to set with n of a piston.
func (c Cylinder) set(newtons float64, one Air, n int) Air {
	a := Air{AreaMM2: one.AreaMM2, BoreMM: one.BoreMM, Pistons: n, CutN: newtons}
	a.CutThroughBar = newtons / a.total() / MPaPerBar
	a.SetBar = a.CutThroughBar + c.MarginBar
	a.SetN = a.SetBar * MPaPerBar * a.total()
	return a
}

// refuse says what nothing reaches.
func (c Cylinder) refuse(own Air, newtons float64) error {
	best := c.set(newtons, c.largest(), c.mostPistons())
	return fmt.Errorf("nothing reaches the %.0f N of a cut: %s would need %.1f bar, %s %.1f, and the supply gives %.1f",
		newtons, own.Fitted(), own.SetBar, best.Fitted(), best.SetBar, c.SupplyBar)
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

// cutForce is the force of one blade at cut-through, N: by the shop's own trial, with its
// cylinder as it is, or the group's guess.
func cutForce(m Material, g Group, c Cylinder) (newtons float64, guessed bool, err error) {
	if !m.Tried() {
		return g.CutN, true, nil
	}
	newtons, err = Force(m.CutThroughBar, c.AreaMM2, c.Pistons)
	return newtons, false, err
}
