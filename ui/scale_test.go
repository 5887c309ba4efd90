package ui

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
		s := newScale(view, width, u)
		a, b := s.column(view.From), s.column(view.To)
		if a < 0 || b >= width || b < width/2 {
			t.Fatalf("seed %d: %v in %d columns runs from column %d to %d", seed, view, width, a, b)
		}
		if s.cols < fewest || s.cols > most {
			t.Fatalf("seed %d: %v in %d columns: %d columns from number to number", seed, view, width, s.cols)
		}
		numbers := s.numbers()
		for i, x := range numbers {
			if x%s.step != 0 || i > 0 && s.column(x)-s.column(numbers[i-1]) != s.cols {
				t.Fatalf("seed %d: %v in %d columns: number %v at column %d, the one before at %d", seed, view, width, x, s.column(x), s.column(numbers[max(i-1, 0)]))
			}
		}
		x := view.From + plan.Length(r.Int64N(int64(view.Length())))
		if c := s.column(x); s.place(c) > x || s.place(c+1) < x {
			t.Fatalf("seed %d: %v is in column %d from %v to %v", seed, x, c, s.place(c), s.place(c+1))
		}
	}
}
