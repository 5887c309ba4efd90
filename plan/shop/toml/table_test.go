package toml

import (
	"math"
	"strconv"
	"testing"
)

// Numbers are written as people write them, without an exponent, but for the huge and the
// tiny; each reads back as itself.
func TestNumbersAreWrittenPlainly(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 5000: "5000", 1e12: "1000000000000", 1e-6: "0.000001", -0.25: "-0.25", 1e15: "1e+15", -1e15: "-1e+15", 1e-9: "1e-09"} {
		got := Plainly(x)
		if back, err := strconv.ParseFloat(got, 64); got != want || err != nil || back != x {
			t.Errorf("%g is written %s, want %s", x, got, want)
		}
	}
	if Plainly(math.Inf(1)) != "inf" || Plainly(math.NaN()) != "nan" {
		t.Errorf("%s and %s, want inf and nan", Plainly(math.Inf(1)), Plainly(math.NaN()))
	}
}
