package workday

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
)

// Later has work done in the background.
func (d *Day) Later(w planning.Work) {
	if w != nil {
		d.works = append(d.works, w)
	}
}

// MoveBy moves the job of a turn by one turn. An order that breaks a rule is allowed,
// and said to be broken: the person at the screen may know better.
func (d *Day) MoveBy(turn, by int) {
	if turn >= len(d.Jobs()) {
		return
	}
	j, to := d.Jobs()[turn], turn+by
	switch {
	case j.State == plan.Running:
		d.Say("%s is running: it stays where it is", j.ID)
	case to < 0:
		d.Say("%s is first already", j.ID)
	case to >= len(d.Jobs()):
		d.Say("%s is last already", j.ID)
	case by < 0 && d.Jobs()[to].State == plan.Running:
		d.Say("%s is running: nothing can come before it", d.Jobs()[to].ID)
	default:
		jobs := slices.Clone(d.Jobs())
		jobs[turn], jobs[to] = jobs[to], jobs[turn]
		next := d.Now.Ordered(jobs)
		next.About = j.ID
		d.do(next)
	}
}

// do makes a draft the present one and says what was done.
func (d *Day) do(next draft.Draft) {
	d.History.Do(next)
	d.Show(next, next.Did, "moved to")
}

// Show makes the present draft the one planned, with the job that a draft was made about
// picked, and says what was done, or of a job that was only moved where it is now.
func (d *Day) Show(of draft.Draft, did, moved string) {
	if against := d.Notice.against; d.Notice.job != of.About || against == nil {
		d.Notice.against = nil
		if d.Present.Whole() {
			totals := d.Present.Totals
			d.Notice.against = &totals
		}
	}
	d.Aim = d.Now.Aim
	d.Forecast.Reorder(d.Now.Jobs, d.Now.Given)
	d.Notice.job, d.Notice.Text, d.Notice.also = of.About, did, ""
	turn := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == of.About })
	if of.About == "" { // a search, not one job, changed the order
		turn = 0
	}
	d.Screen.Look(turn)
	if of.About != "" && of.Did == "" && turn >= 0 {
		d.Notice.Text = fmt.Sprintf("%s %s number %d", of.About, moved, d.Number(turn))
		if d.Refused(turn) {
			d.Notice.Text = of.About + " is moved; the beam can't run it, so it has no number"
		}
	}
	if d.Search.Interrupt(d.Inputs()) {
		d.Notice.also = interrupted
	}
	d.Refresh()
}

// Inputs is what a plan of the present day depends on.
func (d *Day) Inputs() planning.Inputs { return d.Forecast.Inputs(d.Now.Done()) }

// interrupted is said when the day has become another than the one that is searched.
const interrupted = "the search stops, and what it has found is fitted to the changed day"

// Origins says of each of a draft's jobs where it comes from.
func (d *Day) Origins(of draft.Draft) []string {
	out := make([]string, len(of.All))
	for i, j := range of.All {
		out[i] = d.Origin(j)
	}
	return out
}
