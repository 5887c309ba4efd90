package ui

import (
	"bide/ui/draw"
)

// detail says of the picked job what its row has no room for, in n lines.
func (p *dayPane) detail(d *desk, n int) []draw.Line { return tellAbout(d, n, p.W) }
