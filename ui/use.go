package ui

import (
	"slices"

	"bide/material"
	"bide/plan"
	"bide/plan/session/planning"
)

// dayUse is what the day, as far as it is worked out, makes of the holders. It is
// reckoned once for each state of the forecast, when a pane first asks for it.
type dayUse struct {
	known   []*planning.Outcome
	planned []*plan.Step
	holders []plan.Usage // by number from 0; none while nothing is known
	pairs   []plan.Pair
	steps   []int         // by turn: its step; -1 for a job that is refused
	turns   []int         // by step: its turn
	knife   *material.Day // by step; nil until it is asked for
}

// atKnife is what the present day sets at the knife, and what it does to the anvil.
func (d *desk) atKnife() *material.Day {
	u := d.use()
	if u.knife == nil {
		u.knife = d.Shop.Knife(d.Forecast.Start.Positions, u.planned)
	}
	return u.knife
}

// use is the present day's.
func (d *desk) use() *dayUse {
	if u := d.used; u != nil && slices.Equal(u.known, d.Forecast.Present.Known) {
		return u
	}
	u := &dayUse{known: slices.Clone(d.Forecast.Present.Known)}
	var steps []*plan.Step
	for turn, o := range u.known {
		if len(o.Faults) > 0 {
			u.steps = append(u.steps, -1)
			continue
		}
		u.steps, u.turns = append(u.steps, len(steps)), append(u.turns, turn)
		steps = append(steps, o.Step)
	}
	u.planned = steps
	u.holders, u.pairs = plan.Usages(steps), plan.Pairs(steps)
	d.used = u
	return u
}

// step is a turn's step; -1 when the job is refused or not yet worked out.
func (u *dayUse) step(turn int) int {
	if turn < 0 || turn >= len(u.steps) {
		return -1
	}
	return u.steps[turn]
}

// next is the turn from the given one on in which a holder, by number, is to cut;
// -1 when there is none.
func (u *dayUse) next(number, turn int) int {
	if number > len(u.holders) {
		return -1
	}
	for t := turn; t < len(u.steps); t++ {
		if s := u.steps[t]; s >= 0 {
			if next := u.holders[number-1].Next(s); next >= 0 {
				return u.turns[next]
			}
			return -1
		}
	}
	return -1
}

// never are the numbers of the holders that the day leaves idle throughout, once all
// of it is known.
func (d *desk) never() (out []int) {
	if !d.Forecast.Present.Whole() {
		return nil
	}
	for i := range d.use().holders {
		if d.used.holders[i].Never() {
			out = append(out, i+1)
		}
	}
	return out
}
