package shop

import (
	"fmt"
	"slices"
	"strconv"

	"bide/material"
	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/shop/dayfile"
	"bide/plan/shop/toml"
)

// The keys of day.toml for what a search chose for a job and was kept. A job whose layout
// leaves nothing to choose has the last two alone.
const (
	chosenSlits = "chosen_slits" // finished widths, as slits has them, in the order chosen
	chosenShift = "chosen_shift" // from centred, + to the drive side
	chosenIdle  = "chosen_idle"  // the holders that don't cut, and where those go that move
	chosenMoves = "chosen_moves" // of the changeover, with these idle
	chosenSetup = "chosen_s"     // seconds of setup, likewise
)

var chosenKeys = []string{chosenSlits, chosenShift, chosenIdle, chosenMoves, chosenSetup}

// chosen reads what was chosen for the job; nil where nothing was, or no layout that the
// job allows. Someone may have changed the job since, so that is noted and no problem:
// the job is planned afresh.
func (t jobReader) chosen(m material.Material, j *plan.Job) *plan.Chosen {
	idle := t.idle()
	if idle == nil && !t.Has(chosenSlits) && !t.Has(chosenShift) {
		return nil
	}
	c := &plan.Chosen{Slits: j.Slits(), Shift: t.Length(chosenShift, 0, toml.AnyPlace)}
	if entries := t.entries(chosenSlits, m); len(entries) > 0 {
		c.Slits = (&plan.Job{Entries: entries}).Slits()
	}
	c.Idle = idle
	switch b := t.on.Beam; {
	case b == nil: // what is wrong with it is said
	case !j.Arranges(c.Slits):
		t.passOver(j, "%s is no order of slits that the job allows", chosenSlits)
	case !layouts.Allows(b, j, c) && len(b.Bad) > 0:
		t.passOver(j, "%s = %s is none that trim, shift and the damaged bands allow", chosenShift, t.Doc.Unit.Show(c.Shift))
	case !layouts.Allows(b, j, c):
		t.passOver(j, "%s = %s is none that trim and shift allow", chosenShift, t.Doc.Unit.Show(c.Shift))
	default:
		t.fits(j, c)
		return c
	}
	return nil
}

// fits drops the idle holders of what was chosen, and notes it, where they can't be those
// of the beam.
func (t jobReader) fits(j *plan.Job, c *plan.Chosen) {
	if c.Idle == nil {
		return
	}
	why := misfit(t.on.Beam, j, c)
	if !t.Has(chosenMoves) || !t.Has(chosenSetup) {
		why = fmt.Sprintf("%s or %s is missing", chosenMoves, chosenSetup)
	}
	if why == "" {
		return
	}
	c.Idle = nil
	if j.State != plan.Done && j.State != plan.OnHold {
		t.Doc.Notes = append(t.Doc.Notes, fmt.Sprintf("%s, %s: %s: %s: it is ignored and the holders are planned again; search again and save, or delete the chosen_ keys",
			t.Doc.File, t.Place, chosenIdle, why))
	}
}

// passOver notes why the layout chosen for a job isn't taken.
func (t jobReader) passOver(j *plan.Job, format string, args ...any) {
	if j.State == plan.Done || j.State == plan.OnHold {
		return
	}
	t.Doc.Notes = append(t.Doc.Notes, fmt.Sprintf("%s, %s: %s: the chosen layout is ignored and the job is planned again; delete the chosen_ keys, or search again and save",
		t.Doc.File, t.Place, fmt.Sprintf(format, args...)))
}

// misfit says why the idle holders of what was chosen can't be those of the beam; empty
// where they can.
func misfit(b *plan.Beam, j *plan.Job, c *plan.Chosen) string {
	cuts, has, idle, last := len(b.Lay(j, c.Slits, c.Shift).Cuts), len(b.Holders), 0, 0
	off := -1
	for i, h := range c.Idle.Holders {
		if last = h.Number; !h.Cuts {
			idle++
		}
		if h.Moved && (h.To < b.Rail.From || h.To > b.Rail.To) {
			off = i
		}
	}
	switch {
	case off >= 0:
		return fmt.Sprintf("holder %d is to go off the rail", c.Idle.Holders[off].Number)
	case last > has:
		return fmt.Sprintf("holder %d is named, and the beam has %d", last, has)
	case has-idle != cuts:
		return fmt.Sprintf("%d of %d holders are left to cut, and the layout has %d cuts", has-idle, has, cuts)
	}
	return ""
}

// choice is what day.toml holds of what was chosen for a job.
type choice struct {
	slits []plan.Entry // nil where the key isn't needed
	shift *plan.Length // nil likewise
	idle  *plan.Idle
}

// filed is what is to be filed of what was chosen for a job: nothing where no layout is
// chosen that the job allows.
func filed(b *plan.Beam, j *plan.Job) (c choice) {
	if j.Chosen == nil || b == nil || !layouts.Allows(b, j, j.Chosen) {
		return c
	}
	if c.idle = j.Chosen.Idle; c.idle != nil && misfit(b, j, j.Chosen) != "" {
		c.idle = nil
	}
	if j.Chooses() || c.idle == nil {
		c.slits = runsOf(j.Entries, j.Chosen.Slits)
	}
	if c.slits != nil || j.Chosen.Shift != 0 {
		c.shift = &j.Chosen.Shift
	}
	return c
}

// chosenEdits are the edits that a job's entry needs to hold what was chosen.
func (r *dayReading) chosenEdits(i int, want *plan.Job) (out []dayfile.Edit) {
	have := &r.day.Jobs[i]
	had, has := filed(r.on.Beam, have), filed(r.on.Beam, want)
	stale := have.Chosen == nil && (has.idle != nil || has.shift != nil) // what is there was passed over
	set := func(same bool, key, value string) {
		if !same || stale && value == "" && r.entries[i].Has(key) {
			out = append(out, dayfile.Edit{Key: key, Value: value})
		}
	}
	slits, shift := "", ""
	if has.slits != nil {
		slits = r.slits(i, has.slits)
	}
	if has.shift != nil {
		shift = toml.Length(*has.shift, r.unit)
	}
	set(slices.EqualFunc(had.slits, has.slits, sameEntry), chosenSlits, slits)
	set(had.shift == has.shift || had.shift != nil && has.shift != nil && *had.shift == *has.shift, chosenShift, shift)
	switch {
	case has.idle == nil:
		set(had.idle == nil, chosenIdle, "")
		set(had.idle == nil, chosenMoves, "")
		set(had.idle == nil, chosenSetup, "")
	default:
		set(had.idle != nil && slices.Equal(had.idle.Holders, has.idle.Holders), chosenIdle, idleText(has.idle, r.unit))
		set(had.idle != nil && had.idle.Moves == has.idle.Moves, chosenMoves, strconv.Itoa(has.idle.Moves))
		set(had.idle != nil && had.idle.Setup == has.idle.Setup, chosenSetup, toml.Number(float64(has.idle.Setup/tenth)/10))
	}
	return out
}

// runsOf are cut widths, an order of a job's slits, as a file holds them: their finished
// widths, equal neighbours together.
func runsOf(of []plan.Entry, widths []plan.Length) (slits []plan.Entry) {
	entries := slices.Clone(of)
	for _, width := range widths {
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
