package knife

import (
	"testing"

	"bide/plan"
)

// TestBandsAreRound: no more bands than fit a picture, and no rounder width would do.
func TestBandsAreRound(t *testing.T) {
	mm, quarter := plan.Millimetre, plan.Inch/4
	for _, c := range []struct {
		long plan.Length
		unit plan.Unit
		want plan.Length
	}{
		{300 * mm, plan.Millimetres, 5 * mm}, {72 * mm, plan.Millimetres, mm}, {1550 * mm, plan.Millimetres, 25 * mm},
		{1800 * mm, plan.Millimetres, 25 * mm}, {1801 * mm, plan.Millimetres, 50 * mm},
		{60 * plan.Inch, plan.Inches, 5 * quarter}, {30 * plan.Inch, plan.Inches, 2 * quarter},
	} {
		if got := bandOf(c.long, c.unit); got != c.want {
			t.Errorf("%v: bands of %v, want %v", c.long, got, c.want)
		}
	}
}
