package pane

import (
	"slices"

	"bide/material"
	"bide/plan"
	"bide/plan/session/planning"
)

// DayUse is what the day, as far as it is worked out, makes of the holders. It is
// calculated once for each state of the forecast, when a pane first asks for it.
type DayUse struct {
	known   []*planning.Outcome
	planned []*plan.Step
	Holders []plan.Usage // by number from 0; none while nothing is known
	Pairs   []plan.Pair
	Steps   []int         // by turn: its step; -1 for a job that is refused
	Turns   []int         // by step: its turn
	knife   *material.Day // by step; nil until it is asked for
}

// AtKnife is what the present day sets at the knife, and what it does to the anvil.
func (d *Shared) AtKnife() *material.Day {
	u := d.Use()
	if u.knife == nil {
		u.knife = d.Shop.Knife(d.Forecast.Start.Positions, u.planned)
	}
	return u.knife
}

// Use is the present day's.
func (d *Shared) Use() *DayUse {
	if u := d.use; u != nil && slices.Equal(u.known, d.Forecast.Present.Known) {
		return u
	}
	u := &DayUse{known: slices.Clone(d.Forecast.Present.Known)}
	var steps []*plan.Step
	for index, o := range u.known {
		if len(o.Faults) > 0 {
			u.Steps = append(u.Steps, -1)
			continue
		}
		u.Steps, u.Turns = append(u.Steps, len(steps)), append(u.Turns, index)
		steps = append(steps, o.Step)
	}
	u.planned = steps
	u.Holders, u.Pairs = plan.Usages(steps), plan.Pairs(steps)
	d.use = u
	return u
}

// Step is a job's step; -1 when the job is refused or not yet worked out.
func (u *DayUse) Step(index int) int {
	if index < 0 || index >= len(u.Steps) {
		return -1
	}
	return u.Steps[index]
}

// Next is the job, by index, from the given one on for which a holder, by number, is to cut;
// -1 when there is none.
func (u *DayUse) Next(number, index int) int {
	if number > len(u.Holders) {
		return -1
	}
	for t := index; t < len(u.Steps); t++ {
		if s := u.Steps[t]; s >= 0 {
			if next := u.Holders[number-1].Next(s); next >= 0 {
				return u.Turns[next]
			}
			return -1
		}
	}
	return -1
}

// NeverCut are the numbers of the holders that the day leaves idle throughout, once all
// of it is known.
func (d *Shared) NeverCut() (out []int) {
	if !d.Forecast.Present.Whole() {
		return nil
	}
	for i := range d.Use().Holders {
		if d.use.Holders[i].Never() {
			out = append(out, i+1)
		}
	}
	return out
}
