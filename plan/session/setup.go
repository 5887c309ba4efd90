package session

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/words"
)

// Setup is the guided setup: one changeover at the machine, one move at a time. What was
// made is what is really there (the session's truth); what is still to be made follows from
// that and from the plan, which stays the same from the first move to the last unless
// something is found to be elsewhere.
type Setup struct {
	d      *Session
	Job    *plan.Job
	Plan   *planning.Outcome // the plan that is followed; nil while it is worked out
	Look   int               // which of the moves ahead is looked at; 0 is the next
	Warned bool              // the cautions were seen
	Ticked time.Time         // when the last move was confirmed
	was    *planned          // the plan before what was reported last; nil when that changed none

	Ending *ending    // asks what became of the job that ran before; nil when nothing does
	became plan.State // that; done unless something else was told
	sure   bool       // it was told
}

// SetUp begins the walk, after asking again for the right to write where that is
// another's.
func (d *Session) SetUp() {
	if !d.Journal.OthersHave() {
		d.begin()
		return
	}
	d.askAgain(nil, func(Asked) {
		said := d.Notice.Text
		d.begin()
		d.Notice.Text = words.Join("; ", said, d.Notice.Text)
	})
}

// begin begins the setup for the job that the beam is to be set up for next.
func (d *Session) begin() {
	turn := d.NextUp()
	if turn < 0 {
		d.Say("no job is waiting: there is nothing to set up")
		return
	}
	if picked := d.Viewer.Picked(); turn != picked && picked < len(d.Jobs()) {
		d.Viewer.Look(turn)
		d.Say("%s comes first: the walk is to that, not to %s", d.Jobs()[turn].ID, d.Jobs()[picked].ID)
	}
	d.guide(d.Jobs()[turn])
}

// guide begins the guided setup for a job.
func (d *Session) guide(j *plan.Job) *Setup {
	d.Setup = d.Preview(j)
	return d.Setup
}

// Preview is the guided setup for a job as it would begin.
func (d *Session) Preview(j *plan.Job) *Setup {
	w := &Setup{d: d, Job: j, became: plan.Done}
	w.follow()
	return w
}

// NextUp is the turn of the job that the beam is to be set up for: the first that
// doesn't run already and that the beam can run, or that is half set up. Where the
// beam can run none it is the first of them, to be told why; -1 when none is left.
func (d *Session) NextUp() int {
	first, half := -1, ""
	if s := d.Actual.Standing.Setting; s != nil {
		half = s.Job
	}
	for t, j := range d.Jobs() {
		o := d.Outcome(t)
		runs := j.State == plan.Running && d.Actual.Standing.Job == j.ID && half == ""
		if runs && (o == nil || o.Refused() || o.Step.Changeover.Repositions == 0) {
			continue
		}
		if o == nil || len(o.Faults) == 0 || j.ID == half {
			return t
		}
		if first < 0 {
			first = t
		}
	}
	return first
}

// turnOf is the turn of the walk's job; -1 when it has none any more.
func (w *Setup) turnOf() int { return slices.Index(w.d.Jobs(), w.Job) }

// Running is the job that runs before the walk's; nil without one.
func (w *Setup) Running() *plan.Job {
	for _, j := range w.d.Jobs()[:max(w.turnOf(), 0)] {
		if j.State == plan.Running {
			return j
		}
	}
	return nil
}

// follow takes the plan as soon as it is there, and says what it came to where it is a
// new one.
func (w *Setup) follow() {
	turn := w.turnOf()
	if turn < 0 || w.Plan != nil || !w.d.Forecast.Present.Whole() { // what is known before may change yet
		return
	}
	w.Plan = w.d.Outcome(turn)
	if w.was != nil && w.d.Notice.Text != "" {
		w.d.Notice.Text = words.Join("; ", w.d.Notice.Text, w.against())
	}
	w.was = nil
}

// followPlan lets a setup that is under way follow what has been worked out.
func (d *Session) followPlan() {
	if d.Setup != nil {
		d.Setup.follow()
	}
}

// planned is what a plan came to, to tell another one by.
type planned struct {
	left int         // moves
	able []*plan.Job // that could be run
}

// against tells what the plan came to, and which jobs of the day can't be run any more,
// against the one before.
func (w *Setup) against() string {
	text := ""
	if !w.Refused() {
		text = fmt.Sprintf("planned again: %s left, %d before", words.Count(len(w.Ahead()), "move"), w.was.left)
	}
	still := slices.DeleteFunc(w.was.able, func(j *plan.Job) bool { return len(workday.Lacking([]*plan.Job{j}, w.d.Jobs())) > 0 }) // one may have ended
	return words.Join("; ", text, workday.Ables(still, w.d.Able()))
}

// Refused reports whether the job can't be set up from what stands.
func (w *Setup) Refused() bool { return w.Plan != nil && len(w.Plan.Faults) > 0 }

// Ahead are the moves still to be made, in the plan's order.
func (w *Setup) Ahead() (out []plan.Move) {
	if w.Plan == nil || w.Refused() {
		return nil
	}
	for _, m := range w.Plan.Step.Changeover.Moves {
		if w.d.Actual.Standing.At[m.Holder-1] != m.To {
			out = append(out, m)
		}
	}
	return out
}

// Made are the moves that were made of this changeover, first to last.
func (w *Setup) Made() []plan.Made {
	if s := w.d.Actual.Standing.Setting; s != nil && s.Job == w.Job.ID {
		return s.Made
	}
	return nil
}

// Move is the one looked at; nil when none is left.
func (w *Setup) Move() *plan.Move {
	ahead := w.Ahead()
	if len(ahead) == 0 {
		return nil
	}
	return &ahead[min(w.Look, len(ahead)-1)]
}

// Unknown are the holders that are to cut the job with a blade that nobody has told, by
// number.
func (w *Setup) Unknown() (all []int) {
	if w.Plan == nil || w.Refused() {
		return nil
	}
	blades := w.d.Actual.Standing.Blades
	for i, h := range w.Plan.Step.Changeover.Holders {
		if h.Use == plan.Cutting && (i >= len(blades) || !blades[i].Known()) {
			all = append(all, i+1)
		}
	}
	return all
}

// Swaps are the holders that are to cut the job with another blade, by number.
func (w *Setup) Swaps() []int {
	if w.Plan == nil || w.Refused() {
		return nil
	}
	return w.d.Actual.Standing.Swaps(w.Job, &w.Plan.Step.Changeover)
}
