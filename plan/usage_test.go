package plan_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"

	"github.com/google/go-cmp/cmp"
)

// handMade is a day of three steps with four holders, put down by hand: places in
// millimetres, and for each step which holder holds which cut (0 rests, -1 parks).
func handMade() []*plan.Step {
	at := [][]int{{0, 10, 20, 30}, {0, 12, 20, 30}, {0, 12, 25, 29}, {0, 12, 25, 30}}
	cuts := [][]int{{-1, 1, 2, -1}, {-1, 1, 0, 2}, {-1, 0, 1, 2}}
	clock := time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)
	var steps []*plan.Step
	for i, metres := range []float64{1000, 500, 250} {
		s := &plan.Step{Job: &plan.Job{ID: string(rune('A' + i)), Metres: metres}, SetupStart: clock}
		s.Setup.Every = time.Duration(i+1) * time.Minute
		s.RunStart = clock.Add(s.Setup.Total())
		s.RunEnd = s.RunStart.Add(10 * time.Minute)
		clock = s.RunEnd
		c := &s.Changeover
		for h := range 4 {
			from, to := plan.Length(at[i][h])*plan.Millimetre, plan.Length(at[i+1][h])*plan.Millimetre
			stand := plan.Stand{At: to, Use: plan.Cutting, Cut: cuts[i][h]}
			switch stand.Cut {
			case 0:
				stand.Use = plan.Resting
			case -1:
				stand.Use, stand.Cut = plan.Parked, 0
			}
			c.From, c.Holders = append(c.From, from), append(c.Holders, stand)
			if from != to {
				c.Repositions++
				c.Travel += max(to-from, from-to)
			}
		}
		steps = append(steps, s)
	}
	return steps
}

// Steps take 11, 12 and 13 minutes; 1000, 500 and 250 m are run.
func TestUsagesOfADayByHand(t *testing.T) {
	const mm = plan.Millimetre
	got := plan.Usages(handMade())
	want := []plan.Usage{
		{Idle: 3, IdleTime: 36 * time.Minute},
		{Moves: 1, Travel: 2 * mm, Metres: 1500, Cuts: 2, Idle: 1, IdleTime: 13 * time.Minute},
		{Moves: 1, Travel: 5 * mm, Metres: 1250, Cuts: 2, Idle: 1, IdleTime: 12 * time.Minute},
		{Moves: 2, Travel: 2 * mm, Metres: 750, Cuts: 2, Idle: 1, IdleTime: 11 * time.Minute},
	}
	if len(got) != len(want) {
		t.Fatalf("%d holders, want %d", len(got), len(want))
	}
	for h := range want {
		stints := got[h].Stints
		if got[h].Stints = nil; len(stints) != 3 {
			t.Fatalf("holder %d has %d stints, want 3", h+1, len(stints))
		}
		if diff := cmp.Diff(want[h], got[h]); diff != "" {
			t.Errorf("holder %d (-want +got):\n%s", h+1, diff)
		}
	}
	if got[0].Never() != true || got[1].Never() != false {
		t.Error("holder 1 alone is never used")
	}
}

func TestStintsOfADayByHand(t *testing.T) {
	const mm = plan.Millimetre
	got := plan.Usages(handMade())[3].Stints
	want := []plan.Stint{
		{Use: plan.Parked, At: 30 * mm, Time: 11 * time.Minute},
		{Use: plan.Cutting, Cut: 2, At: 29 * mm, Way: -mm, Metres: 500, Time: 12 * time.Minute},
		{Use: plan.Cutting, Cut: 2, At: 30 * mm, Way: mm, Metres: 250, Time: 13 * time.Minute},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("holder 4 (-want +got):\n%s", diff)
	}
}

// The last cut before, the next from, and the idle spell around each step. Holder 3
// cuts, rests, cuts; holder 1 never cuts.
func TestSpellsOfADayByHand(t *testing.T) {
	all := plan.Usages(handMade())
	for _, c := range []struct {
		holder, step, last, next, steps int
		time                            time.Duration
	}{
		{3, 0, -1, 0, 0, 0},
		{3, 1, 0, 2, 1, 12 * time.Minute},
		{3, 2, 0, 2, 0, 0},
		{3, 3, 2, -1, 0, 0}, // beyond the day
		{1, 0, -1, -1, 3, 36 * time.Minute},
		{1, 2, -1, -1, 3, 36 * time.Minute},
		{2, 2, 1, -1, 1, 13 * time.Minute},
		{4, 0, -1, 1, 1, 11 * time.Minute},
		{4, -1, -1, 1, 0, 0},
	} {
		u := all[c.holder-1]
		steps, time := u.Spell(c.step)
		if u.Last(c.step) != c.last || u.Next(c.step) != c.next || steps != c.steps || time != c.time {
			t.Errorf("holder %d, step %d: last %d, next %d, %d steps in %v; want %+v", c.holder, c.step, u.Last(c.step), u.Next(c.step), steps, time, c)
		}
	}
}

// When a holder is next touched: holder 1 never; 2 cuts in steps 0 and 1, and rests
// unmoved in 2; 3 rests in step 1, moved, and cuts in 2; 4 is parked in step 0 and cuts
// from 1 on.
func TestTouchedOfADayByHand(t *testing.T) {
	all := plan.Usages(handMade())
	for h, want := range [][]int{{-1, -1, -1, -1, -1}, {0, 1, -1, -1, -1}, {0, 1, 2, -1, -1}, {1, 1, 2, -1, -1}} {
		for step := -1; step < 4; step++ {
			if got := all[h].Touched(step); got != want[step+1] {
				t.Errorf("holder %d behind step %d: touched in %d, want %d", h+1, step, got, want[step+1])
			}
		}
	}
}

// The second changeover moves two holders by 6 mm, the first and the third one each,
// by 2 and by 1 mm.
func TestPairsOfADayByHand(t *testing.T) {
	steps := handMade()
	got := plan.Pairs(steps)
	for i, want := range []struct {
		step, moves int
		travel      plan.Length
		setup       time.Duration
	}{{1, 2, 6, 2 * time.Minute}, {0, 1, 2, time.Minute}, {2, 1, 1, 3 * time.Minute}} {
		p := got[i]
		if p.Step != want.step || p.Repositions != want.moves || p.Travel != want.travel*plan.Millimetre || p.Setup != want.setup || p.Job != steps[p.Step].Job {
			t.Errorf("pair %d is %+v, want %+v", i, p, want)
		}
	}
	if got[1].Before != nil || got[0].Before != steps[0].Job {
		t.Error("a pair's job before is another one")
	}
	if plan.Usages(nil) != nil || len(plan.Pairs(nil)) != 0 {
		t.Error("a day without steps has usages or pairs")
	}
}

// Over planned days the usages add up to what the steps say.
func TestUsagesAddUp(t *testing.T) {
	planned := 0
	for seed := range uint64(60) {
		b, start, d := plantest.DrawDay(rand.New(rand.NewPCG(seed, 7)))
		day, err := sequence.PlanDay(b, start, d)
		if err != nil {
			t.Fatal(err)
		}
		moves, cuts, wantCuts := 0, 0, 0
		for _, u := range plan.Usages(day.Steps()) {
			moves += u.Moves
			cuts += u.Cuts
			if u.Cuts+u.Idle != len(day.Steps()) {
				t.Errorf("seed %d: %d steps cutting and %d idle of %d", seed, u.Cuts, u.Idle, len(day.Steps()))
			}
		}
		for _, s := range day.Steps() {
			wantCuts += len(s.Layout.Cuts)
			planned++
		}
		if moves != day.Totals.Repositions || cuts != wantCuts {
			t.Errorf("seed %d: %d moves and %d cuts, want %d and %d", seed, moves, cuts, day.Totals.Repositions, wantCuts)
		}
	}
	if planned < 100 {
		t.Errorf("only %d jobs planned", planned)
	}
}
