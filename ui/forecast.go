package ui

import (
	"context"
	"slices"
	"time"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// forecast works out what the day costs in the order it stands in, job by job in
// the background, and in the order of the file for comparison. Nothing is planned
// while a key is dealt with: what isn't known yet is asked for, one job at a time,
// since each changeover begins where the one before it ends. Answers are kept by
// what they depend on, so one that comes late is never taken for another, and an
// order that was there before is there again at once. When all jobs of the present
// order are known, each on its own, the day is settled: planned together, as the
// sheet gives it.
type forecast struct {
	planner *plan.Planner
	beam    *plan.Beam
	start   outcome // as if it had been a job: what stands, and the clock
	present chain
	listed  chain // the order of the file, layouts centred
	answers memory
	asking  bool // a question is out; the planner has one working memory

	sought  plan.Aim           // what days are settled for
	alone   bool               // days are not settled
	settled []together         // of late, the newest last
	cancel  context.CancelFunc // of the settling that is under way; nil when none is
}

// chain is an order of jobs, and what is known of it from its first job on.
type chain struct {
	jobs    []*plan.Job
	centred bool
	given   []*outcome // planned together by a search, for as long as the jobs are those
	known   []*outcome
	final   bool        // what is known was planned together
	totals  plan.Totals // of what is known
}

// full reports whether all jobs of the chain are known, be it each on its own.
func (c *chain) full() bool { return len(c.known) == len(c.jobs) }

// whole reports whether all of the chain is known as it will stay.
func (c *chain) whole() bool { return c.full() && (c.centred || c.final || len(c.jobs) == 0) }

// outcome is what planning one job gave: a step, or faults and all as it was.
type outcome struct {
	step   plan.Step
	faults []plan.Fault
	stands *plan.Standing // while the job runs
	clock  time.Time      // when it ends
}

// question is all that an outcome depends on: a standing is made by one outcome
// alone, and so belongs to one moment too.
type question struct {
	stands  *plan.Standing
	job     *plan.Job
	centred bool
}

// answer comes back from the background.
type answer struct {
	question
	*outcome
}

func newForecast(p *plan.Planner, b *plan.Beam, start *plan.Standing, clock time.Time, jobs []*plan.Job) *forecast {
	f := &forecast{planner: p, beam: b, start: outcome{stands: start, clock: clock}}
	f.present = chain{jobs: jobs}
	f.listed = chain{jobs: jobs, centred: true}
	return f
}

// order sets the present order, and what a search gave for it or one like it. What
// is known of the jobs up to the first that changes stays.
func (f *forecast) order(jobs []*plan.Job, given []*outcome) {
	same := 0
	f.drop()
	if f.present.final || !slices.Equal(given, f.present.given) {
		f.present.given, f.present.known, f.present.final = given, nil, false
	}
	for same < len(f.present.known) && same < len(jobs) && f.present.jobs[same] == jobs[same] {
		same++
	}
	f.present.jobs, f.present.known = jobs, f.present.known[:same:same]
	f.extend(&f.present)
}

// take keeps an answer and adds it where it belongs.
func (f *forecast) take(a answer) {
	f.asking = false
	f.answers.keep(a.question, a.outcome)
	f.extend(&f.present)
	f.extend(&f.listed)
}

// ask is the command that works out the next unknown job; nil when one is out
// already or all is known.
func (f *forecast) ask() tea.Cmd {
	if !f.asking && f.present.full() && !f.present.whole() {
		return f.settling()
	}
	for _, c := range []*chain{&f.present, &f.listed} {
		if !f.asking && !c.full() {
			f.asking = true
			q, clock := f.next(c)
			w := worker{f.planner, f.beam} // those of now: marks may change them meanwhile
			return func() tea.Msg { return answer{q, w.work(q, clock)} }
		}
	}
	return nil
}

// worker plans in the background, one job at a time.
type worker struct {
	planner *plan.Planner
	beam    *plan.Beam
}

// work plans one job and has the changeover verified. A changeover that is under way
// goes on as it was begun.
func (w worker) work(q question, clock time.Time) *outcome {
	next := w.planner.Resume
	if q.centred {
		next = w.planner.NextCentred
	}
	o := &outcome{clock: clock}
	o.step, o.stands, o.faults = next(q.stands, clock, q.job)
	if len(o.faults) > 0 {
		return o
	}
	if s := &o.step; plan.VerifyChangeover(w.beam, q.job, q.stands.At, s.Layout, s.Changeover) != nil {
		return &outcome{stands: q.stands, clock: clock, faults: []plan.Fault{unheld}}
	}
	o.clock = o.step.RunEnd
	return o
}

// unheld is the fault of a job whose changeover the verifier turned down: a mistake
// of the program, that nobody is to set up by.
var unheld = plan.Fault{Why: func(plan.Unit) string {
	return "the plan made for it doesn't hold and isn't shown: a mistake of the program, please report it"
}}

// next is what must be asked to know one job more of the chain.
func (f *forecast) next(c *chain) (question, time.Time) {
	before := &f.start
	if n := len(c.known); n > 0 {
		before = c.known[n-1]
	}
	return question{before.stands, c.jobs[len(c.known)], c.centred}, before.clock
}

// extend adds to the chain what has been answered before.
func (f *forecast) extend(c *chain) {
	for !c.full() {
		q, _ := f.next(c)
		o := c.gave()
		if o == nil {
			o = f.answers.find(q)
		}
		if o == nil {
			break
		}
		c.known = append(c.known, o)
	}
	f.finish(c)
	steps := make([]plan.Step, 0, len(c.known))
	for _, o := range c.known {
		if len(o.faults) == 0 {
			steps = append(steps, o.step)
		}
	}
	c.totals = plan.Sum(steps)
}

// trial is another order of the day, and what is known of it.
func (f *forecast) trial(jobs []*plan.Job) *chain {
	c := &chain{jobs: jobs, given: f.present.given}
	f.extend(c)
	return c
}

// gave is what the search gave for the next job of the chain, if the chain has gone
// its way so far.
func (c *chain) gave() *outcome {
	n := len(c.known)
	if n >= len(c.given) || c.given[n].step.Job != c.jobs[n] || n > 0 && c.known[n-1] != c.given[n-1] {
		return nil
	}
	return c.given[n]
}

// memory keeps the answers of late: those asked for since, and as many before.
// 600 answers for a beam of 140 holders take about 10 MB.
type memory struct{ young, old map[question]*outcome }

const memorySize = 600

func (m *memory) keep(q question, o *outcome) {
	if m.young == nil || len(m.young) >= memorySize {
		m.old, m.young = m.young, make(map[question]*outcome, memorySize)
	}
	m.young[q] = o
}

func (m *memory) find(q question) *outcome {
	if o := m.young[q]; o != nil {
		return o
	}
	o := m.old[q]
	if o != nil {
		m.keep(q, o)
	}
	return o
}
