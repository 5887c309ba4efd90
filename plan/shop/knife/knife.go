package knife

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
)

// Knife joins the material's side to planned steps: for each what is set, what that
// changes against the step before (for the first, what the beam last ran), and what
// its blades do to the anvil; and the metres that the day's blades cut on each band of
// the anvil's face. It is worked out anew with each call, in time linear in the cuts.
func (e *Equipment) Knife(now *plan.Positions, steps []*plan.Step) *material.Day {
	out := &material.Day{Turns: make([]material.Turn, len(steps))}
	before, name := e.LastRun(now), now.Job
	if name == "" {
		name = now.Material
	}
	var cuts []material.Cut
	for i, step := range steps {
		t := &out.Turns[i]
		t.Settings = e.laidSettings(step)
		if before != nil {
			t.Before = name
		}
		if t.Settings != nil {
			t.Changes = changes(before, t.Settings, step.Setup.Swaps)
			t.Bending, t.Unbent = e.Bend(t.Settings, pressing(&step.Changeover))
		}
		own := material.Cuts(step.Job.Metres, pressing(&step.Changeover))
		t.Damaged, cuts = e.Damaged(own), append(cuts, own...)
		before, name = t.Settings, step.Job.ID
	}
	out.Face, out.Damaged = e.face(cuts), e.Damaged(cuts)
	if e.Anvil != nil && e.Anvil.Span > 0 {
		out.Rests = e.rests()
	}
	if e.Anvil == nil || e.Anvil.Face == (plan.Span{}) {
		out.Faced = faced
	}
	return out
}

// pressing is where blades press: the places of the holders that cut.
func pressing(c *plan.Changeover) (places []plan.Length) {
	for _, h := range c.Holders {
		if h.Use == plan.Cutting {
			places = append(places, h.At)
		}
	}
	return places
}

// changes are those of the settings, with the blades as the plan has them: a holder
// that rested keeps the blade of a job further back, so that the plan's swaps, not the
// job before, say how many are to be swapped.
func changes(before, after *material.Settings, swaps int) (out []material.Change) {
	blade := material.Change{ID: material.IDBlade, From: "other blades", To: fmt.Sprintf("%g degrees, tip %g mm", after.Blade.Bevel, after.Blade.Tip)}
	other := false
	for _, c := range material.Changes(before, after) {
		if c.ID == material.IDSpeed && before != nil && before.Speed.Speed == 0 { // no file has how fast it last ran
			continue
		}
		if c.ID == blade.ID {
			blade, other = c, true
			continue
		}
		out = append(out, c)
	}
	switch {
	case swaps > 0:
		blade.Do = fmt.Sprintf("swap %d of the holders that cut", swaps)
	case other && before != nil:
		blade.Do = "none to swap: the holders that cut carry it"
	case other:
		blade.Do = "look what the holders that cut carry"
	default:
		return out
	}
	return append([]material.Change{blade}, out...)
}

// Bend works out the anvil under blades that press alike at some places, or says why
// not.
func (e *Equipment) Bend(on *material.Settings, places []plan.Length) (*material.Bending, string) {
	switch {
	case e.Anvil == nil:
		return nil, "beam.toml has no [anvil]"
	case e.Anvil.Span == 0:
		return nil, "beam.toml has no span between the anvil's bearings"
	case on.Refused != "":
		return nil, "no pressure cuts the material"
	case on.Unfound:
		return nil, "no pressure is known"
	}
	b, err := e.bearings().Bend(material.Presses(on.Air.SetN, places))
	if err != nil {
		return nil, strings.ReplaceAll(err.Error(), "\n", "; ")
	}
	return b, ""
}

// bearings is the anvil on its bearings.
func (e *Equipment) bearings() material.Anvil {
	return material.Anvil{FromMM: InMM(e.Anvil.From(e.Beam.Web)), SpanMM: InMM(e.Anvil.Span), DiameterMM: InMM(e.Anvil.Diameter), BoreMM: InMM(e.Anvil.Bore), LimitMM: InMM(e.Anvil.MaxBend)}
}

// rests says how the bearings' places come about.
func (e *Equipment) rests() string {
	if at := e.Anvil.Bearing; at != nil {
		return fmt.Sprintf("its bearings are at %s and %s", e.Unit.Number(*at), e.Unit.Show(*at+e.Anvil.Span))
	}
	return "its bearings are assumed to be centred on the web area, since beam.toml has no bearing"
}

// faced says how the face's place comes about.
const faced = "the face is assumed to be the web area, since beam.toml has none"

// mostBands is how many bands the face is shown in at most: one a column of a picture.
const mostBands = 72

// hardened is the anvil's face, taken to be the web area where no file has it.
func (e *Equipment) hardened() plan.Span {
	if e.Anvil != nil && e.Anvil.Face != (plan.Span{}) {
		return e.Anvil.Face
	}
	return e.Beam.Web
}

// face adds up the cuts on the anvil's face in bands of a round width.
func (e *Equipment) face(cuts []material.Cut) *material.Face {
	face := e.hardened()
	f, err := material.Wear(int64(face.From), int64(face.To), int64(bandOf(face.Length(), e.Unit)), cuts)
	if err != nil {
		return nil
	}
	return f
}

// bandOf is the least round width of which no more than mostBands make a length.
func bandOf(long plan.Length, u plan.Unit) plan.Length {
	unit := plan.Millimetre
	if u == plan.Inches {
		unit = plan.Inch / 4
	}
	for size := unit; ; size *= 10 {
		for _, tenths := range []plan.Length{10, 20, 25, 50} {
			if band := size * tenths / 10; band*mostBands >= long {
				return band
			}
		}
	}
}
