package plan

import (
	"slices"
	"time"
)

// Difference is what a day costs against another one: the same day with a job elsewhere, or
// without it.
type Difference struct {
	Totals      Totals        // of the day
	Setup       time.Duration // more than in the other; below 0 where it is less
	Repositions int           // more
	Late        []*Job        // jobs that are late and are not in the other
	LateBy      time.Duration // lateness more, all jobs together
	Refused     []Turn        // jobs that can't be set, and could in the other or aren't in it
	Broken      []Breach      // rules that its order breaks
}

// Against is what the day costs against another one.
func (d *DayPlan) Against(now *DayPlan) Difference {
	out := Difference{
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
func (s Difference) Better(o Difference, aim Aim) bool {
	if a, b := len(s.Broken)+len(s.Refused), len(o.Broken)+len(o.Refused); a != b {
		return a < b
	}
	cost := func(s Difference) Score { return Score{Late: s.LateBy, Setup: s.Setup, Repositions: s.Repositions} }
	return cost(s).Compare(cost(o), aim) < 0
}
