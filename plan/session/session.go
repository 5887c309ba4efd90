// Package session is an open shop: the day as it is ordered now with what that costs, its
// drafts and their undoing, what happens at the beam and is recorded, and the shop's files,
// as others may change them. It knows no terminal and draws nothing. Whoever shows it calls
// its deeds, has its work done in the background, hands back what that comes to, and reads
// its notice. Nothing that was reported at the beam is lost or said to be saved before it is.
package session

import (
	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
	"slices"
	"time"
)

// Session is an open shop: the day as it is ordered now with what that costs, what stands
// at the beam, what is saved, and what happened last. It knows nothing of a screen.
type Session struct {
	Forecast *planning.Forecast
	Viewer   Viewer
	Shop     *shop.Shop
	History  draft.History[draft.Draft]
	Filed    draft.Draft          // as the file has it
	SavedTo  string               // the file that it was saved to where day.toml could not be; else empty
	stems    map[*plan.Job]string // where edited jobs come from: see origin
	Search   planning.Search
	Offer    *planning.Offer // what the last search found; nil without one
	Notice   Notice
	Broken   map[*plan.Job]string // rules that the order breaks, by the job whose they are

	Journal *journal.Journal // of what happens at the beam
	Actual  journal.Actual   // what is really there
	Claims  []*Claim         // on walks, to be taken back
	Setup   *Setup           // that is under way; nil when none is
	Began   string           // id of the job that was reported to run just now
	Watch   watch            // over the shop's files
	Wear    *record.Summary  // of the record; nil while it isn't read
	works   []planning.Work  // to be done in the background
}

// later has work done in the background.
func (d *Session) later(w planning.Work) {
	if w != nil {
		d.works = append(d.works, w)
	}
}

// busyWith has work done in the background, if nothing is being written: until it has ended
// nothing is written, read again or changed. Else it says so.
func (d *Session) busyWith(w planning.Work) bool {
	if d.Waits() {
		return false
	}
	d.Journal.Begin()
	d.later(w)
	return true
}

// Waits reports whether something is being written, and says so.
func (d *Session) Waits() bool {
	if d.Journal.Busy() {
		d.Say("wait: the last one is still being saved")
	}
	return d.Journal.Busy()
}

// Viewer is what a session asks of whoever shows it.
type Viewer interface {
	KeyOf(Action) string // the key that asks for it
	Picked() int         // the turn of the job that is looked at
	Look(turn int)       // what happened last is about the job of that turn; of none where that is -1
	Unfinished() string  // what was typed there and would be lost; empty where nothing was
	Offered()            // a search that the person waits for has found an order
	ReadAnew()           // the shop's files were: jobs may have other turns
	Quiet() bool         // nothing is open there that a shop read anew would disturb
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
	ToHold    // a job
	ToCorrect // a position
	ToRun     // the job that is set up
)

// openDay takes the day as the shop has it, and as it is where the beam is half set up:
// what ran then has ended, and the job that is set up comes first. Where day.toml doesn't
// have that it has ended, since the power went before it was written, that is written
// with the next thing told.
func (d *Session) openDay(s *shop.Shop) {
	var jobs []*plan.Job
	for i := range s.Day.Jobs {
		jobs = append(jobs, &s.Day.Jobs[i])
	}
	d.Filed = draft.New(jobs, s.Day.Aim)
	half := s.Standing.Setting
	d.Journal.SetDayLags(false)
	if half != nil && d.Filed.Find(half.Job) != nil {
		d.Filed = draft.Ended(d.Filed, half.Job)
		d.Journal.SetDayLags(!slices.Equal(d.Filed.All, jobs))
	}
	d.History = draft.History[draft.Draft]{Now: d.Filed}
	if half != nil {
		d.History.Now = d.Filed.First(half.Job)
	}
}

// Jobs is the present order.
func (d *Session) Jobs() []*plan.Job { return d.Forecast.Present.Jobs }

// Away are the jobs done or set aside: they have no turn.
func (d *Session) Away() []*plan.Job { return d.History.Now.Away() }

// Outcome is what is known of the job at that turn; nil while it is worked out.
func (d *Session) Outcome(turn int) *planning.Outcome {
	if turn < len(d.Forecast.Present.Known) {
		return d.Forecast.Present.Known[turn]
	}
	return nil
}

// Before is what stands when the changeover to that turn begins; nil while it is
// worked out.
func (d *Session) Before(turn int) *plan.Standing {
	if turn == 0 {
		return d.Forecast.Start.Standing
	}
	if o := d.Outcome(turn - 1); o != nil {
		return o.Standing
	}
	return nil
}

// shift moves the job of a turn by one turn. An order that breaks a rule is allowed,
// and said to be broken: the person at the screen may know better.
func (d *Session) MoveBy(turn, by int) {
	if turn >= len(d.Jobs()) {
		return
	}
	j, to := d.Jobs()[turn], turn+by
	switch {
	case j.State == plan.Running:
		d.Say("%s is running: it stays where it is", j.ID)
	case to < 0:
		d.Say("%s is first already", j.ID)
	case to >= len(d.Jobs()):
		d.Say("%s is last already", j.ID)
	case by < 0 && d.Jobs()[to].State == plan.Running:
		d.Say("%s is running: nothing can come before it", d.Jobs()[to].ID)
	default:
		jobs := slices.Clone(d.Jobs())
		jobs[turn], jobs[to] = jobs[to], jobs[turn]
		next := d.History.Now.Ordered(jobs)
		next.About = j.ID
		d.Do(next)
	}
}

// settle brings what follows from the order and its outcomes up to date.
func (d *Session) settle() {
	d.Broken = map[*plan.Job]string{}
	for _, b := range plan.Broken(d.Able(), d.History.Now.Done()) {
		if _, told := d.Broken[b.Job]; !told {
			d.Broken[b.Job] = b.Why(d.Shop.Unit)
		}
	}
	d.relist()
}

// relist brings the day that this one is compared with up to date: its jobs, in the order
// of the file. One that the file hasn't comes behind the one that it comes behind here.
func (d *Session) relist() {
	var order []string
	for _, j := range d.Filed.All {
		order = append(order, j.ID)
	}
	d.Forecast.List(d.History.Now.Like(order, d.Forecast.Start.Standing.Setting).Jobs)
}

// Able are the jobs that the beam can run, as far as is known.
func (d *Session) Able() (out []*plan.Job) {
	for t, j := range d.Jobs() {
		if o := d.Outcome(t); o == nil || len(o.Faults) == 0 {
			out = append(out, j)
		}
	}
	return out
}

// Changed reports whether the day is another than the file's.
func (d *Session) Changed() bool {
	return !slices.Equal(d.History.Now.All, d.Filed.All) || d.History.Now.Aim != d.Filed.Aim
}

// nth is a turn as people count it: from 1, with those of the day that are done. Jobs
// that the beam can't run have none, as far as that is known.
func (d *Session) Number(turn int) int {
	n := d.History.Now.Done() + 1
	for t := range turn {
		if !d.Refused(t) {
			n++
		}
	}
	return n
}

// turnedDown reports whether it is known that the beam can't run the job at that turn.
func (d *Session) Refused(turn int) bool {
	o := d.Outcome(turn)
	return o != nil && len(o.Faults) > 0
}

// NoneLate reports whether it is known that no job of the day is late.
func (d *Session) NoneLate() bool {
	return d.Forecast.Present.Full() && d.Forecast.Present.Totals.LateJobs == 0
}

// NoneDue reports whether no job has a time by which it is due.
func (d *Session) NoneDue() bool {
	return !slices.ContainsFunc(d.Jobs(), func(j *plan.Job) bool { return !j.Due.IsZero() })
}

// at is a time of the day.
func (d *Session) Clock(t time.Time) string { return words.Clock(t, d.Shop.Day.Start) }

// Take goes on with what work in the background came to; false where that was none of the
// session's.
func (d *Session) Take(result any) bool {
	switch r := result.(type) {
	case planning.Found:
		d.finds(r)
	case journal.Written:
		d.performed(r)
	case journal.DaySaved:
		d.Journal.WroteDay(r)
		r.Then(r)
	case Asked:
		d.given(r)
	case Looked:
		d.sees(r)
	case recorded:
		d.heard(r)
	default:
		if !d.Forecast.Take(r) {
			return false
		}
		d.planned()
	}
	return true
}

// wanted is what is to be done in the background now.
func (d *Session) Work() []planning.Work {
	all := d.works
	if next := d.Forecast.Next(); next != nil {
		all = append(all, next)
	}
	d.works = nil
	return all
}

// planned goes on when more of the day is known.
func (d *Session) planned() {
	d.settle()
	d.followPlan()
	if f := d.Search.Held(); f != nil && d.Forecast.Present.Whole() {
		d.finds(*f)
	}
}

// newSession opens a session of a shop whose beam can be planned.
func New(s *shop.Shop, p *plan.Planner) *Session {
	d := &Session{Shop: s, Journal: journal.New(), Actual: journal.Actual{Standing: s.Standing, Marks: s.Marks}}
	d.Watch.since = d.Journal.Clock()
	d.openDay(s)
	d.Forecast = planning.New(p, s.Beam, s.Standing, s.Day.Begins(s.Standing), d.History.Now.Jobs)
	d.Forecast.Aim = d.History.Now.Aim
	d.settle()
	return d
}
