package shop

import (
	"fmt"
	"math"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
)

// knifeNotes says which jobs of the day ask at the knife for what is unusual, or for what
// the beam hasn't: one line for each kind.
func knifeNotes(e *knife.Equipment, day *plan.Day) (notes []string) {
	if e.Beam == nil {
		return nil
	}
	for _, kind := range knifeKinds {
		var of []string
		for i := range day.Jobs {
			j := &day.Jobs[i]
			if j.State == plan.Done || j.State == plan.OnHold {
				continue
			}
			if on := e.Settings(j); on != nil {
				if text := kind.tell(e, j, on); text != "" {
					of = append(of, fmt.Sprintf("%s (%s)", j.ID, text))
				}
			}
		}
		if len(of) > 0 {
			notes = append(notes, dayFile+": "+kind.what+": "+some(of))
		}
	}
	return notes
}

// knifeKinds are what is noted of jobs, the most harmful first; tell is empty for a job
// that is well.
var knifeKinds = []struct {
	what string
	tell func(*knife.Equipment, *plan.Job, *material.Settings) string
}{
	{"jobs whose outer cuts may be off their web, which tension makes narrower, or with little trim (a wider web or less tension helps)", edgeNote},
	{"jobs thicker than holders and blades cut", func(_ *knife.Equipment, _ *plan.Job, on *material.Settings) string {
		if on.Material.ThicknessMM <= on.Limits.ThicknessMM {
			return ""
		}
		return fmt.Sprintf("%g mm of %g", on.Material.ThicknessMM, on.Limits.ThicknessMM)
	}},
	{"jobs whose material should not be scored, and is planned all the same", func(_ *knife.Equipment, j *plan.Job, on *material.Settings) string {
		if on.Method.Score != material.Poor {
			return ""
		}
		return fmt.Sprintf("%s, best by %s", j.Material, on.Method.Method)
	}},
	{"jobs that bend the anvil further than its max_bend, centred (fewer blades at once, or a stiffer roll)", bendNote},
	{"jobs needing other pistons than fitted (no time is counted for fitting them)", func(_ *knife.Equipment, _ *plan.Job, on *material.Settings) string {
		if on.Air.Own || on.Refused != "" {
			return ""
		}
		return on.Air.Fitted()
	}},
	{"jobs whose blade is outside what is usual for their group", func(_ *knife.Equipment, _ *plan.Job, on *material.Settings) string {
		return on.Blade.Unusual()
	}},
	{"jobs with finished rolls larger than usual (is thickness_mm right, or roll_m missing?)", func(_ *knife.Equipment, _ *plan.Job, on *material.Settings) string {
		if on.Wound == nil || on.Wound.Whole || on.Wound.DiameterMM <= on.Limits.RollMM {
			return ""
		}
		return fmt.Sprintf("%.0f mm", on.Wound.DiameterMM)
	}},
}

// edgeNote says how wide a job's web is at the knife, and what trim may be left there in
// any layout that the job allows.
func edgeNote(q *knife.Equipment, j *plan.Job, on *material.Settings) string {
	all := knife.TrimOf(j)
	if on.NeckIn == nil || all < 0 {
		return ""
	}
	least := [2]plan.Length{all / 2, all - all/2}
	if j.Shift == plan.Free && all > 0 {
		least = [2]plan.Length{j.Trim, j.Trim}
	}
	l := q.Laid(j, least)
	e := on.NeckIn.Edges(knife.InMM(j.Web), *l)
	if !e.Short(l.LeastMM, q.Limits) {
		return ""
	}
	u := q.Unit
	return fmt.Sprintf("%s instead of %s at the knife, its trim down to %s on the operator side, %s on the drive side",
		u.Show(fromMM(e.WebMM)), u.Show(j.Web), u.Show(fromMM(e.OperatorMM)), u.Show(fromMM(e.DriveMM)))
}

// bendNote says how far a job that lies centred bends the anvil, where that is too much.
func bendNote(q *knife.Equipment, j *plan.Job, on *material.Settings) string {
	if knife.TrimOf(j) < 0 {
		return ""
	}
	b, _ := q.Bend(on, q.Beam.Lay(j, j.Slits(), 0).Cuts)
	if b == nil || b.Past() == "" {
		return ""
	}
	return fmt.Sprintf("%.3f mm of %g mm", b.MostMM, b.Anvil.LimitMM)
}

// fromMM is a length of a formula, for people: to a hundredth of a millimetre.
func fromMM(mm float64) plan.Length {
	const parts = 100
	return plan.Length(math.Round(mm*parts)) * (plan.Millimetre / parts)
}
