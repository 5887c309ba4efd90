package sheet

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
)

// turn is what is set at the knife for step i; nil where that isn't known.
func (o *Options) turn(i int) *material.Turn {
	if o.Knife == nil || i >= len(o.Knife.Turns) || o.Knife.Turns[i].Settings == nil {
		return nil
	}
	return &o.Knife.Turns[i]
}

// knife tells on a changeover's sheet what is set beside blade and pressure, what that
// changes, and what is wrong with this job and not with all.
func (t *text) knife(i int) {
	k := t.options.turn(i)
	if k == nil {
		return
	}
	s := k.Settings
	cuts := len(t.plan.Steps[i].Layout.Cuts)
	cut := line(s, "cut-through")
	t.add(labelled("Cuts at", cut.Value+", "+cut.Why)...)
	t.add(labelled("Force", fmt.Sprintf("%s a blade, %s in all of %s; %s", newtons(s.Air.SetN),
		newtons(s.Air.SetN*float64(cuts)), count(cuts, "blade"), line(s, "pistons").Value))...)
	t.add(labelled("Wicking", line(s, "wicking").Value)...)
	t.add(labelled("Method", line(s, "method").Value+"; edge: "+s.Method.Edge)...)
	if len(k.Changes) > 0 {
		t.add(labelled("Change", changed(k))...)
	}
	for _, w := range s.Warnings {
		if !t.options.shared(w) {
			t.add(labelled("LOOK OUT", w)...)
		}
	}
}

// changed tells what is set otherwise than before.
func changed(k *material.Turn) string {
	if k.Before == "" {
		return "what ran before isn't known: look at blades, pistons, pressure, wicking and for silicone"
	}
	parts := make([]string, len(k.Changes))
	for i, c := range k.Changes {
		parts[i] = fmt.Sprintf("%s %s -> %s", c.What, c.From, c.To)
		if c.What == "blade" || c.What == "silicone" || c.What == "pistons" {
			parts[i] += ": " + c.Do
		}
	}
	return "against " + k.Before + ": " + strings.Join(parts, "; ")
}

// line is the setting of a name.
func line(s *material.Settings, name string) material.Line {
	for _, l := range s.Lines {
		if l.Name == name {
			return l
		}
	}
	return material.Line{}
}

// newtons shows a force in both units.
func newtons(n float64) string {
	if n >= 1e4 {
		return fmt.Sprintf("%.1f kN (%.0f lbf)", n/1000, material.Pounds(n))
	}
	return fmt.Sprintf("%.0f N (%.0f lbf)", n, material.Pounds(n))
}

// bend draws below the picture of the beam how far the anvil bends, and tells where
// most and what its bearings carry.
func (t *text) bend(i int) {
	k := t.options.turn(i)
	switch {
	case k == nil:
		return
	case k.Bending == nil:
		t.add(labelled("Anvil", "its bend isn't worked out: "+k.Unbent)...)
		return
	}
	b, bent := k.Bending, newStrip(t.plan.Beam.Rail)
	for c := range bent.marks {
		if at := inMM(bent.place(c)); at >= b.Anvil.FromMM && at <= b.Anvil.FromMM+b.Anvil.SpanMM {
			bent.marks[c] = tenths(b.At(at), b.MostMM)
		}
	}
	t.add("bend " + string(bent.marks))
	t.add(hang("     ", fmt.Sprintf("0 to 9: tenths of the anvil's largest bend, %s at %s; bearings carry %s (operator side) and %s",
		small(b.MostMM), t.at(b.MostAt), newtons(b.OperatorN), newtons(b.DriveN)))...)
}

// at shows a place in mm in the shop's unit, to the millimetre or a tenth of an inch.
func (t *text) at(mm float64) string {
	if t.options.Unit == plan.Inches {
		return fmt.Sprintf("%.1f in", material.Inches(mm))
	}
	return fmt.Sprintf("%.0f mm", mm)
}

// small is a bend for people.
func small(mm float64) string { return fmt.Sprintf("%.3f mm (%.4f in)", mm, material.Inches(mm)) }

// tenths is the digit that tells how many tenths of the most a value is; nothing at
// all is a point.
func tenths(v, most float64) byte {
	if v <= 0 || most <= 0 {
		return '.'
	}
	return '0' + byte(min(int(10*v/most), 9))
}

// inMM is a length for formulas.
func inMM(l plan.Length) float64 { return float64(l) / float64(plan.Millimetre) }
