// Package draft holds the ways to have a day that a person goes through: drafts, which are
// values, and their history, to be undone and done again without limit.
package draft

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
)

// Draft is one way to have the day. Drafts are values, and jobs in them never
// change: an edit makes a new job. So undo and redo cover all that can be edited.
type Draft struct {
	All   []*plan.Job         // in their order, those done and set aside too
	Jobs  []*plan.Job         // those of them that have a turn
	Given []*planning.Outcome // what the last search gave
	Aim   plan.Aim            // what it is planned for
	About string              // id of the job that was changed to have it so; empty when a search did
	Did   string              // what was done, for the news; empty when the job was moved
	Back  string              // what is so once it is undone; empty where that is the job's number or state
	Cause any                 // what had it so, to be taken back otherwise than an edit; nil for an edit
}

// New is a draft of these jobs, planned for the aim.
func New(all []*plan.Job, aim plan.Aim) Draft {
	d := Draft{All: all, Aim: aim}
	for _, j := range all {
		if turns(j) {
			d.Jobs = append(d.Jobs, j)
		}
	}
	return d
}

// turns reports whether the job has a turn: it is neither done nor set aside.
func turns(j *plan.Job) bool { return j.State != plan.Done && j.State != plan.OnHold }

// First is the draft with the job that the beam is half set up for before the others
// that wait: an order that wasn't saved may have had it so.
func (d Draft) First(id string) Draft {
	jobs := slices.Clone(d.Jobs)
	at := slices.IndexFunc(jobs, func(j *plan.Job) bool { return j.ID == id })
	to := slices.IndexFunc(jobs, func(j *plan.Job) bool { return j.State != plan.Running })
	if at < 0 || to < 0 || at <= to {
		return d
	}
	j := jobs[at]
	return d.Ordered(slices.Insert(slices.Delete(jobs, at, at+1), to, j))
}

// Like is the draft in an order of ids: jobs that it doesn't name come behind those
// that they come behind now, and what runs or is half set up comes first.
func (d Draft) Like(order []string, half *plan.Begun) Draft {
	turn, last := map[*plan.Job]int{}, -1
	for _, j := range d.Jobs {
		if i := slices.Index(order, j.ID); i >= 0 {
			last = i
		}
		if turn[j] = last; j.State == plan.Running {
			turn[j] = -2
		}
	}
	jobs := slices.Clone(d.Jobs)
	slices.SortStableFunc(jobs, func(a, b *plan.Job) int { return turn[a] - turn[b] })
	out := d.Ordered(jobs)
	if half != nil {
		out = out.First(half.Job)
	}
	return out
}

// Done counts the jobs that are done: the day's first turns.
func (d Draft) Done() (n int) {
	for _, j := range d.All {
		if j.State == plan.Done {
			n++
		}
	}
	return n
}

// Away are the jobs that have no turn.
func (d Draft) Away() []*plan.Job {
	return slices.DeleteFunc(slices.Clone(d.All), turns)
}

// Ordered is the draft with the jobs that have a turn in another order; the others
// keep their places between them.
func (d Draft) Ordered(jobs []*plan.Job) Draft {
	all, n := slices.Clone(d.All), 0
	for i, j := range all {
		if turns(j) {
			all[i] = jobs[n]
			n++
		}
	}
	return Draft{All: all, Jobs: jobs, Given: d.Given, Aim: d.Aim}
}

// With is the draft with one job in the place of another.
func (d Draft) With(old, next *plan.Job) Draft {
	all := slices.Clone(d.All)
	all[slices.Index(all, old)] = next
	out := New(all, d.Aim)
	out.Given = d.Given
	return out
}

// Day is the draft as a day with the hours of another.
func (d Draft) Day(of *plan.Day) *plan.Day {
	out := *of
	out.Aim, out.Jobs = d.Aim, nil
	for _, j := range d.All {
		out.Jobs = append(out.Jobs, *j)
	}
	return &out
}

// Find is the job with that id, nil without one.
func (d Draft) Find(id string) *plan.Job {
	for _, j := range d.All {
		if j.ID == id {
			return j
		}
	}
	return nil
}

// Chosen says that what a search chose is saved with the day.
func (d Draft) Chosen() string {
	n := 0
	for _, j := range d.All {
		if j.Chosen != nil {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("with what a search chose for %s", words.Count(n, "job"))
}
