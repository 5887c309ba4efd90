package material

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// Machine is what a job's settings depend on beside its material.
type Machine struct {
	Cylinder Cylinder
	AnvilMM  float64 // diameter; 0 unknown
	AnvilHRC float64 // 0 unknown
	Limits   Limits
}

// Settings is all that is set at the knife for one job.
type Settings struct {
	Material  Material
	Limits    Limits // all of them, the shop's own or the usual
	Method    Advice
	Blade     BladeAdvice
	Air       Air    // zero where Refused
	Guessed   bool   // the cut-through force is the group's guess, no trial
	Unfound   bool   // no trial, and too thick for a guess: Air has the shop's pistons and no pressure
	Refused   string // why no pressure parts it, with the numbers; else empty
	Speed     SpeedAdvice
	Wicking   WickAdvice
	WearIndex float64 // of the tips, see Tip.WearIndex; 0 where the anvil isn't known
	Times     Times
	Wound     *Wound  // nil where length or thickness isn't known
	NeckIn    *NeckIn // nil where the material's elastic data aren't known
	Edges     *Edges  // of the layout at the knife; nil where that or NeckIn isn't known
	Lines     []Line
	Warnings  []string // what is wrong or unusual, one sentence or two each
	Cautions  []Caution
}

// SettingsFor works out a job's settings from its material on a machine and what it
// runs. A material that shouldn't be scored, or that no pressure parts, has
// settings too, with the warning or the refusal. Errors name every number that is
// out of reason.
func SettingsFor(m Material, on Machine, run Run) (*Settings, error) {
	g, err := m.group()
	if err != nil {
		return nil, err
	}
	s := &Settings{Material: m, Limits: on.Limits.OrUsual()}
	var errs [7]error
	s.Method, errs[0] = Advise(m, s.Limits)
	s.Blade, errs[1] = AdviseBlade(m, on.AnvilHRC)
	s.Speed, errs[2] = AdviseSpeed(run.Speed, m.SpeedMax, s.Limits)
	s.Wicking, errs[3] = AdviseWicking(m)
	s.Cautions, errs[4] = Cautions(m)
	errs[5] = s.press(g, on.Cylinder)
	if errs[1] == nil && errs[5] == nil {
		errs[6] = s.wear(on.AnvilMM)
	}
	if err := errors.Join(errs[:]...); err != nil {
		return nil, err
	}
	s.gatherWarnings(on.Cylinder)
	s.runs(run, on)
	s.Lines = s.lines(g, on, run)
	return s, nil
}

// runs works out the run, the finished roll and the neck-in. What can't be so is a
// warning: the knife is set all the same.
func (s *Settings) runs(run Run, on Machine) {
	var errs [3]error
	s.Wound, errs[0] = run.wind(s.Material.ThicknessMM, s.Limits)
	s.Times, errs[1] = run.times(on)
	s.NeckIn, errs[2] = s.Material.neckIn()
	for i, what := range []string{"finished roll", "run time", "neck-in"} {
		if errs[i] != nil {
			s.Warnings = append(s.Warnings, fmt.Sprintf("Its %s can't be calculated: %v.", what, strings.ReplaceAll(errs[i].Error(), "\n", "; ")))
		}
	}
	if s.NeckIn != nil && run.Laid != nil && run.WebMM > 0 {
		e := s.NeckIn.Edges(run.WebMM, *run.Laid)
		s.Edges = &e
		if text := e.warn(run.WebMM, *run.Laid, s.Limits); text != "" {
			s.Warnings = append([]string{text}, s.Warnings...)
		}
	}
	if w := s.Wound; w != nil && !w.Whole && w.DiameterMM > s.Limits.RollMM {
		s.Warnings = append(s.Warnings, fmt.Sprintf("A finished roll of %s is larger than the usual %s%s: check its thickness and length.",
			lengths(w.DiameterMM, 0), lengths(s.Limits.RollMM, 0), limitFrom(s.Limits.RollMM, usual.RollMM)))
	}
	if w := s.Wound; w != nil && w.Metres > run.Metres*(1+1e-9) {
		s.Warnings = append(s.Warnings, fmt.Sprintf("The run of %s m is shorter than one finished roll of %s m.", trimmed(run.Metres, 1), trimmed(w.Metres, 1)))
	}
}

// press chooses pistons and pressure.
func (s *Settings) press(g Group, c Cylinder) error {
	if err := c.check(); err != nil {
		return err
	}
	force, guessed, err := cutForce(s.Material, g, c)
	if err != nil {
		return err
	}
	s.Guessed = guessed
	if s.Unfound = guessed && s.Material.ThicknessMM > s.Limits.ThicknessMM; s.Unfound {
		s.Air = Air{AreaMM2: c.AreaMM2, BoreMM: c.BoreMM, Pistons: c.Pistons, Own: true}
		return nil
	}
	if s.Air, err = ChooseAir(force, c); err != nil {
		s.Refused = err.Error()
		return nil
	}
	s.Air.round(c.SupplyBar)
	return nil
}

// round makes the pressure one that a gauge shows and a file keeps, in hundredths of
// a bar, and the force that of it, so that two jobs set alike are shown alike. Up,
// since what is set below cut-through doesn't cut.
func (a *Air) round(supply float64) {
	a.CutThroughBar = math.Round(a.CutThroughBar*1e6) / 1e6 // rounding errors of the sums
	const crumb = 1e-6                                      // their size, in hundredths of a bar
	bar := min(math.Ceil(a.SetBar*100-crumb)/100, supply)
	if bar > 0 {
		a.SetN *= bar / a.SetBar
		a.SetBar = bar
	}
}

// wear works out the tips' wear index under the force set.
func (s *Settings) wear(anvilMM float64) (err error) {
	if anvilMM == 0 || s.Air.SetN == 0 {
		return nil
	}
	s.WearIndex, err = Tip{UsualBladeMM, s.Blade.Tip, anvilMM}.WearIndex(s.Air.SetN)
	return err
}

// gatherWarnings puts the warnings of all parts together. The numbers have passed
// their checks already, so the checks here can't fail.
func (s *Settings) gatherWarnings(c Cylinder) {
	if s.Refused != "" {
		s.Warnings = append(s.Warnings, "Refused: "+s.Refused+".")
	}
	if s.Air.Why != "" {
		s.Warnings = append(s.Warnings, s.Air.Why+".")
	}
	s.Warnings = append(s.Warnings, s.Method.Warnings...)
	if m := s.Material; m.SiliconeFree && m.Adhesive == Silicone {
		s.Warnings = append(s.Warnings, "It must be free of silicone, and its adhesive is silicone: one of the two is wrong.")
	}
	thickness, _ := s.Limits.CheckThickness(s.Material.ThicknessMM)
	supply, _ := CheckSupply(c.SupplyBar)
	for _, text := range []string{supply, thickness, s.unfound(), s.margin(c)} {
		if text != "" {
			s.Warnings = append(s.Warnings, text)
		}
	}
	s.Warnings = append(s.Warnings, s.Blade.Warnings...)
	s.Warnings = append(s.Warnings, s.Speed.Warnings...)
}

// unfound says that no pressure is known, where that is so.
func (s *Settings) unfound() string {
	if !s.Unfound {
		return ""
	}
	return "No pressure is known: there is no trial, and it is too thick for a guess. Start low and find it by trial."
}

// muchForce is how many times the force that cuts may be set before the blade is blunted
// for nothing (common practice, no source).
const muchForce = 2.0

// margin says what is wrong with the margin above cut-through. It is in bar, so that large
// or many pistons make more force of it: where the usual margin would double the force, a
// smaller one is none to warn of.
func (s *Settings) margin(c Cylinder) string {
	a := s.Air
	if a.CutN > 0 && a.SetN > muchForce*a.CutN {
		return fmt.Sprintf("The margin of %s sets %.0f N, %.1f times the %.0f N that cut: more only blunts the blade. Try a smaller margin and prove it on the first-off.",
			bars(c.MarginBar), a.SetN, a.SetN/a.CutN, a.CutN)
	}
	text, _ := s.Limits.CheckMargin(c.MarginBar)
	if least := s.Limits.MarginLeastBar; c.MarginBar < least && a.CutN > 0 && a.CutThroughBar < least {
		return ""
	}
	return text
}
