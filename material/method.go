package material

import "fmt"

// Method is a way of parting a web.
type Method uint8

// The methods.
const (
	Score      Method = iota // a rounded blade pressed on the hardened anvil
	Shear                    // two round knives that overlap, like scissors
	Razor                    // a thin still blade in air or in a groove
	HotStill                 // a still heated knife that melts and seals the edge
	HotTurning               // a turning heated knife: thicker or faster goods
)

// String is the method's name.
func (m Method) String() string {
	return [...]string{"score", "shear", "razor", "hot still knife", "hot turning knife"}[m]
}

// Hot reports whether the method melts the edge.
func (m Method) Hot() bool { return m == HotStill || m == HotTurning }

// Fit grades how well a score cut suits a material.
type Fit uint8

// The fits.
const (
	Good Fit = iota
	Fair     // it can be scored, another method does better
	Poor     // it should not be scored
)

// String is the fit's word.
func (f Fit) String() string { return [...]string{"good", "fair", "poor"}[f] }

// hotStillMM is the thickest cloth for a still heated knife, mm (from memory,
// unchecked): thicker goods take more heat than a still edge gives in passing.
const hotStillMM = 0.5

// Advice is how a material is best parted and what a score cut makes of it.
type Advice struct {
	Method    Method
	Why       string
	Otherwise string // other methods, and when
	Score     Fit
	Edge      string // the edge that a score cut leaves
	Dust      Level
	PickUp    Level    // adhesive on the blade
	Warnings  []string // why it should not be scored, where so; the job is planned all the same
	Source    string
}

// Advise is the method advice for a material: its group's, with what its adhesive
// and thickness change. A thickness of 0 is unknown and changes nothing. The error
// names a group that isn't built in or a thickness out of reason.
func Advise(m Material, l Limits) (Advice, error) {
	g, err := m.group()
	if err != nil {
		return Advice{}, err
	}
	if err := inRange("thickness", m.ThicknessMM, "mm", 0, 1000); err != nil {
		return Advice{}, err
	}
	a := Advice{g.Method, g.Why, g.Otherwise, g.Score, g.Edge, g.Dust, g.Fouling, nil, g.MethodSource}
	a.forAdhesive(g, m.Adhesive)
	a.forThickness(g, m, l.OrUsual())
	if a.Score == Poor {
		a.warn("This should not be scored: %s is better. It is still planned as a score cut.", a.Method)
	}
	return a, nil
}

// forAdhesive: film alone is parted in air, and what carries no adhesive leaves
// none on the blade.
func (a *Advice) forAdhesive(g Group, adhesive Adhesive) {
	if adhesive != NoAdhesive {
		return
	}
	a.PickUp = Low
	if g.Name == "film tape" {
		a.Method, a.Score = Razor, Fair
		a.Why = "film without adhesive is cut in air, with no anvil to wear"
		a.Otherwise = "shear; score"
	}
}

// manyTimes the usual thickness is too thick to press through (common practice, no source).
const manyTimes = 3.0

// forThickness: beyond the usual thickness a score cut gets worse by one grade, by two
// beyond several times that, and is poor beyond the reach of standard holders and blades;
// cloth needs more heat. What isn't to be scored is named a better way.
func (a *Advice) forThickness(g Group, m Material, l Limits) {
	mm := m.ThicknessMM
	if a.Method == HotStill && mm > hotStillMM {
		a.Method = HotTurning
		a.Why += fmt.Sprintf("; %g mm needs the heat of a turning knife", mm)
	}
	if mm <= m.ScoreMM {
		return
	}
	a.warn("%g mm is thicker than the %g mm up to which %s is usually score cut%s.", mm, m.ScoreMM, g.Name, limitFrom(m.ScoreMM, g.ScoreMM))
	switch {
	case mm > l.ThicknessMM:
		a.Score = Poor
	case mm > manyTimes*m.ScoreMM:
		a.Score = min(a.Score+2, Poor)
	default:
		a.Score = min(a.Score+1, Poor)
	}
	if a.Score == Poor && a.Method == Score {
		a.instead(g, mm)
	}
}

// instead names the better way to part what is too thick to be scored.
func (a *Advice) instead(g Group, mm float64) {
	a.Source = commonPractice
	if g.Name == "foam tape" || g.Name == "rubber" {
		a.Method, a.Otherwise = Razor, "a long-bevel knife; score with long trials"
		a.Why = fmt.Sprintf("%g mm is too thick to press through: a thin long blade slices it", mm)
		return
	}
	a.Method, a.Otherwise = Shear, "score with long trials"
	a.Why = fmt.Sprintf("%g mm is too thick to press through: two knives cut it like scissors", mm)
}

func (a *Advice) warn(format string, args ...any) {
	a.Warnings = append(a.Warnings, fmt.Sprintf(format, args...))
}
