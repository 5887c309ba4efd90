package session

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/words"
)

// Setup is the guided setup: one changeover at the machine, one move at a time. What was
// made is what is really there (the session's truth); what is still to be made follows from
// that and from the plan, which stays the same from the first move to the last unless
// something is found to be elsewhere.
type Setup struct {
	Guide
	d         *Session
	Confirmed time.Time  // when the last move was confirmed
	was       *planned   // the plan before what was reported last; nil when that changed none
	became    plan.State // what became of the job that ran before; done unless something else was reported
	sure      bool       // it was reported
}

// Guide is a guided setup as it is shown.
type Guide struct {
	Steps
	Warned   bool      // the cautions were seen
	Ending   *ending   // asks what became of the job that ran before; nil when nothing does
	Running  *plan.Job // that runs before the setup's; nil without one
	Undoable bool      // there is something to undo
}

// shown is the setup as it is now; it stays so.
func (w *Setup) shown() *Guide {
	g, actual, result := w.Guide, w.d.Actual, *w.d.Result
	g.actual, g.result, g.Running, g.Undoable = &actual, &result, w.running(), w.undoable()
	return &g
}

// SetUp begins the guided setup, after asking again for the right to write where that is
// another's.
func (d *Session) SetUp() {
	if !d.Journal.OthersHave() {
		d.begin()
		return
	}
	d.Files.askAgain(nil, func(Asked) {
		said := d.Notice.Text
		d.begin()
		d.Notice.Text = words.Join("; ", said, d.Notice.Text)
	})
}

// begin begins the setup for the job that the beam is to be set up for next.
func (d *Session) begin() {
	turn := d.nextUp()
	if turn < 0 {
		d.Say("no job is waiting: there is nothing to set up")
		return
	}
	if picked := d.Viewer.Picked(); turn != picked && picked < len(d.Jobs()) {
		d.Viewer.Look(turn)
		d.Say("%s comes first: it is set up now, not %s", d.Jobs()[turn].ID, d.Jobs()[picked].ID)
	}
	d.Setup = d.preview(d.Jobs()[turn])
}

// preview is the guided setup for a job as it would begin.
func (d *Session) preview(j *plan.Job) *Setup {
	w := &Setup{d: d, Guide: Guide{Steps: Steps{Job: j, actual: &d.Actual, result: d.Result}}, became: plan.Done}
	w.follow()
	return w
}

// Preview is the guided setup of the job that comes next as it would begin; nil when none
// is left.
func (d *Session) Preview() *Guide {
	turn := d.nextUp()
	if turn < 0 {
		return nil
	}
	return d.preview(d.Jobs()[turn]).shown()
}

// nextUp is the turn of the job that the beam is to be set up for: the first that
// doesn't run already and that the beam can run, or that is half set up. Where the
// beam can run none it is the first of them, to say why; -1 when none is left.
func (d *Session) nextUp() int {
	first, half := -1, ""
	if s := d.Actual.Positions.Begun; s != nil {
		half = s.Job
	}
	for t, j := range d.Jobs() {
		o := d.Outcome(t)
		runs := j.State == plan.Running && d.Actual.Positions.Job == j.ID && half == ""
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

// turnOf is the turn of the setup's job; -1 when it has none any more.
func (w *Setup) turnOf() int { return slices.Index(w.d.Jobs(), w.Job) }

// running is the job that runs before the setup's; nil without one.
func (w *Setup) running() *plan.Job {
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
	if turn < 0 || w.Plan != nil || !w.d.Present.Whole() { // what is known before may change yet
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

// against says what the plan came to, and which jobs of the day can't be run any more,
// against the one before.
func (w *Setup) against() string {
	text := ""
	if !w.Refused() {
		text = fmt.Sprintf("planned again: %s left, %d before", words.Count(len(w.Ahead()), "move"), w.was.left)
	}
	still := slices.DeleteFunc(w.was.able, func(j *plan.Job) bool { return len(workday.Lacking([]*plan.Job{j}, w.d.Jobs())) > 0 }) // one may have ended
	return words.Join("; ", text, workday.Ables(still, w.d.Able()))
}

// ending asks what became of the job that ran before, when the first thing is reported
// and by the clock its run isn't over: it may be done, or stopped for another.
type ending struct {
	Job  *plan.Job
	Till time.Time // its run's end as planned
	Now  time.Time
	then func() // what was about to be reported
}

// asks reports whether that has to be asked first.
func (w *Setup) asks(then func()) bool {
	d, turn := w.d, w.turnOf()
	if w.Ending = nil; turn < 1 || w.Plan == nil || w.sure || d.Journal.Invented() {
		return false
	}
	now, before := d.TimeNow(), d.Outcome(turn-1)
	j := w.running()
	if j == nil || before == nil || !now.Before(before.Clock.At) || now.Before(d.Shop.Day.Start) {
		return false
	}
	w.Ending = &ending{j, before.Clock.At, now, then}
	return true
}

// Ended takes what became of it, done or put aside, and goes on.
func (w *Setup) Ended(became plan.State) {
	e := w.Ending
	w.became, w.Ending, w.sure = became, nil, true
	e.then()
}

// RunsOn takes that it still runs: nothing is reported.
func (w *Setup) RunsOn() {
	w.d.Say("nothing is recorded: %s still runs", w.Ending.Job.ID)
	w.Ending = nil
}
