package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
)

// setup is the guided setup: one changeover at the machine, one move at a time. What was
// made is what is really there (the session's truth); what is still to be made follows from
// that and from the plan, which stays the same from the first move to the last unless
// something is found to be elsewhere.
type setup struct {
	d      *session
	job    *plan.Job
	o      *planning.Outcome // the plan that is followed; nil while it is worked out
	look   int               // which of the moves ahead is looked at; 0 is the next
	warned bool              // the cautions were seen
	ticked time.Time         // when the last move was confirmed
	was    *planned          // the plan before what was reported last; nil when that changed none

	ending *ending    // asks what became of the job that ran before; nil when nothing does
	became plan.State // that; done unless something else was told
	sure   bool       // it was told
}

// setOut begins the walk, after asking again for the right to write where that is
// another's.
func (d *session) setOut() {
	if !d.journal.OthersHave() {
		d.begin()
		return
	}
	d.askAgain(nil, func(asked) {
		said := d.news.text
		d.begin()
		d.news.text = words.Join("; ", said, d.news.text)
	})
}

// begin begins the setup for the job that the beam is to be set up for next.
func (d *session) begin() {
	turn := d.nextUp()
	if turn < 0 {
		d.say("no job is waiting: there is nothing to set up")
		return
	}
	if picked := d.viewer.picked(); turn != picked && picked < len(d.jobs()) {
		d.viewer.look(turn)
		d.say("%s comes first: the walk is to that, not to %s", d.jobs()[turn].ID, d.jobs()[picked].ID)
	}
	d.guide(d.jobs()[turn])
}

// guide begins the guided setup for a job.
func (d *session) guide(j *plan.Job) *setup {
	d.setup = &setup{d: d, job: j, became: plan.Done}
	d.setup.follow()
	return d.setup
}

// nextUp is the turn of the job that the beam is to be set up for: the first that
// doesn't run already and that the beam can run, or that is half set up. Where the
// beam can run none it is the first of them, to be told why; -1 when none is left.
func (d *session) nextUp() int {
	first, half := -1, ""
	if s := d.truth.Standing.Setting; s != nil {
		half = s.Job
	}
	for t, j := range d.jobs() {
		o := d.outcome(t)
		runs := j.State == plan.Running && d.truth.Standing.Job == j.ID && half == ""
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
func (w *setup) turnOf() int { return slices.Index(w.d.jobs(), w.job) }

// running is the job that runs before the walk's; nil without one.
func (w *setup) running() *plan.Job {
	for _, j := range w.d.jobs()[:max(w.turnOf(), 0)] {
		if j.State == plan.Running {
			return j
		}
	}
	return nil
}

// follow takes the plan as soon as it is there, and says what it came to where it is a
// new one.
func (w *setup) follow() {
	turn := w.turnOf()
	if turn < 0 || w.o != nil || !w.d.forecast.Present.Whole() { // what is known before may change yet
		return
	}
	w.o = w.d.outcome(turn)
	if w.was != nil && w.d.news.text != "" {
		w.d.news.text = words.Join("; ", w.d.news.text, w.against())
	}
	w.was = nil
}

// followPlan lets a setup that is under way follow what has been worked out.
func (d *session) followPlan() {
	if d.setup != nil {
		d.setup.follow()
	}
}

// planned is what a plan came to, to tell another one by.
type planned struct {
	left int         // moves
	able []*plan.Job // that could be run
}

// against tells what the plan came to, and which jobs of the day can't be run any more,
// against the one before.
func (w *setup) against() string {
	text := ""
	if !w.refused() {
		text = fmt.Sprintf("planned again: %s left, %d before", words.Count(len(w.ahead()), "move"), w.was.left)
	}
	still := slices.DeleteFunc(w.was.able, func(j *plan.Job) bool { return len(lacking([]*plan.Job{j}, w.d.jobs())) > 0 }) // one may have ended
	return words.Join("; ", text, ables(still, w.d.able()))
}

// refused reports whether the job can't be set up from what stands.
func (w *setup) refused() bool { return w.o != nil && len(w.o.Faults) > 0 }

// ahead are the moves still to be made, in the plan's order.
func (w *setup) ahead() (out []plan.Move) {
	if w.o == nil || w.refused() {
		return nil
	}
	for _, m := range w.o.Step.Changeover.Moves {
		if w.d.truth.Standing.At[m.Holder-1] != m.To {
			out = append(out, m)
		}
	}
	return out
}

// made are the moves that were made of this changeover, first to last.
func (w *setup) made() []plan.Made {
	if s := w.d.truth.Standing.Setting; s != nil && s.Job == w.job.ID {
		return s.Made
	}
	return nil
}

// move is the one looked at; nil when none is left.
func (w *setup) move() *plan.Move {
	ahead := w.ahead()
	if len(ahead) == 0 {
		return nil
	}
	return &ahead[min(w.look, len(ahead)-1)]
}
