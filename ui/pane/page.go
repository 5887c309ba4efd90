package pane

import (
	"bide/ui/draw"
	"bide/ui/keys"
)

// Page is a page over all panes, which has the keys as long as it is there. It
// takes itself away by setting what is over the panes to nil.
type Page interface {
	HandleKey(keys.Action, *Shared) Want
	View(*Shared) []draw.Line // the whole frame
	Help() keys.Scope
	Fits(draw.Size) bool // whether it can be worked in at that size
}

// GuidedPage is a page in which what happens at the beam is recorded.
type GuidedPage interface {
	Typing() bool          // a form is open
	Obscures(*Shared) bool // what just happened hides what the keys are about
}

// Guided is the guided setup, when that is what is open; else nil.
func (d *Shared) Guided() GuidedPage {
	g, _ := d.Over.(GuidedPage)
	return g
}

// PageSize is the size of the box of a page, its rule included.
func (d *Shared) PageSize() draw.Size { return draw.Size{W: d.W, H: max(d.H-3, 0)} }
