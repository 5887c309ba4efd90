package journal

import (
	"testing"

	"bide/plan/shop"
)

// What is told is summed up without what was taken back.
func TestSumOf(t *testing.T) {
	moved := shop.Event{Kind: shop.EventMoved}
	mark := shop.Event{Kind: shop.EventCondition}
	back := func(e shop.Event) shop.Event { return e.TakenBack(e.Time) }
	for want, events := range map[string][]shop.Event{
		"":                                   {moved, back(moved), mark, back(mark)},
		"1 move made":                        {moved, moved, back(moved)},
		"2 moves made, 1 condition":          {moved, mark, moved},
		"the state of 1 job":                 {{Kind: shop.EventJob}},
		"1 position corrected":               {{Kind: shop.EventCorrected}, {Kind: shop.EventSequence}},
		"2 conditions, the states of 2 jobs": {mark, mark, {Kind: shop.EventJob}, {Kind: shop.EventJob}},
	} {
		if got := sumOf(events); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
