package ui

import (
	"bide/ui/draw"
	"bide/ui/frame"
	"bide/ui/keys"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// typist is an overlay or pane that takes keys as text while a field is open.
type typist interface {
	// Type takes a key, or what is pasted, as text; false when it is to be taken as
	// any other key.
	Type(tea.KeyMsg, *pane.Shared) (taken bool, want pane.Want)
}

// typist is what takes text now; nil without any.
func (m *model) typist() typist {
	var at any = m.Over
	switch {
	case m.AsksToQuit || m.help != nil:
		return nil
	case m.Prompt != nil:
		return m.Prompt
	case !m.covered() && m.layout().small:
		return nil
	case !m.covered():
		at = m.panel(m.focus)
	}
	t, _ := at.(typist)
	return t
}

// covered reports whether an overlay is there and fits.
func (m *model) covered() bool { return m.Over != nil && m.Over.Fits(m.Size) }

// putAway closes a page, if one is open, as Esc there does: nothing of it is lost.
func (m *model) putAway() {
	for range 3 { // a list within it may close first
		if m.Over != nil {
			m.grant(m.Over.HandleKey(keys.Back, m.Shared))
		}
	}
}

// frameOf is a frame of one box between the bar and the status line.
func (m *model) frameOf(name string, title draw.Line, body []draw.Line, in keys.Scope) []draw.Line {
	out, beside := []draw.Line{frame.Bar(m.Shared).Fit(m.W)}, m.Line()
	if title.Width > 0 {
		beside.Add(draw.Faint, m.Rule+" ")
		beside.Join(title)
	}
	out = append(out, draw.Box(m.Theme, name, beside, body, m.PageSize(), true)...)
	return frame.Foot(m.Shared, out, in, shortNotes(m))
}
