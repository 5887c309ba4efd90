package material

import (
	"strings"
	"testing"
)

// TestFigures: zeros behind the point go, those of the whole number stay; a range of one
// number is that number.
func TestFigures(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{{3909.83, 0, "3910"}, {100, 0, "100"}, {100, 1, "100"}, {2.5, 2, "2.5"}, {0.996, 2, "1"}, {0, 3, "0"}} {
		if got := trimmed(c.v, c.decimals); got != c.want {
			t.Errorf("%v to %d decimals is %s, want %s", c.v, c.decimals, got, c.want)
		}
	}
	for r, want := range map[Range]string{{30, 60}: "30 to 60 degrees", {45, 45}: "45 degrees"} {
		if got := r.text("degrees"); got != want {
			t.Errorf("%v is %q, want %q", r, got, want)
		}
	}
	// 2000 m of 6 mm on a core of 89 mm: sqrt(89^2 + 4 * 6 * 2e6 / pi) = 3909.83 mm.
	s := ran(t, of(t, "foam tape", 6, NoAdhesive), shop, Run{Speed: 40, Metres: 2000, Roll: Roll{Metres: 2000}})
	if got := strings.Join(s.Warnings, " "); !strings.Contains(got, "A finished roll of 3910 mm (153.9 in)") {
		t.Errorf("warned: %s", got)
	}
}
