package workday

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/shop"
	"bide/plan/words"
)

// Editor changes the jobs of a day, as a person wishes it.
type Editor struct{ *Day }

// Fix fixes a job to the turn that it has, or frees it.
func (d Editor) Fix(j *plan.Job) {
	if j.Fixed != 0 {
		d.alter(j, "fixed", j.ID+" is free in the sequence", fixedAs(j)+" again", func(j *plan.Job) { j.Fixed = 0 })
		return
	}
	at := slices.Index(d.Jobs(), j)
	if d.Refused(at) {
		d.Say("the beam can't run %s: it has no number in the sequence", j.ID)
		return
	}
	next := *j
	next.Fixed = d.Number(at)
	d.alter(j, "fixed", fixedAs(&next), j.ID+" is free in the sequence again", func(j *plan.Job) { j.Fixed = next.Fixed })
}

// fixedAs says at which number a job is fixed.
func fixedAs(j *plan.Job) string {
	if j.Fixed < 0 {
		return j.ID + " is fixed as the last job"
	}
	return fmt.Sprintf("%s is fixed at number %d", j.ID, j.Fixed)
}

// shifts are the shift rules in words.
var shifts = [...]string{plan.Centred: "runs centred", plan.Free: "may shift inside its trim"}

// SetShift gives or takes the permission to shift the layout inside its trim.
func (d Editor) SetShift(j *plan.Job) {
	next := (j.Shift + 1) % plan.ShiftRule(len(shifts))
	d.alter(j, "", j.ID+" "+shifts[next], j.ID+" "+shifts[j.Shift]+" again", func(j *plan.Job) { j.Shift = next })
}

// Arranges are the arrangement rules in words.
var Arranges = [...]string{
	plan.AsListed:   "slit order fixed",
	plan.ByEntries:  "slit groups may be reordered",
	plan.AnyArrange: "slits may be in any order",
}

// SetArrange gives the next permission to arrange the slits.
func (d Editor) SetArrange(j *plan.Job) {
	next := (j.Arrange + 1) % plan.Arrange(len(Arranges))
	d.alter(j, "", j.ID+": "+Arranges[next], j.ID+": "+Arranges[j.Arrange]+" again", func(j *plan.Job) { j.Arrange = next })
}

// Replan forgets the layout that a search chose for a job.
func (d Editor) Replan(j *plan.Job) {
	if j.Chosen == nil {
		d.Say("%s keeps no layout from a search: there is nothing to replan", j.ID)
		return
	}
	d.alter(j, "", j.ID+" is replanned", j.ID+" has its layout from the search again", func(j *plan.Job) { j.Chosen = nil })
}

// ReplanAll forgets the layouts that searches chose; the picked job stays so.
func (d Editor) ReplanAll(picked *plan.Job) {
	all, n := slices.Clone(d.Now.All), 0
	for i, j := range all {
		if j.Chosen == nil {
			continue
		}
		next := *j
		next.Chosen = nil
		d.stems[&next] = d.Origin(j)
		all[i], n = &next, n+1
	}
	if n == 0 {
		d.Say("no job keeps a layout from a search: there is nothing to replan")
		return
	}
	next := draft.New(all, d.Now.Aim)
	next.About, next.Did, next.Back = picked.ID, words.Count(n, "job")+" replanned", "the layouts from the search are kept again"
	d.do(next)
}

// MarkRunning marks a job as the one that runs, which comes first, or takes the mark
// away.
func (d Editor) MarkRunning(j *plan.Job) {
	if j.State == plan.Running {
		d.becomes(j, j.ID+" waits again", draft.ProgressOf(j).To(plan.Waiting))
		return
	}
	runs := draft.ProgressOf(j).To(plan.Running)
	runs.Began = d.Start.Clock.At
	next, ok := d.altered(j, "state", runs.In)
	if !ok {
		return
	}
	now := d.Now.With(j, next)
	at := slices.Index(now.Jobs, next)
	now = now.Ordered(slices.Insert(slices.Delete(slices.Clone(now.Jobs), at, at+1), 0, next))
	now.About, now.Did = j.ID, j.ID+" is running, and comes first"
	d.do(now)
}

// becomes lets a job have come that far.
func (d Editor) becomes(j *plan.Job, did string, is draft.Progress) { d.alter(j, "", did, "", is.In) }

// Hold puts a job on hold.
func (d Editor) Hold(j *plan.Job) {
	d.becomes(j, j.ID+" is on hold", draft.ProgressOf(j).To(plan.OnHold))
}

// BringBack lets a job that is done or set aside wait again.
func (d Editor) BringBack(j *plan.Job) {
	d.becomes(j, j.ID+" is back", draft.ProgressOf(j).To(plan.Waiting))
}

// Remove takes a job out of the day, and out of what others wait for.
func (d Editor) Remove(j *plan.Job) {
	all := slices.DeleteFunc(slices.Clone(d.Now.All), func(other *plan.Job) bool { return other == j })
	next := draft.New(d.rebuilt(all, func(jobs []plan.Job) []plan.Job { return shop.Released(jobs, j.ID) }), d.Now.Aim)
	next.Given, next.About, next.Did = d.Now.Given, j.ID, j.ID+" is removed from the day ("+d.Screen.KeyOf(ToUndo)+" brings it back)"
	next.Back = j.ID + " is back in the day"
	d.do(next)
}

// OrderAfter lets a job come after another, or no more.
func (d Editor) OrderAfter(j, before *plan.Job) (now *plan.Job) {
	text, back := fmt.Sprintf("%s is to come after %s", j.ID, before.ID), fmt.Sprintf("%s need not come after %s", j.ID, before.ID)
	ids := append(slices.Clone(j.After), before.ID)
	if slices.Contains(j.After, before.ID) {
		text, back = back, text+" again"
		ids = slices.DeleteFunc(ids, func(id string) bool { return id == before.ID })
	}
	d.alter(j, "after", text, back, func(j *plan.Job) { j.After = ids })
	return d.Now.Find(j.ID)
}

// alter changes one job, if the checks of the file have nothing against what the
// key then says; did is what was done, back what is so once it is undone.
func (d Editor) alter(j *plan.Job, key, did, back string, change func(*plan.Job)) {
	next, ok := d.altered(j, key, change)
	if !ok {
		return
	}
	now := d.Now.With(j, next)
	now.About, now.Did, now.Back = j.ID, did, back
	d.do(now)
}

// altered is the job changed, without the layout that was chosen for it if it is to be
// laid out otherwise; false when the checks have something against it, which
// is said.
func (d Editor) altered(j *plan.Job, key string, change func(*plan.Job)) (*plan.Job, bool) {
	next := *j
	change(&next)
	if !next.LaidLike(j) {
		next.Chosen = nil
	}
	_, problems := d.ReadJob(d.Shop.Typed(&next), j)
	for _, p := range problems {
		if p.Key == key && !p.Refused {
			d.Say("%s can't be changed so: %s; %s", j.ID, p.What, p.Remedy)
			return nil, false
		}
	}
	d.stems[&next] = d.Origin(j)
	return &next, true
}

// rebuilt are the jobs after a change to what they come after; those that it leaves
// alone stay the same.
func (d Editor) rebuilt(all []*plan.Job, change func([]plan.Job) []plan.Job) []*plan.Job {
	values := make([]plan.Job, len(all))
	for i, j := range all {
		values[i] = *j
	}
	out := slices.Clone(all)
	for i, next := range change(values) {
		if !slices.Equal(next.After, all[i].After) {
			out[i] = &next
			d.stems[out[i]] = d.Origin(all[i])
		}
	}
	return out
}

// Replace puts an edited job in the place of what it was; others that come after it
// follow its new id.
func (d Editor) Replace(old, next *plan.Job) {
	d.stems[next] = d.Origin(old)
	now := d.Now.With(old, next)
	if old.ID != next.ID {
		given := now.Given
		now = draft.New(d.rebuilt(now.All, func(jobs []plan.Job) []plan.Job { return shop.Renamed(jobs, old.ID, next.ID) }), now.Aim)
		now.Given = given
	}
	now.About, now.Did, now.Back = next.ID, next.ID+" is edited", old.ID+" is as before the edit"
	d.do(now)
}
