package ui

import (
	"bide/ui/draw"
	"bide/ui/pane"
)

// detail says of the picked job what its row has no room for, in n lines.
func (p *dayPane) detail(d *pane.Shared, n int) []draw.Line { return pane.AboutPicked(d, n, p.W) }
