package ui

import (
	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"fmt"
	"strings"
)

// barWidth is how many cells the longest setup of the day takes as a bar.
const barWidth = 20

// about reports whether what is known of the day is an estimate: its jobs are still to be
// planned together.
func (d *desk) about() bool { return !d.Forecast.Present.Final }

// aboutMark is before a figure that is an estimate.
func (d *desk) aboutMark() string {
	if d.about() {
		return "~"
	}
	return ""
}

// barHead is the head over bars of setups, in w cells.
func barHead(w int) string { return draw.Fitting(w, "setup against longest", "of longest", "") }

// moved is the ink of a number of moves.
func moved(n int) draw.Style {
	if n == 0 {
		return draw.Faint
	}
	return draw.Moved
}

// lateBy is how late a job is, or an estimate of it.
func (d *desk) lateBy(s *plan.Step) string {
	if text := words.Lateness(s.Late); text != "" && d.about() {
		return "~" + strings.TrimPrefix(text, "!")
	}
	return words.Lateness(s.Late)
}

// turnWidth and clockWidth are the widths of the columns of turns and of times.
func (d *desk) turnWidth() int { return max(2, len(fmt.Sprint(d.Number(len(d.Jobs()))))) }

// turnText is the number of a turn; nothing for a job that is refused.
func (d *desk) turnText(turn int) string {
	if d.Refused(turn) {
		return ""
	}
	return fmt.Sprint(d.Number(turn))
}

func (d *desk) clockWidth() int {
	w := 5
	for _, o := range d.Forecast.Present.Known {
		w = max(w, len(d.Clock(o.Clock)))
	}
	for _, j := range d.Jobs() {
		w = max(w, len(d.Clock(j.Due)))
	}
	return w
}

// travel is the moves' lengths together, in metres or feet.
func (d *desk) travel(l plan.Length) string {
	if d.Shop.Unit == plan.Inches {
		return fmt.Sprintf("%.1f ft", float64(l)/float64(12*plan.Inch))
	}
	return fmt.Sprintf("%.1f m", float64(l)/float64(1000*plan.Millimetre))
}

// idWidth is the width of the column of job ids.
func (d *desk) idWidth() int {
	w := 3
	for _, j := range d.Jobs() {
		w = max(w, draw.CellWidth(d.Safe(j.ID)))
	}
	return min(w, 12)
}

// lateWidth is how wide a column of the jobs' lateness is.
func (d *desk) lateWidth() int {
	wide := len("!0:00")
	for _, s := range d.Forecast.Present.Steps() {
		wide = max(wide, draw.CellWidth(words.Lateness(s.Late)))
	}
	return wide
}
