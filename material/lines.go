package material

import (
	"fmt"
	"slices"
)

// lines lists all settings, in the order of the work.
func (s *Settings) lines(g Group, on Machine, run Run) []Line {
	return slices.Concat(s.methodLines(), s.bladeLines(g), s.airLines(g, on.Cylinder), s.runLines(g),
		s.timeLines(on, run), s.rollLines(), s.widthLines(g, run))
}

func (s *Settings) methodLines() []Line {
	a := s.Method
	value := "score: a " + a.Score.String() + " fit"
	if a.Method != Score {
		value = fmt.Sprintf("%s is best; score cut: a %s fit", a.Method, a.Score)
	}
	return []Line{
		{IDMethod, value, a.Why + "; otherwise " + a.Otherwise, a.Source},
		{IDEdge, a.Edge, fmt.Sprintf("dust %s, adhesive on the blade %s", a.Dust, a.PickUp), a.Source},
	}
}

func (s *Settings) bladeLines(g Group) []Line {
	m, b := s.Material, s.Blade
	below := "below the anvil's " + hardness(b.AnvilHRC) + ": the blade wears first"
	if b.Assumed {
		below = "below the usual " + hardness(b.AnvilHRC) + ", assumed since the anvil's own isn't known: find out, as a blade harder than the anvil grooves it"
	}
	out := []Line{
		{IDBevel, fmt.Sprintf("%g degrees", b.Bevel), "included angle, usual " + b.Bevels.text("degrees"), m.from(g, m.Bevel != g.Bevel)},
		{IDTip, fmt.Sprintf("%g mm (%.4f in)", b.Tip, Inches(b.Tip)), "usual " + b.Tips.text("mm"), m.from(g, m.Tip != g.Tip)},
		{IDBladeHardness, hardness(b.HRC), below, commonPractice},
	}
	if s.WearIndex > 0 {
		out = append(out, Line{IDWearIndex, fmt.Sprintf("%.2f", s.WearIndex),
			fmt.Sprintf("contact pressure against that of a %g mm tip at %g N, blade of %g mm assumed; for comparison only, not a stress", referenceTip, referenceForce, UsualBladeMM), "Hertz contact theory, exact integrals"})
	}
	return out
}

func (s *Settings) airLines(g Group, c Cylinder) []Line {
	m, a := s.Material, s.Air
	source := m.from(g, true)
	if s.Guessed {
		source = Forces
	}
	if s.Refused != "" {
		return []Line{{IDSetPressure, "none", s.Refused, source}}
	}
	if s.Unfound {
		return []Line{
			{IDCutThrough, notKnown, s.cutWhy(g, c), commonPractice},
			{IDSetPressure, notKnown, "cut-through pressure plus a margin of " + bars(c.MarginBar), commonPractice},
		}
	}
	return []Line{
		{IDCutThrough, bars(a.CutThroughBar), s.cutWhy(g, c), source},
		{IDSetPressure, bars(a.SetBar), fmt.Sprintf("%s above cut-through, usual %s; more only blunts the blade", bars(c.MarginBar), s.Limits.margin()), "the shop's margin"},
		s.pistonsLine(c),
		{IDForce, fmt.Sprintf("%.0f N (%.0f lbf)", a.SetN, Pounds(a.SetN)), "set pressure times piston area", "calculated"},
	}
}

// cutWhy says where a cut-through pressure comes from, and what to write after a trial: the
// shop's trials are with its own cylinder as it is.
func (s *Settings) cutWhy(g Group, c Cylinder) string {
	a, own := s.Air, c.set(0, c.own(), c.Pistons)
	write := "; write the result into materials.toml"
	if !a.Own {
		write = fmt.Sprintf("; write %s times the result into materials.toml, where cut_through_bar is for your own %s", trimmed(a.total()/own.total(), 2), own.Fitted())
	}
	switch {
	case s.Unfound:
		return "too thick for a guess: start low and find it by trial" + write
	case s.Guessed:
		return fmt.Sprintf("a guess of %.0f N for the whole group (need: %s), whatever thickness, tip and bevel: start low and find it by trial%s", a.CutN, g.Need, write)
	case !a.Own:
		return fmt.Sprintf("calculated from a trial of %s on your own %s%s", bars(s.Material.CutThroughBar), own.Fitted(), write)
	}
	return "found by trial"
}

func (s *Settings) pistonsLine(c Cylinder) Line {
	l := Line{IDPistons, s.Air.Fitted(), s.Air.Why, commonPractice}
	if s.Air.Own {
		l.Why, l.Source = "your pistons reach it at "+bars(c.SupplyBar)+" supply", ownTrial
	}
	return l
}

func (s *Settings) runLines(g Group) []Line {
	m, w := s.Material, s.Wicking
	wick := w.Wick.String()
	if w.Fluid != "" {
		wick += ", " + w.Fluid
	}
	out := []Line{{IDWicking, wick, w.Why, w.Source}}
	if w.SiliconeFree {
		out = append(out, Line{IDSilicone, "none allowed", "blades, felts and fluid must be free of it", m.from(g, true)})
	}
	return append(out, Line{IDSpeed, speeds(s.Speed.Speed),
		fmt.Sprintf("the material's limit is %s; %s", speeds(m.SpeedMax), s.Speed.Holders), m.from(g, m.SpeedMax != g.SpeedMax)})
}

// from is where a value comes from: the shop's own file, with the source that it
// names, or the group's source.
func (m Material) from(g Group, own bool) string {
	switch {
	case !own:
		return g.Source
	case m.Source != "" && m.Source != g.Source:
		return m.Source
	}
	return ownTrial
}
