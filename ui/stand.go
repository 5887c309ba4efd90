package ui

import (
	"fmt"
	"maps"
	"slices"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// What is done at the beam changes what stands there. The desk plans from a start of
// its own, so that a plan stays as it is while its moves are made one by one; stand
// lets it begin anew.

// perform has a deed written down and then goes on with it. While one is written
// nothing else is begun.
func (d *desk) perform(done deed) tea.Cmd {
	if d.saving {
		d.say("wait: the last one is still being saved")
		return nil
	}
	d.saving = true
	return d.keep.keep(done)
}

// performed goes on with a deed that was written down. One that could not be is
// nevertheless what stands: it is said not to be saved until a later save is.
func (d *desk) performed(k kept) {
	d.saving, d.truth, d.unsaved = false, k.truth, ""
	if k.err != nil {
		d.unsaved = k.err.Error()
	}
	if k.done != nil {
		k.done(k.said)
	}
}

// report marks a holder as good, unable to cut, stuck or out, for a reason: it is saved
// and all is planned again. A mark that says what beam.toml says is taken away.
func (d *desk) report(number int, mark shop.Mark) tea.Cmd {
	next, priced := d.truth.marked(number, mark, d.shop), d.priced()
	e := shop.Event{Time: d.keep.clock(), Kind: shop.EventCondition, Holder: number, Condition: mark.Condition, Reason: mark.Reason}
	return d.perform(deed{truth: next, events: []shop.Event{e}, done: func(said string) {
		d.stand(d.truth)
		text := fmt.Sprintf("holder %d is marked %s", number, mark.Condition)
		if d.keep.barred != "" || d.unsaved != "" {
			text += " (not saved)"
		}
		priced.text = join("; ", text, said)
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
func (d *desk) stand(t truth) {
	b := d.shop.Marked(t.marks)
	p, err := plan.NewPlanner(b)
	if err != nil { // never: the beam was planned with in other conditions
		d.say("beam.toml: %v", err)
		return
	}
	d.stop()
	d.planner, d.beam = p, b
	d.restart(t.stands)
}

// restart lets the day begin with a standing. Plans that began elsewhere are given
// up, in all drafts.
func (d *desk) restart(stands *plan.Standing) {
	d.start.stands, d.offer = stands, nil
	d.history.each(func(f draft) draft {
		f.given = nil
		return f
	})
	d.present.known, d.present.given, d.listed.known = nil, nil, nil
	d.order(d.history.now.jobs, nil)
	d.extend(&d.listed)
	d.settle()
}

// carryOn lets the day begin where a job of it ended, with all that is known of those
// after it.
func (d *desk) carryOn(turn int) {
	for t, o := range d.present.known {
		d.answers.keep(question{d.before(t), d.jobs()[t], false}, o)
	}
	d.stop()
	d.start.clock = d.outcome(turn).clock
	d.restart(d.outcome(turn).stands)
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
	out := newDraft(all)
	out.about, out.did, out.remark = f.about, f.did, f.remark
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

// filed is a day for the file: where each job comes from, and the day.
type filed struct {
	day  *plan.Day
	from []string
}

// dayWith is the day as it is in the file, with jobs in other states; nil where there
// are none.
func (d *desk) dayWith(s states) *filed {
	if len(s) == 0 {
		return nil
	}
	return &filed{s.in(d.kept, map[*plan.Job]*plan.Job{}).day(d.shop.Day), d.origins(d.kept)}
}

// become puts jobs into other states in all drafts, and in the day as it is in the
// file: what has happened can't be undone.
func (d *desk) become(s states) {
	if len(s) == 0 {
		return
	}
	turned := map[*plan.Job]*plan.Job{}
	d.history.each(func(f draft) draft { return s.in(f, turned) })
	d.kept = s.in(d.kept, turned)
	for was, is := range turned {
		d.stem(is, d.origin(was))
	}
	d.listed.jobs, d.listed.known = d.kept.jobs, nil
}
