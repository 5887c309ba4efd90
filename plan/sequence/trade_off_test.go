package sequence_test

import (
	"context"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// Two holders stand ready beside two cuts and carry the wrong blade; two more behind
// them carry the right one. By hand: leaving all where they are takes two swaps and
// no move; moving four takes no swap. With a minute a swap and a second a move the
// moves are cheaper, with a second a swap and a minute a move the swaps are.
func TestMovesAndSwapsAreTradedOnSeconds(t *testing.T) {
	for _, c := range []struct {
		swap, move   time.Duration
		moves, swaps int
	}{
		{time.Minute, time.Second, 4, 0},
		{time.Second, time.Minute, 0, 2},
	} {
		b := &plan.Beam{
			HolderWidth: 10 * mm, Rail: plan.Span{From: 0, To: 400 * mm}, Web: plan.Span{From: 0, To: 300 * mm}, RestOverWeb: true,
			Holders: make([]plan.Condition, 4), Drive: plan.Drive{Kind: plan.ByHand, Hand: c.move},
			Setup: plan.Setup{Blade: c.swap, Crew: 1},
		}
		wrong, right := plan.Blade{Bevel: 60, Tip: 0.2}, plan.Blade{Bevel: 45, Tip: 0.1}
		// The web is centred on 150: a strip of 100 is cut at 100 and 200.
		start := &plan.Positions{At: []plan.Length{100 * mm, 200 * mm, 320 * mm, 340 * mm}, Blades: []plan.Blade{wrong, wrong, right, right}}
		day := &plan.Day{Start: at("2026-11-25T06:00:00"), Jobs: []plan.Job{{
			ID: "A", Web: 140 * mm, Trim: 5 * mm, Metres: 10, Speed: 10, Blade: right,
			Entries: []plan.Entry{{Count: 1, Width: 100 * mm, Finished: 100 * mm}},
		}}}
		alone, err := sequence.PlanDay(b, start, day)
		if err != nil {
			t.Fatal(err)
		}
		for what, d := range map[string]*plan.DayPlan{"joint": sequence.Jointly(context.Background(), alone, plan.AimMinutes), "searched": searchedFor(t, b, start, day)} {
			if err := verify.DayOf(d, day); err != nil {
				t.Error(err)
			}
			if s := d.Steps()[0]; s.Changeover.Repositions != c.moves || s.Setup.Swaps != c.swaps {
				t.Errorf("%s, %v a swap, %v a move: %d moves and %d swaps, want %d and %d", what, c.swap, c.move, s.Changeover.Repositions, s.Setup.Swaps, c.moves, c.swaps)
			}
		}
	}
}
