package ui

import (
	"context"
	"fmt"
	"strings"
	"sync/atomic"
	"time"

	"bide/plan"

	"github.com/charmbracelet/bubbles/progress"
	tea "github.com/charmbracelet/bubbletea"
)

// search is the search for the best order as it runs in the background. Each run
// has a number, so that what comes late from one that was given up is dropped.
type search struct {
	run    int
	cancel context.CancelFunc // nil when none runs
	aim    plan.Aim
	so     *atomic.Pointer[plan.Progress] // how far it is
	rounds int                            // candidates to try; 0 goes by the size of the day
	from   *plan.Totals                   // of the order that it began with, where known
}

// tick comes while a search runs, to show how far it is.
type tick struct{ run int }

// found is what a search came to.
type found struct {
	run  int
	day  *plan.DayPlan
	err  error
	from *plan.Totals // of the order that it began with, where known
}

// beat is how often the progress of a search is drawn.
const beat = 100 * time.Millisecond

// seek starts a search from the present order.
func (d *desk) seek(aim plan.Aim) tea.Cmd {
	if d.search.cancel != nil {
		d.say("a search is running: Esc stops it and keeps the best order so far")
		return nil
	}
	if d.offer != nil {
		d.say("the last search's order waits: v shows it, to accept or discard it")
		return nil
	}
	ctx, cancel := context.WithCancel(context.Background())
	s := &d.search
	if d.sought != aim { // what is changed by hand from now on is settled for it too
		d.sought, d.settled = aim, nil
	}
	s.run, s.cancel, s.aim, s.so = s.run+1, cancel, aim, &atomic.Pointer[plan.Progress]{}
	day := &plan.Day{Start: d.start.clock, End: d.shop.Day.End}
	for _, j := range d.history.now.all {
		if j.State != plan.Aside {
			day.Jobs = append(day.Jobs, *j)
		}
	}
	var from *plan.Totals
	if d.present.whole() {
		totals := d.present.totals
		from = &totals
	}
	s.from = from
	so, run, beam, start := s.so, s.run, d.forecast.beam, d.start.stands
	effort := plan.Effort{Aim: aim, Rounds: s.rounds, Seed: 1, Report: func(p plan.Progress) { so.Store(&p) }}
	work := func() tea.Msg {
		defer cancel()
		best, err := held(plan.Search(ctx, beam, start, day, effort))
		return found{run, best, err, from}
	}
	return tea.Batch(work, again(run))
}

// held passes on a plan that the verifier finds nothing wrong with, and of another
// what is.
func held(day *plan.DayPlan, err error) (*plan.DayPlan, error) {
	if err != nil {
		return nil, err
	}
	if err := plan.Verify(day); err != nil {
		return nil, fmt.Errorf("the plan that the search made doesn't hold and isn't taken: %s", strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	return day, nil
}

// again waits for the next time to draw progress.
func again(run int) tea.Cmd {
	return tea.Tick(beat, func(time.Time) tea.Msg { return tick{run} })
}

// halt ends a running search; what it has found by then is taken.
func (d *desk) halt() (running bool) {
	if running = d.search.cancel != nil; running {
		d.search.cancel()
	}
	return running
}

// stop gives a running search up.
func (d *desk) stop() {
	if d.search.cancel != nil {
		d.search.cancel()
		d.search.cancel = nil
		d.search.run++
	}
}

// adopt offers the order that a search found, unless it was given up or is no better.
// One that keeps the rules is better than any that breaks them, whatever it costs.
func (d *desk) adopt(f found) {
	if f.run != d.search.run {
		return
	}
	d.search.cancel = nil
	if f.err != nil {
		d.say("%v", f.err)
		return
	}
	next := d.drafted(f.day)
	mends := len(d.broken) > 0 && keeps(f.day)
	if f.from != nil && !mends && !f.day.Totals.Better(*f.from, d.search.aim) {
		d.say("the search found nothing better than this order")
		return
	}
	d.offer = &offer{draft: next, totals: f.day.Totals, floor: f.day.Floor}
	text := "an order was found: v shows it beside this one, to accept or discard it"
	if f.from != nil {
		text = "an order was found: " + against(f.day.Totals, *f.from)
	}
	d.say("%s", text)
}

// keeps reports whether the day keeps all rules between its jobs.
func keeps(day *plan.DayPlan) bool {
	var jobs []*plan.Job
	for i := range day.Steps {
		jobs = append(jobs, day.Steps[i].Job)
	}
	return len(plan.Broken(jobs, day.Done)) == 0
}

// drafted is the day as a draft: its jobs in their order, those refused behind them.
func (d *desk) drafted(day *plan.DayPlan) draft {
	own := map[string]*plan.Job{}
	for _, j := range d.jobs() {
		own[j.ID] = j
	}
	var jobs []*plan.Job
	var given []*outcome
	stands := d.start.stands
	for i := range day.Steps {
		s := day.Steps[i]
		s.Job = own[s.Job.ID]
		stands = stands.After(&s)
		jobs = append(jobs, s.Job)
		given = append(given, &outcome{step: s, stands: stands, clock: s.RunEnd})
	}
	for _, r := range day.Refused {
		jobs = append(jobs, own[r.Job.ID])
	}
	out := d.history.now.ordered(jobs)
	out.given, out.did = given, "the best order found"
	return out
}

// share is how far the running search is, from 0 to 1.
func (s *search) share() float64 {
	if p := s.so.Load(); p != nil {
		return float64(p.Rounds) / float64(max(p.Of, 1))
	}
	return 0
}

// searching is the line that tells how far a search is.
func (m *model) searching() line {
	l := m.line()
	fills := [2]rune{'█', '░'}
	if m.ascii {
		fills = [2]rune{'#', '.'}
	}
	const noColours = 3 // the line brings its own
	bar := progress.New(progress.WithColorProfile(noColours), progress.WithFillCharacters(fills[0], fills[1]),
		progress.WithoutPercentage(), progress.WithWidth(min(20, m.w/4)))
	l.add(plain, " ")
	l.add(accent, bar.ViewAs(m.search.share()))
	l.add(strong, fmt.Sprintf(" %3.0f %%", 100*m.search.share()))
	esc, best := "  Esc keeps the best so far", m.bestSoFar()
	if m.w < 100 {
		esc = "  Esc keeps it"
	}
	for cells(best)+l.width+cells(esc) > m.w && strings.Contains(best, ", ") {
		best = best[:strings.LastIndex(best, ", ")]
	}
	l.add(strong, "  "+best)
	l.add(faint, esc)
	return l
}

// bestSoFar tells what the running search has found, against the order that it began
// with and the floor; what matters least last.
func (m *model) bestSoFar() string {
	p := m.search.so.Load()
	if p == nil {
		return "searching"
	}
	parts := []string{fmt.Sprintf("best so far %s min", minutes(p.Best.Setup))}
	if was := m.search.from; was != nil {
		parts[0] += fmt.Sprintf(" (now %s)", minutes(was.Setup))
	}
	if p.Best.LateJobs > 0 {
		parts = append(parts, fmt.Sprintf("%s late", hours(p.Best.Late)))
	}
	moves := fmt.Sprintf("%d moves", p.Best.Repositions)
	if was := m.search.from; was != nil {
		moves += fmt.Sprintf(" (now %d)", was.Repositions)
	}
	parts = append(parts, moves)
	if p.Floor != nil {
		parts = append(parts, fmt.Sprintf("floor %d", p.Floor.Repositions))
	}
	return strings.Join(parts, ", ")
}
