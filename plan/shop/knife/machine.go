package knife

import (
	"slices"
	"strings"

	"bide/material"
	"bide/plan"
)

// machine is the beam as settings depend on it.
func (e *Equipment) machine() material.Machine {
	if e.Beam == nil {
		return material.Machine{}
	}
	a := e.Beam.Supply
	m := material.Machine{Cylinder: material.Cylinder{
		AreaMM2: a.Area, BoreMM: InMM(a.Bore), RoomMM: InMM(a.Room), Pistons: a.Pistons,
		SupplyBar: a.SupplyBar, MarginBar: a.MarginBar, MostPistons: a.MostPistons, MostAreaMM2: a.MostArea,
	}, Limits: e.Limits}
	if e.Anvil != nil {
		m.AnvilMM, m.AnvilHRC = InMM(e.Anvil.Diameter), e.Anvil.HardnessHRC
	}
	return m
}

// InMM is a length for formulas.
func InMM(l plan.Length) float64 { return float64(l) / float64(plan.Millimetre) }

// Settings is what is set at the knife for a job; nil where its material is in no
// table, or the beam's own numbers are missing.
func (e *Equipment) Settings(j *plan.Job) *material.Settings {
	return e.settingsOf(j.Material, e.runOf(j))
}

// laidSettings is what is set for a planned step, whose layout is known.
func (e *Equipment) laidSettings(step *plan.Step) *material.Settings {
	run := e.runOf(step.Job)
	run.Laid = e.Laid(step.Job, step.Layout.Trim)
	return e.settingsOf(step.Job.Material, run)
}

// shares are the parts of a web's narrowing that its operator side takes.
var shares = map[plan.Guide]float64{plan.GuideCentre: 0.5, plan.GuideOperator: 0, plan.GuideDrive: 1}

// Laid is a job's layout with that trim on its web, for formulas.
func (e *Equipment) Laid(j *plan.Job, trim [2]plan.Length) *material.Laid {
	l := &material.Laid{OperatorMM: InMM(trim[0]), DriveMM: InMM(trim[1]), OperatorShare: shares[e.Beam.Guide]}
	if TrimOf(j) > 0 {
		l.LeastMM = InMM(j.Trim)
	}
	return l
}

// runOf is what a job runs, for formulas.
func (e *Equipment) runOf(j *plan.Job) material.Run {
	r := material.Run{
		Speed: j.Speed, Metres: j.Metres, WebMM: InMM(j.Web),
		Roll: material.Roll{Metres: j.Roll.Metres, DiameterMM: InMM(j.Roll.Diameter), CoreMM: InMM(j.Roll.Core)},
	}
	if e.Beam != nil && e.Beam.Line.Ramps() {
		r.RampedS, r.Legs = j.Run.Web.Seconds(), j.Run.Legs
	}
	for _, e := range j.Entries {
		if slit := (material.Slit{FinishedMM: InMM(e.Finished), CutMM: InMM(e.Width)}); !slices.Contains(r.Slits, slit) {
			r.Slits = append(r.Slits, slit)
		}
	}
	return r
}

func (e *Equipment) settingsOf(name string, run material.Run) *material.Settings {
	m, ok := e.Materials.Lookup(name)
	if !ok {
		return nil
	}
	out, err := material.SettingsFor(m, e.machine(), run)
	if err != nil { // no file can say so: every number has been held against its range
		return nil
	}
	return out
}

// Fitted is what settings have at each holder beside its blade: the wicking with its fluid,
// empty for none, and the pistons, none where they are the beam's own.
func Fitted(s *material.Settings) (wick string, pistons plan.Pistons) {
	if s == nil {
		return "", plan.Pistons{}
	}
	if w := s.Wicking; w.Wick != material.NoWick {
		wick = w.Wick.String() + ", " + w.Fluid
	}
	if a := s.Air; !a.Own && a.Pistons > 0 {
		pistons = plan.Pistons{Number: a.Pistons, Area: a.AreaMM2}
	}
	return wick, pistons
}

// Unset says why there are no settings for a job.
func (e *Equipment) Unset(j *plan.Job) string {
	m, ok := e.Materials.Lookup(j.Material)
	if !ok {
		return "its material is in no table"
	}
	if _, err := material.SettingsFor(m, e.machine(), e.runOf(j)); err != nil {
		return strings.ReplaceAll(err.Error(), "\n", "; ")
	}
	return ""
}

// LastRun is what was set for what the beam last ran, as far as that is known: nil
// where the material isn't, a speed of 0 and, where it isn't recorded, a pressure of 0.
func (e *Equipment) LastRun(now *plan.Positions) *material.Settings {
	m, ok := e.Materials.Lookup(now.Material)
	if !ok {
		return nil
	}
	out := e.settingsOf(now.Material, material.Run{Speed: m.SpeedMax})
	if out == nil {
		return nil
	}
	out.Speed.Speed, out.Air.SetBar = 0, now.SetBar
	if now.SetBar > 0 {
		out.Refused = ""
	}
	return out
}
