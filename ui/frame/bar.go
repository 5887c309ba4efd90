// Package frame is the lines around what is shown: above it whose beam it is and how the day stands,
// below it what just happened, how far a search is, and the keys.
package frame

import (
	"fmt"

	"bide/plan"
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
	case d.SavedTo != "":
		l.Add(draw.Late, "  * saved in "+d.SavedTo)
	}
	if c, open := d.Over.(interface{ Offered() *planning.Offer }); d.Offer != nil && !(open && c.Offered() != nil) {
		l.Add(draw.Good, "  * an order was found: "+d.KeyFor(keys.CompareOrders))
	}
	at := clock(d)
	if at != "" {
		at = "  " + at
	}
	r := shorten(Endings(d), d.W-l.Width-2-draw.CellWidth(at))
	r.Add(draw.Plain, at)
	if text := words.WithoutBriefly(plan.UncountedIn(&d.Beam.Line, d.Jobs())); text != "" && l.Width+r.Width+draw.CellWidth(text)+4 <= d.W {
		r.Add(draw.Plain, "  "+text)
	}
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

// clock is the time of day, with its date where that isn't the day's own; none in a day that
// no clock counts in.
func clock(d *pane.Shared) string {
	if d.Time.IsZero() {
		return ""
	}
	if at, day := d.Time, d.Shop.Day.Start; at.YearDay() != day.YearDay() || at.Year() != day.Year() {
		return at.Format("Mon 2 Jan 15:04")
	}
	return d.Time.Format("15:04")
}

// shorten is the first of some lines that fits, else the last.
func shorten(lines []draw.Line, width int) draw.Line {
	for _, l := range lines[:len(lines)-1] {
		if l.Width <= width {
			return l
		}
	}
	return lines[len(lines)-1]
}

// Endings are when the last run ends, against the shift's end: in words, and ever more briefly.
func Endings(d *pane.Shared) []draw.Line {
	l := d.Line()
	if !d.Present.Whole() {
		text := fmt.Sprintf("planning %d of %d", len(d.Present.Known), len(d.Jobs()))
		if d.Present.Full() {
			text = "planning all jobs together"
		}
		l.Add(draw.Faint, text+" "+d.Pending)
		return []draw.Line{l}
	}
	n := len(d.Present.Known)
	if n == 0 {
		return []draw.Line{l}
	}
	day, end := d.Shop.Day, d.Present.Known[n-1].Clock.At
	over := end.Sub(day.End)
	ink, forms := draw.Good, []string{", %s before the shift end", ", %s to spare", ""}
	switch {
	case day.End.IsZero():
		forms = forms[2:]
	case over > 0:
		ink, forms = draw.Late, []string{" !%s past the shift end", " !%s past shift", " !%s"}
	}
	var out []draw.Line
	for _, form := range forms {
		l := d.Line()
		l.Add(draw.Faint, "ends ")
		l.Add(draw.Strong, words.Clock(end, day.Start))
		if form != "" {
			l.Add(ink, fmt.Sprintf(form, words.Hours(over.Abs())))
		}
		out = append(out, l)
	}
	return out
}
