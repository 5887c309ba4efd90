// Package sheet writes a planned day for people and for other programs: as text or a
// page of HTML to carry to the beam, as CSV for a spreadsheet and as the JSON plan
// document.
//
// What it writes depends on the plan and the options alone, never on the clock or
// the place. Everything of ours is ASCII; names from a shop's files pass as they
// are, but for control characters, which never do.
package sheet

import (
	"fmt"
	"strings"
	"time"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

// Options say how a plan is written.
type Options struct {
	Unit  plan.Unit // what people of the shop are shown
	Day   *plan.Day // the day as its file says
	Notes []string  // what was assumed
	Only  string    // the id of the one job wanted; empty for the whole day
	Demo  bool      // the day is the built-in demo, and every page says so
	// Knife is what is set at the knife, a turn for each step of the plan; nil where
	// that isn't known.
	Knife *material.Day

	// How the plan came about.
	Sequence string // "listed" or "best"
	Aim      string // "minutes" or "moves"
	Rounds   int
	Seed     uint64
}

// wants reports whether the job is to be written.
func (o *Options) wants(j *plan.Job) bool { return o.Only == "" || o.Only == j.ID }

// Check says what keeps the one job wanted from being written: it isn't there, or
// it is not to be planned.
func (o *Options) Check() error {
	if o.Only == "" {
		return nil
	}
	for _, j := range o.Day.Jobs {
		switch {
		case j.ID != o.Only:
		case j.State == plan.Done:
			return fmt.Errorf("job %s is done and isn't planned", words.Clean(o.Only))
		case j.State == plan.OnHold:
			return fmt.Errorf("job %s is on hold and isn't planned", words.Clean(o.Only))
		default:
			return nil
		}
	}
	return fmt.Errorf("the day has no job %s", words.Clean(o.Only))
}

// refused lists the refusals that are to be written.
func (o *Options) refused(d *plan.DayPlan) (out []plan.Turn) {
	for _, r := range d.Refused() {
		if o.wants(r.Job) {
			out = append(out, r)
		}
	}
	return out
}

// demoNote is what nobody may miss who holds a sheet of the demo.
const demoNote = "DEMO: an invented day, not your beam"

// broken says which rules of the day's file the order breaks.
func (o *Options) broken(d *plan.DayPlan) (out []string) {
	for _, b := range plan.Broken(d.Jobs(), d.Done) {
		if o.wants(b.Job) {
			out = append(out, b.Why(o.Unit))
		}
	}
	return out
}

// reasons are all the reasons for a refusal, in one line.
func reasons(r plan.Turn, u plan.Unit) string {
	texts := make([]string, len(r.Faults))
	for i, f := range r.Faults {
		texts[i] = f.Why(u)
	}
	return strings.Join(texts, "; ")
}

// begins is when the day begins.
func (o *Options) begins(d *plan.DayPlan) time.Time {
	switch {
	case o.Day != nil:
		return o.Day.Start
	case len(d.Steps()) > 0:
		return d.Steps()[0].SetupStart
	}
	return time.Time{}
}
