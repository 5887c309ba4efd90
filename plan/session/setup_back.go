package session

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/workday"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// record has a deed of the setup written down, to be undone; then it goes on,
// and says what was recorded, in full or in few words. Jobs have become what they became by it.
func (w *Setup) record(done journal.Deed, became draft.States, what, says string, then func()) {
	t, was := &Report{job: w.Job.ID, what: what, Was: w.d.Actual, Is: done.Actual, events: done.Events, were: w.d.History.Now.StatesOf(became)}, w.d.Forecast.Start.Clock
	t.goOn = func() { w.resume(t) }
	done.Day = w.d.dayWith(became)
	done.Done = func(said string) {
		w.d.Reports = append(w.d.Reports, t)
		then()
		w.d.Say("%s", words.Join("; ", w.d.notKept()+says, outcomes(became, w.Job.ID), said, w.d.byTheWall(was)))
		w.d.Notice.Brief = w.d.notKept() + what
	}
	w.d.perform(done)
}

// byTheWall says that the day goes on by the real time from here on, where it
// began as its file has it before; else nothing.
func (d *Session) byTheWall(was time.Time) string {
	if now := d.Forecast.Start.Clock; was.Equal(d.Shop.Day.Start) && !now.Equal(was) {
		return "the day follows the real time now, from " + d.Clock(now) + " on"
	}
	return ""
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

// CanTakeBack reports whether there is something to take back.
func (w *Setup) CanTakeBack() bool {
	n := len(w.d.Reports)
	return n > 0 && w.d.Reports[n-1].job == w.Job.ID || len(w.Made()) > 0
}

// unsay has a thing recorded written down as recorded by mistake.
func (d *Session) unsay(t *Report) {
	back, wrong := t.Before(d.Actual)
	if faults := changeover.Misplaced(d.Forecast.Beam, back.Positions.At); wrong == "" && len(faults) > 0 {
		wrong = faults[0].Why(d.Shop.Unit)
	}
	if wrong != "" {
		d.Say("%s can't be undone: %s", t.what, wrong)
		return
	}
	now := d.Journal.Clock()
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
		d.Say("%s", words.Join("; ", d.notKept()+"undone: "+words.Join(", ", t.asBefore(d.Forecast.Beam, d.Shop.Unit), outcomes(t.were, "")), said))
		d.Notice.Brief = d.notKept() + t.briefly(d.Forecast.Beam)
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
	w.Job, w.Look = w.d.History.Now.Find(ran.job), 0
	w.d.Setup = w
	w.d.Stand(w.d.Actual)
}
