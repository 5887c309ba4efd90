package shop

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// dayNotes says what was taken for jobs that leave it open, and which run faster
// than their material should.
func dayNotes(d *toml.Document, entries []*toml.Table, jobs []plan.Job, materials material.Table) (notes []string) {
	var trim, speed, fast []string
	for i, j := range jobs {
		if j.State == plan.Done || j.State == plan.OnHold {
			continue
		}
		if !entries[i].Has("trim") && knife.TrimOf(&j) > 0 {
			trim = append(trim, j.ID)
		}
		m, ok := materials.Lookup(j.Material)
		switch {
		case !ok:
		case !entries[i].Has("speed"):
			speed = append(speed, j.ID+" "+showSpeed(j.Speed, d.Unit))
		case j.Speed > m.SpeedMax+0.05: // m/min; people round ft/min
			fast = append(fast, fmt.Sprintf("%s %s (%s: %s)", j.ID, showSpeed(j.Speed, d.Unit), j.Material, showSpeed(m.SpeedMax, d.Unit)))
		}
	}
	note := func(what string, of []string) {
		if len(of) > 0 {
			notes = append(notes, d.File+": "+what+": "+some(of))
		}
	}
	note("jobs without trim have a least edge trim of "+d.Unit.Show(defaultTrim), trim)
	note("jobs without speed run at their material's speed_max", speed)
	note("jobs faster than their material's speed_max", fast)
	return notes
}

// some lists words, not too many of them.
func some(words []string) string {
	const most = 12
	if more := len(words) - most; more > 0 {
		words = append(words[:most:most], fmt.Sprintf("and %d more", more))
	}
	return strings.Join(words, ", ")
}

// positionsNotes say what the positions leave open.
func positionsNotes(now *plan.Positions, materials material.Table) (notes []string) {
	if now.Assumed {
		notes = append(notes, positionsFile+" is missing: positions are assumed evenly spaced over the rail; measure before moving any holder")
	}
	if now.Begun != nil {
		notes = append(notes, fmt.Sprintf("the beam is being set up for %s: %s made so far", now.Begun.Job, words.Count(len(now.Begun.Made), "move")))
	}
	if now.Job == "" || now.Material == "" {
		notes = append(notes, "it is not known what the beam last ran: the first changeover counts rethreading and no clean-down")
	}
	if _, ok := materials.Lookup(now.Material); now.Material != "" && !ok {
		notes = append(notes, fmt.Sprintf("%s: material %s, which the beam last ran, is in no table: its settings are not known, and it counts as not free of silicone", positionsFile, words.Quoted(now.Material)))
	}
	unknown := len(now.At)
	for _, b := range now.Blades {
		if b.Known() {
			unknown--
		}
	}
	if unknown > 0 {
		notes = append(notes, fmt.Sprintf("the blades of %d holders are not known: each counts as a swap before it cuts", unknown))
	}
	return notes
}
