package pane

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
)

// BarWidth is how many cells the longest setup of the day takes as a bar.
const BarWidth = 20

// Estimated reports whether what is known of the day is an estimate: its jobs are still to be
// planned together.
func (d *Shared) Estimated() bool { return !d.Present.Final }

// EstimateMark is before a figure that is an estimate.
func (d *Shared) EstimateMark() string {
	if d.Estimated() {
		return "~"
	}
	return ""
}

// BarHead is the head over bars of setups, in w cells.
func BarHead(w int) string { return draw.Fitting(w, "setup against longest", "of longest", "") }

// MovesStyle is the ink of a number of moves.
func MovesStyle(n int) draw.Style {
	if n == 0 {
		return draw.Faint
	}
	return draw.Moved
}

// LateBy is how late a job is, or an estimate of it.
func (d *Shared) LateBy(s *plan.Step) string {
	if text := words.Lateness(s.Late); text != "" && d.Estimated() {
		return "~" + strings.TrimPrefix(text, "!")
	}
	return words.Lateness(s.Late)
}

// NumberWidth is the width of the column of numbers in the sequence.
func (d *Shared) NumberWidth() int { return max(2, len(fmt.Sprint(d.Number(len(d.Jobs()))))) }

// NumberText is a job's number in the sequence; nothing for a job that is refused.
func (d *Shared) NumberText(index int) string {
	if d.Refused(index) {
		return ""
	}
	return fmt.Sprint(d.Number(index))
}

// ClockWidth is the width of a column of times.
func (d *Shared) ClockWidth() int {
	w := 5
	for _, o := range d.Present.Known {
		w = max(w, len(d.Clock(o.Clock.At)))
	}
	for _, j := range d.Jobs() {
		w = max(w, len(d.Clock(j.Due)))
	}
	return w
}

// Travel is the moves' lengths together, in metres or feet.
func (d *Shared) Travel(l plan.Length) string {
	if d.Shop.Unit == plan.Inches {
		return fmt.Sprintf("%.1f ft", float64(l)/float64(12*plan.Inch))
	}
	return fmt.Sprintf("%.1f m", float64(l)/float64(1000*plan.Millimetre))
}

// IDWidth is the width of the column of job ids.
func (d *Shared) IDWidth() int {
	w := 3
	for _, j := range d.Jobs() {
		w = max(w, draw.CellWidth(d.Safe(j.ID)))
	}
	return min(w, 12)
}

// LateWidth is how wide a column of the jobs' lateness is.
func (d *Shared) LateWidth() int {
	wide := len("!0:00")
	for _, s := range d.Present.Steps() {
		wide = max(wide, draw.CellWidth(words.Lateness(s.Late)))
	}
	return wide
}
