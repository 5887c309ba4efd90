// Package material knows what a material needs at the knife: blade, pressure,
// speed and width allowance, each starting value with where it comes from.
//
// The values are starting points for a trial on the machine, never a promise. The
// package is pure and imports the standard library alone.
package material

// Sources of the starting values.
const (
	commonPractice = "common practice, no source"
	fromMemory     = "from memory, unchecked"
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

// Group is a kind of material with the settings that a trial starts from.
type Group struct {
	Name  string
	Bevel float64 // included angle of the blade, degrees
	Tip   float64 // tip radius, mm
	// CutThroughBar is a guess for one piston of common size; it is to be replaced
	// by what a trial with the shop's own cylinder finds.
	CutThroughBar float64
	SpeedMax      float64 // line speed, m/min
	Wicking       string  // what the blade is wetted with
	Fouling       Level   // how readily the adhesive builds up on the blade
	Source        string  // of blade, speed and wicking; the pressures are from memory
}

// Pressures tells where every group's CutThroughBar comes from.
const Pressures = fromMemory

// groups is the built-in table. Bevel and tip are the middle of the usual range.
var groups = []Group{
	{"paper tape", 45, 0.15, 2.2, 250, "none; light and water-based if adhesive builds up", Medium, commonPractice},
	{"film tape", 38, 0.08, 1.8, 200, "light and silicone-free against stringing", Medium, commonPractice},
	{"soft film tape", 38, 0.08, 1.4, 120, "light", Medium, commonPractice},
	{"cloth tape", 52, 0.15, 3.4, 120, "yes", High, commonPractice},
	{"double-coated tape", 45, 0.12, 2.6, 80, "yes; keep off silicone-sensitive goods", High, commonPractice},
	{"transfer adhesive", 38, 0.08, 1.6, 40, "yes, with a refill plan", High, commonPractice},
	{"foam tape", 30, 0.08, 1.5, 40, "yes", High, commonPractice},
	{"foil", 52, 0.15, 3.6, 100, "light", Low, commonPractice},
	{"laminate", 52, 0.15, 3.4, 120, "by adhesive", Medium, commonPractice},
	{"light nonwoven", 52, 0.18, 2.0, 200, "none", Low, commonPractice},
	{"heavy nonwoven", 60, 0.25, 4.6, 50, "none", Low, commonPractice},
	{"woven", 52, 0.20, 3.6, 60, "none", Low, commonPractice},
	{"plain paper", 45, 0.15, 2.0, 300, "none", Low, commonPractice},
	{"felt", 60, 0.25, 4.8, 40, "none", Low, commonPractice},
	{"rubber", 38, 0.10, 3.4, 40, "water or soap", Low, commonPractice},
}

// Groups lists the built-in groups in the order of the table.
func Groups() []Group { return append([]Group(nil), groups...) }

// GroupNamed finds a built-in group.
func GroupNamed(name string) (Group, bool) {
	for _, g := range groups {
		if g.Name == name {
			return g, true
		}
	}
	return Group{}, false
}
