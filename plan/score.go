package plan

import (
	"cmp"
	"time"
)

// Aim is what a day is planned for, once nothing can be less late.
type Aim uint8

// The aims of a day.
const (
	AimMinutes Aim = iota // least setup time, then fewest repositions
	AimMoves              // fewest repositions, then least setup time
)

// String is the aim's word.
func (a Aim) String() string { return [...]string{"minutes", "moves"}[a] }

// Score is what a day is judged by.
type Score struct {
	Late        time.Duration
	LateJobs    int
	Setup       time.Duration
	Repositions int
	parked      int
	travel      Length
}

// Compare orders scores, the better first: lateness, then the aim, then the rest.
func (a Score) Compare(b Score, aim Aim) int {
	setup, moves := cmp.Compare(a.Setup, b.Setup), cmp.Compare(a.Repositions, b.Repositions)
	first, second := setup, moves
	if aim == AimMoves {
		first, second = moves, setup
	}
	return cmp.Or(cmp.Compare(a.Late, b.Late), cmp.Compare(a.LateJobs, b.LateJobs), first, second,
		cmp.Compare(a.parked, b.parked), cmp.Compare(a.travel, b.travel))
}

// Add counts a step in.
func (a *Score) Add(s *Step) {
	a.AddLate(s.Late)
	a.Setup += s.Setup.Total()
	a.Repositions += s.Changeover.Repositions
	a.parked += s.Changeover.Parked
	a.travel += s.Changeover.Travel
}

// AddLate counts a job's lateness in.
func (a *Score) AddLate(late time.Duration) {
	a.Late += late
	if late > 0 {
		a.LateJobs++
	}
}

// Plus adds two scores up.
func (a Score) Plus(b Score) Score {
	return Score{a.Late + b.Late, a.LateJobs + b.LateJobs, a.Setup + b.Setup, a.Repositions + b.Repositions, a.parked + b.parked, a.travel + b.travel}
}

// Minus is what a has beyond b.
func (a Score) Minus(b Score) Score {
	return Score{a.Late - b.Late, a.LateJobs - b.LateJobs, a.Setup - b.Setup, a.Repositions - b.Repositions, a.parked - b.parked, a.travel - b.travel}
}
