package draft

import "slices"

// History is all that was done to a draft, to be undone and done again without
// limit. Drafts are values that nobody changes once they are in it.
type History[D any] struct {
	Past, future []D
	Now          D
}

// Do makes next the present draft; what was undone before is gone.
func (h *History[D]) Do(next D) {
	h.Past, h.Now, h.future = append(h.Past, h.Now), next, nil
}

// Undo goes one draft back; false when there is none.
func (h *History[D]) Undo() bool { return shift(&h.Past, &h.Now, &h.future) }

// Drop takes a change out, wherever it is, not to be undone or done again. What was done
// after it stays.
func (h *History[D]) Drop(is func(D) bool) {
	if n := len(h.Past); n > 0 && is(h.Now) {
		h.Now, h.Past = h.Past[n-1], h.Past[:n-1]
	}
	h.Past = slices.DeleteFunc(h.Past, is)
	h.future = slices.DeleteFunc(h.future, is)
}

// Redo takes one undo back; false when there is none.
func (h *History[D]) Redo() bool { return shift(&h.future, &h.Now, &h.Past) }

// Next is what Redo would make the present one; false when there is nothing.
func (h *History[D]) Next() (next D, ok bool) {
	if n := len(h.future); n > 0 {
		return h.future[n-1], true
	}
	return next, false
}

// Each changes all drafts alike: what has happened in all of them.
func (h *History[D]) Each(change func(D) D) {
	h.Now = change(h.Now)
	for i := range h.Past {
		h.Past[i] = change(h.Past[i])
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
