package sequence_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

const mm = plan.Millimetre

// A job without slits is refused, and the others are planned, jointly too, and searched for.
func TestJobWithoutSlitsIsRefused(t *testing.T) {
	b, start, d := busyDay(t)
	d.Jobs = append(d.Jobs, plan.Job{ID: "none", Web: 100 * mm, Trim: mm, Shift: plan.Free, Arrange: plan.AnyArrange, Speed: 1})
	for seed := range uint64(plantest.Worlds(1, 4)) {
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 200, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		if err := verify.DayOf(best, d); err != nil {
			t.Error(err)
		}
		last := best.Refused()[len(best.Refused())-1]
		if why := last.Faults[0]; last.Job.ID != "none" || !why.Equal(plan.NewFault("slits", "no slits are listed")) {
			t.Errorf("%s is refused: %s", last.Job.ID, why.Why(plan.Millimetres))
		}
	}
}

// busyDay draws days until one has six jobs to plan.
func busyDay(t *testing.T) (*plan.Beam, *plan.Positions, *plan.Day) {
	t.Helper()
	for seed := range uint64(100) {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 52)))
		if p, err := sequence.PlanDay(b, start, d); err == nil && len(p.Steps()) >= 6 {
			return b, start, d
		}
	}
	t.Fatal("no drawn day has six jobs to plan")
	return nil, nil, nil
}

// Whatever is searched verifies, plans and refuses the same jobs as the listed
// order, and is no worse than it, even planned jointly.
func TestSearchedDaysVerifyAndAreNeverWorse(t *testing.T) {
	t.Parallel()
	better, days := 0, uint64(plantest.Worlds(4, 8))
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 51))
		b, start, d := plantest.DrawQuickDay(r)
		aim := plan.Aim(seed % 2)
		listed, err := sequence.PlanDay(b, start, d)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: aim, Rounds: 300, Seed: seed})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := verify.DayOf(best, d); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if len(best.Steps()) != len(listed.Steps()) || len(best.Refused()) != len(listed.Refused()) {
			t.Errorf("seed %d: %d planned and %d refused, listed %d and %d", seed, len(best.Steps()), len(best.Refused()), len(listed.Steps()), len(listed.Refused()))
		}
		kept := len(plan.Broken(listed.Jobs(), listed.Done)) == 0
		joint := sequence.Jointly(context.Background(), listed, aim)
		for _, before := range []plan.Totals{listed.Totals, listed.Listed, joint.Totals} {
			if kept && plantest.Worse(best.Totals, before, aim) {
				t.Errorf("seed %d, aim %v: searched %+v, listed %+v", seed, aim, best.Totals, before)
			}
		}
		if plantest.Worse(listed.Totals, best.Totals, aim) {
			better++
		}
	}
	if better < int(days)/2 {
		t.Errorf("only %d of %d days became better", better, days)
	}
}

// The same seed and rounds give the same plan, on one core as on several.
func TestSearchIsTheSameEveryTime(t *testing.T) {
	b, start, d := busyDay(t)
	e := sequence.Effort{Rounds: 500, Seed: 7}
	first, err := sequence.Search(context.Background(), b, start, d, e)
	if err != nil {
		t.Fatal(err)
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	e.Report = func(sequence.Progress) {}
	again, err := sequence.Search(context.Background(), b, start, d, e)
	if err != nil {
		t.Fatal(err)
	}
	if listed, _ := sequence.PlanDay(b, start, d); plantest.Same(first, listed) {
		t.Error("the search found nothing better than the listed order")
	}
	if !plantest.Same(first, again) {
		t.Errorf("two searches with one seed: %+v and %+v", first.Totals, again.Totals)
	}
}

// Jobs that come after others and jobs with a fixed turn stay so, also where the
// listed order breaks that.
func TestSearchKeepsTheRules(t *testing.T) {
	t.Parallel()
	days := uint64(plantest.Worlds(3, 6))
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 53))
		b, start, d := plantest.DrawQuickDay(r)
		n := len(d.Jobs)
		for i := range d.Jobs {
			d.Jobs[i].State = plan.Waiting
		}
		// Rules that some order keeps: those that a drawn order happens to keep.
		order := r.Perm(n)
		for range 4 {
			a, z := r.IntN(n), r.IntN(n)
			if a < z {
				d.Jobs[order[z]].After = append(d.Jobs[order[z]].After, d.Jobs[order[a]].ID)
			}
		}
		d.Jobs[order[n-1]].Fixed = -1
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 60, Seed: seed})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if broken := plan.Broken(best.Jobs(), best.Done); len(broken) > 0 {
			t.Errorf("seed %d: %s", seed, broken[0].Why(plan.Millimetres))
		}
	}
}

// A search reports rounds that never fall, up to all of them but the last few of a run, and
// a best day that never gets worse, no better than the floor.
func TestSearchReportsHowFarItIs(t *testing.T) {
	b, start, d := busyDay(t)
	const rounds = 3000
	var all []sequence.Progress
	report := func(p sequence.Progress) { all = append(all, p) } // one call at a time
	if _, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: plan.AimMoves, Rounds: rounds, Seed: 3, Report: report}); err != nil {
		t.Fatal(err)
	}
	for i, p := range all {
		if p.Of != rounds || p.Rounds < 0 || p.Rounds > rounds || p.Best.Jobs != all[0].Best.Jobs {
			t.Errorf("report %d: %+v", i, p)
		}
		if p.Floor != nil && p.Best.Repositions < p.Floor.Repositions {
			t.Errorf("report %d: %d moves, below the floor of %d", i, p.Best.Repositions, p.Floor.Repositions)
		}
		if i > 0 && (p.Rounds < all[i-1].Rounds || plantest.Worse(p.Best, all[i-1].Best, plan.AimMoves)) {
			t.Errorf("report %d: %d rounds and %+v after %d and %+v", i, p.Rounds, p.Best, all[i-1].Rounds, all[i-1].Best)
		}
	}
	if len(all) < rounds/64 || all[0].Rounds > 64 || all[len(all)-1].Rounds < rounds*9/10 {
		t.Errorf("%d reports, from %d to %d rounds", len(all), all[0].Rounds, all[len(all)-1].Rounds)
	}
}

// A search that is stopped ends soon and keeps what it has; one that is stopped
// before it begins still plans the day.
func TestSearchStops(t *testing.T) {
	b, start, d := busyDay(t)
	ctx, cancel := context.WithCancel(context.Background())
	calls := 0
	best, err := sequence.Search(ctx, b, start, d, sequence.Effort{Rounds: 1 << 30, Seed: 1, Report: func(p sequence.Progress) {
		if calls++; calls == 3 {
			cancel()
		}
	}})
	if err != nil || verify.DayOf(best, d) != nil {
		t.Errorf("stopped: %v, %v", err, verify.DayOf(best, d))
	}
	best, err = sequence.Search(ctx, b, start, d, sequence.Effort{Rounds: 1 << 30})
	if err != nil || verify.DayOf(best, d) != nil {
		t.Errorf("stopped before it began: %v, %v", err, verify.DayOf(best, d))
	}
}

// Stopped before it has begun, a search is no worse than the order listed, as it is or
// centred, where that keeps the rules.
func TestSearchStoppedAtOnceIsNoWorse(t *testing.T) {
	stopped, cancel := context.WithCancel(context.Background())
	cancel()
	for seed := range uint64(60) {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 55)))
		listed, err := sequence.PlanDay(b, start, d)
		if err != nil || len(plan.Broken(listed.Jobs(), listed.Done)) > 0 {
			continue
		}
		aim := plan.Aim(seed % 2)
		best, err := sequence.Search(stopped, b, start, d, sequence.Effort{Aim: aim, Rounds: 100, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		for _, before := range []plan.Totals{listed.Totals, listed.Listed} {
			if plantest.Worse(best.Totals, before, aim) {
				t.Errorf("seed %d: %+v, listed %+v", seed, best.Totals, before)
			}
		}
	}
}

// With every job's turn fixed and no choice of layouts there is nothing to search.
func TestLockedDayEndsAtOnce(t *testing.T) {
	b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(9, 54)))
	for i := range d.Jobs {
		j := &d.Jobs[i]
		j.State, j.Fixed, j.Shift, j.Arrange = plan.Waiting, i+1, plan.Centred, plan.AsListed
	}
	done := make(chan *plan.DayPlan)
	go func() {
		best, _ := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 1 << 40})
		done <- best
	}()
	select {
	case best := <-done:
		if err := verify.DayOf(best, d); err != nil {
			t.Error(err)
		}
	case <-time.After(2 * time.Minute):
		t.Error("still searching")
	}
}

// Where nothing is gained, a job is laid out as it asks, whatever other jobs gain: every
// holder cuts in each of these jobs. The first and the last are alike, so that one
// coming after the other saves four moves; but no cut of the job whose slits may go
// anywhere can coincide with one of another job, so four move whatever its layout.
func TestSearchLeavesLayoutsThatGainNothing(t *testing.T) {
	mm := plan.Millimetre
	b := &plan.Beam{
		HolderWidth: 9 * mm, Clearance: mm, Rail: plan.Span{From: 0, To: 200 * mm},
		Web: plan.Span{From: 0, To: 200 * mm}, RestOverWeb: true, Holders: make([]plan.Condition, 4),
	}
	start := &plan.Positions{At: []plan.Length{0, 11 * mm, 22 * mm, 33 * mm}}
	d := &plan.Day{Start: time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)}
	for i, widths := range [][]plan.Length{{16, 16, 16}, {21, 31, 41}, {13, 13, 13}, {16, 16, 16}} {
		j := plan.Job{ID: fmt.Sprint("J", i), Web: 130 * mm, Trim: mm, Metres: 100, Speed: 100, Shift: plan.Centred}
		for _, w := range widths {
			j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w * mm, Width: w * mm})
		}
		if i == 1 {
			j.Arrange, j.Shift = plan.AnyArrange, plan.Free
			j.Trim = 18 * mm // it may go half a millimetre to either side
		}
		d.Jobs = append(d.Jobs, j)
	}
	for seed := range uint64(5) {
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: plan.AimMoves, Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		if err := verify.DayOf(best, d); err != nil {
			t.Fatal(err)
		}
		if best.Totals.Repositions != 12 {
			t.Errorf("seed %d: %d moves, want 12", seed, best.Totals.Repositions)
		}
		for _, s := range best.Steps() {
			if s.Layout.Shift != 0 || !slices.Equal(s.Layout.Slits, s.Job.Slits()) {
				t.Errorf("seed %d: %s at shift %s with slits %v, which gains nothing: %d moves", seed, s.Job.ID, s.Layout.Shift.MM(), s.Layout.Slits, best.Totals.Repositions)
			}
		}
	}
}

// With position_tolerance a job can need a holder beside its cut that a move takes away for good:
// holders stand 4 mm apart on 14 mm, so the second is at 4 to 6 and can serve X's cut at
// 3 from 4 alone. Y's cut at 6 sends it, or the third, which can't come nearer than 8, to
// 6; so Y before X, as X asks, can't be set. What is listed is planned all the same.
func TestSearchWhereNoOrderThatKeepsTheRulesCanBeSet(t *testing.T) {
	b := &plan.Beam{
		HolderWidth: 3 * mm, Clearance: mm, PositionTolerance: mm, Rail: plan.Span{To: 14 * mm}, Web: plan.Span{To: 14 * mm},
		Guide: plan.GuideOperator, RestOverWeb: true, Holders: make([]plan.Condition, 4),
	}
	start := &plan.Positions{At: []plan.Length{0, 4 * mm, 8 * mm, 12 * mm}}
	halves := func(id string, a, z plan.Length, after ...string) plan.Job {
		return plan.Job{ID: id, Web: a + z, Speed: 1, After: after, Entries: []plan.Entry{{Count: 1, Finished: a, Width: a}, {Count: 1, Finished: z, Width: z}}}
	}
	d := &plan.Day{Jobs: []plan.Job{halves("X", 3*mm, 5*mm, "Y"), halves("Y", 6*mm, 5*mm)}}
	turned := &plan.Day{Jobs: []plan.Job{d.Jobs[1], d.Jobs[0]}}
	if p, err := sequence.PlanDay(b, start, turned); err != nil || len(p.Refused()) != 1 {
		t.Fatalf("Y before X refuses %d jobs (%v), want 1", len(p.Refused()), err)
	}
	best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 100})
	if err != nil {
		t.Fatal(err)
	}
	if err := verify.DayOf(best, d); err != nil || len(best.Steps()) != 2 || best.Sequence != plan.SequenceListed {
		t.Errorf("%d jobs planned in sequence %v: %v", len(best.Steps()), best.Sequence, err)
	}
}

// Where no order keeps the rules the day is the listed one, planned jointly.
func TestSearchWhereNoOrderKeepsTheRules(t *testing.T) {
	b, start, d := busyDay(t)
	for i := range d.Jobs {
		d.Jobs[i].After = []string{d.Jobs[(i+1)%len(d.Jobs)].ID}
		d.Jobs[i].State = plan.Waiting
	}
	listed, err := sequence.PlanDay(b, start, d)
	if err != nil {
		t.Fatal(err)
	}
	best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: plan.AimMoves, Rounds: 100})
	if err != nil {
		t.Fatal(err)
	}
	joint := sequence.Jointly(context.Background(), listed, plan.AimMoves)
	if !listed.Totals.Better(joint.Totals, plan.AimMoves) && !joint.Totals.Better(listed.Totals, plan.AimMoves) {
		t.Error("the day gains nothing by planning jointly, and so can't tell")
	}
	if !plantest.Same(best, joint) {
		t.Errorf("searched %+v, the listed day joint %+v", best.Totals, joint.Totals)
	}
	if err := verify.DayOf(best, d); err != nil {
		t.Error(err)
	}
}
