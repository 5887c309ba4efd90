// Package verify holds a finished plan against the beam, the jobs and the positions alone,
// and works everything out again in its own plain way. It imports the model and nothing
// else, so a mistake of the planner, of layouts or of the clock can't hide itself here. It
// says whether a plan is possible and true in all that it says; that it is the best one is
// for the tests to show.
package verify

import (
	"errors"
	"fmt"
	"slices"

	"bide/plan"
)

// Plan checks a whole plan: every layout and changeover, the chain of positions
// from step to step, all times, the totals, and that no job comes twice. The error
// joins every violation, with job and numbers; nil when there is none. O(H log H)
// for each step of H holders.
func Plan(d *plan.DayPlan) error {
	if d == nil || d.Beam == nil || d.Start == nil {
		return errors.New("a plan without beam or positions")
	}
	v := &verifier{beam: d.Beam}
	v.day(d)
	return errors.Join(v.faults...)
}

// DayOf checks a whole plan like Plan, and that it plans or refuses each of
// the day's jobs that are waiting or running, once, from the day's start.
func DayOf(p *plan.DayPlan, d *plan.Day) error {
	err := Plan(p)
	if p == nil || p.Beam == nil || p.Start == nil {
		return err
	}
	v := &verifier{beam: p.Beam}
	v.covers(p, d)
	return errors.Join(append([]error{err}, v.faults...)...)
}

// Changeover checks one changeover from positions to a layout of the job.
// Without a job the layout is taken as it is and the changeover alone is checked.
// The error joins every violation, with numbers.
func Changeover(b *plan.Beam, j *plan.Job, from []plan.Length, l plan.Layout, c plan.Changeover) error {
	v := &verifier{beam: b}
	if j != nil {
		v.job = j.ID
		v.layout(j, l)
	}
	v.changeover(from, l, c)
	return errors.Join(v.faults...)
}

// verifier collects what is wrong with a plan on one beam.
type verifier struct {
	beam   *plan.Beam
	job    string // what is being looked at
	faults []error
}

// must records a violation unless it holds.
func (v *verifier) must(holds bool, format string, args ...any) bool {
	if !holds {
		fault := fmt.Errorf(format, args...)
		if v.job != "" {
			fault = fmt.Errorf("job %s: %w", v.job, fault)
		}
		v.faults = append(v.faults, fault)
	}
	return holds
}

// layout: the web by the guide line, the slits in an order the job allows, trim and
// shift within what it allows, cuts the exact sums.
func (v *verifier) layout(j *plan.Job, l plan.Layout) {
	left := v.webFrom(j.Web)
	v.must(v.beam.Web.From <= l.Web.From && l.Web.To <= v.beam.Web.To, "the web at %s to %s leaves the web area", mm(l.Web.From), mm(l.Web.To))
	v.must(l.Web == plan.Span{From: left, To: left + j.Web}, "the web runs at %s to %s instead of %s to %s",
		mm(l.Web.From), mm(l.Web.To), mm(left), mm(left+j.Web))
	v.must(arranged(j, l.Slits), "slits %v are not the job's in an order it allows", l.Slits)

	waste := j.Web
	for _, s := range l.Slits {
		v.must(s > 0, "a slit of %s", mm(s))
		waste -= s
	}
	v.must(waste >= 0, "the slits are %s wider than the web", mm(-waste))
	v.trim(j, l, waste)

	var cuts []plan.Length
	at := l.Web.From
	if waste > 0 {
		at += l.Trim[0]
		cuts = append(cuts, at)
	}
	for i, s := range l.Slits {
		at += s
		if waste > 0 || i < len(l.Slits)-1 {
			cuts = append(cuts, at)
		}
	}
	v.must(slices.Equal(cuts, l.Cuts), "cuts at %v instead of %v", l.Cuts, cuts)
}

// trim: both strips wide enough and adding up, and the shift they say.
func (v *verifier) trim(j *plan.Job, l plan.Layout, waste plan.Length) {
	if waste == 0 {
		v.must(l.Trim == [2]plan.Length{} && l.Shift == 0, "trim %v and shift %s where nothing is trimmed", l.Trim, mm(l.Shift))
		return
	}
	v.must(l.Trim[0]+l.Trim[1] == waste, "trim of %s and %s does not add up to %s", mm(l.Trim[0]), mm(l.Trim[1]), mm(waste))
	for _, t := range l.Trim {
		v.must(t > 0 && t >= j.Trim, "trim of %s where %s is the least", mm(t), mm(j.Trim))
	}
	v.must(l.Trim[0]-waste/2 == l.Shift, "shift of %s with %s of %s trimmed on the operator side", mm(l.Shift), mm(l.Trim[0]), mm(waste))
	v.must(j.Shift == plan.Free || l.Shift == 0, "shift of %s though the layout is to be centred", mm(l.Shift))
}

// webFrom is where a web of that width begins. The drive side gets the odd
// nanometre.
func (v *verifier) webFrom(width plan.Length) plan.Length {
	area := v.beam.Web
	switch v.beam.Guide {
	case plan.GuideOperator:
		return area.From
	case plan.GuideDrive:
		return area.To - width
	}
	beside := area.To - area.From - width
	return area.From + (beside-beside&1)/2
}

// arranged reports whether the slits are the job's, in an order that it allows.
func arranged(j *plan.Job, got []plan.Length) bool {
	var listed []plan.Length
	for _, e := range j.Entries {
		if e.Count < 1 {
			return false
		}
		listed = append(listed, slices.Repeat([]plan.Length{e.Width}, e.Count)...)
	}
	if len(listed) != len(got) {
		return false
	}
	switch j.Arrange {
	case plan.AsListed:
		return slices.Equal(listed, got)
	case plan.ByEntries:
		return entriesInAnyOrder(j.Entries, make([]bool, len(j.Entries)), got)
	}
	got = slices.Clone(got)
	slices.Sort(got)
	slices.Sort(listed)
	return slices.Equal(listed, got)
}

// entriesInAnyOrder reports whether the slits are the entries not yet used, one
// after the other in any order, each unbroken.
func entriesInAnyOrder(entries []plan.Entry, used []bool, slits []plan.Length) bool {
	if len(slits) == 0 {
		return true
	}
	tried := map[int]bool{} // counts of equal slits tried here
	for i, e := range entries {
		if used[i] || tried[e.Count] || e.Count > len(slits) || e.Width != slits[0] || !all(slits[:e.Count], e.Width) {
			continue
		}
		tried[e.Count] = true
		used[i] = true
		if entriesInAnyOrder(entries, used, slits[e.Count:]) {
			return true
		}
		used[i] = false
	}
	return false
}

// all reports whether every length is l.
func all(lengths []plan.Length, l plan.Length) bool {
	return !slices.ContainsFunc(lengths, func(x plan.Length) bool { return x != l })
}

// mm is a length in a fault: it is written out only where there is one.
type mm plan.Length

func (l mm) String() string { return plan.Length(l).MM() }
