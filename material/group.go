// Package material knows what a material needs at the knife: method, blade,
// pressure, wicking, speed, width allowance and cautions, and what the whole beam of
// blades does to the anvil.
//
// What it promises:
//   - Every value says where it comes from. The table's values are starting points for
//     a trial on the machine, not guaranteed; what a trial of the shop found replaces them.
//   - Nothing is hidden: a material that should not be scored, or that no pressure cuts,
//     has settings all the same, with the warning or the refusal and its numbers.
//   - A number that is not finite or outside what a formula is good for gives an error
//     that names it; no result is ever NaN or infinite.
//   - It is pure: the same question has the same answer, and no caller can change the
//     table. It imports the standard library alone.
//
// Lengths are millimetres, forces newtons, pressures bar above the air's, speeds metres
// a minute, unless a name says otherwise.
package material

import "slices"

// Sources of the starting values. "Read" means that the source named was read;
// numbers that it doesn't give are common practice.
const (
	commonPractice = "common practice, no source"
	fromMemory     = "from memory, unchecked"
	ownTrial       = "the shop's own file"
	debris         = "trade column on slitting debris, 2004 (read); numbers common practice"
	razorSpeed     = "handbook on web handling, abstract (read): razor below 1000 ft/min; rest common practice"
	softFilms      = "trade column on adhesive-coated low-strength film (read); numbers common practice"
	softSolids     = "paper on cutting soft solids, 2019, abstract (read); numbers common practice"
	softCutting    = "paper on soft cutting, 2025, figure text (read); numbers common practice"
	nonwovens      = "trade note on nonwovens (read): three tip radius bands, fuzz; rest common practice"
	textiles       = "textile notes on fused edges (read); numbers common practice"
)

// Level grades a need or a sensitivity.
type Level uint8

// The levels.
const (
	Low Level = iota
	Medium
	High
)

// String is the level's word.
func (l Level) String() string { return [...]string{"low", "medium", "high"}[l] }

// Range is a range of values, both ends included.
type Range struct{ Least, Most float64 }

// Holds reports whether v lies in the range.
func (r Range) Holds(v float64) bool { return r.Least <= v && v <= r.Most }

// Group is a kind of material with the settings that a trial starts from.
type Group struct {
	Name string

	// How it is best parted, and what a score cut makes of it.
	Method       Method
	Why          string
	Otherwise    string // other methods, and when
	Score        Fit    // how well a score cut suits it
	Edge         string // the edge that a score cut leaves
	Dust         Level
	ScoreMM      float64 // mm; score cuts are usual up to this thickness
	MethodSource string

	// The blade: a bevel that blades are usually ground to, the middle of the usual
	// tip radii, and the usual ranges.
	Bevel  float64 // included angle of the blade, degrees
	Bevels Range
	Tip    float64 // tip radius, mm
	Tips   Range

	// CutN is a guess of the force that one blade cuts with; it is to be replaced by the
	// pressure that a trial with the shop's own cylinder finds.
	CutN float64
	Need Level // of force

	SpeedMax float64  // line speed, m/min
	Wetting  Wetting  // of the blade
	Fouling  Level    // how readily the adhesive builds up on the blade
	Adhesive Adhesive // of a material of which nothing is known but the group; empty is unknown
	Liner    bool     // it runs on a liner, which has silicone
	Cautions []string
	Source   string // of blade, speed and wicking; the forces are from memory
}

// Forces says where every group's CutN comes from. They were remembered as bar on a round
// piston of 28 mm, and are those on its pi/4 28^2 = 615.75 mm2: 1 bar is 61.575 N there, so that
// 2.2 bar are 135.5 N.
const Forces = fromMemory

// groups is the built-in table.
var groups = slices.Concat(tapes, webs)

// Groups lists the built-in groups in the order of the table.
func Groups() []Group {
	out := make([]Group, len(groups))
	for i := range groups {
		out[i] = groups[i].clone()
	}
	return out
}

// GroupNamed finds a built-in group.
func GroupNamed(name string) (Group, bool) {
	for i := range groups {
		if groups[i].Name == name {
			return groups[i].clone(), true
		}
	}
	return Group{}, false
}

// clone is a copy that shares nothing with the table.
func (g Group) clone() Group {
	g.Cautions = slices.Clone(g.Cautions)
	return g
}
