package ui

import (
	"bide/ui/draw"
	"bide/ui/keys"
)

// overlay is a page over all panes, which has the keys as long as it is there. It
// takes itself away by setting what is over the panes to nil.
type overlay interface {
	HandleKey(keys.Action, *desk)
	View(*desk) []draw.Line // the whole frame
	Help() keys.Scope
	Fits(draw.Size) bool // whether it can be worked in at that size
}

// guided is an overlay in which what happens at the beam is recorded.
type guided interface {
	Typing() bool        // a form is open
	Obscures(*desk) bool // what just happened hides what the keys are about
}

// guided is the guided setup, when that is what is open; else nil.
func (d *desk) guided() guided {
	g, _ := d.over.(guided)
	return g
}

// pageSize is the size of the box of a page, its rule included.
func (d *desk) pageSize() draw.Size { return draw.Size{W: d.W, H: max(d.H-3, 0)} }
