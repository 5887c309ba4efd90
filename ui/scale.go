package ui

import (
	"bide/plan"
)

// scale maps places on the beam to columns. A step, the distance between two
// numbers on it, is a whole number of columns.
type scale struct {
	origin plan.Length // left edge of column 0
	step   plan.Length
	cols   int // a step
	width  int
}

// Columns from one number to the next: room for the number, and not too few of them.
const fewest, most = 9, 30

// steps are the distances between numbers to choose from, in the unit's size, over
// all powers of ten.
var steps = []plan.Length{1, 2, 5}

// newScale shows the stretch in width columns, as large as whole columns allow.
func newScale(view plan.Span, width int, u plan.Unit) scale {
	unit := plan.Millimetre
	if u == plan.Inches {
		unit = plan.Inch
	}
	long := max(view.Length(), unit/10)
	best := scale{origin: view.From, step: long, cols: max(width-1, 1), width: width}
	covered := plan.Length(-1)
	for size := unit / 100; size <= 10*long; size *= 10 {
		for _, s := range steps {
			step := size * s
			cols := plan.Length(width-1) * step / long
			if cols < fewest || cols > most || cols*long/step <= covered {
				continue
			}
			covered = cols * long / step
			best = scale{step: step, cols: int(cols), width: width}
			best.origin = best.place(best.column(view.From))
		}
	}
	return best
}

// column is where a place comes to; outside 0 to width-1 it isn't on the screen.
func (s scale) column(x plan.Length) int {
	return int(floor((x-s.origin)*plan.Length(s.cols), s.step))
}

// place is the left edge of a column.
func (s scale) place(column int) plan.Length {
	return s.origin + plan.Length(column)*s.step/plan.Length(s.cols)
}

// visible is the stretch that is on the screen.
func (s scale) visible() plan.Span { return plan.Span{From: s.place(0), To: s.place(s.width)} }

// numbers are the places to be numbered.
func (s scale) numbers() (out []plan.Length) {
	view := s.visible()
	for x := floor(view.From+s.step-1, s.step) * s.step; x < view.To; x += s.step {
		out = append(out, x)
	}
	return out
}

// floor is a/b rounded down, for b above 0.
func floor[N int | plan.Length](a, b N) N {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
