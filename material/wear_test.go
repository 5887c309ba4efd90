package material

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestWearByHand: a face of 100 mm in bands of 30: [0,30) [30,60) [60,90) [90,100].
func TestWearByHand(t *testing.T) {
	const mm = 1_000_000
	f, err := Wear(0, 100*mm, 30*mm, []Cut{
		{0, 10}, {29_999_999, 1}, {30 * mm, 100}, {59 * mm, 200}, {100 * mm, 5}, {-1, 7}, {100*mm + 1, 8},
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []float64{11, 300, 0, 5}
	for i := range want {
		if f.Metres[i] != want[i] {
			t.Errorf("band %d: %v, want %v", i, f.Metres[i], want[i])
		}
	}
	if f.Worst != 1 || f.Total() != 316 || len(f.Metres) != 4 {
		t.Errorf("%+v", f)
	}
	near(t, "evenness", f.Evenness(), (11+300+5)/3.0/300, 1e-15)
	if from, to := f.Span(3); from != 90*mm || to != 100*mm {
		t.Errorf("the last band is %d to %d", from, to)
	}
}

// TestWearAddsUp, drawn: every metre is in one band, the band's span holds its cuts,
// and the order of the cuts doesn't matter.
func TestWearAddsUp(t *testing.T) {
	const seed = 9
	r := rand.New(rand.NewPCG(seed, 0))
	for range 200 {
		from := r.Int64N(2000) - 1000
		to := from + 1 + r.Int64N(5000)
		band := 1 + r.Int64N(700)
		cuts := make([]Cut, r.IntN(50))
		want := map[int64]float64{}
		total := 0.0
		for i := range cuts {
			cuts[i] = Cut{from + r.Int64N(to-from), float64(r.IntN(1000))}
			want[(cuts[i].At-from)/band] += cuts[i].Metres
			total += cuts[i].Metres
		}
		f, err := Wear(from, to, band, cuts)
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range f.Metres {
			if lo, hi := f.Span(i); m != want[int64(i)] || hi <= lo || hi > to || m > 0 && m > f.Metres[f.Worst] {
				t.Fatalf("seed %d: band %d from %d to %d has %v, want %v", seed, i, lo, hi, m, want[int64(i)])
			}
		}
		if f.Total() != total || f.Evenness() > 1 {
			t.Fatalf("seed %d: %v of %v", seed, f.Total(), total)
		}
	}
}

// TestPlacesInNanometres: a place of 412.5 mm is 412 500 000 nm, for presses in mm and
// cuts in nm.
func TestPlacesInNanometres(t *testing.T) {
	type length int64
	places := []length{412_500_000, -1}
	presses, cuts := Presses(200, places), Cuts(3200, places)
	if len(presses) != 2 || presses[0] != (Press{412.5, 200}) || presses[1] != (Press{-1e-6, 200}) {
		t.Errorf("%v", presses)
	}
	if len(cuts) != 2 || cuts[0] != (Cut{412_500_000, 3200}) || cuts[1] != (Cut{-1, 3200}) {
		t.Errorf("%v", cuts)
	}
}

func TestWearRefuses(t *testing.T) {
	for _, c := range [][3]int64{{0, 0, 1}, {5, 1, 1}, {0, 10, 0}, {0, 10, -1}, {math.MinInt64, math.MaxInt64, 1}, {0, math.MaxInt64, 1}, {0, 1e9, 1}} {
		_, err := Wear(c[0], c[1], c[2], nil)
		refused(t, err, "bands")
	}
	if f, err := Wear(0, 10, math.MaxInt64, []Cut{{3, 1}}); err != nil || len(f.Metres) != 1 || f.Worst != 0 {
		t.Errorf("one wide band: %+v, %v", f, err)
	}
	_, err := Wear(0, 10, 1, []Cut{{1, 1}, {2, -1}, {3, nan}})
	refused(t, err, "cut 2 of -1 m", "cut 3 of NaN m")
	if f, err := Wear(0, 10, 1, nil); err != nil || f.Worst != -1 || f.Evenness() != 0 {
		t.Errorf("no cuts: %+v, %v", f, err)
	}
}

// TestEvennessFromTheFirstBand: most is cut in the first of three bands, 10 m, none in the
// second, 5 m in the third: 7.5 on average in those cut in, over 10.
func TestEvennessFromTheFirstBand(t *testing.T) {
	f, err := Wear(0, 30, 10, []Cut{{0, 10}, {20, 5}})
	if err != nil || f.Worst != 0 || f.Evenness() != 0.75 {
		t.Errorf("%+v, %v, %v", f, f.Evenness(), err)
	}
}
