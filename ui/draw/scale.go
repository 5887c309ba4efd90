package draw

import (
	"bide/plan"
)

// Scale maps places on the beam to columns. A step, the distance between two
// numbers on it, is a whole number of columns.
type Scale struct {
	Origin plan.Length // left edge of column 0
	Step   plan.Length
	Cols   int // a step
	Width  int
}

// Columns from one number to the next: room for the number, and not too few of them.
const fewest, most = 9, 30

// steps are the distances between numbers to choose from, in the unit's size, over
// all powers of ten.
var steps = []plan.Length{1, 2, 5}

// NewScale shows the stretch in width columns, as large as whole columns allow.
func NewScale(view plan.Span, width int, u plan.Unit) Scale {
	unit := plan.Millimetre
	if u == plan.Inches {
		unit = plan.Inch
	}
	long := max(view.Length(), unit/10)
	best := Scale{Origin: view.From, Step: long, Cols: max(width-1, 1), Width: width}
	covered := plan.Length(-1)
	for size := unit / 100; size <= 10*long; size *= 10 {
		for _, s := range steps {
			step := size * s
			cols := plan.Length(width-1) * step / long
			if cols < fewest || cols > most || cols*long/step <= covered {
				continue
			}
			covered = cols * long / step
			best = Scale{Step: step, Cols: int(cols), Width: width}
			best.Origin = best.place(best.Column(view.From))
		}
	}
	return best
}

// Column is where a place comes to; outside 0 to width-1 it isn't on the screen.
func (s Scale) Column(x plan.Length) int {
	return int(Floor((x-s.Origin)*plan.Length(s.Cols), s.Step))
}

// place is the left edge of a column.
func (s Scale) place(column int) plan.Length {
	return s.Origin + plan.Length(column)*s.Step/plan.Length(s.Cols)
}

// visible is the stretch that is on the screen.
func (s Scale) visible() plan.Span { return plan.Span{From: s.place(0), To: s.place(s.Width)} }

// Numbers are the places to be numbered.
func (s Scale) Numbers() (out []plan.Length) {
	view := s.visible()
	for x := Floor(view.From+s.Step-1, s.Step) * s.Step; x < view.To; x += s.Step {
		out = append(out, x)
	}
	return out
}

// Floor is a/b rounded down, for b above 0.
func Floor[N int | plan.Length](a, b N) N {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
