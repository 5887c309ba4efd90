package material

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// spun is a nonwoven that 200 N/m narrow by 3 * 200/1000 / 0.25 / 10 = 0.24 of its relaxed
// width: 1000 mm are 760 under tension, and 240 are lost.
func spun(t *testing.T, newtonsPerMetre float64) Material {
	t.Helper()
	m := of(t, "light nonwoven", 0.25, NoAdhesive)
	m.ModulusMPa, m.Poisson, m.TensionNM = 10, 3, newtonsPerMetre
	return m
}

// The percentage shown is that of the two widths beside it: 760 of 1000 mm are 24 % less.
// Of the trade column's second example (TestNeckIn) 10 in are 9.7, 3 % less.
func TestPercentageIsOfTheTwoWidths(t *testing.T) {
	for _, c := range []struct{ narrowing, relaxed, tight float64 }{{0.24, 1000, 760}, {0.03, 10, 9.7}} {
		n := NeckIn{Narrowing: c.narrowing}
		near(t, "width at the knife", n.Tight(c.relaxed), c.tight, 1e-7)
		near(t, "percentage", n.NarrowerPct(), 100*(c.relaxed-c.tight)/c.relaxed, 2e-6)
	}
	s, err := SettingsFor(spun(t, 200), shop, Run{Speed: 40, WebMM: 1000})
	if err != nil {
		t.Fatal(err)
	}
	l := s.Line(IDNeckIn)
	if !strings.Contains(l.Value, "is 760 mm (29.921 in) wide at the knife, 24 % narrower than relaxed") {
		t.Errorf("%+v", l)
	}
}

// More than 5 % is no more than a guess of an elastic formula, and said to be: 25 N/m make
// 3 %, 200 N/m 24 %.
func TestMuchNeckInIsToBeMeasured(t *testing.T) {
	for tension, guess := range map[float64]bool{25: false, 200: true} {
		s, err := SettingsFor(spun(t, tension), shop, Run{Speed: 40, WebMM: 1000})
		if err != nil {
			t.Fatal(err)
		}
		l := s.Line(IDNeckIn)
		if strings.Contains(l.Value, "only a guess at this size: measure it") != guess || strings.Contains(l.Why, "only a guess beyond") != guess {
			t.Errorf("%v N/m: %+v", tension, l)
		}
	}
}

// By hand: 1000 mm with 6 mm of trim left and right lose 240 at the knife. Guided at
// its centre it loses 120 on either side, at an edge all of it on the other one. With
// 25 N/m it narrows by 0.03, to 970, and loses 15 on either side.
func TestEdgesAtTheKnife(t *testing.T) {
	for _, c := range []struct {
		tension, share, operator, drive float64
		left                            [2]float64
	}{
		{200, 0.5, 6, 6, [2]float64{-114, -114}}, {200, 0, 6, 6, [2]float64{6, -234}}, {200, 1, 6, 6, [2]float64{-234, 6}},
		{25, 0.5, 6, 34.78, [2]float64{-9, 19.78}}, {25, 0.5, 20.39, 20.39, [2]float64{5.39, 5.39}},
		{25, 0.5, 6, 60, [2]float64{-9, 45}},
	} {
		s, err := SettingsFor(spun(t, c.tension), shop, Run{Speed: 40, WebMM: 1000, Laid: &Laid{c.operator, c.drive, 6, c.share}})
		if err != nil {
			t.Fatal(err)
		}
		if got := [2]float64{s.Edges.OperatorMM, s.Edges.DriveMM}; math.Abs(got[0]-c.left[0]) > 1e-3 || math.Abs(got[1]-c.left[1]) > 1e-3 {
			t.Errorf("%+v: %v", c, got)
		}
		all := strings.Join(s.Warnings, " ")
		off := min(c.left[0], c.left[1]) < 0
		if strings.Contains(all, "an outer cut is off the web") != off || strings.Contains(all, "Use a wider web or less tension") != off {
			t.Errorf("%+v: %q", c, all)
		}
		if left := fmt.Sprintf("trim left there: %g mm", c.left[0]); c.left[0] != 6 && !strings.Contains(s.Line(IDNeckIn).Value, left) {
			t.Errorf("no %q in %q", left, s.Line(IDNeckIn).Value)
		}
		if strings.Contains(all, "ask for a trim of 21 mm") != (c.drive == 60) { // 6 + 15; twice that are more than 40.78, less than 66
			t.Errorf("%+v: %q", c, all)
		}
	}
}

// What a web wanders is no neck-in: a film that loses a third of a millimetre of 6 mm of
// trim isn't warned of, one that loses half of it is. Without trim the outer strips are.
func TestLittleLostIsNotWarnedOf(t *testing.T) {
	for _, c := range []struct {
		narrowing float64
		l         Laid
		want      string
	}{
		{0.00046, Laid{6, 6, 6, 0.5}, ""},
		{0.006, Laid{6, 6, 6, 0.5}, "the trim left there is 3 mm"}, // 1000 * 0.006 = 6, half of it on a side
		{0.006, Laid{60, 60, 6, 0.5}, ""},
		{0.0001, Laid{0, 0, 0, 0.5}, ""},
		{0.006, Laid{0, 0, 0, 0.5}, "the outer strips are cut narrower than planned by 3 mm (0.118 in) on the operator side, 3 mm (0.118 in) on the drive side"},
	} {
		n := NeckIn{Narrowing: c.narrowing}
		got := n.Edges(1000, c.l).warn(1000, c.l, Limits{})
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%v: %q, want %q", c, got, c.want)
		}
	}
}

// TestTrimLeftIsShown: by the 15 mm above, 15.44 mm of trim leave 0.44 on either side, which is
// shown where the job asks for any trim, and not where its slits fill the web.
func TestTrimLeftIsShown(t *testing.T) {
	for least, shown := range map[float64]bool{0.5: true, 0: false} {
		s := ran(t, spun(t, 25), shop, Run{Speed: 40, WebMM: 1000, Laid: &Laid{15.44, 15.44, least, 0.5}})
		if got := s.Line(IDNeckIn).Value; strings.Contains(got, "; trim left there: 0.44 mm") != shown {
			t.Errorf("asked for %v mm: %q", least, got)
		}
	}
}

// TestShortAtItsEdge: of 6 mm asked for 4.5 may be left, three quarters; where the slits fill
// the web the outer ones may lose a tenth of a millimetre. A cut on the web's edge is off it.
func TestShortAtItsEdge(t *testing.T) {
	for _, c := range []struct {
		left, least float64
		short, off  bool
	}{
		{4.5, 6, false, false}, {math.Nextafter(4.5, 0), 6, true, false}, {0, 6, true, true}, {math.SmallestNonzeroFloat64, 6, true, false},
		{-0.1, 0, false, true}, {math.Nextafter(-0.1, -1), 0, true, true},
	} {
		for _, e := range []Edges{{1000, c.left, 99}, {1000, 99, c.left}} {
			if e.Short(c.least, Limits{}) != c.short || e.Off() != c.off {
				t.Errorf("%v: short %v, off %v", c, e.Short(c.least, Limits{}), e.Off())
			}
		}
	}
}

// A web that narrows by less than a thousandth of a percent (0.001 N/m: 0.00012 %) asks for no
// allowance, and that is said.
func TestNextToNoNeckInAsksForNothing(t *testing.T) {
	for tension, want := range map[float64]string{0.001: "for neck-in alone: none", 25: "for neck-in alone: cut 3 % narrower"} {
		s, err := SettingsFor(spun(t, tension), shop, Run{Speed: 40, WebMM: 1000})
		if err != nil {
			t.Fatal(err)
		}
		if l := s.Line(IDAllowance); !strings.Contains(l.Why, want) {
			t.Errorf("%v N/m: %+v, want %q", tension, l, want)
		}
	}
}
