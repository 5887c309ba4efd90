package ui

import "slices"

// history is all that was done to a draft, to be undone and done again without
// limit. Drafts are values that nobody changes once they are in it.
type history[D any] struct {
	past, future []D
	now          D
}

// do makes next the present draft; what was undone before is gone.
func (h *history[D]) do(next D) {
	h.past, h.now, h.future = append(h.past, h.now), next, nil
}

// undo goes one draft back; false when there is none.
func (h *history[D]) undo() bool { return shift(&h.past, &h.now, &h.future) }

// drop takes a change out, wherever it is, not to be undone or done again. What was done
// after it stays.
func (h *history[D]) drop(is func(D) bool) {
	if n := len(h.past); n > 0 && is(h.now) {
		h.now, h.past = h.past[n-1], h.past[:n-1]
	}
	h.past = slices.DeleteFunc(h.past, is)
	h.future = slices.DeleteFunc(h.future, is)
}

// redo takes one undo back; false when there is none.
func (h *history[D]) redo() bool { return shift(&h.future, &h.now, &h.past) }

// each changes all drafts alike: what has happened in all of them.
func (h *history[D]) each(change func(D) D) {
	h.now = change(h.now)
	for i := range h.past {
		h.past[i] = change(h.past[i])
	}
	for i := range h.future {
		h.future[i] = change(h.future[i])
	}
}

// shift makes the last of from the present one, and puts that at the end of to.
func shift[D any](from *[]D, now *D, to *[]D) bool {
	n := len(*from)
	if n == 0 {
		return false
	}
	*to = append(*to, *now)
	*now, *from = (*from)[n-1], (*from)[:n-1]
	return true
}
