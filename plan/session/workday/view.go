package workday

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/words"
)

// View is a day as it is ordered now with what that costs. All of it is read: nothing here
// changes the day.
type View struct {
	*planning.Result
	Now       *draft.Draft
	Shop      *shop.Shop
	Filed     draft.Draft          // as the file has it
	Broken    map[*plan.Job]string // rules that the order breaks, by the job whose they are
	Offer     *planning.Offer      // what the last search found; nil without one
	Searching planning.Searching   // how far a search was when this was Shown
	Moving    *Moving              // the job that was to be moved then; nil when none was
	Notice    Notice
	stems     map[*plan.Job]string // where edited jobs come from: see Origin
	use       *Use                 // see there
}

// Shown is the day as it is now; it stays so, whatever becomes of the day.
func (d *Day) Shown() View {
	v, result, now := d.View, *d.Result, *d.Now
	v.Result, v.Now, v.Searching = &result, &now, d.Search.State()
	if m := d.Mover; m != nil {
		v.Moving = &Moving{m.MoveCosts, m.to}
	}
	return v
}

// Jobs is the present order.
func (v *View) Jobs() []*plan.Job { return v.Present.Jobs }

// Away are the jobs done or set aside: they have no turn.
func (v *View) Away() []*plan.Job { return v.Now.Away() }

// Outcome is what is known of the job at that turn; nil while it is worked out.
func (v *View) Outcome(turn int) *planning.Outcome {
	if turn < len(v.Present.Known) {
		return v.Present.Known[turn]
	}
	return nil
}

// Before is what stands when the changeover to that turn begins; nil while it is
// worked out.
func (v *View) Before(turn int) *plan.Positions {
	if turn == 0 {
		return v.Start.Positions
	}
	if o := v.Outcome(turn - 1); o != nil {
		return o.Positions
	}
	return nil
}

// Able are the jobs that the beam can run, as far as is known.
func (v *View) Able() (out []*plan.Job) {
	for t, j := range v.Jobs() {
		if !v.Refused(t) {
			out = append(out, j)
		}
	}
	return out
}

// Changed reports whether the day is another than the file's.
func (v *View) Changed() bool {
	return !slices.Equal(v.Now.All, v.Filed.All) || v.Now.Aim != v.Filed.Aim
}

// Number is a turn as people count it: from 1, with those of the day that are done. Jobs
// that the beam can't run have none, which is 0, as far as that is known.
func (v *View) Number(turn int) int { return v.Present.Number(turn, v.Now.Done()) }

// Refused reports whether it is known that the beam can't run the job at that turn.
func (v *View) Refused(turn int) bool {
	o := v.Outcome(turn)
	return o != nil && o.Refused()
}

// NoneLate reports whether it is known that no job of the day is late.
func (v *View) NoneLate() bool { return v.Present.Full() && v.Present.Totals.LateJobs == 0 }

// NoneDue reports whether no job has a time by which it is due.
func (v *View) NoneDue() bool {
	return !slices.ContainsFunc(v.Jobs(), func(j *plan.Job) bool { return !j.Due.IsZero() })
}

// Clock is a time of the day.
func (v *View) Clock(t time.Time) string { return words.Clock(t, v.Shop.Day.Start) }

// Misplaced is why holders can't be at these positions; empty where they can.
func (v *View) Misplaced(at []plan.Length) string {
	if faults := changeover.Misplaced(v.Beam, at); len(faults) > 0 {
		return faults[0].Why(v.Shop.Unit)
	}
	return ""
}

// ReadJob reads what is typed of an edited job, or of one to be added.
func (v *View) ReadJob(typed shop.Typed, edited *plan.Job) (plan.Job, []shop.FieldProblem) {
	day := v.Now.Day(v.Shop.Day)
	at := slices.Index(v.Now.All, edited)
	if at < 0 { // it is new, or was taken out meanwhile
		at = len(day.Jobs)
	}
	return v.Shop.ReadJob(typed, day, at)
}

// Origin is the id, in the day's file as it was read, of the job that this one is
// or was made from; empty when it is new.
func (v *View) Origin(j *plan.Job) string {
	if id, told := v.stems[j]; told {
		return id
	}
	if slices.ContainsFunc(v.Shop.Day.Jobs, func(file plan.Job) bool { return file.ID == j.ID }) {
		return j.ID
	}
	return ""
}
