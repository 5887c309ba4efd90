// Package frame is the lines around what is shown: above it whose beam it is and how the day stands,
// below it what just happened, how far a search is, and the keys.
package frame

import (
	"fmt"

	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Bar is the first line: whose beam it is, and how the day stands.
func Bar(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Accent, " bide ")
	l.Add(draw.Strong, " "+d.Shop.Beam.Name)
	if d.Demo {
		l.Add(draw.Late, "  DEMO, an invented day")
	}
	switch {
	case d.Changed():
		l.Add(draw.Late, "  * not saved")
	case d.Files.SavedTo != "":
		l.Add(draw.Late, "  * saved in "+d.Files.SavedTo)
	}
	if c, open := d.Over.(interface{ Offered() *planning.Offer }); d.Offer != nil && !(open && c.Offered() != nil) {
		l.Add(draw.Good, "  * an order was found: "+d.KeyFor(keys.CompareOrders))
	}
	r := Ending(d)
	beam := fmt.Sprintf("  %s, pitch %s", words.Count(len(d.Shop.Beam.Holders), "holder"), d.Shop.Unit.Show(d.Shop.Beam.Pitch()))
	if l.Width+draw.CellWidth(beam)+r.Width+2 <= d.W {
		l.Add(draw.Faint, beam)
	}
	if l.Width+r.Width+2 <= d.W {
		l.To(d.W - r.Width - 1)
		l.Join(r)
	}
	return l
}

// Ending is when the last run ends, against the shift's end.
func Ending(d *pane.Shared) draw.Line {
	l := d.Line()
	if !d.Forecast.Present.Whole() {
		text := fmt.Sprintf("planning %d of %d", len(d.Forecast.Present.Known), len(d.Jobs()))
		if d.Forecast.Present.Full() {
			text = "planning all jobs together"
		}
		l.Add(draw.Faint, text+" "+d.Pending)
		return l
	}
	n := len(d.Forecast.Present.Known)
	if n == 0 {
		return l
	}
	day, end := d.Shop.Day, d.Forecast.Present.Known[n-1].Clock
	l.Add(draw.Faint, "ends ")
	l.Add(draw.Strong, words.Clock(end, day.Start))
	switch over := end.Sub(day.End); {
	case day.End.IsZero():
	case over > 0:
		l.Add(draw.Late, fmt.Sprintf(" !%s past the shift end", words.Hours(over)))
	default:
		l.Add(draw.Good, fmt.Sprintf(", %s before the shift end", words.Hours(-over)))
	}
	return l
}
