package draw

import (
	"math/rand/v2"
	"testing"

	"bide/plan"
)

// The stretch to show is on the screen, most of the screen shows it, a step is a
// whole number of columns, and places keep their order.
func TestScale(t *testing.T) {
	const seed = 3
	r := rand.New(rand.NewPCG(seed, 0))
	for range 5000 {
		width := 20 + r.IntN(230)
		from := plan.Length(r.Int64N(int64(4000*plan.Millimetre))) - 2000*plan.Millimetre
		view := plan.Span{From: from, To: from + 10*plan.Millimetre + plan.Length(r.Int64N(int64(40_000*plan.Millimetre)))}
		u := plan.Unit(r.IntN(2))
		s := NewScale(view, width, u)
		a, b := s.Column(view.From), s.Column(view.To)
		if a < 0 || b >= width || b < width/2 {
			t.Fatalf("seed %d: %v in %d columns runs from column %d to %d", seed, view, width, a, b)
		}
		if s.Cols < fewest || s.Cols > most {
			t.Fatalf("seed %d: %v in %d columns: %d columns from number to number", seed, view, width, s.Cols)
		}
		numbers := s.Numbers()
		for i, x := range numbers {
			if x%s.Step != 0 || i > 0 && s.Column(x)-s.Column(numbers[i-1]) != s.Cols {
				t.Fatalf("seed %d: %v in %d columns: number %v at column %d, the one before at %d", seed, view, width, x, s.Column(x), s.Column(numbers[max(i-1, 0)]))
			}
		}
		x := view.From + plan.Length(r.Int64N(int64(view.Length())))
		if c := s.Column(x); s.place(c) > x || s.place(c+1) < x {
			t.Fatalf("seed %d: %v is in column %d from %v to %v", seed, x, c, s.place(c), s.place(c+1))
		}
	}
}
