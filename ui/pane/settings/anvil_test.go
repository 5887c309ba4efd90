package settings

import (
	"slices"
	"testing"

	"bide/material"
	"bide/plan"
	"bide/ui/draw"
)

// Blades and metres are where they belong. By hand, on a scale of 100 mm in ten columns of
// 10 mm: two blades of 20 N are in column 2, one of 10 N in column 7, which is a quarter of
// both. Of bands of 20 mm the second is cut 50 m, the fourth 200 m: each over two columns.
func TestAnvilIsDrawnToScale(t *testing.T) {
	mm := plan.Millimetre
	s := draw.Scale{Step: 10 * mm, Cols: 1, Width: 10}
	b := &material.Bending{Presses: []material.Press{{AtMM: 22, Newtons: 20}, {AtMM: 28, Newtons: 20}, {AtMM: 71, Newtons: 10}}}
	if got, want := loads(s, b), []float64{0, 0, 1, 0, 0, 0, 0, 0.25, 0, 0}; !slices.Equal(got, want) {
		t.Errorf("loads %v, want %v", got, want)
	}
	f := &material.Face{To: int64(100 * mm), Band: int64(20 * mm), Metres: []float64{0, 50, 0, 200, 0}, Worst: 3}
	if got, want := worn(s, f), []float64{0, 0, 0.25, 0.25, 0, 0, 1, 1, 0, 0}; !slices.Equal(got, want) {
		t.Errorf("worn %v, want %v", got, want)
	}
}
