package ui

import (
	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/words"
)

// What is done at the beam changes what stands there. The desk plans from a start of
// its own, so that a plan stays as it is while its moves are made one by one; stand
// lets it begin anew.

// perform has a deed written down and then goes on with it. Where another has the right
// to write, it is asked for again; if the files have changed meanwhile, the deed is not
// done: what it began with is gone.
func (d *session) perform(done journal.Deed) {
	j := d.journal
	switch {
	case d.waits():
		return
	case done.Day == nil && j.DayLags():
		done.Day = d.keptDay()
	}
	if !j.OthersHave() {
		d.busyWith(j.Write(d.shop, done))
		return
	}
	d.askAgain(&done, func(a asked) {
		if a.fresh != nil {
			return
		}
		if did := done.Done; a.lock != nil && did != nil {
			done.Done = func(said string) { did(words.Join("; ", writtenHere, said)) }
		}
		d.busyWith(j.Write(d.shop, done))
	})
}

// performed goes on with a deed that was written down. One that could not be is
// nevertheless what is there: it is said not to be saved until a later save is.
func (d *session) performed(w journal.Written) {
	d.truth = w.Actual
	d.journal.Wrote(w)
	if w.Done != nil {
		w.Done(w.Said)
	}
	d.followPlan()
}

// stand lets the day begin with what stands now.
func (d *session) stand(t journal.Actual) {
	b := d.shop.Marked(t.Marks)
	p, err := plan.NewPlanner(b)
	if err != nil { // never: the beam was planned with in other conditions
		d.say("beam.toml: %v", err)
		return
	}
	d.forecast.Planner, d.forecast.Beam = p, b
	if d.journal.Writes() { // as who reads the files has it
		d.forecast.Start.Clock = d.shop.Day.Begins(t.Standing)
	}
	d.restart(t.Standing)
}

// restart lets the day begin with a standing. Plans that began elsewhere are given
// up, in all drafts; their layouts stay with the jobs.
func (d *session) restart(stands *plan.Standing) {
	d.history.Each(func(f draft.Draft) draft.Draft {
		f.Given = nil
		return f
	})
	d.forecast.Begin(stands, d.history.Now.Jobs)
	if d.interrupt() {
		d.mention(interrupted)
	}
	d.settle()
}

// carryOn lets the day begin where a job of it ended, with all that is known of those
// after it.
func (d *session) carryOn(turn int) {
	o := d.outcome(turn)
	d.forecast.Remember()
	d.forecast.Start.Clock = o.Clock
	d.restart(o.Standing)
}

// dayWith is the day as it is in the file, with jobs in other states; nil where there
// are none.
func (d *session) dayWith(s draft.States) *journal.Filed {
	if len(s) == 0 {
		return nil
	}
	return &journal.Filed{Day: s.In(d.kept, map[*plan.Job]*plan.Job{}).Day(d.shop.Day), From: d.origins(d.kept)}
}

// keptDay is the day as it is in the file, or would be were all told written down.
func (d *session) keptDay() *journal.Filed {
	return &journal.Filed{Day: d.kept.Day(d.shop.Day), From: d.origins(d.kept)}
}

// become puts jobs into other states in all drafts, and in the day as it is in the
// file: what has happened can't be undone.
func (d *session) become(s draft.States) {
	if len(s) == 0 {
		return
	}
	turned := map[*plan.Job]*plan.Job{}
	d.history.Each(func(f draft.Draft) draft.Draft { return s.In(f, turned) })
	d.kept = s.In(d.kept, turned)
	for was, is := range turned {
		d.stem(is, d.origin(was))
	}
	d.relist()
}
