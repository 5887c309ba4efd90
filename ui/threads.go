package ui

import (
	"bide/plan"
)

// The picture of a changeover is drawn in threads: one for each holder, from its
// place now, at the top, to its place next, at the bottom. A holder that bides is a
// thread straight down, one that moves bends. Holders keep their order, so threads
// never cross.

// thread is one holder's line: where it is at the top and at the bottom.
type thread struct {
	from, to int
	class    class
}

// class is how a thread is drawn. Where several share a cell the highest shows.
type class uint8

const (
	none  class = iota
	idles       // bides and doesn't cut
	bides       // bides and cuts
	moves
	aimed // moves, and is the picked one
	classes
)

var classInk = [classes]ink{none: plain, idles: faint, bides: plain, moves: moved, aimed: picked}

// picture is something that threads are drawn on, h lines of w cells.
type picture interface {
	across() int // how many threads fit side by side in a cell
	draw([]thread)
	line(y int) line
}

// newPicture makes an empty one: of braille dots, or of ASCII elbows.
func newPicture(k *look, w, h int) picture {
	w, h = max(w, 0), max(h, 0)
	if k.ascii {
		return &elbows{k, w, h, make([]elbow, w*h)}
	}
	return &dots{look: k, w: w, h: h, fields: make([]dotted, w*h)}
}

// threads are all holders' lines of a changeover; aim is the number of the picked
// holder.
func threads(c *plan.Changeover, aim int, column func(plan.Length) int) []thread {
	out := make([]thread, len(c.Holders))
	for i, h := range c.Holders {
		t := thread{column(c.From[i]), column(h.At), bides}
		switch {
		case h.At == c.From[i] && h.Use != plan.Cutting:
			t.class = idles
		case h.At == c.From[i]:
		case i+1 == aim:
			t.class = aimed
		default:
			t.class = moves
		}
		out[i] = t
	}
	return out
}

// standing are the lines of holders that nothing is planned for yet.
func standing(at []plan.Length, column func(plan.Length) int) []thread {
	out := make([]thread, len(at))
	for i, x := range at {
		out[i] = thread{column(x), column(x), idles}
	}
	return out
}
