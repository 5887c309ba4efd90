package workday

import (
	"slices"

	"bide/material"
	"bide/plan"
	"bide/plan/session/planning"
)

// Use is what the day, as far as it is worked out, makes of the holders. It is worked out
// once for each state of the day, when it is first asked for.
type Use struct {
	known   []*planning.Outcome
	planned []*plan.Step
	Holders []plan.Usage // by number from 0; none while nothing is known
	Pairs   []plan.Pair
	Steps   []int         // by turn: its step; -1 for a job that is refused
	Turns   []int         // by step: its turn
	knife   *material.Day // by step; nil until it is asked for
}

// Use is what the day of now makes of the holders.
func (v *View) Use() *Use {
	if slices.Equal(v.use.known, v.Present.Known) {
		return v.use
	}
	u := Use{known: slices.Clone(v.Present.Known)}
	for turn, o := range u.known {
		if o.Refused() {
			u.Steps = append(u.Steps, -1)
			continue
		}
		u.Steps, u.Turns = append(u.Steps, len(u.planned)), append(u.Turns, turn)
		u.planned = append(u.planned, o.Step)
	}
	u.Holders, u.Pairs = plan.Usages(u.planned), plan.Pairs(u.planned)
	*v.use = u
	return v.use
}

// Step is a job's step; -1 when the job is refused or not yet worked out.
func (u *Use) Step(turn int) int {
	if turn < 0 || turn >= len(u.Steps) {
		return -1
	}
	return u.Steps[turn]
}

// Next is the turn from the given one on for which a holder, by number, is to cut; -1 when
// there is none.
func (u *Use) Next(number, turn int) int {
	if number > len(u.Holders) {
		return -1
	}
	for t := turn; t < len(u.Steps); t++ {
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
func (v *View) NeverCut() (out []int) {
	if !v.Present.Whole() {
		return nil
	}
	for i, h := range v.Use().Holders {
		if h.Never() {
			out = append(out, i+1)
		}
	}
	return out
}

// AtKnife is what the day sets at the knife, and what it does to the anvil.
func (v *View) AtKnife() *material.Day {
	u := v.Use()
	if u.knife == nil {
		u.knife = v.Shop.Knife(v.Start.Positions, u.planned)
	}
	return u.knife
}

// KnifeFor is what is known of a job at the knife: of a job that is refused or not yet
// worked out, the settings alone; nil where its material is in no table.
func (v *View) KnifeFor(turn int) *material.Turn {
	if step := v.Use().Step(turn); step >= 0 {
		if k := &v.AtKnife().Turns[step]; k.Settings != nil {
			return k
		}
		return nil
	}
	if turn >= len(v.Jobs()) {
		return nil
	}
	s := v.Shop.Settings(v.Jobs()[turn])
	if s == nil {
		return nil
	}
	why := "the changeover is still being planned"
	if v.Refused(turn) {
		why = "the job is refused"
	}
	return &material.Turn{Settings: s, Unbent: why, Damaged: v.Shop.Damaged(nil)}
}
