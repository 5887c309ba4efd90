package ui

// holdersPane lists the holders and what each does in the day.
type holdersPane struct{ size }

func (p *holdersPane) SetSize(s size)              { p.size = s }
func (p *holdersPane) Help() scope                 { return onHolders }
func (p *holdersPane) HandleKey(a action, d *desk) {}

// View draws the pane.
func (p *holdersPane) View(d *desk, focused bool) []line {
	return box(d.look, "5 Holders", d.line(), nil, p.size, focused)
}
