package session

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// What is done in a guided setup. Each deed is written down first; then it is said.

// change begins a deed of the setup: the positions of now, to be changed, with the
// changeover begun in it. The job that ran before has then ended: the machine stands.
func (w *Setup) change() (journal.Deed, draft.States) {
	now, turn := w.d.Actual.Positions, w.turnOf()
	became, out := draft.States{}, journal.Deed{}
	if turn > 0 && w.Plan != nil {
		now = w.d.Before(turn)
		for _, j := range w.d.Jobs()[:turn] {
			if j.State == plan.Running {
				is := draft.ProgressOf(j).To(w.became)
				if w.became == plan.Done {
					is = draft.ProgressOf(j).Done(w.d.TimeNow(), j.Metres)
				}
				became[j.ID] = is
				e := record.Event{Time: w.d.TimeNow(), Kind: record.Job, Job: j.ID, State: is.State, Metres: is.Ran}
				out.Events = append(out.Events, e)
			}
		}
	}
	stands := *now
	stands.At = slices.Clone(w.d.Actual.Positions.At)
	stands.Recorded, stands.Assumed = w.d.TimeNow(), false
	stands.Begun = w.setting()
	out.Actual = journal.Actual{Positions: &stands, Marks: w.d.Actual.Marks}
	return out, became
}

// begun has the day take what a first deed means for it.
func (w *Setup) begun(became draft.States) {
	turn := w.turnOf()
	w.d.Become(became)
	if turn > 0 && len(became) > 0 {
		w.d.GoOnFrom(turn - 1)
		w.d.Viewer.Look(max(w.turnOf(), 0))
	}
}

// LeastPause is the least time between two moves confirmed: a key that is held down or bounces
// makes one. No move is made in less.
const LeastPause = 500 * time.Millisecond

// Confirm records that the move looked at was made.
func (w *Setup) Confirm() {
	move := w.Move()
	switch {
	case w.Plan == nil:
		w.d.Say("wait: the rest is being planned")
		return
	case w.Refused():
		w.d.Say("%s can't be set up from the present positions", w.Job.ID)
		return
	case move == nil:
		w.d.Say("all moves are made: press %s when %s runs", w.d.Viewer.KeyOf(workday.ToRun), w.Job.ID)
		return
	}
	if n := w.BlockedBy(move); n != 0 {
		w.d.Say("holder %d can't move yet: holder %d is in its way and moves first", move.Holder, n)
		w.d.Notice.Brief = fmt.Sprintf("%d moves first", n)
		return
	}
	if w.d.Journal.Now().Sub(w.Confirmed).Abs() < LeastPause {
		w.d.Say("too quick: confirm again when the move is made")
		w.d.Notice.Brief = "too quick: again"
		return
	}
	if w.asks(w.Confirm) {
		return
	}
	done, became := w.change()
	done.Positions.At[move.Holder-1] = move.To
	done.Positions.Begun.Made = append(done.Positions.Begun.Made, plan.Made{Holder: move.Holder, From: move.From})
	done.Events = append(done.Events, record.Event{Time: w.d.TimeNow(), Kind: record.Moved, Holder: move.Holder, From: move.From, To: move.To, Job: w.Job.ID})
	what := fmt.Sprintf("%d made", move.Holder)
	w.record(done, became, what, what+": it is at "+w.d.Shop.Unit.Show(move.To), func() {
		w.begun(became)
		w.Look, w.Confirmed = 0, w.d.Journal.Now()
	})
}

// undoMove undoes the last move that positions.toml has: it was not made.
func (w *Setup) undoMove() {
	made := w.Made()
	if len(made) == 0 {
		w.d.Say("there is nothing left to undo in this setup")
		return
	}
	last := made[len(made)-1]
	done, became := w.change()
	at := done.Positions.At[last.Holder-1]
	done.Positions.At[last.Holder-1] = last.From
	if wrong := w.d.Misplaced(done.Positions.At); wrong != "" {
		w.d.Say("not undone: %s", wrong)
		return
	}
	done.Positions.Begun.Made = done.Positions.Begun.Made[:len(made)-1]
	done.Events = append(done.Events, record.Event{Time: w.d.TimeNow(), Kind: record.Moved, Holder: last.Holder, From: last.From, To: at, Job: w.Job.ID}.TakenBack(w.d.TimeNow()))
	done.Day = w.d.dayWith(became)
	done.Done = func(said string) {
		w.begun(became)
		if !w.holds() {
			w.replan(nil)
		}
		w.lookAt(last.Holder)
		w.d.Say("%s", words.Join("; ", w.d.notKept()+fmt.Sprintf("undone: holder %d is at %s again", last.Holder, w.d.Shop.Unit.Show(last.From)), said))
		w.d.Notice.Brief = w.d.notKept() + fmt.Sprintf("%d undone", last.Holder)
	}
	w.d.perform(done)
}

// replan has the rest planned from the positions, and what that came to said against the
// plan before, if there is one.
func (w *Setup) replan(was *planned) {
	w.d.Stand(w.d.Actual)
	w.Plan, w.Look, w.was = nil, 0, was
}

// Correct records that holders are not where they were thought, or are in another
// condition; the rest is planned again. Positions at which holders can't be are refused.
func (w *Setup) Correct(positions map[int]plan.Length, marks map[int]shop.Mark, what, says string) {
	if w.asks(func() { w.Correct(positions, marks, what, says) }) {
		return
	}
	at := slices.Clone(w.d.Actual.Positions.At)
	for n, to := range positions {
		at[n-1] = to
	}
	if wrong := w.d.Misplaced(at); wrong != "" {
		w.d.Say("%s", wrong)
		return
	}
	was := &planned{len(w.Ahead()), w.d.Able()}
	done, became := w.change()
	for n := range done.Positions.At {
		if to, told := positions[n+1]; told && to != done.Positions.At[n] {
			done.Events = append(done.Events, record.Event{Time: w.d.TimeNow(), Kind: record.Corrected, Holder: n + 1, From: done.Positions.At[n], To: to, Job: w.Job.ID})
			done.Positions.At[n], done.Positions.Begun.Found = to, true
		}
		if mark, told := marks[n+1]; told {
			done.Marks = w.d.Actual.Marked(n+1, mark, w.d.Shop).Marks
			done.Events = append(done.Events, record.Event{Time: w.d.TimeNow(), Kind: record.Condition, Holder: n + 1, Condition: mark.Condition, Reason: mark.Reason, Job: w.Job.ID})
		}
	}
	w.record(done, became, what, says, func() {
		w.begun(became)
		w.replan(was)
	})
}

// Finish records that the changeover is done: the job runs.
func (w *Setup) Finish() {
	switch {
	case w.Plan == nil || w.Refused():
		w.d.Say("still planning: wait until the moves are shown")
		return
	case len(w.Ahead()) > 0:
		w.d.Say("%s still to be made", words.Count(len(w.Ahead()), "move"))
		return
	case w.asks(w.Finish):
		return
	}
	done, became := w.change()
	done.Positions = carriedOver(w.Plan, done.Positions)
	done.Positions.Recorded = w.d.TimeNow()
	began := w.d.TimeNow()
	if w.d.Journal.Invented() { // there time goes as planned
		began = w.Plan.Step.RunStart
	}
	runs := draft.ProgressOf(w.Job).To(plan.Running)
	runs.Began = began
	became[w.Job.ID] = runs
	for _, j := range w.d.Jobs() {
		if _, ended := became[j.ID]; j.State == plan.Running && !ended {
			became[j.ID] = draft.ProgressOf(j).Done(began, j.Metres)
		}
	}
	done.Events = append(done.Events, record.Event{Time: w.d.TimeNow(), Kind: record.Job, Job: w.Job.ID, State: plan.Running})
	undo := w.d.Viewer.KeyOf(workday.ToUndo)
	w.record(done, became, w.Job.ID+" runs ("+undo+" undo)", w.Job.ID+" is set up and runs ("+undo+" undoes that)", func() { w.ran(became) })
}

// ran goes back to the panes when the job runs; u there takes it back.
func (w *Setup) ran(became draft.States) {
	last := w.d.Reports[len(w.d.Reports)-1]
	last.ran, last.goOn = true, func() { w.goesOn(last) }
	w.d.Become(became)
	next := *w.d.Now
	next.About, next.Did, next.Cause = "", "", last
	w.d.History.Do(next)
	w.d.Start.Clock.At = became[w.Job.ID].Began
	w.d.Stand(w.d.Actual)
	if w.d.Setup == w {
		w.d.Setup = nil
	}
	w.d.Began = w.Job.ID
	w.d.Viewer.Look(max(w.d.nextUp(), 0)) // what is to be set up then
}

// carriedOver is what is at the beam when the changeover is done: what it carries and where, but
// nothing run yet with it.
func carriedOver(o *planning.Outcome, now *plan.Positions) *plan.Positions {
	stands := *o.Positions
	stands.At = slices.Clone(now.At)
	stands.Metres = slices.Clone(now.Metres)
	for i := range stands.Metres {
		if i < len(now.Blades) && now.Blades[i].Known() && stands.Blades[i] != now.Blades[i] {
			stands.Metres[i] = 0 // a fresh edge
		}
	}
	return &stands
}

// Leave ends the guided setup, to be gone on with. The day then begins with what is there.
func (w *Setup) Leave() {
	d := w.d
	d.Setup = nil
	if d.Start.Positions != d.Actual.Positions {
		d.Stand(d.Actual)
	}
	if len(w.Made()) > 0 {
		d.Say("the setup of %s has begun: %s continues it", w.Job.ID, d.Viewer.KeyOf(workday.ToSetUp))
	}
}

// SaveAgain saves what could not be saved.
func (w *Setup) SaveAgain() {
	if !w.d.Journal.Owes() {
		w.d.Say("everything is saved")
		return
	}
	w.d.perform(journal.Deed{Actual: w.d.Actual, Done: func(said string) {
		switch {
		case w.d.Journal.Owes() && w.d.Journal.Fault() == "":
			w.d.Say("%s", "not saved: "+said)
		case w.d.Journal.Fault() == "":
			w.d.Say("%s", words.Join("; ", "everything is saved now", said))
			w.d.Notice.Brief = "all is saved now"
		}
	}})
}

// notKept says so where what was done is in memory alone.
func (d *Session) notKept() string {
	if !d.Journal.Invented() && !d.Journal.Writes() || d.Journal.Fault() != "" {
		return "not saved: "
	}
	return ""
}
