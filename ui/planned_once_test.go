package ui

import (
	"context"
	"encoding/json"
	"slices"
	"sync"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/sequence"
	"bide/plan/session/planning"

	"github.com/google/go-cmp/cmp"
)

// Most tests look at the same few days. What a job or a day comes to depends on nothing but
// what it is planned from, so here it is worked out once for all screens.

// once are the results of one kind of work, by all that it depends on.
type once[T any] struct {
	lock    sync.Mutex
	results map[string]T
}

// of is what work comes to, which hands back too whether that depends on nothing else.
func (o *once[T]) of(work func() (T, bool), on ...any) T {
	key, err := json.Marshal(on)
	if err != nil {
		panic(err)
	}
	o.lock.Lock()
	defer o.lock.Unlock()
	result, known := o.results[string(key)]
	if !known {
		if o.results == nil {
			o.results = map[string]T{}
		}
		var holds bool
		if result, holds = work(); holds {
			o.results[string(key)] = result
		}
	}
	return result
}

// planned is a job as it was planned.
type planned struct {
	plan.Turn
	standing *plan.Positions
}

var (
	plannedJobs once[planned]
	plannedDays once[*plan.DayPlan]
	foundDays   once[found]
)

// jobPlannedOnce plans a job, and gives each who asks a copy.
func jobPlannedOnce(p *changeover.Planner, now *plan.Positions, clock plan.Clock, j *plan.Job, centred bool) (plan.Turn, *plan.Positions) {
	r := plannedJobs.of(func() (planned, bool) {
		t, s := planning.PlanJob(p, now, clock, j, centred)
		return planned{t, s}, true
	}, p.Beam, now, clock, j, centred)
	if r.Refused() {
		return plan.Turn{Job: j, Faults: r.Faults}, now
	}
	standing := *r.standing
	return turnOf(r.Turn, j), &standing
}

// turnOf is a planned turn for a job that is the same, but read anew.
func turnOf(t plan.Turn, j *plan.Job) plan.Turn {
	t.Job = j
	if t.Step != nil {
		step := *t.Step
		step.Job, t.Step = j, &step
	}
	return t
}

// plannedOnce plans a day together, and gives each who asks a copy.
func plannedOnce(ctx context.Context, day *plan.DayPlan, aim plan.Aim) *plan.DayPlan {
	steps := day.Steps()
	jobs := make([]*plan.Job, len(day.Turns))
	for i, t := range day.Turns {
		jobs[i] = t.Job
	}
	r := plannedDays.of(func() (*plan.DayPlan, bool) {
		d := sequence.Jointly(ctx, day, aim)
		if d == day {
			d = nil // it can't be bettered
		}
		return d, ctx.Err() == nil
	}, day.Beam, day.Start, jobs, steps, aim)
	if r == nil {
		return day
	}
	again := *r
	again.Beam, again.Start, again.Turns = day.Beam, day.Start, slices.Clone(r.Turns)
	for i, t := range r.Turns {
		again.Turns[i] = turnOf(t, day.Turns[i].Job)
	}
	return &again
}

// found is what a search came to, and what it said last.
type found struct {
	day  *plan.DayPlan
	err  error
	last *sequence.Progress
}

// tries lets a search try so many orders, 0 as many as it would.
func tries(rounds int) planning.Searcher {
	return func(ctx context.Context, b *plan.Beam, start *plan.Positions, d *plan.Day, e sequence.Effort) (*plan.DayPlan, error) {
		if rounds > 0 && (e.Rounds == 0 || e.Rounds > rounds) {
			e.Rounds = rounds
		}
		report := e.Report
		e.Report = nil
		r := foundDays.of(func() (r found, holds bool) {
			tell := e
			tell.Report = func(p sequence.Progress) {
				r.last = &p
				report(p)
			}
			r.day, r.err = sequence.Search(ctx, b, start, d, tell)
			return r, ctx.Err() == nil
		}, b, start, d, e.Aim, e.Rounds, e.Seed)
		if r.last != nil {
			report(*r.last)
		}
		if r.day == nil {
			return nil, r.err
		}
		again := *r.day
		again.Beam, again.Start, again.Turns = b, start, slices.Clone(r.day.Turns)
		for i, t := range r.day.Turns {
			at := slices.IndexFunc(d.Jobs, func(j plan.Job) bool { return j.ID == t.Job.ID })
			again.Turns[i] = turnOf(t, &d.Jobs[at])
		}
		return &again, r.err
	}
}

// What is planned once is what is planned each time.
func TestPlannedOnceIsPlanned(t *testing.T) {
	s := smallDay(t, 3)
	for range 2 {
		p, err := changeover.NewPlanner(s.Beam)
		if err != nil {
			t.Fatal(err)
		}
		now := s.Positions
		for i := range s.Day.Jobs {
			j := &s.Day.Jobs[i]
			got, after := jobPlannedOnce(p, now, plan.Clock{At: s.Day.Start}, j, false)
			want, stands := planning.PlanJob(p, now, plan.Clock{At: s.Day.Start}, j, false)
			if diff := cmp.Diff([]any{want, stands}, []any{got, after}); diff != "" {
				t.Errorf("%s (-planned +planned once):\n%s", j.ID, diff)
			}
			now = after
		}
	}
}
