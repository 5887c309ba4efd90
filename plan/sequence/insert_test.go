package sequence_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// insertion draws a day, and takes its last job out to be put in again; nil where it has
// too few.
func insertion(t *testing.T, draw func(*rand.Rand) (*plan.Beam, *plan.Positions, *plan.Day), seed uint64) *sequence.Insertion {
	t.Helper()
	b, start, d := draw(rand.New(rand.NewPCG(seed, 61)))
	jobs := slices.DeleteFunc(d.Jobs, func(j plan.Job) bool { return j.State != plan.Waiting })
	if len(jobs) < 3 {
		return nil
	}
	last := len(jobs) - 1
	without, err := sequence.PlanDay(b, start, &plan.Day{Start: d.Start, Jobs: jobs[:last]})
	if err != nil {
		t.Fatal(err)
	}
	return &sequence.Insertion{DayPlan: without, Job: &jobs[last]}
}

// with is the day with the job at an index, as one that was listed so.
func with(t *testing.T, s *sequence.Insertion, index int) (*plan.Day, *plan.DayPlan) {
	t.Helper()
	day := &plan.Day{Start: s.Begins.At}
	for _, t := range slices.Insert(slices.Clone(s.Turns), index, plan.Turn{Job: s.Job}) {
		day.Jobs = append(day.Jobs, *t.Job)
	}
	planned, err := sequence.PlanDay(s.Beam, s.Start, day)
	if err != nil {
		t.Fatal(err)
	}
	return day, planned
}

// A job put in at an index gives the day that has it there in its file, and what that
// costs is the difference of the two days.
func TestInsertedDayIsTheDayWithIt(t *testing.T) {
	t.Parallel()
	indices := 0
	for seed := range uint64(40) {
		s := insertion(t, plantest.DrawDay, seed)
		if s == nil {
			continue
		}
		p, err := changeover.NewPlanner(s.Beam)
		if err != nil {
			t.Fatal(err)
		}
		late := map[string]bool{}
		for _, step := range s.Steps() {
			late[step.Job.ID] = step.Late > 0
		}
		for index := range len(s.Turns) + 1 {
			listed, want := with(t, s, index)
			day := s.In(p, index)
			if err := verify.DayOf(day, listed); err != nil {
				t.Errorf("seed %d, index %d: %v", seed, index, err)
			}
			costs := day.Against(s.DayPlan)
			if costs.Totals != want.Totals || costs.Setup != want.Totals.Setup-s.Totals.Setup ||
				costs.Repositions != want.Totals.Repositions-s.Totals.Repositions || costs.LateBy != want.Totals.Late-s.Totals.Late {
				t.Errorf("seed %d, index %d: %+v, but the day with it is %+v and without it %+v", seed, index, costs, want.Totals, s.Totals)
			}
			if planned := len(day.Steps()) + len(costs.Refused); planned != len(s.Steps())+1 {
				t.Errorf("seed %d, index %d: %d planned or refused, want %d", seed, index, planned, len(s.Steps())+1)
			}
			newly := 0
			for _, step := range want.Steps() {
				if step.Late > 0 && !late[step.Job.ID] {
					newly++
				}
			}
			if len(costs.Late) != newly {
				t.Errorf("seed %d, index %d: %d are said to be late by it, but %d are", seed, index, len(costs.Late), newly)
			}
			indices++
		}
	}
	if indices < 100 {
		t.Errorf("only %d indices tried", indices)
	}
}

// Planned jointly with the job at an index, the day is the one that the day listed so gives, to the
// move and the second: what is shown before a job is put there is what it then costs.
func TestInsertedDayPlannedJointlyIsWhatItThenCosts(t *testing.T) {
	t.Parallel()
	indices, won := 0, 0
	seeds := uint64(plantest.Worlds(4, 5))
	for seed := range seeds {
		s := insertion(t, plantest.DrawQuickDay, seed)
		if s == nil {
			continue
		}
		p, err := changeover.NewPlanner(s.Beam)
		if err != nil {
			t.Fatal(err)
		}
		aim := plan.Aim(seed % 2)
		for index := range len(s.Turns) + 1 {
			_, listed := with(t, s, index)
			want := sequence.Jointly(context.Background(), listed, aim)
			alone := s.In(p, index)
			day := sequence.Jointly(context.Background(), alone, aim)
			if day.Totals != want.Totals || alone.Totals != listed.Totals {
				t.Errorf("seed %d, index %d: %+v, want %+v; estimated %+v, want %+v", seed, index, day.Totals, want.Totals, alone.Totals, listed.Totals)
			}
			if err := verify.Plan(day); err != nil {
				t.Errorf("seed %d, index %d: %v", seed, index, err)
			}
			if alone.Totals.Better(day.Totals, aim) {
				t.Errorf("seed %d, index %d: planned jointly, the day is worse: %+v than %+v", seed, index, day.Totals, alone.Totals)
			}
			if day.Totals != alone.Totals {
				won++
			}
			indices++
		}
	}
	if indices < 10 || won == 0 {
		t.Errorf("only %d indices tried, %d better planned jointly", indices, won)
	}
}

// Three holders, two layouts on a web centred on 150: X cuts at 100 and 200, Y at
// 125 and 175. Before or behind the first X another X moves nothing. Y is cut by
// holders 1 and 2 with 3 resting at 200, which parks none, rather than by 2 and 3
// with 1 parked at 0; so behind Y another X moves holder 1 alone. Y ends at its due
// time to the minute, so whatever runs before it makes it late.
func TestInsertByHand(t *testing.T) {
	b := &plan.Beam{
		HolderWidth: 10 * plan.Millimetre, Rail: plan.Span{From: 0, To: 400 * plan.Millimetre},
		Web: plan.Span{From: 0, To: 300 * plan.Millimetre}, RestOverWeb: true,
		Holders: make([]plan.Condition, 3),
		Drive:   plan.Drive{Kind: plan.ByHand, Hand: time.Minute},
	}
	x := plan.Job{ID: "X1", Web: 140 * plan.Millimetre, Trim: 5 * plan.Millimetre, Speed: 1, Metres: 10,
		Entries: []plan.Entry{{Count: 1, Width: 100 * plan.Millimetre, Finished: 100 * plan.Millimetre}}}
	y := x
	y.ID = "Y"
	y.Entries = []plan.Entry{{Count: 1, Width: 50 * plan.Millimetre, Finished: 50 * plan.Millimetre}}
	y.Due = at("2026-11-25T06:24:00") // 2 moves, 10 min of X, 2 moves, 10 min of Y: 24 min
	start := &plan.Positions{At: []plan.Length{0, 20 * plan.Millimetre, 40 * plan.Millimetre}}
	hot := x
	hot.ID = "X2"
	begin := at("2026-11-25T06:00:00")
	without, err := sequence.PlanDay(b, start, &plan.Day{Start: begin, Jobs: []plan.Job{x, y}})
	if err != nil {
		t.Fatal(err)
	}
	day := sequence.Insertion{DayPlan: without, Job: &hot}
	p, _ := changeover.NewPlanner(b)
	for index, w := range []struct{ moves, late int }{{0, 1}, {0, 1}, {1, 0}} {
		if s := day.In(p, index).Against(without); s.Repositions != w.moves || len(s.Late) != w.late {
			t.Errorf("index %d: %d moves, %d late; want %+v", index, s.Repositions, len(s.Late), w)
		}
	}
}

func at(text string) time.Time {
	t, err := time.Parse("2006-01-02T15:04:05", text)
	if err != nil {
		panic(err)
	}
	return t
}
