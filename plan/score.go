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

// score is what a day is judged by.
type score struct {
	late        time.Duration
	lateJobs    int
	setup       time.Duration
	repositions int
	parked      int
	travel      Length
}

// compare orders scores, the better first: lateness, then the aim, then the rest.
func (a score) compare(b score, aim Aim) int {
	setup, moves := cmp.Compare(a.setup, b.setup), cmp.Compare(a.repositions, b.repositions)
	first, second := setup, moves
	if aim == AimMoves {
		first, second = moves, setup
	}
	return cmp.Or(cmp.Compare(a.late, b.late), cmp.Compare(a.lateJobs, b.lateJobs), first, second,
		cmp.Compare(a.parked, b.parked), cmp.Compare(a.travel, b.travel))
}

// add counts a step in.
func (a *score) add(s *Step) {
	a.tell(s.Late)
	a.setup += s.Setup.Total()
	a.repositions += s.Changeover.Repositions
	a.parked += s.Changeover.Parked
	a.travel += s.Changeover.Travel
}

// tell counts a job's lateness in.
func (a *score) tell(late time.Duration) {
	a.late += late
	if late > 0 {
		a.lateJobs++
	}
}

// plus adds two scores up.
func (a score) plus(b score) score {
	return score{a.late + b.late, a.lateJobs + b.lateJobs, a.setup + b.setup, a.repositions + b.repositions, a.parked + b.parked, a.travel + b.travel}
}

// minus is what a has beyond b.
func (a score) minus(b score) score {
	return score{a.late - b.late, a.lateJobs - b.lateJobs, a.setup - b.setup, a.repositions - b.repositions, a.parked - b.parked, a.travel - b.travel}
}
