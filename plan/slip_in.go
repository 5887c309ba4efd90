package plan

import (
	"context"
	"slices"
	"time"
)

// Slipping is a planned day that a job is to be slipped into: what is planned
// without it.
type Slipping struct {
	*DayPlan           // its turns, each planned on its own or as a search gave them
	Clock    time.Time // when its first setup begins
	Job      *Job
}

// In is the day with the job at one gap: gap g is before turn g, len(Turns) is behind
// the last. The turns before the gap stay as they are; those behind are planned on
// from it one by one, as Resume plans them. Jobs that can't be set, the job itself or
// ones behind it, are refused.
//
// It is what the day costs at first sight: settled it is never worse. It takes one
// changeover for the job and one for each turn behind the gap.
func (s *Slipping) In(p *Planner, gap int) *DayPlan {
	day := *s.DayPlan
	day.Turns, day.Floor = slices.Insert(slices.Clone(s.Turns), gap, Turn{Job: s.Job}), nil
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
	day.Totals = Sum(day.Turns)
	return &day
}

// Settled is the day with the job at one gap, settled for the aim: what the day
// costs, to the second and the move, once the job has been dropped there and the day
// is planned together. It depends on the day, the job, the gap and the aim alone. The
// day as In gives it comes with it; settled is nil when the context is cancelled.
//
// It takes as long as In and Settle; a cancelled context ends it within a few rounds of
// that.
func (s *Slipping) Settled(ctx context.Context, p *Planner, gap int, aim Aim) (alone, settled *DayPlan) {
	alone = s.In(p, gap)
	if settled = Settle(ctx, alone, aim); ctx.Err() != nil {
		return alone, nil
	}
	return alone, settled
}

// Slip is what a day costs against another one: the same day with a job elsewhere, or
// without it.
type Slip struct {
	Totals      Totals        // of the day
	Setup       time.Duration // more than in the other; below nought where it is less
	Repositions int           // more
	Late        []*Job        // jobs that are late and are not in the other
	LateBy      time.Duration // lateness more, all jobs together
	Refused     []Turn        // jobs that can't be set, and could in the other or aren't in it
	Broken      []Breach      // rules that its order breaks
}

// Against is what the day costs against another one.
func (d *DayPlan) Against(now *DayPlan) Slip {
	out := Slip{
		Totals:      d.Totals,
		Setup:       d.Totals.Setup - now.Totals.Setup,
		Repositions: d.Totals.Repositions - now.Totals.Repositions,
		LateBy:      d.Totals.Late - now.Totals.Late,
		Broken:      Broken(d.Jobs(), d.Done),
	}
	late := map[string]bool{}
	for _, s := range now.Steps() {
		late[s.Job.ID] = s.Late > 0
	}
	for _, s := range d.Steps() {
		if s.Late > 0 && !late[s.Job.ID] {
			out.Late = append(out.Late, s.Job)
		}
	}
	before := now.Refused()
	for _, r := range d.Refused() {
		if !slices.ContainsFunc(before, func(o Turn) bool { return o.Job.ID == r.Job.ID }) {
			out.Refused = append(out.Refused, r)
		}
	}
	return out
}

// Better reports whether a day costs less than another, both against the same one: no
// rule broken and nothing refused first, then less late, then by the aim, then by the
// other of setup time and repositions.
func (s Slip) Better(o Slip, aim Aim) bool {
	if a, b := len(s.Broken)+len(s.Refused), len(o.Broken)+len(o.Refused); a != b {
		return a < b
	}
	cost := func(s Slip) score { return score{late: s.LateBy, setup: s.Setup, repositions: s.Repositions} }
	return cost(s).compare(cost(o), aim) < 0
}
