package planning

import (
	"context"
	"slices"
	"testing"

	"bide/plan"
)

// moving looks at moving a job of a small day whose jobs are all known.
func moving(t *testing.T, index int) (*Forecast, *MoveTo) {
	t.Helper()
	f := forecast(t)
	work(f)
	return f, f.MoveTo(index, 0)
}

// do does the first of what is to be done next.
func do(m *MoveTo, picked int) bool {
	all := m.Next(picked)
	for _, w := range all {
		m.Take(w())
	}
	return len(all) > 0
}

// Each number is estimated as the day planned job by job, and then known exactly: the day
// costs that once the job is moved there, and is there at once.
func TestMoveToEachNumber(t *testing.T) {
	f, m := moving(t, 2)
	before := f.Present.Totals
	for w := m.estimate(); w != nil; w = m.estimate() {
		m.Take(w())
	}
	for index := range len(m.Rest) + 1 {
		alone := forecast(t)
		alone.Improve = func(_ context.Context, day *plan.DayPlan, _ plan.Aim) *plan.DayPlan { return day }
		alone.Reorder(m.with(index), nil)
		work(alone)
		if c, known := m.Cost(index); !known || c.Exact || c.Totals != alone.Present.Totals {
			t.Errorf("number %d is estimated at %+v, job by job it is %+v", index+1, c.Totals, alone.Present.Totals)
		}
	}
	for do(m, 2) {
	}
	if known, exact := m.Known(); known != 4 || exact != 4 || m.Improving != none {
		t.Fatalf("%d are known, %d exactly; planning %d", known, exact, m.Improving)
	}
	if c, _ := m.Cost(2); c.Totals != before || c.Setup != 0 || c.Repositions != 0 {
		t.Errorf("where it is now it costs %+v", c)
	}
	if out := m.Out(Cost{}); !out.Exact || out.Totals.Jobs != 3 {
		t.Errorf("without it: %+v", out)
	}
	best := m.Best(0)
	for index := range len(m.Rest) + 1 {
		c, _ := m.Cost(index)
		if least, _ := m.Cost(best); c.Better(least.Difference, m.aim) {
			t.Errorf("number %d is better than %d", index+1, best+1)
		}
		next, _ := moving(t, 2)
		if next.Reorder(m.with(index), nil); index != 2 { // to somebody who knows nothing of it
			work(next)
			if next.Present.Totals != c.Totals {
				t.Errorf("moved to number %d the day costs %+v, shown was %+v", index+1, next.Present.Totals, c.Totals)
			}
		}
		if f.Reorder(m.Apply(index), nil); !f.Present.Whole() || f.Present.Totals != c.Totals {
			t.Errorf("moved to number %d: whole %v, %+v, shown was %+v", index+1, f.Present.Whole(), f.Present.Totals, c.Totals)
		}
	}
}

// The picked one is planned first, whatever else is being planned makes way for it, and
// what was given up brings nothing.
func TestPickedNumberFirst(t *testing.T) {
	_, m := moving(t, 1)
	for len(m.order) > 0 {
		m.Take(m.estimate()())
	}
	if all := m.Next(1); len(all) != 1 || m.Improving == 1 || m.Improving < 0 {
		t.Fatalf("%d things to do, planning %d", len(all), m.Improving)
	}
	var given []Work
	for _, index := range []int{3, 0, 3} {
		given = append(given, m.Next(index)...)
		if m.Improving != index {
			t.Fatalf("planning %d, picked is %d", m.Improving, index)
		}
	}
	if len(m.Next(3)) > 0 {
		t.Error("the picked one is planned twice")
	}
	for i, w := range given {
		m.Take(w())
		if _, exact := m.Known(); exact != 1+i/2 { // the one where it is now, and the last
			t.Errorf("%d are known exactly after %d", exact, i+1)
		}
	}
	m.Next(0)
	m.End()
	if c, _ := m.Cost(0); c.Exact {
		t.Error("what was given up is known")
	}
}

// Beside a job that the beam can't run it costs the same, and nothing comes before one
// that runs.
func TestMoveToBesideOthers(t *testing.T) {
	f := forecast(t)
	f.Present.Jobs[0].State = plan.Running
	f.Present.Jobs[2].Web *= 10
	f.Reorder(slices.Clone(f.Present.Jobs), nil)
	work(f)
	m := f.MoveTo(1, 0)
	for do(m, 1) {
	}
	if known, exact := m.Known(); known != 4 || exact != 3 || !m.Barred(0) || m.Best(0) == 0 {
		t.Errorf("%d are known, %d exactly; before the running one: %v", known, exact, m.Barred(0))
	}
	before, _ := m.Cost(1)
	behind, _ := m.Cost(2)
	if before.Totals != behind.Totals {
		t.Errorf("before and behind a refused job it costs %+v and %+v", before.Totals, behind.Totals)
	}
	if m.Stale() {
		t.Error("the day begins otherwise")
	}
	other := *f.Start.Positions
	if f.Begin(&other, f.Present.Jobs); !m.Stale() || len(m.Next(3)) > 0 {
		t.Error("what it costs is of the day as it was")
	}
}

// On request, only numbers so far away are estimated.
func TestMoveToNear(t *testing.T) {
	f, _ := moving(t, 0)
	m := f.Estimates(0, 0, 1)
	if known, _ := m.Known(); known != 2 {
		t.Errorf("%d are estimated, want 2", known)
	}
}
