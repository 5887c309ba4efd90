package ui

import "bide/ui/draw"

// The least size at which all panes are shown. Below it the small view shows the
// next step.
const (
	leastWidth  = 80
	leastHeight = 24
)

// beamRows are the lines of the beam on the least screen: its rule, the scale, the holders
// now and next, and the web. The day's list gets what it gains on a larger one too.
const beamRows = 5

// which names a pane.
type paneID uint8

const (
	noPane paneID = iota
	theDay
	theBeam
	theMoves
	theDayMap // from here on panes that have a page of their own
	theHolders
	theSettings
	theSchedule
	lastPaneShown = theSchedule
)

// paged reports whether the pane has a page of its own.
func (w paneID) paged() bool { return w >= theDayMap }

// layout is what is where on a screen: a bar, the beam over its whole width, the
// day and the moves side by side, what just happened, and the keys. A pane of no
// size isn't shown.
type layout struct {
	small            bool
	beam, day, moves draw.Size
	between          int       // cells between day and moves
	page             draw.Size // of a pane that has a page of its own
}

// arrange lays a screen out. It depends on the size, on whether more lines show more of what
// is above the day, and on the pane that is enlarged alone, so nothing jumps while one works.
func arrange(w, h int, tall bool, enlarged paneID) layout {
	if w < leastWidth || h < leastHeight {
		return layout{small: true}
	}
	rest := h - 3 // bar, news, keys
	whole := draw.Size{W: w, H: rest}
	if enlarged.paged() {
		return layout{page: whole}
	}
	switch enlarged {
	case theDay:
		return layout{day: whole}
	case theBeam:
		return layout{beam: whole}
	case theMoves:
		return layout{moves: whole}
	}
	beam := beamRows
	if tall {
		beam += (rest - leastHeight + 3) / 2
	}
	left := 53 + (w-leastWidth)*60/100
	return layout{
		beam:    draw.Size{W: w, H: beam},
		day:     draw.Size{W: left, H: rest - beam},
		moves:   draw.Size{W: w - left - 1, H: rest - beam},
		between: 1,
	}
}
