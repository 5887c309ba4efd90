package shop

import (
	"fmt"
	"slices"

	"bide/material"
	"bide/plan"
)

// The keys of day.toml for the layout that a search chose for a job and that was kept.
const (
	chosenSlits = "chosen_slits" // finished widths, as slits has them, in the order chosen
	chosenShift = "chosen_shift" // from centred, + to the drive side
)

// chosen reads the layout that was chosen for the job; nil where none was, or none
// that the job allows. Someone may have changed the job since, so that is noted and no
// problem: the job is planned afresh.
func (t jobReader) chosen(m material.Material, j *plan.Job) *plan.Chosen {
	if !t.has(chosenSlits) && !t.has(chosenShift) {
		return nil
	}
	c := &plan.Chosen{Slits: j.Slits(), Shift: t.length(chosenShift, 0, anyPlace)}
	if entries := t.entries(chosenSlits, m); len(entries) > 0 {
		c.Slits = (&plan.Job{Entries: entries}).Slits()
	}
	switch b := t.shop.Beam; {
	case b == nil: // what is wrong with it is told
	case !j.Arranges(c.Slits):
		t.passOver(j, "%s is no order of slits that the job allows", chosenSlits)
	case !b.Allows(j, c) && len(b.Bad) > 0:
		t.passOver(j, "%s = %s is none that trim, shift and the damaged bands allow", chosenShift, t.doc.unit.Show(c.Shift))
	case !b.Allows(j, c):
		t.passOver(j, "%s = %s is none that trim and shift allow", chosenShift, t.doc.unit.Show(c.Shift))
	default:
		return c
	}
	return nil
}

// passOver notes why the layout chosen for a job isn't taken.
func (t jobReader) passOver(j *plan.Job, format string, args ...any) {
	if j.State == plan.Done || j.State == plan.Aside {
		return
	}
	t.doc.notes = append(t.doc.notes, fmt.Sprintf("%s, %s: %s: the layout chosen is passed over and the job planned afresh; take %s and %s out, or search again and save",
		t.doc.file, t.place, fmt.Sprintf(format, args...), chosenSlits, chosenShift))
}

// chosenEdits are the edits that a job's entry needs to hold the layout chosen.
func (r *dayReading) chosenEdits(i int, want *plan.Job) (out []edit) {
	have := &r.day.Jobs[i]
	had, slits := r.shop.filed(have), r.shop.filed(want)
	switch {
	case slits == nil && had == nil:
	case slits == nil:
		return []edit{{chosenSlits, ""}, {chosenShift, ""}}
	default:
		if !slices.EqualFunc(had, slits, sameEntry) {
			out = append(out, edit{chosenSlits, r.slits(i, slits)})
		}
		if had == nil || have.Chosen.Shift != want.Chosen.Shift {
			out = append(out, edit{chosenShift, tomlLength(want.Chosen.Shift, r.unit)})
		}
	}
	return out
}

// filed is what a file holds of the slits chosen for a job: their finished widths, equal
// neighbours together; nil where no layout is chosen that the job allows.
func (s *Shop) filed(j *plan.Job) (slits []plan.Entry) {
	if j.Chosen == nil || s.Beam == nil || !s.Beam.Allows(j, j.Chosen) {
		return nil
	}
	entries := slices.Clone(j.Entries)
	for _, width := range j.Chosen.Slits {
		i := slices.IndexFunc(entries, func(e plan.Entry) bool { return e.Width == width && e.Count > 0 })
		entries[i].Count-- // one is left: the slits are an order of them
		e := plan.Entry{Count: 1, Finished: entries[i].Finished}
		if n := len(slits); n > 0 && slits[n-1].Finished == e.Finished {
			slits[n-1].Count++
			continue
		}
		slits = append(slits, e)
	}
	return slits
}
