package plan_test

import (
	"slices"
	"testing"
	"time"

	"bide/plan"
)

// Of four holders the first carries what is wanted, the second another blade, of the
// third it isn't known, which counts as a swap, the fourth is idle.
func TestSwaps(t *testing.T) {
	wanted, other := plan.Blade{Bevel: 45, Tip: 0.15}, plan.Blade{Bevel: 30, Tip: 0.15}
	now := &plan.Positions{Blades: []plan.Blade{wanted, other, {}, other}}
	c := &plan.Changeover{Holders: []plan.Stand{{Use: plan.Cutting}, {Use: plan.Cutting}, {Use: plan.Cutting}, {Use: plan.Parked}}}
	if got := now.Swaps(&plan.Job{Blade: wanted}, c); !slices.Equal(got, []int{2, 3}) {
		t.Errorf("blades are swapped in holders %v, want 2 and 3", got)
	}
}

// A day begins at the latest of its start, what is recorded, and now.
func TestBegins(t *testing.T) {
	start := time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)
	d := &plan.Day{Start: start}
	for _, c := range []struct{ recorded, want time.Duration }{
		{-time.Hour, 0}, {0, 0}, {time.Hour, time.Hour}, {23 * time.Hour, 23 * time.Hour}, {1000 * time.Hour, 1000 * time.Hour},
	} {
		if got := d.Begins(&plan.Positions{Recorded: start.Add(c.recorded)}); !got.At.Equal(start.Add(c.want)) {
			t.Errorf("recorded %v after the start it begins at %v", c.recorded, got)
		}
	}
	d.Now = start.Add(2 * time.Hour)
	for recorded, want := range map[time.Duration]time.Duration{time.Hour: 2 * time.Hour, 3 * time.Hour: 3 * time.Hour} {
		if got := d.Begins(&plan.Positions{Recorded: start.Add(recorded)}); !got.At.Equal(start.Add(want)) {
			t.Errorf("recorded %v after the start, now %v after it, it begins at %v", recorded, d.Now.Sub(start), got.At)
		}
	}
	d.Now = time.Time{}
	if got := d.Begins(&plan.Positions{}); !got.At.Equal(start) {
		t.Errorf("not recorded, it begins at %v", got)
	}
}
