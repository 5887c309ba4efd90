package session

import (
	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/words"
)

// What is done at the beam changes what stands there. The session plans from a start of
// its own, so that a plan stays as it is while its moves are made one by one; stand
// lets it begin anew.

// perform has a deed written down and then goes on with it. Where another has the right
// to write, it is asked for again; if the files have changed meanwhile, the deed is not
// done: what it began with is gone.
func (d *Session) perform(done journal.Deed) {
	j := d.Journal
	if done.Day == nil && j.DayLags() {
		done.Day = &journal.Filed{Day: d.Filed.Day(d.Shop.Day), From: d.Origins(d.Filed)}
	}
	if !j.OthersHave() {
		d.alone(j.Write(d.Shop, done))
		return
	}
	d.Files.askAgain(&done, func(a Asked) {
		if a.fresh != nil {
			return
		}
		if did := done.Done; a.lock != nil && did != nil {
			done.Done = func(said string) { did(words.Join("; ", writtenHere, said)) }
		}
		d.alone(j.Write(d.Shop, done))
	})
}

// performed goes on with a deed that was written down. One that could not be is
// nevertheless what is there: it is said not to be saved until a later save is.
func (d *Session) performed(w journal.Written) {
	d.Actual = w.Actual
	d.Journal.Wrote(w)
	if w.Done != nil {
		w.Done(w.Said)
	}
	d.followPlan()
}

// Stand lets the day begin with what stands now.
func (d *Session) Stand(t journal.Actual) {
	b := d.Shop.Marked(t.Marks)
	p, err := changeover.NewPlanner(b)
	if err != nil { // never: the beam was planned with in other conditions
		d.Say("beam.toml: %v", err)
		return
	}
	d.Forecast.Planner, d.Beam = p, b
	d.Start.Clock = d.begins(t.Positions)
	d.Begin(t.Positions)
}

// dayWith is the day as it is in the file, with jobs in other states; nil where there
// are none.
func (d *Session) dayWith(s draft.States) *journal.Filed {
	if len(s) == 0 {
		return nil
	}
	return &journal.Filed{Day: s.In(d.Filed, map[*plan.Job]*plan.Job{}).Day(d.Shop.Day), From: d.Origins(d.Filed)}
}
