package plan_test

import (
	"slices"
	"testing"
	"time"

	"bide/plan"
)

// Of four holders the first carries what is wanted, the second another blade, of the
// third it isn't known, the fourth is idle.
func TestSwaps(t *testing.T) {
	wanted, other := plan.Blade{Bevel: 45, Tip: 0.15}, plan.Blade{Bevel: 30, Tip: 0.15}
	now := &plan.Positions{Blades: []plan.Blade{wanted, other, {}, other}}
	c := &plan.Changeover{Holders: []plan.Stand{{Use: plan.Cutting}, {Use: plan.Cutting}, {Use: plan.Cutting}, {Use: plan.Parked}}}
	if got := now.Swaps(&plan.Job{Blade: wanted}, c); !slices.Equal(got, []int{2}) {
		t.Errorf("blades are swapped in holders %v, want 2 alone", got)
	}
}

// A day goes on when what stands was recorded, if that was in the day.
func TestBegins(t *testing.T) {
	start := time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)
	d := &plan.Day{Start: start}
	for _, c := range []struct{ recorded, want time.Duration }{
		{-time.Hour, 0}, {0, 0}, {time.Hour, time.Hour}, {23 * time.Hour, 23 * time.Hour}, {24 * time.Hour, 0}, {1000 * time.Hour, 0},
	} {
		if got := d.Begins(&plan.Positions{Recorded: start.Add(c.recorded)}); !got.Equal(start.Add(c.want)) {
			t.Errorf("recorded %v after the start it begins at %v", c.recorded, got)
		}
	}
	if got := d.Begins(&plan.Positions{}); !got.Equal(start) {
		t.Errorf("not recorded, it begins at %v", got)
	}
}
