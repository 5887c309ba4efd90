package ui

// tracksPane draws the day as tracks: jobs downward, the beam across.
type tracksPane struct{ size }

func (p *tracksPane) SetSize(s size)              { p.size = s }
func (p *tracksPane) Help() scope                 { return onTracks }
func (p *tracksPane) HandleKey(a action, d *desk) {}

// View draws the pane.
func (p *tracksPane) View(d *desk, focused bool) []line {
	return box(d.look, "4 Tracks", d.line(), nil, p.size, focused)
}
