package verify

import (
	"math"
	"slices"
	"time"

	"bide/plan"
)

// The verifier's part for the clock: every moment of a step worked out again from the
// file's shifts and pauses, and every run from its metres.

// times: from the clock on a setup goes on when it is open for setups, then the run when it
// is open for runs; late is what that ends behind its due time. It returns when the step
// ends.
func (v *verifier) times(s *plan.Step, clock plan.Clock) time.Time {
	t := s.Setup
	total := t.Every + t.Rethread + t.CleanDown + t.Pressure + t.Wicks + t.Pistons
	if v.beam.Setup.Beside {
		total += max(t.Positioner, t.Crew)
	} else {
		total += t.Positioner + t.Crew
	}
	v.must(min(t.Positioner, t.Crew, t.Every, t.Rethread, t.CleanDown, t.Pressure, t.Wicks, t.Pistons) >= 0, "a time below zero: %+v", t)
	v.must(t.Total() == total, "a setup of %v, reported %v", total, t.Total())
	at := func(what string, got, want time.Time) {
		v.must(got.Equal(want), "%s at %v, reported %v", what, want, got)
	}
	run := v.run(s.Job)
	begun := s.Job.State == plan.Running && total == 0 && !s.Job.Began.IsZero()
	setupStart := clock.At
	if begun {
		setupStart = s.Job.Began
	} else {
		setupStart = during(clock.Calendar, total == 0).next(setupStart)
	}
	setupEnd := during(clock.Calendar, total == 0).worked(setupStart, total)
	at("setup begins", s.SetupStart, setupStart)
	at("setup ends", s.SetupEnd, setupEnd)
	runStart := during(clock.Calendar, true).next(s.SetupEnd)
	if s.Job.Unbroken {
		runStart = during(clock.Calendar, true).whole(runStart, run)
	}
	at("the run begins", s.RunStart, runStart)
	runEnd := during(clock.Calendar, true).worked(s.RunStart, run)
	closed := runEnd.Sub(s.SetupStart) - total - run
	v.must((s.Paused-closed).Abs() <= rounding, "paused for %v, reported %v", closed, s.Paused)
	if clock.At.After(runEnd) {
		runEnd = clock.At
	}
	v.must(s.RunEnd.Sub(runEnd).Abs() <= rounding, "the run ends at %v, reported %v", runEnd, s.RunEnd)
	late := time.Duration(0)
	if !s.Job.Due.IsZero() && s.RunEnd.After(s.Job.Due) {
		late = s.RunEnd.Sub(s.Job.Due)
	}
	v.must(s.Late == late, "late by %v, reported %v", late, s.Late)
	return s.RunEnd
}

// run is what a job's run takes: all its stops listed and sorted, the web from rest to rest
// between each two.
func (v *verifier) run(j *plan.Job) time.Duration {
	if j.Speed <= 0 {
		return 0
	}
	const same = 1e-6 // m
	line := v.beam.Line
	var stops []float64
	var stopped time.Duration
	ran := 0.0
	if j.State != plan.Done {
		ran = math.Min(j.Ran, j.Metres)
	}
	every := func(metres float64, takes time.Duration) {
		for n := 1.0; metres > 0 && n*metres <= j.Metres-same; n++ {
			if n*metres > ran+same {
				stops = append(stops, n*metres)
				stopped += takes
			}
		}
	}
	every(j.SetMetres, line.SetChange.Takes)
	every(j.ParentMetres, line.ParentChange.Takes)
	slices.Sort(stops)
	seconds, last := 0.0, ran
	for _, stop := range append(stops, j.Metres) {
		if stop-last < same && stop < j.Metres {
			continue
		}
		seconds += web(stop-last, j.Speed/60, line.RampUp, line.RampDown)
		last = stop
	}
	return stopped + time.Duration(seconds*float64(time.Second))
}

// web is the seconds of a length of web, by its phases: up to speed, along, down.
func web(metres, speed, up, down float64) float64 {
	phase := func(speed, rate float64) (seconds, metres float64) {
		if rate == 0 {
			return 0, 0
		}
		return speed / rate, speed * speed / (2 * rate)
	}
	upS, upM := phase(speed, up)
	downS, downM := phase(speed, down)
	if along := metres - upM - downM; along >= 0 {
		return upS + downS + along/speed
	}
	share := math.Sqrt(metres / (upM + downM)) // of the speed, that its peak reaches
	return share * (upS + downS)
}

// hours is when it is open, as a list of moments: at each it opens or closes, in turn, and
// begins closed. None is always open.
type hours []time.Time

// during is when a setup, or a run, goes on by a calendar: past the last shift's end too.
func during(c *plan.Calendar, run bool) (turns hours) {
	if c == nil || len(c.Shifts) == 0 {
		return nil
	}
	var moments []time.Time
	for _, s := range c.Shifts {
		moments = append(moments, s.From, s.To)
	}
	for _, p := range c.Pauses {
		moments = append(moments, p.From, p.To)
	}
	slices.SortFunc(moments, time.Time.Compare)
	last := c.Shifts[len(c.Shifts)-1]
	open := func(t time.Time) bool {
		in := !t.Before(last.From)
		for _, s := range c.Shifts {
			in = in || !t.Before(s.From) && t.Before(s.To)
		}
		for _, p := range c.Pauses {
			in = in && (t.Before(p.From) || !t.Before(p.To) || run && p.Runs)
		}
		return in
	}
	for _, t := range moments {
		if open(t) == (len(turns)%2 == 0) {
			turns = append(turns, t)
		}
	}
	return turns
}

// next is the first open moment from t on.
func (h hours) next(t time.Time) time.Time {
	for i := 0; i+1 < len(h); i += 2 {
		if t.Before(h[i+1]) {
			return later(t, h[i])
		}
	}
	if len(h) == 0 {
		return t
	}
	return later(t, h[len(h)-1])
}

// worked is when work ends that begins at an open moment.
func (h hours) worked(t time.Time, takes time.Duration) time.Time {
	for i := 0; i+1 < len(h); i += 2 {
		begins := later(t, h[i])
		if left := h[i+1].Sub(begins); left > 0 && takes > left {
			takes, t = takes-left, h[i+1]
		} else if left > 0 {
			return begins.Add(takes)
		}
	}
	if len(h) == 0 {
		return t.Add(takes)
	}
	return later(t, h[len(h)-1]).Add(takes)
}

// whole is the first moment from t on from which it stays open so long.
func (h hours) whole(t time.Time, takes time.Duration) time.Time {
	for i := 0; i+1 < len(h); i += 2 {
		if begins := later(t, h[i]); h[i+1].Sub(begins) >= takes && begins.Before(h[i+1]) {
			return begins
		}
	}
	if len(h) == 0 {
		return t
	}
	return later(t, h[len(h)-1])
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
