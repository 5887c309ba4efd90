package planning

import (
	"context"
	"slices"
	"sync/atomic"

	"bide/plan"
	"bide/plan/sequence"
)

// Search is the search for the best order of a day, which runs in the background. One
// runs at a time; what an earlier one comes to is dropped.
type Search struct {
	Errand
	Aim      plan.Aim
	By       Searcher
	cancel   context.CancelFunc
	inputs   Inputs
	ended    bool // since the day became another
	progress *atomic.Pointer[sequence.Progress]
	waiting  *Found
}

// Searcher searches for the best order of a day.
type Searcher func(context.Context, *plan.Beam, *plan.Positions, *plan.Day, sequence.Effort) (*plan.DayPlan, error)

// Errand is what a search was begun for.
type Errand struct {
	Run   int
	Fits  bool // to fit what an earlier one found to a day that has changed
	Opens bool // the person waits for what it finds
}

// Found is what a search came to: a day that holds, or why there is none.
type Found struct {
	Errand
	Inputs Inputs // that it was begun with
	Day    *plan.DayPlan
	Err    error
}

// Inputs is all that a plan of the day depends on but the order of its jobs: those that
// have a number in the sequence, how many are done before them, when the day begins, and
// with what.
type Inputs struct {
	Jobs      []*plan.Job
	done      int
	positions *plan.Positions
	clock     plan.Clock
	beam      *plan.Beam
}

// Inputs is what the day of now depends on, with so many jobs done.
func (f *Forecast) Inputs(done int) Inputs {
	return Inputs{f.Present.Jobs, done, f.Start.Positions, f.Start.Clock, f.Beam}
}

// Same reports whether a plan made with these inputs holds with others.
func (in Inputs) Same(o Inputs) bool {
	return in.done == o.done && in.positions == o.positions && in.beam == o.beam && len(in.Jobs) == len(o.Jobs) &&
		!slices.ContainsFunc(in.Jobs, func(j *plan.Job) bool { return !slices.Contains(o.Jobs, j) })
}

// NewSearch is a search that isn't begun.
func NewSearch() Search { return Search{By: sequence.Search} }

// Begin searches from a day with the inputs of now, with so many candidates; 0 goes by the
// size of the day.
func (s *Search) Begin(in Inputs, day *plan.Day, rounds int, e Errand) Work {
	ctx, cancel := context.WithCancel(context.Background())
	e.Run = s.Run + 1
	s.Errand, s.inputs, s.cancel, s.ended, s.progress = e, in, cancel, false, &atomic.Pointer[sequence.Progress]{}
	progress, by := s.progress, s.By
	effort := sequence.Effort{Aim: s.Aim, Rounds: rounds, Seed: 1, Report: func(p sequence.Progress) { progress.Store(&p) }}
	return func() any {
		defer cancel()
		best, err := by(ctx, in.beam, in.positions, day, effort)
		best, err = verified(best, day, err)
		return Found{e, in, best, err}
	}
}

// Take ends the search that came to this; it is false where that was given up.
func (s *Search) Take(f Found) bool {
	if f.Run != s.Run {
		return false
	}
	s.cancel, s.waiting = nil, nil
	return true
}

// Hold keeps what was found until the order that it is to be better than is known.
func (s *Search) Hold(f Found) { s.waiting = &f }

// Held is what waits for that; nil without any.
func (s *Search) Held() *Found { return s.waiting }

// Running reports whether a search runs.
func (s *Search) Running() bool { return s.cancel != nil }

// Busy reports whether one runs, or what it found waits to be judged.
func (s *Search) Busy() bool { return s.Running() || s.waiting != nil }

// Stop ends a running search, and reports whether one ran; what it has found by then
// comes as from one that ended by itself.
func (s *Search) Stop() bool {
	if s.Running() {
		s.cancel()
	}
	return s.Running()
}

// Interrupt ends a running search whose day has become another, and reports whether it
// did: what it has found by then can be fitted to the day of now.
func (s *Search) Interrupt(now Inputs) bool {
	if !s.Running() || s.ended || s.inputs.Same(now) {
		return false
	}
	s.ended = true
	return s.Stop()
}

// Searching is how far a search is.
type Searching struct {
	Running, Busy, Fits bool // see Search
	Aim                 plan.Aim
	Progress            *sequence.Progress // nil where none runs, or it hasn't reported yet
}

// State is how far the search is now.
func (s *Search) State() Searching {
	now := Searching{Running: s.Running(), Busy: s.Busy(), Fits: s.Fits, Aim: s.Aim}
	if now.Running {
		now.Progress = s.progress.Load()
	}
	return now
}

// Share is how much of its candidates the running search has tried, from 0 to 1.
func (s *Searching) Share() float64 {
	if p := s.Progress; p != nil {
		return float64(p.Rounds) / float64(max(p.Of, 1))
	}
	return 0
}
