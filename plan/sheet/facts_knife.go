package sheet

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

// turn is what is set at the knife for step i; nil where that isn't known.
func (o *Options) turn(i int) *material.Turn {
	if o.Knife == nil || i >= len(o.Knife.Turns) || o.Knife.Turns[i].Settings == nil {
		return nil
	}
	return &o.Knife.Turns[i]
}

// rests says where the anvil's bearings lie.
func (o *Options) rests() string {
	if o.Knife == nil {
		return ""
	}
	return o.Knife.Rests
}

// knife says what is set at step i beside blade and pressure, what that changes, and
// what is wrong with this job and not with all.
func (f *facts) knife(i int) (out []fact) {
	k := f.options.turn(i)
	if k == nil {
		return nil
	}
	s := k.Settings
	add := func(name, text string) { out = append(out, fact{Name: name, Text: text}) }
	cuts := len(f.steps[i].Layout.Cuts)
	cut := s.Line(material.IDCutThrough)
	add("Cuts at", cut.Value+", "+cut.Why)
	if !s.Unfound {
		add("Force", fmt.Sprintf("%s a blade, %s in all of %s; %s", newtons(s.Air.SetN),
			newtons(s.Air.SetN*float64(cuts)), words.Count(cuts, "blade"), s.Line(material.IDPistons).Value))
	}
	wicking := s.Line(material.IDWicking).Value
	if s.Wicking.Wick != material.NoWick {
		wicking += "; " + s.Wicking.Why
	}
	add("Wicking", wicking)
	add("Method", s.Line(material.IDMethod).Value+"; edge: "+s.Method.Edge)
	out = append(out, f.winding(s)...)
	if len(k.Changes) > 0 {
		add("Change", changed(k))
	}
	out = append(out, f.damagedUnder(i, k.Damaged)...)
	for _, w := range s.Warnings {
		if !f.options.shared(w) {
			add("LOOK OUT", w)
		}
	}
	return out
}

// winding describes the run, the finished roll and the web under tension, as far as they
// are known.
func (f *facts) winding(s *material.Settings) (out []fact) {
	add := func(name, text string) {
		if text != "" {
			out = append(out, fact{Name: name, Text: text})
		}
	}
	run := s.Line(material.IDRunTime).Value
	if turns := s.Line(material.IDAnvilTurns).Value; turns != "" {
		run += "; turns of the anvil: " + turns
	}
	add("Run time", run)
	add("Roll", s.Line(material.IDRoll).Value)
	add("Neck-in", s.Line(material.IDNeckIn).Value)
	add("Widths", s.Line(material.IDWidths).Value)
	return out
}

// changed says what is set differently from before.
func changed(k *material.Turn) string {
	if k.Before == "" {
		return "what ran before isn't known: check blades, pistons, pressure, wicking and for silicone"
	}
	parts := make([]string, len(k.Changes))
	for i, c := range k.Changes {
		parts[i] = fmt.Sprintf("%s %s -> %s", c.ID, c.From, c.To)
		switch c.ID {
		case material.IDBlade, material.IDSilicone, material.IDPistons:
			parts[i] += ": " + c.Do
		}
	}
	return "against " + k.Before + ": " + strings.Join(parts, "; ")
}

// newtons shows a force in both units.
func newtons(n float64) string {
	if n >= 1e4 {
		return fmt.Sprintf("%.1f kN (%.0f lbf)", n/1000, material.Pounds(n))
	}
	return fmt.Sprintf("%.0f N (%.0f lbf)", n, material.Pounds(n))
}

// bends says how far the anvil bends at step i, where most and what its bearings
// carry, or why that isn't known; empty where nothing is known of the knife.
func (f *facts) bends(i int) string {
	k := f.options.turn(i)
	switch {
	case k == nil:
		return ""
	case k.Bending == nil:
		return "its bend isn't worked out: " + k.Unbent
	}
	b := k.Bending
	return fmt.Sprintf("largest bend %s at %s; bearings carry %s (operator side) and %s",
		small(b.MostMM), f.at(b.MostAt), newtons(b.OperatorN), newtons(b.DriveN)) + doubts(b)
}

// doubts say that a bend is above the shop's limit, and what a short roll's leaves out.
func doubts(b *material.Bending) (all string) {
	for _, text := range []string{b.Past(), b.Doubt()} {
		if text != "" {
			all += "; " + text
		}
	}
	return all
}

// at shows a place in mm in the shop's unit, to the millimetre or a tenth of an inch.
func (f *facts) at(mm float64) string {
	if f.options.Unit == plan.Inches {
		return fmt.Sprintf("%.1f in", material.Inches(mm))
	}
	return fmt.Sprintf("%.0f mm", mm)
}

// small is a bend for people.
func small(mm float64) string { return fmt.Sprintf("%.3f mm (%.4f in)", mm, material.Inches(mm)) }

// inMM is a length for formulas.
func inMM(l plan.Length) float64 { return float64(l) / float64(plan.Millimetre) }
