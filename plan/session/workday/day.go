// Package workday is the day of a shop as it is ordered now: what it costs, how a person
// changes its jobs, what a search offers, and all of that undone. A job in a draft never
// changes: an edit makes a new one, and what is known of the others stays.
package workday

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/words"
)

// Day is the day as it is ordered now with what that costs, and all that was done to it.
type Day struct {
	Forecast *planning.Forecast
	Shop     *shop.Shop
	History  draft.History[draft.Draft]
	Filed    draft.Draft          // as the file has it
	Broken   map[*plan.Job]string // rules that the order breaks, by the job whose they are
	Search   planning.Search
	Offer    *planning.Offer // what the last search found; nil without one
	Notice   Notice
	Lags     bool                 // it lacks states that jobs have come into: see Open
	Stems    map[*plan.Job]string // where edited jobs come from: see Origin
	Screen   Screen
	works    []planning.Work // to be done in the background
}

// Screen is what a day asks of whoever shows it.
type Screen interface {
	KeyOf(Action) string // the key that asks for it
	Look(turn int)       // what happened last is about the job of that turn; of none where that is -1
	Offered()            // a search that the person waits for has found an order
}

// Action is what a person may ask for next, that a message names.
type Action uint8

// The actions that messages name.
const (
	ToSave    Action = iota // the day
	ToReread                // the files
	ToCompare               // orders
	ToUndo
	ToSetUp
	ToHold      // a job
	ToCorrect   // a position
	ToRun       // the job that is set up
	ToUndoEntry // of the guided setup
	ToStop      // a search
)

// Open takes the day as the shop has it, and as it is where the beam is half set up:
// what ran then has ended, and the job that is set up comes first. Where day.toml doesn't
// have that it has ended, since the power went before it was written, that is written
// with the next thing recorded.
func (d *Day) Open(s *shop.Shop) {
	var jobs []*plan.Job
	for i := range s.Day.Jobs {
		jobs = append(jobs, &s.Day.Jobs[i])
	}
	d.Filed = draft.New(jobs, s.Day.Aim)
	half := s.Positions.Begun
	d.Lags = false
	if half != nil && d.Filed.Find(half.Job) != nil {
		d.Filed = draft.Ended(d.Filed, half.Job)
		d.Lags = !slices.Equal(d.Filed.All, jobs)
	}
	d.History = draft.History[draft.Draft]{Now: d.Filed}
	if half != nil {
		d.History.Now = d.Filed.First(half.Job)
	}
}

// Jobs is the present order.
func (d *Day) Jobs() []*plan.Job { return d.Forecast.Present.Jobs }

// Away are the jobs done or set aside: they have no turn.
func (d *Day) Away() []*plan.Job { return d.History.Now.Away() }

// Outcome is what is known of the job at that turn; nil while it is worked out.
func (d *Day) Outcome(turn int) *planning.Outcome {
	if turn < len(d.Forecast.Present.Known) {
		return d.Forecast.Present.Known[turn]
	}
	return nil
}

// Before is what stands when the changeover to that turn begins; nil while it is
// worked out.
func (d *Day) Before(turn int) *plan.Positions {
	if turn == 0 {
		return d.Forecast.Start.Positions
	}
	if o := d.Outcome(turn - 1); o != nil {
		return o.Positions
	}
	return nil
}

// Refresh brings what follows from the order and its outcomes up to date.
func (d *Day) Refresh() {
	d.Broken = map[*plan.Job]string{}
	for _, b := range plan.Broken(d.Able(), d.History.Now.Done()) {
		if _, told := d.Broken[b.Job]; !told {
			d.Broken[b.Job] = b.Why(d.Shop.Unit)
		}
	}
	d.Relist()
}

// Relist brings the day that this one is compared with up to date: its jobs, in the order
// of the file. One that the file hasn't comes behind the one that it comes behind here.
func (d *Day) Relist() {
	var order []string
	for _, j := range d.Filed.All {
		order = append(order, j.ID)
	}
	d.Forecast.List(d.History.Now.Like(order, d.Forecast.Start.Positions.Begun).Jobs)
}

// Able are the jobs that the beam can run, as far as is known.
func (d *Day) Able() (out []*plan.Job) {
	for t, j := range d.Jobs() {
		if o := d.Outcome(t); o == nil || len(o.Faults) == 0 {
			out = append(out, j)
		}
	}
	return out
}

// Changed reports whether the day is another than the file's.
func (d *Day) Changed() bool {
	return !slices.Equal(d.History.Now.All, d.Filed.All) || d.History.Now.Aim != d.Filed.Aim
}

// Number is a turn as people count it: from 1, with those of the day that are done. Jobs
// that the beam can't run have none, as far as that is known.
func (d *Day) Number(turn int) int {
	n := d.History.Now.Done() + 1
	for t := range turn {
		if !d.Refused(t) {
			n++
		}
	}
	return n
}

// Refused reports whether it is known that the beam can't run the job at that turn.
func (d *Day) Refused(turn int) bool {
	o := d.Outcome(turn)
	return o != nil && len(o.Faults) > 0
}

// NoneLate reports whether it is known that no job of the day is late.
func (d *Day) NoneLate() bool {
	return d.Forecast.Present.Full() && d.Forecast.Present.Totals.LateJobs == 0
}

// NoneDue reports whether no job has a time by which it is due.
func (d *Day) NoneDue() bool {
	return !slices.ContainsFunc(d.Jobs(), func(j *plan.Job) bool { return !j.Due.IsZero() })
}

// Clock is a time of the day.
func (d *Day) Clock(t time.Time) string { return words.Clock(t, d.Shop.Day.Start) }

// Work is what is to be done in the background now.
func (d *Day) Work() []planning.Work {
	all := d.works
	if next := d.Forecast.Next(); next != nil {
		all = append(all, next)
	}
	d.works = nil
	return all
}

// Begin lets the day begin with these positions. Plans that began elsewhere are given
// up, in all drafts; their layouts stay with the jobs.
func (d *Day) Begin(stands *plan.Positions) {
	d.History.Each(func(f draft.Draft) draft.Draft {
		f.Given = nil
		return f
	})
	d.Forecast.Begin(stands, d.History.Now.Jobs)
	if d.Search.Interrupt(d.Inputs()) {
		d.Mention(interrupted)
	}
	d.Refresh()
}

// GoOnFrom lets the day begin where a job of it ended, with all that is known of those
// after it.
func (d *Day) GoOnFrom(turn int) {
	o := d.Outcome(turn)
	d.Forecast.Remember()
	d.Forecast.Start.Clock = o.Clock
	d.Begin(o.Positions)
}

// Become puts jobs into other states in all drafts, and in the day as it is in the
// file: what has happened can't be undone.
func (d *Day) Become(s draft.States) {
	if len(s) == 0 {
		return
	}
	turned := map[*plan.Job]*plan.Job{}
	d.History.Each(func(f draft.Draft) draft.Draft { return s.In(f, turned) })
	d.Filed = s.In(d.Filed, turned)
	for was, is := range turned {
		d.stem(is, d.Origin(was))
	}
	d.Relist()
}

// New is the day of a shop whose beam can be planned.
func New(s *shop.Shop, p *changeover.Planner) *Day {
	d := &Day{Shop: s, Search: planning.NewSearch()}
	d.Open(s)
	d.Forecast = planning.New(p, s.Beam, s.Positions, s.Day.Begins(s.Positions), d.History.Now.Jobs)
	d.Forecast.Aim = d.History.Now.Aim
	d.Refresh()
	return d
}
