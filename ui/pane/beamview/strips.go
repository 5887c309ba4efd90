package beamview

import (
	"fmt"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// numbered names the picked holder at its position now, those that aren't good, and
// every tenth.
func numbered(d *pane.Shared, s draw.Scale) draw.Line {
	return pane.HolderNumbers(d, s, d.Before(d.JobAt), d.AimedHolder())
}

// strips names the slits below the web, equal ones side by side together.
func strips(d *pane.Shared, s draw.Scale, lay *plan.Layout) draw.Line {
	l := pane.NewLabels(s.Width)
	at := lay.Web.From + lay.Trim[0]
	for i := 0; i < len(lay.Slits); {
		n, from := i, at
		for ; n < len(lay.Slits) && lay.Slits[n] == lay.Slits[i]; n++ {
			at += lay.Slits[n]
		}
		text := fmt.Sprintf("%d x %s", n-i, words.Exactly(lay.Slits[i], d.Shop.Unit))
		a, b := max(s.Column(from), 0), min(s.Column(at), s.Width)
		if b-a >= draw.CellWidth(text) {
			l.Put((a+b-draw.CellWidth(text))/2, draw.Accent, text)
		}
		i = n
	}
	return draw.FromCells(d.Theme, l)
}
