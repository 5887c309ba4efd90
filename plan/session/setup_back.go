package session

import (
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/workday"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// record has a deed of the setup written down, to be undone; then it goes on,
// and says what was recorded, in full or in few words. Jobs have become what they became by it.
func (w *Setup) record(done journal.Deed, became draft.States, what, says string, then func()) {
	t := &Report{job: w.Job.ID, what: what, was: w.d.Actual, is: done.Actual, events: done.Events, were: w.d.Now.StatesOf(became)}
	t.goOn = func() { w.resume(t) }
	done.Day = w.d.dayWith(became)
	done.Done = func(said string) {
		w.d.Reports = append(w.d.Reports, t)
		then()
		w.d.Say("%s", words.Join("; ", w.d.notKept()+says, outcomes(became, w.Job.ID), said))
		w.d.Notice.Brief = w.d.notKept() + what
	}
	w.d.perform(done)
}

// TakeBack undoes what was recorded last in this setup; after a restart, the last move
// that positions.toml has. That the job ran, recorded at the end of an earlier setup of it, is
// undone as outside of a setup.
func (w *Setup) TakeBack() {
	n := len(w.d.Reports)
	if n == 0 || w.d.Reports[n-1].job != w.Job.ID {
		w.undoMove()
		return
	}
	last := w.d.Reports[n-1]
	if last.ran {
		w.d.unrun(last)
		return
	}
	w.d.unsay(last)
}

// undoable reports whether there is something to undo.
func (w *Setup) undoable() bool {
	n := len(w.d.Reports)
	return n > 0 && w.d.Reports[n-1].job == w.Job.ID || len(w.Made()) > 0
}

// unsay has a thing recorded written down as recorded by mistake.
func (d *Session) unsay(t *Report) {
	back, wrong := t.before(d.Actual)
	if wrong == "" {
		wrong = d.Misplaced(back.Positions.At)
	}
	if wrong != "" {
		d.Say("%s can't be undone: %s", t.what, wrong)
		return
	}
	now := d.TimeNow()
	if back.Positions.Begun != nil { // else it stands again as it was recorded then
		back.Positions.Recorded = now
	}
	done := journal.Deed{Actual: back, Day: d.dayWith(t.were)}
	for _, e := range slices.Backward(t.events) {
		done.Events = append(done.Events, e.TakenBack(now))
	}
	done.Done = func(said string) {
		d.Reports = slices.DeleteFunc(d.Reports, func(c *Report) bool { return c == t })
		d.Become(t.were)
		t.goOn()
		d.Say("%s", words.Join("; ", d.notKept()+"undone: "+words.Join(", ", t.asBefore(d.Beam, d.Shop.Unit), outcomes(t.were, "")), said))
		d.Notice.Brief = d.notKept() + t.briefly(d.Beam)
	}
	d.perform(done)
}

// resume goes on with the setup after something was undone: with the plan as it is
// where that was only a move, else with a new one.
func (w *Setup) resume(t *Report) {
	if len(t.were) > 0 {
		w.became, w.sure = plan.Done, false
	}
	moved := len(t.were) == 0 && len(t.events) == 1 && t.events[0].Kind == record.Moved
	if !moved || !w.holds() {
		w.replan(nil)
		return
	}
	w.lookAt(t.events[0].Holder)
}

// unrun undoes that a job is set up and runs: its setup goes on at its end. What was
// edited since stays.
func (d *Session) unrun(t *Report) {
	if !slices.Contains(d.Reports, t) {
		d.Say("undone already: %s doesn't run", t.job)
		return
	}
	if s := d.Actual.Positions.Begun; s != nil {
		d.Say("the setup of %s has begun: undo that first, with %s and then %s", s.Job, d.Viewer.KeyOf(workday.ToSetUp), d.Viewer.KeyOf(workday.ToUndoEntry))
		return
	}
	d.unsay(t)
}

// goesOn goes on with a setup at its end, when that the job runs was undone.
func (w *Setup) goesOn(ran *Report) {
	w.d.History.Drop(func(f draft.Draft) bool { return f.Cause == any(ran) })
	w.Job, w.Look = w.d.Now.Find(ran.job), 0
	w.d.Setup = w
	w.d.Stand(w.d.Actual)
}
