package material

import (
	"fmt"
	"math/big"
)

// Adhesive is what a material is coated with. Empty is unknown.
type Adhesive string

// The adhesives that a shop's file may name.
const (
	NoAdhesive  Adhesive = "none"
	Acrylic     Adhesive = "acrylic"
	RubberResin Adhesive = "rubber resin"
	Silicone    Adhesive = "silicone"
)

// Adhesives lists the adhesives.
func Adhesives() []Adhesive { return []Adhesive{NoAdhesive, Acrylic, RubberResin, Silicone} }

// Material is one material as a shop runs it. Settings that its file leaves out
// are those of its group.
type Material struct {
	Name          string
	Group         string
	ThicknessMM   float64 // 0 unknown
	Adhesive      Adhesive
	CutThroughBar float64 // found by trial with the shop's cylinder as it is, all its pistons acting; 0 is no trial
	SiliconeFree  bool    // blades and felts must be clean of silicone first
	Bevel         float64 // included angle of the blade it needs, degrees
	Tip           float64 // tip radius of that blade, mm
	// AllowancePct widens the cut: cut width = finished width * (1 + AllowancePct/100).
	AllowancePct *big.Rat
	ParentMetres float64 // on a parent roll; 0 unknown
	SpeedMax     float64 // line speed, m/min
	ScoreMM      float64 // score cuts are usual up to this thickness
	// What its web does under tension, for its neck-in; 0 unknown.
	ModulusMPa float64 // along the web
	Poisson    float64 // narrowing for stretch
	TensionNM  float64 // N for each metre of width
	Source     string
}

// Start is a material of the group before anything is known but its name.
func (g Group) Start(name string) Material {
	return Material{
		Name: name, Group: g.Name, Adhesive: g.Adhesive,
		Bevel: g.Bevel, Tip: g.Tip, SpeedMax: g.SpeedMax, ScoreMM: g.ScoreMM,
		AllowancePct: new(big.Rat), Source: g.Source,
	}
}

// group is the material's built-in group.
func (m Material) group() (Group, error) {
	g, ok := GroupNamed(m.Group)
	if !ok {
		return g, fmt.Errorf("material %q: no built-in group is called %q", m.Name, m.Group)
	}
	return g, nil
}

// Tried reports whether the shop found by trial what cuts it.
func (m Material) Tried() bool { return m.CutThroughBar > 0 }

// Table is a shop's own materials; the built-in groups stand behind them.
type Table []Material

// Lookup finds a material by its name: one of the shop's own, or else a built-in
// group, which is a material under its own name.
func (t Table) Lookup(name string) (Material, bool) {
	for _, m := range t {
		if m.Name == name {
			return m, true
		}
	}
	g, ok := GroupNamed(name)
	return g.Start(name), ok
}

// Names lists every name that Lookup knows, the shop's own first.
func (t Table) Names() []string {
	var names []string
	for _, m := range t {
		names = append(names, m.Name)
	}
	for _, g := range groups {
		names = append(names, g.Name)
	}
	return names
}
