package plan_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
)

// inOrder plans the jobs one after the other, each on its own.
func inOrder(t *testing.T, b *plan.Beam, start *plan.Standing, clock time.Time, jobs []plan.Job) (steps []plan.Step) {
	t.Helper()
	p, err := plan.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	now := start
	for i := range jobs {
		s, stands, faults := p.Next(now, clock, &jobs[i])
		if len(faults) == 0 {
			steps, now, clock = append(steps, s), stands, s.RunEnd
		}
	}
	return steps
}

// A job slipped in costs, at each gap, the day with it less the day without it.
func TestSlipInIsTheDifferenceOfTwoDays(t *testing.T) {
	gaps := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 61))
		b, start, d := drawDay(r)
		jobs := slices.DeleteFunc(slices.Clone(d.Jobs), func(j plan.Job) bool { return j.State != plan.Waiting })
		if len(jobs) < 3 {
			continue
		}
		hot := jobs[len(jobs)-1]
		steps := inOrder(t, b, start, d.Start, jobs[:len(jobs)-1])
		p, err := plan.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		without, seen := plan.Sum(steps), map[int]bool{}
		p.SlipIn(context.Background(), start, d.Start, steps, 0, &hot, func(s plan.Slip) {
			var order []plan.Job
			for i := range steps {
				order = append(order, *steps[i].Job)
			}
			day := inOrder(t, b, start, d.Start, slices.Insert(order, s.Gap, hot))
			with := plan.Sum(day)
			if s.Totals != with || s.Setup != with.Setup-without.Setup || s.Repositions != with.Repositions-without.Repositions {
				t.Errorf("seed %d, gap %d: %+v, but the day with it is %+v and without it %+v", seed, s.Gap, s, with, without)
			}
			if planned := len(day) + len(s.Refused); planned != len(steps)+1 {
				t.Errorf("seed %d, gap %d: %d planned or refused, want %d", seed, s.Gap, planned, len(steps)+1)
			}
			seen[s.Gap] = true
			gaps++
		})
		if len(seen) != len(steps)+1 {
			t.Errorf("seed %d: %d gaps told of %d", seed, len(seen), len(steps)+1)
		}
	}
	if gaps < 100 {
		t.Errorf("only %d gaps tried", gaps)
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
	start := &plan.Standing{At: []plan.Length{0, 20 * plan.Millimetre, 40 * plan.Millimetre}}
	hot := x
	hot.ID = "X2"
	steps := inOrder(t, b, start, at("2026-11-25T06:00:00"), []plan.Job{x, y})
	p, _ := plan.NewPlanner(b)
	want := map[int]struct{ moves, late int }{0: {0, 1}, 1: {0, 1}, 2: {1, 0}}
	p.SlipIn(context.Background(), start, at("2026-11-25T06:00:00"), steps, 0, &hot, func(s plan.Slip) {
		if w := want[s.Gap]; s.Repositions != w.moves || len(s.Late) != w.late {
			t.Errorf("gap %d: %d moves, %d late; want %+v", s.Gap, s.Repositions, len(s.Late), w)
		}
	})
}

func at(text string) time.Time {
	t, err := time.Parse("2006-01-02T15:04:05", text)
	if err != nil {
		panic(err)
	}
	return t
}
