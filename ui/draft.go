package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
)

// draft is one way to have the day. Drafts are values, and jobs in them never
// change: an edit makes a new job. So undo and redo cover all that can be edited.
type draft struct {
	all    []*plan.Job         // in their order, those done and set aside too
	jobs   []*plan.Job         // those of them that have a turn
	given  []*planning.Outcome // what the last search gave
	aim    plan.Aim            // what it is planned for
	about  string              // id of the job that was changed to have it so; empty when a search did
	did    string              // what was done, for the news; empty when the job was moved
	remark *remark             // the holder marked to have it so; nil for other changes
	ran    *claim              // the end of a walk that had it so; nil for other changes
	tossed *planning.Offer     // what a search found and was discarded; nil for other changes
}

// newDraft is a draft of these jobs, planned for the aim.
func newDraft(all []*plan.Job, aim plan.Aim) draft {
	d := draft{all: all, aim: aim}
	for _, j := range all {
		if turns(j) {
			d.jobs = append(d.jobs, j)
		}
	}
	return d
}

// turns reports whether the job has a turn: it is neither done nor set aside.
func turns(j *plan.Job) bool { return j.State != plan.Done && j.State != plan.Aside }

// first is the draft with the job that the beam is half set up for before the others
// that wait: an order that wasn't saved may have had it so.
func (d draft) first(id string) draft {
	jobs := slices.Clone(d.jobs)
	at := slices.IndexFunc(jobs, func(j *plan.Job) bool { return j.ID == id })
	to := slices.IndexFunc(jobs, func(j *plan.Job) bool { return j.State != plan.Running })
	if at < 0 || to < 0 || at <= to {
		return d
	}
	j := jobs[at]
	return d.ordered(slices.Insert(slices.Delete(jobs, at, at+1), to, j))
}

// like is the draft in an order of ids: jobs that it doesn't name come behind those
// that they come behind now, and what runs or is half set up comes first.
func (d draft) like(order []string, half *plan.Setting) draft {
	turn, last := map[*plan.Job]int{}, -1
	for _, j := range d.jobs {
		if i := slices.Index(order, j.ID); i >= 0 {
			last = i
		}
		if turn[j] = last; j.State == plan.Running {
			turn[j] = -2
		}
	}
	jobs := slices.Clone(d.jobs)
	slices.SortStableFunc(jobs, func(a, b *plan.Job) int { return turn[a] - turn[b] })
	out := d.ordered(jobs)
	if half != nil {
		out = out.first(half.Job)
	}
	return out
}

// done counts the jobs that are done: the day's first turns.
func (d draft) done() (n int) {
	for _, j := range d.all {
		if j.State == plan.Done {
			n++
		}
	}
	return n
}

// away are the jobs that have no turn.
func (d draft) away() []*plan.Job {
	return slices.DeleteFunc(slices.Clone(d.all), turns)
}

// ordered is the draft with the jobs that have a turn in another order; the others
// keep their places between them.
func (d draft) ordered(jobs []*plan.Job) draft {
	all, n := slices.Clone(d.all), 0
	for i, j := range all {
		if turns(j) {
			all[i] = jobs[n]
			n++
		}
	}
	return draft{all: all, jobs: jobs, given: d.given, aim: d.aim}
}

// with is the draft with one job in the place of another.
func (d draft) with(old, next *plan.Job) draft {
	all := slices.Clone(d.all)
	all[slices.Index(all, old)] = next
	out := newDraft(all, d.aim)
	out.given = d.given
	return out
}

// day is the draft as a day with these hours.
func (d draft) day(of *plan.Day) *plan.Day {
	out := &plan.Day{Start: of.Start, End: of.End, Aim: d.aim}
	for _, j := range d.all {
		out.Jobs = append(out.Jobs, *j)
	}
	return out
}

// find is the job with that id, nil without one.
func (d draft) find(id string) *plan.Job {
	for _, j := range d.all {
		if j.ID == id {
			return j
		}
	}
	return nil
}
