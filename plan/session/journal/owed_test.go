package journal

import (
	"testing"

	"bide/plan/shop/record"
)

// What is told is summed up without what was undone.
func TestSumOf(t *testing.T) {
	moved := record.Event{Kind: record.Moved}
	mark := record.Event{Kind: record.Condition}
	back := func(e record.Event) record.Event { return e.TakenBack(e.Time) }
	for want, events := range map[string][]record.Event{
		"":                                   {moved, back(moved), mark, back(mark)},
		"1 move made":                        {moved, moved, back(moved)},
		"2 moves made, 1 condition":          {moved, mark, moved},
		"the state of 1 job":                 {{Kind: record.Job}},
		"1 position corrected":               {{Kind: record.Corrected}, {Kind: record.Sequence}},
		"2 conditions, the states of 2 jobs": {mark, mark, {Kind: record.Job}, {Kind: record.Job}},
	} {
		if got := sumOf(events); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
