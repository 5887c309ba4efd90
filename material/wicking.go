package material

// Wick is how blades are wetted.
type Wick uint8

// The kinds of wicking.
const (
	NoWick   Wick = iota
	WickEach      // a wick on each holder
	WickBar       // a wicking bar over all blades
)

// String is the kind's name.
func (w Wick) String() string {
	return [...]string{"none", "a wick on each holder", "a wicking bar over all"}[w]
}

// WickAdvice is how a material's blades are wetted, and with what.
type WickAdvice struct {
	Wick         Wick
	Fluid        string // empty with no wicking
	Why          string
	SiliconeFree bool // blades, felts and fluid hold no silicone
	Source       string
}

// AdviseWicking is the wicking for a material by its adhesive and how readily that
// builds up on the blade: none where nothing sticks, a wick on each holder where
// some does, a bar over all where much does (common practice, no source). A group
// that is wetted against friction (rubber, bitumen) gets the bar whatever its
// adhesive. The error names a group that isn't built in.
func AdviseWicking(m Material) (WickAdvice, error) {
	g, err := m.group()
	if err != nil {
		return WickAdvice{}, err
	}
	a := WickAdvice{Source: g.Source, SiliconeFree: m.SiliconeFree}
	a.Wick, a.Why = wickFor(g, m.Adhesive)
	if a.Wick != NoWick {
		a.Fluid = fluidFor(g, m)
	}
	return a, nil
}

// wickFor is the kind of wicking and its reason.
func wickFor(g Group, adhesive Adhesive) (Wick, string) {
	switch {
	case wettedAgainstFriction(g):
		return WickBar, "friction heats and grabs: wet every blade"
	case adhesive == NoAdhesive:
		return NoWick, "no adhesive to build up"
	case g.Fouling == High:
		return WickBar, "the adhesive builds up fast on every blade"
	case g.Fouling == Medium && adhesive == RubberResin:
		return WickEach, "rubber resin picks on the blade"
	case g.Fouling == Medium && adhesive == Silicone:
		return WickEach, "silicone adhesive picks on the blade"
	case g.Fouling == Medium:
		return NoWick, "try without; a light wick on each holder if adhesive builds up"
	}
	return NoWick, "little builds up"
}

// wettedAgainstFriction tells the groups that are wetted whatever their adhesive.
func wettedAgainstFriction(g Group) bool { return g.Name == "rubber" || g.Name == "roofing" }

// fluidFor is what the wicks are fed with. Silicone oil spoils bond faces (NASA
// NTRS 20120016452, read: silicone oils on a bond face can inhibit contact) and
// dissolves silicone adhesive (common practice), so it is never advised.
func fluidFor(g Group, m Material) string {
	switch {
	case wettedAgainstFriction(g):
		return "water or soap, no silicone"
	case m.SiliconeFree || m.Adhesive == Silicone:
		return "water-based, proven free of silicone"
	}
	return "light, water-based, free of silicone"
}

// CleanDown reports whether blades, felts and rolls must be cleaned of silicone
// between two materials: the next must be free of it, and the one before needn't be.
func CleanDown(before, after Material) bool { return after.SiliconeFree && !before.SiliconeFree }
