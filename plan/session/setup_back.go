package session

import (
	"fmt"
	"maps"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// Claim is something told of the beam on a walk, so that it can be taken back: what was
// true before and after it, what of it is in the record, and which jobs came into other
// states by it.
type Claim struct {
	job      string // id of the walk's
	what     string // it, in few words
	Was, Is  journal.Actual
	events   []record.Event
	were     draft.States // of the jobs that came into other states, those before
	finished *Setup       // the setup that it ended; nil while that goes on
}

// tell has a deed of the walk written down, to be taken back with u; then it goes on,
// and says what was told, in full or in few words. Jobs have become what they became by it.
func (w *Setup) tell(done journal.Deed, became draft.States, what, says string, then func()) {
	t, was := &Claim{job: w.Job.ID, what: what, Was: w.d.Actual, Is: done.Actual, events: done.Events, were: w.d.StatesOf(became)}, w.d.Forecast.Start.Clock
	done.Day = w.d.dayWith(became)
	done.Done = func(said string) {
		w.d.Claims = append(w.d.Claims, t)
		then()
		w.d.Say("%s", words.Join("; ", w.d.notKept()+says, outcomes(became, w.Job.ID), said, w.d.byTheWall(was)))
		w.d.Notice.Brief = w.d.notKept() + what
	}
	w.d.perform(done)
}

// byTheWall says that the day goes on by the clock on the wall from here on, where it
// began as its file has it before; else nothing.
func (d *Session) byTheWall(was time.Time) string {
	if now := d.Forecast.Start.Clock; was.Equal(d.Shop.Day.Start) && !now.Equal(was) {
		return "the day goes by the real time now, from " + d.Clock(now) + " on"
	}
	return ""
}

// outcomes tell what became of other jobs.
func outcomes(became draft.States, but string) string {
	var parts []string
	for _, id := range slices.Sorted(maps.Keys(became)) {
		if id != but {
			parts = append(parts, id+" is "+map[plan.State]string{plan.Done: "done", plan.Aside: "set aside", plan.Running: "running", plan.Waiting: "waiting again"}[became[id]])
		}
	}
	return words.Join(", ", parts...)
}

// TakeBack takes back what was told last on this walk; after a restart, the last tick
// that positions.toml has. That the job ran, told at the end of an earlier walk to it, is
// taken back as in the panes.
func (w *Setup) TakeBack() {
	n := len(w.d.Claims)
	if n == 0 || w.d.Claims[n-1].job != w.Job.ID {
		w.untick()
		return
	}
	last := w.d.Claims[n-1]
	if last.finished != nil {
		w.d.Unrun(last)
		return
	}
	w.d.unsay(last, func() { w.resume(last) })
}

// CanTakeBack reports whether there is something to take back.
func (w *Setup) CanTakeBack() bool {
	n := len(w.d.Claims)
	return n > 0 && w.d.Claims[n-1].job == w.Job.ID || len(w.Made()) > 0
}

// unsay has a thing told written down as told by mistake.
func (d *Session) unsay(t *Claim, then func()) {
	back, wrong := t.Before(d.Actual)
	if faults := changeover.Misplaced(d.Forecast.Beam, back.Standing.At); wrong == "" && len(faults) > 0 {
		wrong = faults[0].Why(d.Shop.Unit)
	}
	if wrong != "" {
		d.Say("%s can't be taken back: %s", t.what, wrong)
		return
	}
	now := d.Journal.Clock()
	if back.Standing.Setting != nil { // else it stands again as it was recorded then
		back.Standing.Recorded = now
	}
	done := journal.Deed{Actual: back, Day: d.dayWith(t.were)}
	for _, e := range slices.Backward(t.events) {
		done.Events = append(done.Events, e.TakenBack(now))
	}
	done.Done = func(said string) {
		d.Claims = slices.DeleteFunc(d.Claims, func(c *Claim) bool { return c == t })
		d.Become(t.were)
		then()
		d.Say("%s", words.Join("; ", d.notKept()+"taken back: "+words.Join(", ", d.asBefore(t), outcomes(t.were, "")), said))
		d.Notice.Brief = d.notKept() + d.briefly(t)
	}
	d.perform(done)
}

// asBefore tells where holders stand and how they are marked again, what was told of them
// taken back.
func (d *Session) asBefore(t *Claim) string {
	var parts []string
	for _, e := range t.events {
		switch e.Kind {
		case record.Moved, record.Corrected:
			parts = append(parts, fmt.Sprintf("%d is at %s again", e.Holder, d.Shop.Unit.Show(e.From)))
		case record.Condition:
			parts = append(parts, fmt.Sprintf("%d is %s again", e.Holder, d.Forecast.Beam.Holders[e.Holder-1]))
		}
	}
	return words.Join(", ", parts...)
}

// briefly tells in few words what is so again.
func (d *Session) briefly(t *Claim) string {
	if len(t.events) == 0 {
		return "taken back"
	}
	found := 0
	for _, e := range t.events {
		if e.Kind == record.Corrected {
			found++
		}
	}
	switch e := t.events[len(t.events)-1]; {
	case e.Kind == record.Moved:
		return fmt.Sprintf("%d taken back", e.Holder)
	case e.Kind == record.Condition:
		return fmt.Sprintf("%d is %s again", e.Holder, d.Forecast.Beam.Holders[e.Holder-1])
	case found > 1:
		return fmt.Sprintf("%d as thought again", found)
	case found == 1:
		return fmt.Sprintf("%d as thought again", e.Holder)
	case e.Job != "":
		return e.Job + " waits again"
	}
	return "taken back"
}

// Before is what is true without what was told: of what has changed since, what was
// told changes nothing. wrong is why it can't be taken out any more.
func (t *Claim) Before(now journal.Actual) (out journal.Actual, wrong string) {
	stands := *t.Was.Standing
	stands.At, stands.Assumed = slices.Clone(now.Standing.At), false
	for i, is := range t.Is.Standing.At {
		switch was := t.Was.Standing.At[i]; {
		case was == is:
		case now.Standing.At[i] != is:
			wrong = fmt.Sprintf("holder %d stands elsewhere since", i+1)
		default:
			stands.At[i] = was
		}
	}
	marks := maps.Clone(now.Marks)
	for _, n := range slices.Concat(slices.Collect(maps.Keys(t.Was.Marks)), slices.Collect(maps.Keys(t.Is.Marks))) {
		was, before := t.Was.Marks[n]
		is, after := t.Is.Marks[n]
		switch {
		case was == is && before == after:
		case now.Marks[n] != is:
			wrong = fmt.Sprintf("holder %d has been marked otherwise since", n)
		case before:
			if marks == nil {
				marks = shop.Marks{}
			}
			marks[n] = was
		default:
			delete(marks, n)
		}
	}
	return journal.Actual{Standing: &stands, Marks: marks}, wrong
}

// resume goes on with the walk after something was taken back: with the plan as it is
// where only a tick was, else with a new one.
func (w *Setup) resume(t *Claim) {
	if len(t.were) > 0 {
		w.became, w.sure = plan.Done, false
	}
	tick := len(t.were) == 0 && len(t.events) == 1 && t.events[0].Kind == record.Moved
	if !tick || !w.holds() {
		w.replan(nil)
		return
	}
	w.lookAt(t.events[0].Holder)
}

// Unrun takes back that a job is set up and runs: its walk goes on at its end. What was
// edited since stays.
func (d *Session) Unrun(t *Claim) {
	if !slices.Contains(d.Claims, t) {
		d.Say("that %s runs was taken back already", t.job)
		return
	}
	if s := d.Actual.Standing.Setting; s != nil {
		d.Say("%s is half set up: take that back first, with w and then u", s.Job)
		return
	}
	d.unsay(t, func() {
		d.History.Drop(func(f draft.Draft) bool { return f.Cause == any(t) })
		w := t.finished
		w.Job, w.Look = d.History.Now.Find(t.job), 0
		d.Setup = w
		d.Stand(d.Actual)
	})
}
