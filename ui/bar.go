package ui

import (
	"fmt"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/page/compare"
)

// bar is the first line: whose beam it is, and how the day stands.
func (m *model) bar() draw.Line {
	l := m.Line()
	l.Add(draw.Accent, " bide ")
	l.Add(draw.Strong, " "+m.Shop.Beam.Name)
	if m.Demo {
		l.Add(draw.Late, "  DEMO, an invented day")
	}
	switch {
	case m.Changed():
		l.Add(draw.Late, "  * not saved")
	case m.Files.SavedTo != "":
		l.Add(draw.Late, "  * saved in "+m.Files.SavedTo)
	}
	if c, open := m.Over.(*compare.Page); m.Offer != nil && !(open && c.Offered() != nil) {
		l.Add(draw.Good, "  * an order was found: "+m.KeyFor(keys.CompareOrders))
	}
	r := m.ending()
	beam := fmt.Sprintf("  %s, pitch %s", words.Count(len(m.Shop.Beam.Holders), "holder"), m.Shop.Unit.Show(m.Shop.Beam.Pitch()))
	if l.Width+draw.CellWidth(beam)+r.Width+2 <= m.W {
		l.Add(draw.Faint, beam)
	}
	if l.Width+r.Width+2 <= m.W {
		l.To(m.W - r.Width - 1)
		l.Join(r)
	}
	return l
}

// ending is when the last run ends, against the shift's end.
func (m *model) ending() draw.Line {
	l := m.Line()
	if !m.Forecast.Present.Whole() {
		text := fmt.Sprintf("planning %d of %d", len(m.Forecast.Present.Known), len(m.Jobs()))
		if m.Forecast.Present.Full() {
			text = "planning all jobs together"
		}
		l.Add(draw.Faint, text+" "+m.Pending)
		return l
	}
	n := len(m.Forecast.Present.Known)
	if n == 0 {
		return l
	}
	day, end := m.Shop.Day, m.Forecast.Present.Known[n-1].Clock
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
