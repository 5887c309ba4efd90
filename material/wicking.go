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

// Wetting is how the blades of a group are wetted, and why: one sentence of which the kinds
// are a part, so that the two can't come to differ.
type Wetting struct {
	Wick   Wick // with an adhesive, whichever
	Picks  Wick // with rubber resin or silicone adhesive, which pick on the blade
	Always bool // without an adhesive too, since it is against friction
	Why    string
}

// The wettings that several groups have.
var (
	dry      = Wetting{Why: "none needed: little builds up on the blade"}
	byPick   = Wetting{NoWick, WickEach, false, "rubber resin and silicone build up: a light wick on each holder; acrylics run dry unless build-up is seen"}
	fouling  = Wetting{WickBar, WickBar, false, "the adhesive builds up fast on every blade"}
	twoFaces = Wetting{WickBar, WickBar, false, "two adhesive faces build up fast; keep the fluid off goods that must be silicone-free"}
	refilled = Wetting{WickBar, WickBar, false, "adhesion decides the cut: keep every blade wet, and plan the refills"}
	light    = Wetting{WickEach, WickEach, false, "a light wick on each holder, against build-up"}
	friction = Wetting{WickBar, WickBar, true, "friction heats and grabs: water or soap on every blade"}
	bitumen  = Wetting{WickBar, WickBar, true, "bitumen fouls and grabs: water or soap on every blade"}
)

// WickAdvice is how a material's blades are wetted, and with what.
type WickAdvice struct {
	Wick         Wick
	Fluid        string // empty with no wicking
	Why          string
	SiliconeFree bool // blades, felts and fluid hold no silicone
	Source       string
}

// AdviseWicking is the wicking for a material by its group's wetting and its adhesive: none
// where nothing sticks, a wick on each holder where some does, a bar over all where much
// does (common practice, no source). A group that is wetted against friction (rubber,
// bitumen) is so whatever its adhesive. The error names a group that isn't built in.
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
	w := g.Wetting
	switch {
	case w.Always:
		return w.Wick, w.Why
	case adhesive == NoAdhesive:
		return NoWick, "no adhesive to build up"
	case adhesive == RubberResin, adhesive == Silicone:
		return w.Picks, w.Why
	}
	return w.Wick, w.Why
}

// fluidFor is what the wicks are fed with. Silicone oil spoils bond faces (NASA
// NTRS 20120016452, read: silicone oils on a bond face can inhibit contact) and
// dissolves silicone adhesive (common practice), so it is never advised.
func fluidFor(g Group, m Material) string {
	switch {
	case g.Wetting.Always:
		return "water or soap, no silicone"
	case m.SiliconeFree || m.Adhesive == Silicone:
		return "water-based, proven free of silicone"
	}
	return "light, water-based, free of silicone"
}

// CleanDown reports whether blades, felts and rolls must be cleaned of silicone
// between two materials: the next must be free of it, and the one before needn't be.
func CleanDown(before, after Material) bool { return after.SiliconeFree && !before.SiliconeFree }
