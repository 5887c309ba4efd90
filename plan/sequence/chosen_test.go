package sequence_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// A day of which a search has chosen the layouts alone is planned with them, and so keeps
// most of what the search won; what can't be set, or isn't the job's, is passed over.
func TestChosenLayoutsAreKept(t *testing.T) {
	t.Parallel()
	laid, plain, kept, found, days := 0, 0, 0, 0, uint64(plantest.Worlds(6, 6))
	for seed := range days {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 73)))
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: plan.AimMoves, Rounds: plantest.Worlds(500, 3000), Seed: seed})
		if err != nil || len(best.Refused()) > 0 {
			continue
		}
		next := &plan.Day{Start: d.Start, End: d.End}
		for _, s := range best.Steps() {
			next.Jobs = append(next.Jobs, *s.Job)
		}
		without := jointMoves(t, b, start, next)
		for i, s := range best.Steps() {
			next.Jobs[i].Chosen = &plan.Chosen{Slits: s.Layout.Slits, Shift: s.Layout.Shift}
		}
		alone, err := sequence.PlanDay(b, start, next)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for i, s := range alone.Steps() {
			if s.Job.State == plan.Running { // it is as it stands
				continue
			}
			if c := next.Jobs[i].Chosen; s.Layout.Shift != c.Shift || !slices.Equal(s.Layout.Slits, c.Slits) {
				t.Errorf("seed %d: %s is laid out otherwise than chosen", seed, s.Job.ID)
			}
			laid++
		}
		kept += jointMoves(t, b, start, next)
		plain += without
		found += best.Totals.Repositions

		for i := range next.Jobs { // another job's layout
			next.Jobs[i].Chosen = &plan.Chosen{Slits: []plan.Length{plan.Millimetre}, Shift: plan.Millimetre}
		}
		if got := jointMoves(t, b, start, next); got != without {
			t.Errorf("seed %d: layouts that the jobs don't allow change the day: %d moves, %d without", seed, got, without)
		}
	}
	t.Logf("moves: %d joint without, %d with the layouts chosen, %d found", plain, kept, found)
	bound := (plain - found) / 2 // half of what the search won
	if days < 40 {               // few: as good as without, or as found
		bound = max(plain-found, 0)
	}
	if laid < 20 || kept-found > bound {
		t.Errorf("moves: %d joint without, %d with the layouts chosen, %d found", plain, kept, found)
	}
}

// chosenFrom is the day in the order of a plan, each job as the plan has it.
func chosenFrom(d *plan.Day, best *plan.DayPlan) *plan.Day {
	next := &plan.Day{Start: d.Start, End: d.End, Aim: best.Aim}
	for i := range best.Steps() {
		j := *best.Steps()[i].Job
		j.Chosen = best.Beam.Choose(best.Steps()[i])
		next.Jobs = append(next.Jobs, j)
	}
	return next
}

// A day that a search has found is planned again as it was found, to the last holder,
// also when its first jobs have run, and with holders that may cut from beside their cuts.
func TestChosenDayIsPlannedAsFound(t *testing.T) {
	t.Parallel()
	kept, left, days := 0, 0, uint64(plantest.Worlds(4, 8))
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 74))
		b, start, d := plantest.DrawQuickDay(r)
		aim := plan.Aim(seed % 2)
		if seed%4 < 2 {
			b.PositionTolerance = plan.Length(r.Int64N(int64(b.Pitch() / 2)))
		}
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: aim, Rounds: 400, Seed: seed})
		if err != nil || len(best.Refused()) > 0 || len(best.Steps()) == 0 {
			continue
		}
		next := chosenFrom(d, best)
		again, err := sequence.PlanDay(b, start, next)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		again = sequence.Jointly(context.Background(), again, aim)
		if err := verify.DayOf(again, next); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		if !plantest.Same(again, best) {
			t.Errorf("seed %d: found %+v, planned again %+v", seed, best.Totals, again.Totals)
		}
		kept++
		if len(best.Steps()) < 2 {
			continue
		}
		first := best.Steps()[0]
		ran, rest := start.After(first), *next
		rest.Jobs = rest.Jobs[1:]
		later, err := sequence.PlanDay(b, ran, &rest)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for i, s := range sequence.Jointly(context.Background(), later, aim).Steps() {
			if want := best.Steps()[i+1]; !slices.Equal(s.Changeover.Holders, want.Changeover.Holders) {
				t.Errorf("seed %d: once %s has run, %s is planned otherwise", seed, first.Job.ID, want.Job.ID)
			}
			left++
		}
	}
	if kept < int(days)/2 || left < int(days)/2 {
		t.Errorf("only %d days and %d jobs of days begun", kept, left)
	}
}

// What was chosen gives way, and the day is planned jointly again, where it is planned for
// something else, costs more than it did, or moves holders for a job that comes no more.
func TestChosenGivesWay(t *testing.T) {
	t.Parallel()
	gains, days := map[string]int{}, uint64(plantest.Worlds(8, 16))
	changes := map[string]func(next *plan.Day, aim *plan.Aim){
		"nothing":       func(*plan.Day, *plan.Aim) {},
		"another aim":   func(_ *plan.Day, aim *plan.Aim) { *aim = 1 - *aim },
		"the last gone": func(next *plan.Day, _ *plan.Aim) { next.Jobs = next.Jobs[:len(next.Jobs)-1] },
		"longer setup": func(next *plan.Day, _ *plan.Aim) {
			for i := range next.Jobs {
				next.Jobs[i].Chosen.Idle.Setup = 0
			}
		},
	}
	for seed := range days {
		b, start, d := plantest.DrawQuickDay(rand.New(rand.NewPCG(seed, 79)))
		d.Aim = plan.Aim(seed % 2)
		listed, err := sequence.PlanDay(b, start, d)
		if err != nil || len(listed.Refused()) > 0 || len(listed.Steps()) < 2 {
			continue
		}
		for name, change := range changes {
			found, aim := listed, d.Aim
			if name == "the last gone" { // alone no changeover moves a holder for a later job
				if found, err = sequence.Search(context.Background(), b, start, d, sequence.Effort{Aim: aim, Rounds: 50, Seed: seed}); err != nil {
					t.Fatal(err)
				}
			}
			next := chosenFrom(d, found)
			change(next, &aim)
			alone, err := sequence.PlanDay(b, start, next)
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			joint := sequence.Jointly(context.Background(), alone, aim)
			if alone.Totals.Better(joint.Totals, aim) {
				t.Errorf("seed %d, %s: joint %+v, as chosen %+v", seed, name, joint.Totals, alone.Totals)
			}
			if joint.Totals.Better(alone.Totals, aim) {
				gains[name]++
			}
		}
	}
	t.Logf("days better than as chosen: %v", gains)
	if gains["nothing"] > 0 || gains["another aim"] == 0 || gains["the last gone"] == 0 || gains["longer setup"] == 0 {
		t.Errorf("days better than as chosen: %v", gains)
	}
}

// Where the beam doesn't stand as it did, the layouts chosen stay, and no changeover takes
// more moves than it did unless it has to.
func TestChosenLayoutsStayWhereHoldersDont(t *testing.T) {
	t.Parallel()
	tried, days := 0, uint64(plantest.Worlds(4, 8))
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 75))
		b, start, d := plantest.DrawQuickDay(r)
		best, err := sequence.Search(context.Background(), b, start, d, sequence.Effort{Rounds: 400, Seed: seed})
		if err != nil || len(best.Refused()) > 0 || len(best.Steps()) == 0 {
			continue
		}
		next := chosenFrom(d, best)
		r.Shuffle(len(next.Jobs), func(i, k int) {
			if next.Jobs[i].State != plan.Running && next.Jobs[k].State != plan.Running {
				next.Jobs[i], next.Jobs[k] = next.Jobs[k], next.Jobs[i]
			}
		})
		alone, err := sequence.PlanDay(b, start, next)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		p, err := changeover.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range alone.Steps() {
			least, faults := p.Changeover(s.Changeover.From, s.Layout)
			if took := s.Changeover.Repositions; s.Job.State != plan.Running && took > s.Job.Chosen.Idle.Moves && (len(faults) > 0 || took > least.Repositions) {
				t.Errorf("seed %d: %s takes %d moves, %d as chosen, %d at least", seed, s.Job.ID, took, s.Job.Chosen.Idle.Moves, least.Repositions)
			}
		}
		joint := sequence.Jointly(context.Background(), alone, plan.AimMoves)
		if err := verify.DayOf(joint, next); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		for i, s := range joint.Steps() {
			if was := alone.Steps()[i].Layout; alone.Steps()[i].Job.Chosen.Lays(was.Slits, was.Shift) && !slices.Equal(s.Layout.Cuts, was.Cuts) {
				t.Errorf("seed %d: %s was laid out as chosen, joint it isn't", seed, s.Job.ID)
			}
			tried++
		}
	}
	if tried < int(days) {
		t.Errorf("only %d jobs", tried)
	}
}

// jointMoves plans and plans jointly a day, verified, and counts its repositions.
func jointMoves(t *testing.T, b *plan.Beam, start *plan.Positions, d *plan.Day) int {
	t.Helper()
	alone, err := sequence.PlanDay(b, start, d)
	if err != nil {
		t.Fatal(err)
	}
	day := sequence.Jointly(context.Background(), alone, plan.AimMoves)
	if err := verify.DayOf(day, d); err != nil {
		t.Error(err)
	}
	return day.Totals.Repositions
}
