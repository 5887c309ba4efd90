package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"slices"
	"time"
)

// Slipping is a planned day that a job is to be slipped into: what is planned
// without it.
type Slipping struct {
	*plan.DayPlan           // its turns, each planned on its own or as a search gave them
	Clock         time.Time // when its first setup begins
	Job           *plan.Job
}

// In is the day with the job at one gap: gap g is before turn g, len(Turns) is behind
// the last. The turns before the gap stay as they are; those behind are planned on
// from it one by one, as Resume plans them. Jobs that can't be set, the job itself or
// ones behind it, are refused.
//
// It is what the day costs at first sight: settled it is never worse. It takes one
// changeover for the job and one for each turn behind the gap.
func (s *Slipping) In(p *changeover.Planner, gap int) *plan.DayPlan {
	day := *s.DayPlan
	day.Turns, day.Floor = slices.Insert(slices.Clone(s.Turns), gap, plan.Turn{Job: s.Job}), nil
	now, clock := s.Start, s.Clock
	for i := range day.Turns {
		t, stands := &day.Turns[i], now
		switch {
		case i > gap && t.Refused(): // as it was
			continue
		case i >= gap:
			*t, stands = p.Resume(now, clock, t.Job)
		case !t.Refused():
			stands = now.After(t.Step)
		}
		if !t.Refused() {
			now, clock = stands, t.Step.RunEnd
		}
	}
	day.Totals = plan.TotalsOf(day.Turns)
	return &day
}
