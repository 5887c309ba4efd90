package ui

import (
	"context"
	"fmt"
	"strings"
	"sync/atomic"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"

	"github.com/charmbracelet/bubbles/progress"
	tea "github.com/charmbracelet/bubbletea"
)

// search is the search for the best order as it runs in the background. Each run
// has a number, so that what comes from another one is dropped.
type search struct {
	errand
	cancel context.CancelFunc // nil when none runs
	halted bool               // by a change of the day
	aim    plan.Aim
	so     *atomic.Pointer[plan.Progress] // how far it is
	rounds int                            // candidates to try; 0 goes by the size of the day
	ripe   *found                         // waits until the present order is worked out; nil without one
}

// errand is what a search was sent out for.
type errand struct {
	run    int
	ground ground // that it was sent out on
	fits   bool   // to fit what an earlier one found to a day that has changed
	opens  bool   // the person waits for what it finds
}

// tick comes while a search runs, to show how far it is.
type tick struct{ run int }

// found is what a search came to.
type found struct {
	errand
	day *plan.DayPlan
	err error
}

// beat is how often the progress of a search is drawn.
const beat = 100 * time.Millisecond

// seek starts a search from the present order.
func (d *session) seek(aim plan.Aim) tea.Cmd {
	if d.busy() {
		d.say("a search is running: Esc stops it and keeps the best order so far")
		return nil
	}
	if d.offer != nil {
		d.say("the last search's order waits: v shows it, to accept or discard it")
		return nil
	}
	d.search.aim = aim
	return d.launch(d.wants(d.history.now), d.search.rounds, errand{opens: true})
}

// busy reports whether a search runs, or is about to tell what it found.
func (d *session) busy() bool { return d.search.cancel != nil || d.search.ripe != nil }

// wants is a draft as a day to be searched: what is set aside is no part of it.
func (d *session) wants(f draft) *plan.Day {
	day := &plan.Day{Start: d.forecast.Start.Clock, End: d.shop.Day.End}
	for _, j := range f.all {
		if j.State != plan.Aside {
			day.Jobs = append(day.Jobs, *j)
		}
	}
	return day
}

// launch starts a search of that many candidates for a day of the present jobs.
func (d *session) launch(day *plan.Day, rounds int, e errand) tea.Cmd {
	ctx, cancel := context.WithCancel(context.Background())
	s := &d.search
	e.run, e.ground = s.run+1, d.ground()
	s.errand, s.cancel, s.halted, s.so = e, cancel, false, &atomic.Pointer[plan.Progress]{}
	so, beam, start := s.so, d.forecast.Beam, d.forecast.Start.Standing
	effort := plan.Effort{Aim: s.aim, Rounds: rounds, Seed: 1, Report: func(p plan.Progress) { so.Store(&p) }}
	work := func() tea.Msg {
		defer cancel()
		best, err := planning.Verified(plan.Search(ctx, beam, start, day, effort))
		return found{e, best, err}
	}
	return tea.Batch(work, again(e.run))
}

// again waits for the next time to draw progress.
func again(run int) tea.Cmd {
	return tea.Tick(beat, func(time.Time) tea.Msg { return tick{run} })
}

// halt ends a running search; what it has found by then is taken.
func (d *session) halt() (running bool) {
	if running = d.search.cancel != nil; running {
		d.search.cancel()
	}
	return running
}

const interrupted = "the search stops at that, and what it has found is fitted to the day as it is now"

// interrupt ends a running search whose day has become another, and reports whether
// it did: what it has found by then is fitted to the day of now.
func (d *session) interrupt() bool {
	s := &d.search
	if s.cancel == nil || s.halted || s.ground.holds(d) {
		return false
	}
	s.halted = true
	s.cancel()
	return true
}

// share is how far the running search is, from 0 to 1.
func (s *search) share() float64 {
	if p := s.so.Load(); p != nil {
		return float64(p.Rounds) / float64(max(p.Of, 1))
	}
	return 0
}

// searching is the line that tells how far a search is, and what happened last.
func (m *model) searching() draw.Line {
	l := m.Line()
	fills := [2]rune{'█', '░'}
	if m.ASCII {
		fills = [2]rune{'#', '.'}
	}
	const noColours = 3 // the line brings its own
	bar := progress.New(progress.WithColorProfile(noColours), progress.WithFillCharacters(fills[0], fills[1]),
		progress.WithoutPercentage(), progress.WithWidth(min(20, m.W/4)))
	l.Add(draw.Plain, " ")
	l.Add(draw.Accent, bar.ViewAs(m.search.share()))
	l.Add(draw.Strong, fmt.Sprintf(" %3.0f %%  ", 100*m.search.share()))
	if text := m.told(); text != "" {
		l.Add(draw.Strong, m.Short(text, m.W-l.Width-1))
		return l
	}
	esc, best := "  Esc keeps the best so far", m.bestSoFar()
	if m.W < 100 {
		esc = "  Esc keeps it"
	}
	for draw.CellWidth(best)+l.Width+draw.CellWidth(esc) > m.W && strings.Contains(best, ", ") {
		best = best[:strings.LastIndex(best, ", ")]
	}
	l.Add(draw.Strong, best)
	l.Add(draw.Faint, esc)
	return l
}

// bestSoFar tells what the running search has found, against the present order and
// the floor; what matters least last.
func (m *model) bestSoFar() string {
	p := m.search.so.Load()
	switch {
	case m.search.fits:
		return "fitting what was found to the day as it is now"
	case p == nil:
		return "searching"
	}
	was, known := m.forecast.Present.Totals, m.forecast.Present.Whole()
	parts := []string{fmt.Sprintf("best so far %s min", words.Minutes(p.Best.Setup))}
	if known {
		parts[0] += fmt.Sprintf(" (now %s)", words.Minutes(was.Setup))
	}
	if p.Best.LateJobs > 0 {
		parts = append(parts, fmt.Sprintf("%s late", words.Hours(p.Best.Late)))
	}
	moves := fmt.Sprintf("%d moves", p.Best.Repositions)
	if known {
		moves += fmt.Sprintf(" (now %d)", was.Repositions)
	}
	parts = append(parts, moves)
	if p.Floor != nil {
		parts = append(parts, fmt.Sprintf("floor %d", p.Floor.Repositions))
	}
	return strings.Join(parts, ", ")
}
