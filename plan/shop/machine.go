package shop

import (
	"slices"
	"strings"

	"bide/material"
	"bide/plan"
)

// The largest piston and anvil that are taken: what is beyond is a slip of units.
var (
	boreRange  = plan.Span{From: plan.Millimetre / 10, To: 1000 * plan.Millimetre}
	anvilRange = plan.Span{From: plan.Millimetre, To: 10_000 * plan.Millimetre}
)

// machine is the beam as settings depend on it.
func (s *Shop) machine() material.Machine {
	if s.Beam == nil {
		return material.Machine{}
	}
	a := s.Beam.Supply
	m := material.Machine{Cylinder: material.Cylinder{BoreMM: inMM(a.Bore), Pistons: a.Pistons, SupplyBar: a.SupplyBar, MarginBar: a.MarginBar}}
	if s.Anvil != nil {
		m.AnvilMM, m.AnvilHRC = inMM(s.Anvil.Diameter), s.Anvil.HardnessHRC
	}
	m.RampUp, m.RampDown = s.Line.RampUp, s.Line.RampDown
	return m
}

// inMM is a length for formulas.
func inMM(l plan.Length) float64 { return float64(l) / float64(plan.Millimetre) }

// Settings is what is set at the knife for a job; nil where its material is in no
// table, or the beam's own numbers are missing.
func (s *Shop) Settings(j *plan.Job) *material.Settings {
	return s.settingsOf(j.Material, runOf(j))
}

// laidSettings is what is set for a planned step, whose layout is known.
func (s *Shop) laidSettings(step *plan.Step) *material.Settings {
	run := runOf(step.Job)
	run.Laid = s.laid(step.Job, step.Layout.Trim)
	return s.settingsOf(step.Job.Material, run)
}

// shares are the parts of a web's narrowing that its operator side takes.
var shares = map[plan.Guide]float64{plan.GuideCentre: 0.5, plan.GuideOperator: 0, plan.GuideDrive: 1}

// laid is a job's layout with that trim on its web, for formulas.
func (s *Shop) laid(j *plan.Job, trim [2]plan.Length) *material.Laid {
	l := &material.Laid{OperatorMM: inMM(trim[0]), DriveMM: inMM(trim[1]), OperatorShare: shares[s.Beam.Guide]}
	if trimOf(j) > 0 {
		l.LeastMM = inMM(j.Trim)
	}
	return l
}

// runOf is what a job runs, for formulas.
func runOf(j *plan.Job) material.Run {
	r := material.Run{
		Speed: j.Speed, Metres: j.Metres, WebMM: inMM(j.Web),
		Roll: material.Roll{Metres: j.Roll.Metres, DiameterMM: inMM(j.Roll.Diameter), CoreMM: inMM(j.Roll.Core)},
	}
	for _, e := range j.Entries {
		if slit := (material.Slit{FinishedMM: inMM(e.Finished), CutMM: inMM(e.Width)}); !slices.Contains(r.Slits, slit) {
			r.Slits = append(r.Slits, slit)
		}
	}
	return r
}

func (s *Shop) settingsOf(name string, run material.Run) *material.Settings {
	m, ok := s.Materials.Lookup(name)
	if !ok {
		return nil
	}
	out, err := material.SettingsFor(m, s.machine(), run)
	if err != nil { // no file can say so: every number has been held against its range
		return nil
	}
	return out
}

// Unset tells why there are no settings for a job.
func (s *Shop) Unset(j *plan.Job) string {
	m, ok := s.Materials.Lookup(j.Material)
	if !ok {
		return "its material is in no table"
	}
	if _, err := material.SettingsFor(m, s.machine(), runOf(j)); err != nil {
		return strings.ReplaceAll(err.Error(), "\n", "; ")
	}
	return ""
}

// lastRun is what was set for what the beam last ran, as far as that is known: nil
// where the material isn't, a speed of 0 and, where it isn't recorded, a pressure of 0.
func (s *Shop) lastRun(now *plan.Standing) *material.Settings {
	m, ok := s.Materials.Lookup(now.Material)
	if !ok {
		return nil
	}
	out := s.settingsOf(now.Material, material.Run{Speed: m.SpeedMax})
	if out == nil {
		return nil
	}
	out.Speed.Speed, out.Air.SetBar = 0, now.SetBar
	if now.SetBar > 0 {
		out.Refused = ""
	}
	return out
}
