// Package list is how one goes through rows: a line or a page at a time, to the first or the
// last, with those around the picked one in sight.
package list

import (
	"slices"

	"bide/ui/draw"
	"bide/ui/keys"
)

// List is rows of which some are shown, one of them picked.
type List struct {
	At    int // the picked row, from 0
	Rows  int
	Shown int // rows that there is room for, which are a page
}

// Steps reports whether a key goes through the rows of a list.
func Steps(a keys.Action) bool {
	return slices.Contains([]keys.Action{keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.Top, keys.Bottom}, a)
}

// Step is the row that a key leads to: the picked one where it is no key of a list, 0 where
// there are no rows.
func (l List) Step(a keys.Action) int {
	to, page := l.At, max(l.Shown, 1)
	switch a {
	case keys.Up:
		to--
	case keys.Down:
		to++
	case keys.PageUp:
		to -= page
	case keys.PageDown:
		to += page
	case keys.Top:
		to = 0
	case keys.Bottom:
		to = l.Rows - 1
	}
	return max(0, min(to, l.Rows-1))
}

// From is the first row shown: the picked one is in the middle where there is more on both
// sides.
func (l List) From() int { return draw.Window(l.At, l.Rows, l.Shown) }

// To is the row behind the last one shown.
func (l List) To() int { return min(l.From()+max(l.Shown, 0), l.Rows) }

// Range tells which rows are shown, where that isn't all of them.
func (l List) Range() string { return draw.Range(l.From(), l.Shown, l.Rows) }

// Text is a text of so many lines, shown from one on, in so many: its rows are the lines that
// it can be shown from.
func Text(from, lines, shown int) List { return List{from, max(lines-shown, 0) + 1, shown} }
