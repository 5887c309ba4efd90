package draw

import (
	"bide/plan"
)

// The picture of a changeover is drawn in threads: one for each holder, from its
// position now, at the top, to its position next, at the bottom. A holder that stays is a
// thread straight down, one that moves bends. Holders keep their order, so threads
// never cross.

// Thread is one holder's line: where it is at the top and at the bottom.
type Thread struct {
	From, To int
	Class    class
}

// class is how a thread is drawn. Where several share a cell the highest shows.
type class uint8

const (
	none  class = iota
	Idles       // stays and doesn't cut
	Stays       // stays and cuts
	Moves
	Aimed // moves, and is the picked one
	classes
)

var classInk = [classes]Style{none: Plain, Idles: Faint, Stays: Plain, Moves: Moved, Aimed: Picked}

// picture is something that threads are drawn on, h lines of w cells.
type picture interface {
	Across() int // how many threads fit side by side in a cell
	Draw([]Thread)
	Line(y int) Line
}

// NewPicture makes an empty one: of braille dots, or of ASCII elbows.
func NewPicture(k *Theme, w, h int) picture {
	w, h = max(w, 0), max(h, 0)
	if k.ASCII {
		return &Elbows{k, w, h, make([]elbow, w*h)}
	}
	return &dots{look: k, w: w, h: h, fields: make([]dotted, w*h)}
}

// Threads are all holders' lines of a changeover; aim is the number of the picked
// holder.
func Threads(c *plan.Changeover, aim int, column func(plan.Length) int) []Thread {
	out := make([]Thread, len(c.Holders))
	for i, h := range c.Holders {
		t := Thread{column(c.From[i]), column(h.At), Stays}
		switch {
		case h.At == c.From[i] && h.Use != plan.Cutting:
			t.Class = Idles
		case h.At == c.From[i]:
		case i+1 == aim:
			t.Class = Aimed
		default:
			t.Class = Moves
		}
		out[i] = t
	}
	return out
}

// Unmoved are the lines of holders that nothing is planned for yet.
func Unmoved(at []plan.Length, column func(plan.Length) int) []Thread {
	out := make([]Thread, len(at))
	for i, x := range at {
		out[i] = Thread{column(x), column(x), Idles}
	}
	return out
}
