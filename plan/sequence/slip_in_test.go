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

// slipping draws a day, and takes its last job out to be slipped in; nil where it has
// too few.
func slipping(t *testing.T, draw func(*rand.Rand) (*plan.Beam, *plan.Positions, *plan.Day), seed uint64) *sequence.Slipping {
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
	return &sequence.Slipping{DayPlan: without, Clock: d.Start, Job: &jobs[last]}
}

// with is the day with the job at a gap, as one that was listed so.
func with(t *testing.T, s *sequence.Slipping, gap int) (*plan.Day, *plan.DayPlan) {
	t.Helper()
	day := &plan.Day{Start: s.Clock}
	for _, t := range slices.Insert(slices.Clone(s.Turns), gap, plan.Turn{Job: s.Job}) {
		day.Jobs = append(day.Jobs, *t.Job)
	}
	planned, err := sequence.PlanDay(s.Beam, s.Start, day)
	if err != nil {
		t.Fatal(err)
	}
	return day, planned
}

// A job slipped in at a gap gives the day that has it there in its file, and what that
// costs is the difference of the two days.
func TestSlippedInIsTheDayWithIt(t *testing.T) {
	t.Parallel()
	gaps := 0
	for seed := range uint64(40) {
		s := slipping(t, plantest.DrawDay, seed)
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
		for gap := range len(s.Turns) + 1 {
			listed, want := with(t, s, gap)
			day := s.In(p, gap)
			if err := verify.DayOf(day, listed); err != nil {
				t.Errorf("seed %d, gap %d: %v", seed, gap, err)
			}
			costs := day.Against(s.DayPlan)
			if costs.Totals != want.Totals || costs.Setup != want.Totals.Setup-s.Totals.Setup ||
				costs.Repositions != want.Totals.Repositions-s.Totals.Repositions || costs.LateBy != want.Totals.Late-s.Totals.Late {
				t.Errorf("seed %d, gap %d: %+v, but the day with it is %+v and without it %+v", seed, gap, costs, want.Totals, s.Totals)
			}
			if planned := len(day.Steps()) + len(costs.Refused); planned != len(s.Steps())+1 {
				t.Errorf("seed %d, gap %d: %d planned or refused, want %d", seed, gap, planned, len(s.Steps())+1)
			}
			told := 0
			for _, step := range want.Steps() {
				if step.Late > 0 && !late[step.Job.ID] {
					told++
				}
			}
			if len(costs.Late) != told {
				t.Errorf("seed %d, gap %d: %d are said to be late by it, but %d are", seed, gap, len(costs.Late), told)
			}
			gaps++
		}
	}
	if gaps < 100 {
		t.Errorf("only %d gaps tried", gaps)
	}
}

// Settled at a gap, the day is the one that settling the day listed so gives, to the
// move and the second: what is told before a job is dropped there is what it then costs.
func TestSlippedInSettledIsWhatTheDayThenCosts(t *testing.T) {
	t.Parallel()
	gaps, won := 0, 0
	seeds := uint64(plantest.Worlds(4, 12))
	for seed := range seeds {
		s := slipping(t, plantest.DrawQuickDay, seed)
		if s == nil {
			continue
		}
		p, err := changeover.NewPlanner(s.Beam)
		if err != nil {
			t.Fatal(err)
		}
		aim := plan.Aim(seed % 2)
		for gap := range len(s.Turns) + 1 {
			_, listed := with(t, s, gap)
			want := sequence.Settle(context.Background(), listed, aim)
			alone := s.In(p, gap)
			day := sequence.Settle(context.Background(), alone, aim)
			if day.Totals != want.Totals || alone.Totals != listed.Totals {
				t.Errorf("seed %d, gap %d: settled %+v, want %+v; at first sight %+v, want %+v", seed, gap, day.Totals, want.Totals, alone.Totals, listed.Totals)
			}
			if err := verify.Plan(day); err != nil {
				t.Errorf("seed %d, gap %d: %v", seed, gap, err)
			}
			if alone.Totals.Better(day.Totals, aim) {
				t.Errorf("seed %d, gap %d: settled, the day is worse: %+v than %+v", seed, gap, day.Totals, alone.Totals)
			}
			if day.Totals != alone.Totals {
				won++
			}
			gaps++
		}
	}
	if gaps < 10 || won == 0 {
		t.Errorf("only %d gaps tried, %d won by settling", gaps, won)
	}
}

// Three holders, two layouts on a web centred on 150: X cuts at 100 and 200, Y at
// 125 and 175. Before or behind the first X another X moves nothing. Y is cut by
// holders 1 and 2 with 3 resting at 200, which parks none, rather than by 2 and 3
// with 1 parked at 0; so behind Y another X moves holder 1 alone. Y ends at its due
// time to the minute, so whatever runs before it makes it late.
func TestSlipInByHand(t *testing.T) {
	b := &plan.Beam{
		HolderWidth: 10 * plan.Millimetre, Rail: plan.Span{From: 0, To: 400 * plan.Millimetre},
		Web: plan.Span{From: 0, To: 300 * plan.Millimetre}, RestOverWeb: true,
		Holders: make([]plan.Condition, 3),
		Drive:   plan.Drive{Kind: plan.ByHand, Hand: time.Minute, Crew: 1},
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
	day := sequence.Slipping{DayPlan: without, Clock: begin, Job: &hot}
	p, _ := changeover.NewPlanner(b)
	for gap, w := range []struct{ moves, late int }{{0, 1}, {0, 1}, {1, 0}} {
		if s := day.In(p, gap).Against(without); s.Repositions != w.moves || len(s.Late) != w.late {
			t.Errorf("gap %d: %d moves, %d late; want %+v", gap, s.Repositions, len(s.Late), w)
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
