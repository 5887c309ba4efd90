package ui

import (
	"fmt"
	"maps"
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
)

// What is done at the beam changes what stands there. The desk plans from a start of
// its own, so that a plan stays as it is while its moves are made one by one; stand
// lets it begin anew.

// perform has a deed written down and then goes on with it. Where another has the right
// to write, it is asked for again; if the files have changed meanwhile, the deed is not
// done: what it began with is gone.
func (d *session) perform(done deed) {
	j := d.journal
	switch {
	case d.waits():
		return
	case done.day == nil && j.behind:
		done.day = d.keptDay()
	}
	if j.right != another {
		d.busyWith(j.write(d.shop, done))
		return
	}
	d.askAgain(&done, func(a asked) {
		if a.fresh != nil {
			return
		}
		if did := done.done; a.lock != nil && did != nil {
			done.done = func(said string) { did(words.Join("; ", writtenHere, said)) }
		}
		d.busyWith(j.write(d.shop, done))
	})
}

// performed goes on with a deed that was written down. One that could not be is
// nevertheless what is there: it is said not to be saved until a later save is.
func (d *session) performed(w written) {
	d.journal.busy, d.truth = false, w.truth
	d.journal.wrote(w)
	if w.done != nil {
		w.done(w.said)
	}
	d.followPlan()
}

// report marks a holder as good, unable to cut, stuck or out, for a reason: it is saved
// and all is planned again, and said, after some words. A mark that says what beam.toml
// says is taken away.
func (d *session) report(number int, mark shop.Mark, after string) {
	d.mark(number, mark, d.condition(number, mark), fmt.Sprintf("%sholder %d is marked %s", after, number, mark.Condition))
}

// unreport takes a mark back: the holder has the one it had before, unless it has been
// given another since.
func (d *session) unreport(r *remark) {
	if d.markOf(r.number) != r.is {
		d.say("not taken back: %s", d.otherwise(r.number))
		return
	}
	d.mark(r.number, r.was, d.condition(r.number, r.is).TakenBack(d.journal.clock()),
		fmt.Sprintf("taken back: holder %d is marked %s again", r.number, r.was.Condition))
}

// rereport gives a mark that was taken back again, unless the holder has been given
// another since.
func (d *session) rereport(r *remark) {
	if d.markOf(r.number) != r.was {
		d.say("not done again: %s", d.otherwise(r.number))
		return
	}
	d.report(r.number, r.is, "done again: ")
}

// otherwise tells that a holder has been marked after a mark that is to be undone or done
// again.
func (d *session) otherwise(number int) string {
	return fmt.Sprintf("holder %d has been marked otherwise since, and stays %s", number, d.markOf(number).Condition)
}

// condition is the event of a holder's coming into a condition.
func (d *session) condition(number int, mark shop.Mark) shop.Event {
	return shop.Event{Time: d.journal.clock(), Kind: shop.EventCondition, Holder: number, Condition: mark.Condition, Reason: mark.Reason}
}

// mark gives a holder a mark, with what the record is to hold of it and what is said.
func (d *session) mark(number int, mark shop.Mark, e shop.Event, says string) {
	next, priced := d.truth.marked(number, mark, d.shop), d.priced()
	d.perform(deed{truth: next, events: []shop.Event{e}, done: func(said string) {
		d.stand(d.truth)
		if !d.journal.writes() || d.journal.fault != "" {
			says += " (not saved)"
		}
		priced.text = words.Join("; ", says, said)
		d.news = priced
	}})
}

// marked is the truth with a holder marked.
func (t truth) marked(number int, mark shop.Mark, s *shop.Shop) truth {
	marks := maps.Clone(t.marks)
	if marks == nil {
		marks = shop.Marks{}
	}
	marks[number] = mark
	fixed := s.Conditions
	if fixed == nil {
		fixed = s.Beam.Holders
	}
	if mark.Condition == fixed[number-1] && mark.Reason == "" {
		delete(marks, number)
	}
	stands := *t.stands
	return truth{&stands, marks}
}

// stand lets the day begin with what stands now.
func (d *session) stand(t truth) {
	b := d.shop.Marked(t.marks)
	p, err := plan.NewPlanner(b)
	if err != nil { // never: the beam was planned with in other conditions
		d.say("beam.toml: %v", err)
		return
	}
	d.forecast.Planner, d.forecast.Beam = p, b
	if d.journal.writes() { // as who reads the files has it
		d.forecast.Start.Clock = d.shop.Day.Begins(t.stands)
	}
	d.restart(t.stands)
}

// restart lets the day begin with a standing. Plans that began elsewhere are given
// up, in all drafts; their layouts stay with the jobs.
func (d *session) restart(stands *plan.Standing) {
	d.history.each(func(f draft) draft {
		f.given = nil
		return f
	})
	d.forecast.Begin(stands, d.history.now.jobs)
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

// states are jobs by id, and what became of them.
type states map[string]plan.State

// in gives a draft with the jobs in these states. A job that stands in several drafts
// becomes one job again: turned holds what became of each.
func (s states) in(f draft, turned map[*plan.Job]*plan.Job) draft {
	all := slices.Clone(f.all)
	for i, j := range all {
		state, named := s[j.ID]
		if !named || j.State == state {
			continue
		}
		if turned[j] == nil {
			next := *j
			next.State = state
			turned[j] = &next
		}
		all[i] = turned[j]
	}
	out := newDraft(all, f.aim)
	out.about, out.did, out.remark, out.ran, out.tossed = f.about, f.did, f.remark, f.ran, f.tossed
	return out
}

// ended is a draft in which what ran has ended: the beam is being set up for a job.
func ended(f draft, next string) draft {
	s := states{}
	for _, j := range f.all {
		if j.State == plan.Running && j.ID != next {
			s[j.ID] = plan.Done
		}
	}
	return s.in(f, map[*plan.Job]*plan.Job{})
}

// dayWith is the day as it is in the file, with jobs in other states; nil where there
// are none.
func (d *session) dayWith(s states) *filed {
	if len(s) == 0 {
		return nil
	}
	return &filed{s.in(d.kept, map[*plan.Job]*plan.Job{}).day(d.shop.Day), d.origins(d.kept)}
}

// keptDay is the day as it is in the file, or would be were all told written down.
func (d *session) keptDay() *filed { return &filed{d.kept.day(d.shop.Day), d.origins(d.kept)} }

// become puts jobs into other states in all drafts, and in the day as it is in the
// file: what has happened can't be undone.
func (d *session) become(s states) {
	if len(s) == 0 {
		return
	}
	turned := map[*plan.Job]*plan.Job{}
	d.history.each(func(f draft) draft { return s.in(f, turned) })
	d.kept = s.in(d.kept, turned)
	for was, is := range turned {
		d.stem(is, d.origin(was))
	}
	d.relist()
}
