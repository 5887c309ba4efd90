// Package planning works out in the background what the orders of a day cost. It holds no
// terminal, no keys and no files: what is to be done is work, a function that may run
// anywhere, and what that comes to is a value that is handed back.
package planning

import (
	"context"
	"slices"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// Work is something to be done in the background: it may take long, touches nothing that
// others see, and gives its result as a value, to be handed to whoever asked for it. Nil
// is nothing to do.
type Work func() any

// Forecast works out what the day costs in the order it stands in, job by job in
// the background, and in the order of the file for comparison. Nothing is planned
// while a key is dealt with: what isn't known yet is asked for, one job at a time,
// since each changeover begins where the one before it ends. Answers are kept by
// what they depend on, so one that comes late is never taken for another, and an
// order that was there before is there again at once. When all jobs of the present
// order are known, each on its own, the day is improved: planned together, as the
// sheet gives it.
type Forecast struct {
	Result
	Planner *changeover.Planner
	answers memory
	asking  bool // a question is out; the planner has one working memory

	Plan     JobPlanner         // plans one job
	Improve  Improver           // plans a day together whose jobs are planned one by one
	improved []Improved         // of late, the newest last
	cancel   context.CancelFunc // of the improving that is under way; nil when none is
}

// Result is a day as far as it is worked out.
type Result struct {
	Beam    *plan.Beam
	Start   Outcome // as if it had been a job: where the holders are, and the clock
	Present Order
	Listed  Order    // the order of the file, layouts centred
	Aim     plan.Aim // what days are improved for
}

// Outcome is a turn of a day as planned, and what it leaves to the next: all as it was
// where its job is refused.
type Outcome struct {
	plan.Turn
	Positions *plan.Positions // while the job runs
	Clock     plan.Clock      // when it ends
}

// then is what comes of a turn after this one, with these positions while its job runs.
func (o *Outcome) then(t plan.Turn, positions *plan.Positions) *Outcome {
	if t.Refused() {
		return &Outcome{t, o.Positions, o.Clock}
	}
	return &Outcome{t, positions, plan.Clock{At: t.Step.RunEnd, Calendar: o.Clock.Calendar}}
}

// from is the outcome of the same turn from another clock on: only its times are others.
func (o *Outcome) from(clock plan.Clock) *Outcome {
	if o.Refused() {
		if clock == o.Clock {
			return o
		}
		return &Outcome{o.Turn, o.Positions, clock}
	}
	s := *o.Step
	s.Clock(clock)
	if s.SetupStart.Equal(o.Step.SetupStart) && s.RunEnd.Equal(o.Step.RunEnd) && s.RunStart.Equal(o.Step.RunStart) {
		return o
	}
	return &Outcome{plan.Turn{Job: o.Job, Step: &s}, o.Positions, plan.Clock{At: s.RunEnd, Calendar: clock.Calendar}}
}

// following are outcomes one after the other, from this one's clock on.
func (o *Outcome) following(turns []*Outcome) []*Outcome {
	out := make([]*Outcome, len(turns))
	for i, t := range turns {
		out[i] = t.from(o.Clock)
		o = out[i]
	}
	return out
}

// At sets the clock that the day begins at: all that is planned stays, at later or earlier
// times.
func (f *Forecast) At(clock plan.Clock) {
	f.Start.Clock = clock
	for _, c := range []*Order{&f.Present, &f.Listed} {
		c.from(&f.Start)
	}
}

// from lets an order begin at the clock of an outcome.
func (c *Order) from(start *Outcome) {
	c.Known = start.following(c.Known)
	c.Totals = plan.TotalsOf(c.turns())
}

// question is all that an outcome depends on: positions are made by one outcome
// alone, and so belongs to one moment too.
type question struct {
	stands  *plan.Positions
	job     *plan.Job
	centred bool
}

// Answer comes back from the background.
type Answer struct {
	question
	*Outcome
}

// New is a forecast of a day from the positions and time that it starts at, with nothing
// planned yet.
func New(p *changeover.Planner, b *plan.Beam, start *plan.Positions, clock plan.Clock, jobs []*plan.Job) *Forecast {
	r := Result{Beam: b, Start: Outcome{Positions: start, Clock: clock}, Present: Order{Jobs: jobs}, Listed: Order{Jobs: jobs, centred: true}}
	return &Forecast{Result: r, Planner: p, Plan: PlanJob, Improve: sequence.Jointly}
}

// Reorder sets the present order, and what a search gave for it or one like it. What
// is known of the jobs up to the first that changes stays.
func (f *Forecast) Reorder(jobs []*plan.Job, given []*Outcome) {
	same := 0
	f.drop()
	if f.Present.Final || !slices.Equal(given, f.Present.given) {
		f.Present.given, f.Present.Known, f.Present.Final = given, nil, false
	}
	for same < len(f.Present.Known) && same < len(jobs) && f.Present.Jobs[same] == jobs[same] {
		same++
	}
	f.Present.Jobs, f.Present.Known = jobs, f.Present.Known[:same:same]
	f.extend(&f.Present)
}

// List sets the order that the present one is compared with.
func (f *Forecast) List(jobs []*plan.Job) {
	if !slices.Equal(jobs, f.Listed.Jobs) {
		f.Listed = Order{Jobs: jobs, centred: true}
		f.extend(&f.Listed)
	}
}

// Begin lets the day begin with other positions, its jobs in this order. What was planned
// from elsewhere is given up, unless it was remembered.
func (f *Forecast) Begin(stands *plan.Positions, jobs []*plan.Job) {
	f.Start.Positions = stands
	f.Present.Known, f.Present.given, f.Listed.Known = nil, nil, nil
	f.Reorder(jobs, nil)
	f.extend(&f.Listed)
}

// Remember keeps what is known of the present order, for a day that begins in the middle
// of it.
func (f *Forecast) Remember() {
	before := f.Start.Positions
	for t, o := range f.Present.Known {
		f.answers.keep(question{before, f.Present.Jobs[t], false}, o)
		before = o.Positions
	}
}

// Take keeps what work came to and shows it where it belongs. It is false when that was
// other work.
func (f *Forecast) Take(result any) bool {
	switch r := result.(type) {
	case Answer:
		f.asking = false
		f.answers.keep(r.question, r.Outcome)
		f.extend(&f.Listed)
	case Improved:
		f.asking, f.cancel = false, nil
		if r.Day != nil {
			f.keepDay(r)
		}
	default:
		return false
	}
	f.extend(&f.Present)
	return true
}

// Next works out the next unknown job; nil when one is being worked out
// already or all is known.
func (f *Forecast) Next() Work {
	if !f.asking && f.Present.Full() && !f.Present.Whole() {
		return f.improving()
	}
	for _, c := range []*Order{&f.Present, &f.Listed} {
		if !f.asking && !c.Full() {
			f.asking = true
			q, clock := f.unknown(c)
			w := worker{f.Planner, f.Beam, f.Plan} // those of now: marks may change them meanwhile
			return func() any { return Answer{q, w.work(q, clock)} }
		}
	}
	return nil
}

// worker plans in the background, one job at a time.
type worker struct {
	planner *changeover.Planner
	beam    *plan.Beam
	plan    JobPlanner
}

// JobPlanner plans the job that comes next after these positions: PlanJob, unless the
// forecast is given another.
type JobPlanner func(p *changeover.Planner, now *plan.Positions, clock plan.Clock, j *plan.Job, centred bool) (plan.Turn, *plan.Positions)

// PlanJob plans it alone, or as it is in the file's order with centred layouts.
func PlanJob(p *changeover.Planner, now *plan.Positions, clock plan.Clock, j *plan.Job, centred bool) (plan.Turn, *plan.Positions) {
	if centred {
		return p.NextCentred(now, clock, j)
	}
	return p.Resume(now, clock, j)
}

// work plans one job and has the changeover verified. A changeover that is under way
// goes on as it was begun.
func (w worker) work(q question, clock plan.Clock) *Outcome {
	before := Outcome{Positions: q.stands, Clock: clock}
	t, positions := w.plan(w.planner, q.stands, clock, q.job, q.centred)
	if s := t.Step; s != nil && verify.Changeover(w.beam, q.job, q.stands.At, s.Layout, s.Changeover) != nil {
		t = plan.Turn{Job: q.job, Faults: []plan.Fault{unheld}}
	}
	return before.then(t, positions)
}

// unheld is the fault of a job whose changeover the verifier turned down: a mistake
// of the program, that nobody is to set up by.
var unheld = plan.NewFault("", "the plan made for it doesn't hold and isn't shown: a mistake of the program, please report it")

// unknown is what must be asked to know one job more of the order.
func (f *Forecast) unknown(c *Order) (question, plan.Clock) {
	before := &f.Start
	if n := len(c.Known); n > 0 {
		before = c.Known[n-1]
	}
	return question{before.Positions, c.Jobs[len(c.Known)], c.centred}, before.Clock
}

// extend adds to the order what has been answered before.
func (f *Forecast) extend(c *Order) {
	for !c.Full() {
		q, clock := f.unknown(c)
		o := c.gave()
		if o == nil {
			o = f.answers.find(q)
		}
		if o == nil {
			break
		}
		c.Known = append(c.Known, o.from(clock))
	}
	f.finish(c)
	c.Totals = plan.TotalsOf(c.turns())
}

// Trial is another order of the day, and what is known of it.
func (f *Forecast) Trial(jobs []*plan.Job) *Order {
	c := &Order{Jobs: jobs, given: f.Present.given}
	f.extend(c)
	return c
}
