package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// What is done on a walk. Each deed is written down first; then the screen says so.

// change begins a deed of the walk: what stands now, to be changed, with the
// changeover begun in it. The job that ran before has then ended: the machine stands.
func (w *setup) change() (journal.Deed, draft.States) {
	now, turn := w.d.truth.Standing, w.turnOf()
	became, out := draft.States{}, journal.Deed{}
	if turn > 0 && w.o != nil {
		now = w.d.before(turn)
		for _, j := range w.d.jobs()[:turn] {
			if j.State == plan.Running {
				became[j.ID] = w.became
				e := record.Event{Time: w.d.journal.Clock(), Kind: record.EventJob, Job: j.ID, State: w.became}
				if w.became == plan.Done {
					e.Metres = j.Metres
				}
				out.Events = append(out.Events, e)
			}
		}
	}
	stands := *now
	stands.At = slices.Clone(w.d.truth.Standing.At)
	stands.Recorded, stands.Assumed = w.d.journal.Clock(), false
	stands.Setting = w.setting()
	out.Actual = journal.Actual{Standing: &stands, Marks: w.d.truth.Marks}
	return out, became
}

// setting is the changeover under way, to be changed; as it begins, where it has not.
func (w *setup) setting() *plan.Setting {
	if s := w.d.truth.Standing.Setting; s != nil && s.Job == w.job.ID {
		out := *s
		out.Made = slices.Clone(s.Made)
		if s.Found {
			w.leadsTo(&out)
		}
		return &out
	}
	out := &plan.Setting{Job: w.job.ID, Slits: w.job.Slits()}
	w.leadsTo(out)
	return out
}

// leadsTo puts into a changeover under way where the plan walked leads, if there is one.
func (w *setup) leadsTo(s *plan.Setting) {
	if w.o == nil || len(w.o.Faults) > 0 {
		return
	}
	s.Slits, s.Shift, s.To, s.Found = w.o.Step.Layout.Slits, w.o.Step.Layout.Shift, nil, false
	for _, h := range w.o.Step.Changeover.Holders {
		s.To = append(s.To, h.At)
	}
}

// begun tells the day what a first deed means for it.
func (w *setup) begun(became draft.States) {
	turn := w.turnOf()
	w.d.become(became)
	if turn > 0 && len(became) > 0 {
		w.d.carryOn(turn - 1)
		w.d.viewer.look(max(w.turnOf(), 0))
	}
}

// leastPause is the least time between two ticks: a key that is held down or bounces
// makes one. No move is made in less.
const leastPause = 500 * time.Millisecond

// tick tells that the move looked at was made.
func (w *setup) tick() {
	move := w.move()
	switch {
	case w.o == nil:
		w.d.say("wait: the rest is being planned")
		return
	case w.refused():
		w.d.say("%s can't be set up from what stands", w.job.ID)
		return
	case move == nil:
		w.d.say("all moves are made: %s tells that %s is set up", w.d.viewer.keyOf(toRun), w.job.ID)
		return
	}
	if n := w.d.forecast.Beam.Blocks(w.d.truth.Standing.At, *move); n != 0 {
		w.d.say("holder %d can't go yet: holder %d is in its way and goes first", move.Holder, n)
		w.d.news.brief = fmt.Sprintf("%d goes first", n)
		return
	}
	if w.d.journal.Now().Sub(w.ticked).Abs() < leastPause {
		w.d.say("that was quick: once more, when the move is made")
		w.d.news.brief = "quick! once more"
		return
	}
	if w.asks(w.tick) {
		return
	}
	done, became := w.change()
	done.Standing.At[move.Holder-1] = move.To
	done.Standing.Setting.Made = append(done.Standing.Setting.Made, plan.Made{Holder: move.Holder, From: move.From})
	done.Events = append(done.Events, record.Event{Time: w.d.journal.Clock(), Kind: record.EventMoved, Holder: move.Holder, From: move.From, To: move.To, Job: w.job.ID})
	what := fmt.Sprintf("%d made", move.Holder)
	w.tell(done, became, what, what+": it stands at "+w.d.shop.Unit.Show(move.To), func() {
		w.begun(became)
		w.look, w.ticked = 0, w.d.journal.Now()
	})
}

// untick takes back the last tick that positions.toml has: that move was not made.
func (w *setup) untick() {
	made := w.made()
	if len(made) == 0 {
		w.d.say("nothing told on this walk is left to be taken back")
		return
	}
	last := made[len(made)-1]
	done, became := w.change()
	at := done.Standing.At[last.Holder-1]
	done.Standing.At[last.Holder-1] = last.From
	if faults := w.d.forecast.Beam.Misplaced(done.Standing.At); len(faults) > 0 {
		w.d.say("it can't have stayed there: %s", faults[0].Why(w.d.shop.Unit))
		return
	}
	done.Standing.Setting.Made = done.Standing.Setting.Made[:len(made)-1]
	done.Events = append(done.Events, record.Event{Time: w.d.journal.Clock(), Kind: record.EventMoved, Holder: last.Holder, From: last.From, To: at, Job: w.job.ID}.TakenBack(w.d.journal.Clock()))
	done.Day = w.d.dayWith(became)
	done.Done = func(said string) {
		w.begun(became)
		if !w.holds() {
			w.replan(nil)
		}
		w.lookAt(last.Holder)
		w.d.say("%s", words.Join("; ", w.d.notKept()+fmt.Sprintf("taken back: holder %d is at %s again", last.Holder, w.d.shop.Unit.Show(last.From)), said))
		w.d.news.brief = w.d.notKept() + fmt.Sprintf("%d taken back", last.Holder)
	}
	w.d.perform(done)
}

// lookAt looks at the move of a holder, if it is still to be made.
func (w *setup) lookAt(holder int) {
	w.look = max(slices.IndexFunc(w.ahead(), func(a plan.Move) bool { return a.Holder == holder }), 0)
}

// holds reports whether the plan walked still leads on: each holder stands where the
// plan took it from, or where it leads it.
func (w *setup) holds() bool {
	if w.o == nil || len(w.o.Faults) > 0 {
		return false
	}
	c := &w.o.Step.Changeover
	for i, x := range w.d.truth.Standing.At {
		if x != c.From[i] && x != c.Holders[i].At {
			return false
		}
	}
	return true
}

// replan has the rest planned from what stands, and what that came to told against the
// plan before, if there is one.
func (w *setup) replan(was *planned) {
	w.d.stand(w.d.truth)
	w.o, w.look, w.was = nil, 0, was
}

// correct tells that holders stand elsewhere than thought, or are in another
// condition; the rest is planned again.
func (w *setup) correct(places map[int]plan.Length, marks map[int]shop.Mark, what, says string) {
	if w.asks(func() { w.correct(places, marks, what, says) }) {
		return
	}
	was := &planned{len(w.ahead()), w.d.able()}
	done, became := w.change()
	for n := range done.Standing.At {
		if to, told := places[n+1]; told && to != done.Standing.At[n] {
			done.Events = append(done.Events, record.Event{Time: w.d.journal.Clock(), Kind: record.EventCorrected, Holder: n + 1, From: done.Standing.At[n], To: to, Job: w.job.ID})
			done.Standing.At[n], done.Standing.Setting.Found = to, true
		}
		if mark, told := marks[n+1]; told {
			done.Marks = w.d.truth.Marked(n+1, mark, w.d.shop).Marks
			done.Events = append(done.Events, record.Event{Time: w.d.journal.Clock(), Kind: record.EventCondition, Holder: n + 1, Condition: mark.Condition, Reason: mark.Reason, Job: w.job.ID})
		}
	}
	w.tell(done, became, what, says, func() {
		w.begun(became)
		w.replan(was)
	})
}

// finish tells that the changeover is done: the job runs.
func (w *setup) finish() {
	switch {
	case w.o == nil || w.refused():
		w.d.say("there is no plan to finish")
		return
	case len(w.ahead()) > 0:
		w.d.say("%s still to be made", words.Count(len(w.ahead()), "move"))
		return
	case w.asks(w.finish):
		return
	}
	done, became := w.change()
	done.Standing = carriedOver(w.o, done.Standing)
	done.Standing.Recorded = w.d.journal.Clock()
	became[w.job.ID] = plan.Running
	for _, j := range w.d.jobs() {
		if _, ended := became[j.ID]; j.State == plan.Running && !ended {
			became[j.ID] = plan.Done
		}
	}
	done.Events = append(done.Events, record.Event{Time: w.d.journal.Clock(), Kind: record.EventJob, Job: w.job.ID, State: plan.Running})
	w.tell(done, became, w.job.ID+" runs (u undo)", w.job.ID+" is set up and runs (u takes that back)", func() { w.ran(became) })
}

// ran goes back to the panes when the job runs; u there takes it back.
func (w *setup) ran(became draft.States) {
	last := w.d.claims[len(w.d.claims)-1]
	last.finished = w
	w.d.become(became)
	next := w.d.history.Now
	next.About, next.Did, next.Cause = "", "", last
	w.d.history.Do(next)
	w.d.forecast.Start.Clock = w.o.Step.RunStart // in an invented day time goes as planned
	w.d.stand(w.d.truth)
	if w.d.setup == w {
		w.d.setup = nil
	}
	w.d.began = w.job.ID
	w.d.viewer.look(max(w.d.nextUp(), 0)) // what is to be set up then
}

// carriedOver is what stands when the changeover is done: what it carries and where, but
// nothing run yet with it.
func carriedOver(o *planning.Outcome, now *plan.Standing) *plan.Standing {
	stands := *o.Standing
	stands.At = slices.Clone(now.At)
	stands.Metres = slices.Clone(now.Metres)
	for i := range stands.Metres {
		if i < len(now.Blades) && now.Blades[i].Known() && stands.Blades[i] != now.Blades[i] {
			stands.Metres[i] = 0 // a fresh edge
		}
	}
	return &stands
}

// leave ends the guided setup, to be gone on with. The day then begins with what is there.
func (w *setup) leave() {
	d, was := w.d, w.d.forecast.Start.Clock
	d.setup = nil
	if d.forecast.Start.Standing != d.truth.Standing {
		d.stand(d.truth)
	}
	if len(w.made()) > 0 {
		d.say("%s", words.Join("; ", w.job.ID+" is half set up: w goes on with it", d.byTheWall(was)))
	}
}

// again saves what could not be saved.
func (w *setup) again() {
	if !w.d.journal.Owes() {
		w.d.say("all that was told is saved")
		return
	}
	w.d.perform(journal.Deed{Actual: w.d.truth, Done: func(said string) {
		switch {
		case w.d.journal.Owes() && w.d.journal.Fault() == "":
			w.d.say("%s", "not saved: "+said)
		case w.d.journal.Fault() == "":
			w.d.say("%s", words.Join("; ", "all that was told is saved now", said))
			w.d.news.brief = "all is saved now"
		}
	}})
}

// notKept says so where what was done is in memory alone.
func (d *session) notKept() string {
	if !d.journal.Invented() && !d.journal.Writes() || d.journal.Fault() != "" {
		return "not saved: "
	}
	return ""
}
