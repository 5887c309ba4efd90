package shop

import (
	"fmt"
	"maps"
	"slices"

	"bide/plan"
	"bide/plan/shop/toml"
)

// Mark is the condition that positions.toml gives one holder. It goes before what
// beam.toml says of the holder, which is a file made by hand and stays as it is.
type Mark struct {
	Condition plan.Condition
	Reason    string // why, in a person's words; may be empty
}

// Marks are the marks of the positions by holder number, from 1. A holder without a
// mark is in the condition that beam.toml gives it.
type Marks map[int]Mark

// readMark reads the condition of one [[holder]] of positions.toml.
func readMark(t *toml.Table, number int, marks Marks) {
	if t.Has("why") && !t.Has("condition") {
		t.Refuse("why", "add "+t.Example("condition")+", or delete why", "a reason without a condition")
	}
	if !t.Has("condition") {
		return
	}
	m := Mark{plan.Condition(t.Choice("condition", conditions()...)), t.Text("why", "")}
	if number > 0 {
		marks[number] = m
	}
}

// conditions are the words for the conditions of a holder, in their order.
func conditions() []string {
	return []string{plan.Good.String(), plan.NoCut.String(), plan.Stuck.String(), plan.Out.String()}
}

// Marked is the shop's beam with these marks over the conditions of beam.toml. It
// is a beam of its own: plans that run with another one aren't disturbed.
func (s *Shop) Marked(marks Marks) *plan.Beam {
	b := *s.Beam
	b.Holders = slices.Clone(s.Conditions)
	if s.Conditions == nil { // a shop that was not read from files
		b.Holders = slices.Clone(s.Beam.Holders)
	}
	for number, m := range marks {
		if number >= 1 && number <= len(b.Holders) {
			b.Holders[number-1] = m.Condition
		}
	}
	return &b
}

// notes says which holders are marked otherwise than in beam.toml.
func (m Marks) notes(fixed []plan.Condition) []string {
	var told []string
	for _, n := range slices.Sorted(maps.Keys(m)) {
		if n > len(fixed) || m[n].Condition == fixed[n-1] {
			continue
		}
		text := fmt.Sprintf("%d %s", n, m[n].Condition)
		if m[n].Reason != "" {
			text += " (" + m[n].Reason + ")"
		}
		told = append(told, text)
	}
	if len(told) == 0 {
		return nil
	}
	return []string{positionsFile + " has holders in another condition than " + beamFile + ": " + some(told)}
}
