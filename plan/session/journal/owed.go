package journal

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// sumOf says how much of what was recorded at the beam is in these events, without what
// was undone; empty when nothing is left.
func sumOf(events []record.Event) string {
	n := map[record.Kind]int{}
	for _, e := range events {
		if e.Back {
			n[e.Kind]--
		} else {
			n[e.Kind]++
		}
	}
	var parts []string
	for _, k := range []struct {
		kind      record.Kind
		one, many string
	}{
		{record.Moved, "1 move made", "%d moves made"}, {record.Corrected, "1 position corrected", "%d positions corrected"},
		{record.Condition, "1 condition", "%d conditions"}, {record.Job, "the state of 1 job", "the states of %d jobs"},
	} {
		switch n := n[k.kind]; {
		case n == 1:
			parts = append(parts, k.one)
		case n > 1:
			parts = append(parts, fmt.Sprintf(k.many, n))
		}
	}
	return words.Join(", ", parts...)
}

// Owing says how much of what was reported isn't written; empty when nothing is.
func (s *Saving) Owing() string { return sumOf(s.owed) }

// Reported is what was reported of a holder, of these kinds, not written down and not undone;
// nil where nothing is. It leads from where the first one did.
func (j *Journal) Reported(holder int, kinds ...record.Kind) *record.Event {
	var open []record.Event
	for _, e := range j.owed {
		switch {
		case e.Holder != holder || !slices.Contains(kinds, e.Kind):
		case !e.Back:
			open = append(open, e)
		case len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return nil
	}
	last := open[len(open)-1]
	last.From = open[0].From
	return &last
}

// Became is what a job was reported to have become last; false where nothing was, or it
// was undone.
func (j *Journal) Became(id string) (state plan.State, told bool) {
	var open []plan.State
	for _, e := range j.owed {
		switch {
		case e.Job != id || e.Kind != record.Job:
		case !e.Back:
			open = append(open, e.State)
		case len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return 0, false
	}
	return open[len(open)-1], true
}

// Owe has events owed that nobody writes: what they report isn't done.
func (j *Journal) Owe(events []record.Event) { j.owed = append(j.owed, events...) }
