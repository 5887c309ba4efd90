package ui

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

// session is an open shop: the day as it is ordered now with what that costs, what stands
// at the beam, what is saved, and what happened last. It knows nothing of a screen.
type session struct {
	forecast *planning.Forecast
	viewer   viewer
	shop     *shop.Shop
	history  draft.History[draft.Draft]
	kept     draft.Draft          // as the file has it
	aside    string               // the file that it was saved to where day.toml could not be; else empty
	stems    map[*plan.Job]string // where edited jobs come from: see origin
	search   planning.Search
	offer    *planning.Offer // what the last search found; nil without one
	news     news
	broken   map[*plan.Job]string // rules that the order breaks, by the job whose they are

	journal *journal.Journal // of what happens at the beam
	truth   journal.Actual   // what is really there
	claims  []*claim         // on walks, to be taken back
	setup   *setup           // that is under way; nil when none is
	began   string           // id of the job that was reported to run just now
	watch   watch            // over the shop's files
	wear    *record.Summary  // of the record; nil while it isn't read
	works   []planning.Work  // to be done in the background
}

// later has work done in the background.
func (d *session) later(w planning.Work) {
	if w != nil {
		d.works = append(d.works, w)
	}
}

// busyWith has work done in the background, if nothing is being written: until it has ended
// nothing is written, read again or changed. Else it says so.
func (d *session) busyWith(w planning.Work) bool {
	if d.waits() {
		return false
	}
	d.journal.Begin()
	d.later(w)
	return true
}

// waits reports whether something is being written, and says so.
func (d *session) waits() bool {
	if d.journal.Busy() {
		d.say("wait: the last one is still being saved")
	}
	return d.journal.Busy()
}

// viewer is what a session asks of whoever shows it.
type viewer interface {
	keyOf(action) string // the key that asks for it
	picked() int         // the turn of the job that is looked at
	look(turn int)       // what happened last is about the job of that turn; of none where that is -1
	unfinished() string  // what was typed there and would be lost; empty where nothing was
	offered()            // a search that the person waits for has found an order
	readAnew()           // the shop's files were: jobs may have other turns
	quiet() bool         // nothing is open there that a shop read anew would disturb
}

// action is what a person may ask for next, that a message names.
type action uint8

// The actions that messages name.
const (
	toSave    action = iota // the day
	toReread                // the files
	toCompare               // orders
	toUndo
	toSetUp
	toHold    // a job
	toCorrect // a position
	toRun     // the job that is set up
)

// openDay takes the day as the shop has it, and as it is where the beam is half set up:
// what ran then has ended, and the job that is set up comes first. Where day.toml doesn't
// have that it has ended, since the power went before it was written, that is written
// with the next thing told.
func (d *session) openDay(s *shop.Shop) {
	var jobs []*plan.Job
	for i := range s.Day.Jobs {
		jobs = append(jobs, &s.Day.Jobs[i])
	}
	d.kept = draft.New(jobs, s.Day.Aim)
	half := s.Standing.Setting
	d.journal.SetDayLags(false)
	if half != nil && d.kept.Find(half.Job) != nil {
		d.kept = draft.Ended(d.kept, half.Job)
		d.journal.SetDayLags(!slices.Equal(d.kept.All, jobs))
	}
	d.history = draft.History[draft.Draft]{Now: d.kept}
	if half != nil {
		d.history.Now = d.kept.First(half.Job)
	}
}

// jobs is the present order.
func (d *session) jobs() []*plan.Job { return d.forecast.Present.Jobs }

// away are the jobs done or set aside: they have no turn.
func (d *session) away() []*plan.Job { return d.history.Now.Away() }

// outcome is what is known of the job at that turn; nil while it is worked out.
func (d *session) outcome(turn int) *planning.Outcome {
	if turn < len(d.forecast.Present.Known) {
		return d.forecast.Present.Known[turn]
	}
	return nil
}

// before is what stands when the changeover to that turn begins; nil while it is
// worked out.
func (d *session) before(turn int) *plan.Standing {
	if turn == 0 {
		return d.forecast.Start.Standing
	}
	if o := d.outcome(turn - 1); o != nil {
		return o.Standing
	}
	return nil
}

// shift moves the job of a turn by one turn. An order that breaks a rule is allowed,
// and said to be broken: the person at the screen may know better.
func (d *session) shift(turn, by int) {
	if turn >= len(d.jobs()) {
		return
	}
	j, to := d.jobs()[turn], turn+by
	switch {
	case j.State == plan.Running:
		d.say("%s is running: it stays where it is", j.ID)
	case to < 0:
		d.say("%s is first already", j.ID)
	case to >= len(d.jobs()):
		d.say("%s is last already", j.ID)
	case by < 0 && d.jobs()[to].State == plan.Running:
		d.say("%s is running: nothing can come before it", d.jobs()[to].ID)
	default:
		jobs := slices.Clone(d.jobs())
		jobs[turn], jobs[to] = jobs[to], jobs[turn]
		next := d.history.Now.Ordered(jobs)
		next.About = j.ID
		d.do(next)
	}
}

// settle brings what follows from the order and its outcomes up to date.
func (d *session) settle() {
	d.broken = map[*plan.Job]string{}
	for _, b := range plan.Broken(d.able(), d.history.Now.Done()) {
		if _, told := d.broken[b.Job]; !told {
			d.broken[b.Job] = b.Why(d.shop.Unit)
		}
	}
	d.relist()
}

// relist brings the day that this one is compared with up to date: its jobs, in the order
// of the file. One that the file hasn't comes behind the one that it comes behind here.
func (d *session) relist() {
	var order []string
	for _, j := range d.kept.All {
		order = append(order, j.ID)
	}
	d.forecast.List(d.history.Now.Like(order, d.forecast.Start.Standing.Setting).Jobs)
}

// able are the jobs that the beam can run, as far as is known.
func (d *session) able() (out []*plan.Job) {
	for t, j := range d.jobs() {
		if o := d.outcome(t); o == nil || len(o.Faults) == 0 {
			out = append(out, j)
		}
	}
	return out
}

// changed reports whether the day is another than the file's.
func (d *session) changed() bool {
	return !slices.Equal(d.history.Now.All, d.kept.All) || d.history.Now.Aim != d.kept.Aim
}

// nth is a turn as people count it: from 1, with those of the day that are done. Jobs
// that the beam can't run have none, as far as that is known.
func (d *session) nth(turn int) int {
	n := d.history.Now.Done() + 1
	for t := range turn {
		if !d.turnedDown(t) {
			n++
		}
	}
	return n
}

// turnedDown reports whether it is known that the beam can't run the job at that turn.
func (d *session) turnedDown(turn int) bool {
	o := d.outcome(turn)
	return o != nil && len(o.Faults) > 0
}

// noneLate reports whether it is known that no job of the day is late.
func (d *session) noneLate() bool {
	return d.forecast.Present.Full() && d.forecast.Present.Totals.LateJobs == 0
}

// noneDue reports whether no job has a time by which it is due.
func (d *session) noneDue() bool {
	return !slices.ContainsFunc(d.jobs(), func(j *plan.Job) bool { return !j.Due.IsZero() })
}

// at is a time of the day.
func (d *session) at(t time.Time) string { return words.Clock(t, d.shop.Day.Start) }

// take goes on with what work in the background came to; false where that was none of the
// session's.
func (d *session) take(result any) bool {
	switch r := result.(type) {
	case planning.Found:
		d.finds(r)
	case journal.Written:
		d.performed(r)
	case journal.DaySaved:
		d.journal.WroteDay(r)
		r.Then(r)
	case asked:
		d.given(r)
	case looked:
		d.sees(r)
	case recorded:
		d.heard(r)
	default:
		if !d.forecast.Take(r) {
			return false
		}
		d.planned()
	}
	return true
}

// wanted is what is to be done in the background now.
func (d *session) wanted() []planning.Work {
	all := d.works
	if next := d.forecast.Next(); next != nil {
		all = append(all, next)
	}
	d.works = nil
	return all
}

// planned goes on when more of the day is known.
func (d *session) planned() {
	d.settle()
	d.followPlan()
	if f := d.search.Held(); f != nil && d.forecast.Present.Whole() {
		d.finds(*f)
	}
}

// newSession opens a session of a shop whose beam can be planned.
func newSession(s *shop.Shop, p *plan.Planner) *session {
	d := &session{shop: s, journal: journal.New(), truth: journal.Actual{Standing: s.Standing, Marks: s.Marks}}
	d.watch.since = d.journal.Clock()
	d.openDay(s)
	d.forecast = planning.New(p, s.Beam, s.Standing, s.Day.Begins(s.Standing), d.history.Now.Jobs)
	d.forecast.Aim = d.history.Now.Aim
	d.settle()
	return d
}
