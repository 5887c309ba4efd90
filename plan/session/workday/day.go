// Package workday is the day of a shop as it is ordered now: what it costs, how a person
// changes its jobs, what a search offers, and all of that undone. A job in a draft never
// changes: an edit makes a new one, and what is known of the others stays.
package workday

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/draft"
	"bide/plan/session/planning"
	"bide/plan/shop"
)

// Day is the day as it is ordered now with what that costs, and all that was done to it.
type Day struct {
	View
	Forecast *planning.Forecast
	History  draft.History[draft.Draft]
	Search   planning.Search
	Mover    *mover // of the job that is to be moved; nil when none is
	Lags     bool   // it lacks states that jobs have come into: see Open
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
	d.Shop, d.stems = s, map[*plan.Job]string{}
	d.Filed, d.Lags = FiledIn(s)
	d.History = draft.History[draft.Draft]{Now: d.Filed}
	if half := s.Positions.Begun; half != nil {
		d.History.Now = d.Filed.First(half.Job)
	}
}

// FiledIn is the day of a shop as Open takes it, and whether its file lacks that a job has ended.
func FiledIn(s *shop.Shop) (filed draft.Draft, lags bool) {
	var jobs []*plan.Job
	for i := range s.Day.Jobs {
		jobs = append(jobs, &s.Day.Jobs[i])
	}
	filed = draft.New(jobs, s.Day.Aim)
	if half := s.Positions.Begun; half != nil && filed.Find(half.Job) != nil {
		filed = draft.Ended(filed, half.Job)
	}
	return filed, !slices.Equal(filed.All, jobs)
}

// Refresh brings what follows from the order and its outcomes up to date.
func (d *Day) Refresh() {
	d.Broken = map[*plan.Job]string{}
	for _, b := range plan.Broken(d.Able(), d.Now.Done()) {
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
	d.Forecast.List(d.Now.Like(order, d.Start.Positions.Begun).Jobs)
}

// Work is what is to be done in the background now.
func (d *Day) Work() (all []planning.Work) {
	if d.Mover != nil && d.Mover.Stale() {
		d.Mover.again()
	}
	if m := d.Mover; m != nil {
		all = m.Next(m.to)
	}
	all = append(all, d.works...)
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
	d.Forecast.Begin(stands, d.Now.Jobs)
	if d.Search.Interrupt(d.Inputs()) {
		d.mention(interrupted)
	}
	d.Refresh()
}

// GoOnFrom lets the day begin where a job of it ended, with all that is known of those
// after it.
func (d *Day) GoOnFrom(turn int) {
	o := d.Outcome(turn)
	d.Forecast.Remember()
	d.Start.Clock = o.Clock
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
		d.stems[is] = d.Origin(was)
	}
	d.Relist()
}

// New is the day of a shop whose beam can be planned.
func New(s *shop.Shop, p *changeover.Planner) *Day {
	d := &Day{View: View{use: &Use{}}, Search: planning.NewSearch()}
	d.Now = &d.History.Now
	d.Open(s)
	d.Forecast = planning.New(p, s.Beam, s.Positions, s.Day.Begins(s.Positions), d.Now.Jobs)
	d.Result = &d.Forecast.Result
	d.Aim = d.Now.Aim
	d.Refresh()
	return d
}
