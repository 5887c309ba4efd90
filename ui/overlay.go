package ui

import (
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
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

// typist is an overlay or pane that takes keys as text while a field is open.
type typist interface {
	// Type takes a key, or what is pasted, as text; false when it is to be taken as
	// any other key.
	Type(tea.KeyMsg, *desk) bool
}

// typist is what takes text now; nil without any.
func (m *model) typist() typist {
	var at any = m.over
	switch {
	case m.asks || m.help != nil:
		return nil
	case m.prompt != nil:
		return m.prompt
	case !m.covered() && m.layout().small:
		return nil
	case !m.covered():
		at = m.panel(m.focus)
	}
	t, _ := at.(typist)
	return t
}

// covered reports whether an overlay is there and fits.
func (m *model) covered() bool { return m.over != nil && m.over.Fits(m.Size) }

// putAway closes a page, if one is open, as Esc there does: nothing of it is lost.
func (m *model) putAway() {
	for range 3 { // a list within it may close first
		if m.over != nil {
			m.over.HandleKey(keys.Back, m.desk)
		}
	}
}

// frameOf is a frame of one box between the bar and the status line.
func (m *model) frameOf(name string, title draw.Line, body []draw.Line, in keys.Scope) []draw.Line {
	out := []draw.Line{m.bar().Fit(m.W)}
	out = append(out, draw.Box(m.Theme, name, title, body, m.pageSize(), true)...)
	return m.foot(out, in)
}

// pageSize is the size of the box of a page, its rule included.
func (d *desk) pageSize() draw.Size { return draw.Size{W: d.W, H: max(d.H-3, 0)} }
