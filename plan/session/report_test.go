package session

import (
	"maps"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/session/journal"
	"bide/plan/shop"
)

// What was recorded is undone as long as nothing else was recorded of the same holders since:
// that would be lost. Of others, what was recorded since stays.
func TestUndoingRefusesWhatHasChangedSince(t *testing.T) {
	at := func(first, second plan.Length, marks shop.Marks) journal.Actual {
		return journal.Actual{Positions: &plan.Positions{At: []plan.Length{first, second}}, Marks: marks}
	}
	stuck, out := shop.Mark{Condition: plan.Stuck, Reason: "bent"}, shop.Mark{Condition: plan.Out}
	for _, c := range []struct {
		name         string
		was, is, now journal.Actual
		back         journal.Actual // where it can be undone
		wrong        string
	}{
		{"moved", at(10, 20, nil), at(15, 20, nil), at(15, 20, nil), at(10, 20, nil), ""},
		{"moved, the other one too", at(10, 20, nil), at(15, 20, nil), at(15, 25, nil), at(10, 25, nil), ""},
		{"moved on", at(10, 20, nil), at(15, 20, nil), at(16, 20, nil), journal.Actual{}, "holder 1 has moved since"},
		{"moved back", at(10, 20, nil), at(15, 20, nil), at(10, 20, nil), journal.Actual{}, "holder 1 has moved since"},
		{"the second moved on", at(10, 20, nil), at(10, 25, nil), at(10, 26, nil), journal.Actual{}, "holder 2 has moved since"},
		{"marked", at(1, 2, nil), at(1, 2, shop.Marks{2: stuck}), at(1, 2, shop.Marks{1: out, 2: stuck}), at(1, 2, shop.Marks{1: out}), ""},
		{"recorded as good", at(1, 2, shop.Marks{2: stuck}), at(1, 2, nil), at(1, 2, nil), at(1, 2, shop.Marks{2: stuck}), ""},
		{"marked on", at(1, 2, nil), at(1, 2, shop.Marks{2: stuck}), at(1, 2, shop.Marks{2: out}), journal.Actual{}, "the condition of holder 2 has changed since"},
		{"mended since", at(1, 2, nil), at(1, 2, shop.Marks{2: stuck}), at(1, 2, nil), journal.Actual{}, "the condition of holder 2 has changed since"},
		{"broken since", at(1, 2, shop.Marks{1: out}), at(1, 2, nil), at(1, 2, shop.Marks{1: stuck}), journal.Actual{}, "the condition of holder 1 has changed since"},
	} {
		back, wrong := (&Report{was: c.was, is: c.is}).before(c.now)
		if wrong != c.wrong {
			t.Errorf("%s: it is refused with %q, want %q", c.name, wrong, c.wrong)
		} else if wrong == "" && (!slices.Equal(back.Positions.At, c.back.Positions.At) || !maps.Equal(back.Marks, c.back.Marks)) {
			t.Errorf("%s: undone %v %v, want %v %v", c.name, back.Positions.At, back.Marks, c.back.Positions.At, c.back.Marks)
		}
	}
}
