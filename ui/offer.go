package ui

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/planning"

	tea "github.com/charmbracelet/bubbletea"
)

// offer is what a search found, until it is accepted or discarded. Its jobs carry the
// layouts found.
type offer struct {
	draft  draft
	aim    plan.Aim
	ground ground
	steps  []plan.Step
	totals plan.Totals
	floor  *plan.Floor // of any order; nil where nothing is proven
}

// ground is what a plan of the day stands on, whatever the order of its jobs: the jobs
// that have a turn, how many are done before them, when the day begins and with what.
type ground struct {
	jobs   []*plan.Job // in the order that they had
	done   int
	stands *plan.Standing
	clock  time.Time
	beam   *plan.Beam
}

func (d *session) ground() ground {
	return ground{d.jobs(), d.history.now.done(), d.forecast.Start.Standing, d.forecast.Start.Clock, d.forecast.Beam}
}

// holds reports whether the day still stands on it.
func (g ground) holds(d *session) bool {
	now := d.ground()
	return g.done == now.done && g.stands == now.stands && g.clock.Equal(now.clock) && g.beam == now.beam && samePointers(g.jobs, now.jobs)
}

// samePointers reports whether two orders are of the same jobs.
func samePointers(a, b []*plan.Job) bool {
	if len(a) != len(b) {
		return false
	}
	return !slices.ContainsFunc(a, func(j *plan.Job) bool { return !slices.Contains(b, j) })
}

// adopt takes what a search came to, if it wasn't given up: what was found for another
// day than that of now is fitted to it first, and what it is to be better than must be
// known. opens tells that it is an offer that the person waits for.
func (d *session) adopt(f found) (opens bool, next tea.Cmd) {
	if f.run != d.search.run {
		return false, nil
	}
	d.search.cancel, d.search.ripe = nil, nil
	switch {
	case f.err != nil:
		d.mention(f.err.Error())
	case !f.ground.holds(d):
		return false, d.fit(f.day.Steps, f.fits && f.opens)
	case !d.forecast.Present.Whole():
		d.search.ripe = &f
	default:
		return d.weigh(f), nil
	}
	return false, nil
}

// planned goes on when more of the day is known.
func (m *model) planned() tea.Cmd {
	m.settle()
	m.follow()
	if f := m.search.ripe; f != nil && m.forecast.Present.Whole() {
		return m.finds(*f)
	}
	return nil
}

// finds takes what a search found, and shows it to the person who waits for it.
func (m *model) finds(f found) tea.Cmd {
	opens, cmd := m.adopt(f)
	if opens && m.over == nil && m.help == nil && !m.asks && m.prompt == nil {
		return tea.Batch(cmd, m.openCompare())
	}
	return cmd
}

// weigh offers the order that a search found, unless it is no better. One that keeps
// the rules is better than any that breaks them, whatever it costs.
func (d *session) weigh(f found) (opens bool) {
	now := d.forecast.Present.Totals
	mends := len(d.broken) > 0 && keeps(f.day)
	switch {
	case !mends && !f.day.Totals.Better(now, d.search.aim) && f.fits:
		d.offer = nil
		d.mention("what the search had found is no better than this order, as the day is now")
		return false
	case !mends && !f.day.Totals.Better(now, d.search.aim):
		d.mention("the search found nothing better than this order")
		return false
	}
	d.offer = &offer{d.drafted(f.day), d.search.aim, f.ground, f.day.Steps, f.day.Totals, f.day.Floor}
	text := "an order was found"
	if f.fits {
		text = "what the search had found, fitted to the day as it is now"
	}
	if opens = f.opens && slices.Equal(f.ground.jobs, d.jobs()); !opens {
		text += " (" + d.viewer.keyOf(toCompare) + " shows it)"
	}
	d.mention(text + ": " + against(f.day.Totals, now))
	return opens
}

// keeps reports whether the day keeps all rules between its jobs.
func keeps(day *plan.DayPlan) bool {
	var jobs []*plan.Job
	for i := range day.Steps {
		jobs = append(jobs, day.Steps[i].Job)
	}
	return len(plan.Broken(jobs, day.Done)) == 0
}

// drafted is the day as a draft: its jobs in their order, laid out as planned, those
// refused behind them.
func (d *session) drafted(day *plan.DayPlan) draft {
	own := map[string]*plan.Job{}
	for _, j := range d.jobs() {
		own[j.ID] = j
	}
	var jobs []*plan.Job
	var given []*planning.Outcome
	stands := d.forecast.Start.Standing
	for i := range day.Steps {
		s := day.Steps[i]
		s.Job = d.laid(own[s.Job.ID], &s)
		stands = stands.After(&s)
		jobs = append(jobs, s.Job)
		given = append(given, &planning.Outcome{Step: s, Standing: stands, Clock: s.RunEnd})
	}
	for _, r := range day.Refused {
		jobs = append(jobs, own[r.Job.ID])
	}
	out := d.history.now.ordered(jobs)
	out.given, out.did = given, "the best order found"
	return out
}

// laid is the job with what a step has chosen for it.
func (d *session) laid(j *plan.Job, s *plan.Step) *plan.Job {
	c := d.forecast.Beam.Choose(s)
	if j.Chosen.Same(c) {
		return j
	}
	next := *j
	next.Chosen = c
	d.stem(&next, d.origin(j))
	return &next
}

// accept makes the order found the present one. One that was found for another day is
// fitted to that of now first.
func (d *session) accept() tea.Cmd {
	o := d.offer
	if !o.ground.holds(d) {
		return d.refit()
	}
	d.offer = nil
	next := d.history.now.ordered(o.draft.jobs)
	next.given, next.did = o.draft.given, "the best order found"
	next.aim = o.aim // what is changed by hand from now on is settled for it too
	before := d.forecast.Present.Totals
	known := d.forecast.Present.Whole()
	d.do(next)
	if known {
		d.say("the best order found: %s", against(o.totals, before))
	}
	return nil
}

// discard lays the order found aside. It can be undone like a change of the day.
func (d *session) discard() {
	next := d.history.now
	next.about, next.did, next.remark, next.ran, next.tossed = "", "", nil, nil, d.offer
	d.history.do(next)
	d.offer = nil
	d.say("the order found is discarded; this one stays (%s brings it back)", d.viewer.keyOf(toUndo))
}

// offerAgain offers what was discarded, unless another order waits.
func (d *session) offerAgain(o *offer) {
	if d.offer != nil {
		d.say("the order found first stays discarded: a later one waits (%s)", d.viewer.keyOf(toCompare))
		return
	}
	d.offer = o
	d.say("the order found is back: %s shows it, to accept or discard it", d.viewer.keyOf(toCompare))
}

// refit has the order that waits fitted to the day of now, to be shown then.
func (d *session) refit() tea.Cmd {
	if d.busy() {
		d.say("the order found is being fitted to the day as it is now")
		return nil
	}
	d.search.aim = d.offer.aim
	d.say("the day has changed since the order was found: it is being fitted to it")
	return d.fit(d.offer.steps, true)
}

// fitRounds are the candidates tried to fit what was found to a day that has changed.
const fitRounds = 2000

// fit searches for a moment from what was found for another day: from its order, with
// its layouts where jobs are to be laid out as they were.
func (d *session) fit(steps []plan.Step, opens bool) tea.Cmd {
	found := map[string]*plan.Step{}
	var order []string
	for i := range steps {
		found[steps[i].Job.ID] = &steps[i]
		order = append(order, steps[i].Job.ID)
	}
	day := d.wants(d.history.now.like(order, d.forecast.Start.Standing.Setting))
	for i := range day.Jobs {
		j := &day.Jobs[i]
		if s := found[j.ID]; s != nil && j.LaidLike(s.Job) {
			j.Chosen = d.forecast.Beam.Choose(s)
		}
	}
	rounds := fitRounds
	if d.search.rounds > 0 {
		rounds = min(rounds, d.search.rounds)
	}
	return d.launch(day, rounds, errand{fits: true, opens: opens})
}
