package journal

import (
	"maps"

	"bide/plan"
	"bide/plan/shop"
)

// Actual is what is really at the beam, as far as anyone has reported.
type Actual struct {
	Positions *plan.Positions
	Marks     shop.Marks
}

// Marked is what is at the beam with a holder in another condition. One that is as beam.toml
// has it needs no mark.
func (t Actual) Marked(number int, mark shop.Mark, s *shop.Shop) Actual {
	marks := maps.Clone(t.Marks)
	if marks == nil {
		marks = shop.Marks{}
	}
	marks[number] = mark
	fixed := s.Conditions
	if fixed == nil {
		fixed = s.Beam.Holders
	}
	if mark.Condition == fixed[number-1] && mark.Reason == "" {
		delete(marks, number)
	}
	stands := *t.Positions
	return Actual{&stands, marks}
}
