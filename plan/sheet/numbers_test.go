package sheet

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"bide/plan"
)

func TestSecondsAreWrittenToTheMillisecond(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0:                                   "0",
		time.Millisecond:                    "0.001",
		71_200 * time.Millisecond:           "71.2",
		440 * time.Second:                   "440",
		1500 * time.Microsecond:             "0.002",
		100*time.Hour + 10*time.Millisecond: "360000.01",
		-1250 * time.Millisecond:            "-1.25",
		999*time.Millisecond + 499*time.Microsecond: "0.999",
	} {
		if got, _ := inSeconds(d).MarshalJSON(); string(got) != want {
			t.Errorf("%v is written %s, want %s", d, got, want)
		}
	}
}

func TestLengthsAreWrittenExactly(t *testing.T) {
	for l, want := range map[plan.Length]string{
		0: "0", 1: "0.000001", -420 * plan.Millimetre: "-420", plan.Inch / 64: "0.396875", 412_500_000: "412.5",
	} {
		if got, _ := millimetres(l).MarshalJSON(); string(got) != want {
			t.Errorf("%d nm is written %s, want %s", l, got, want)
		}
	}
}

func TestMomentsAreLocalDateAndTime(t *testing.T) {
	six := time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)
	for at, want := range map[time.Time]string{
		six:                                 `"2026-11-25T06:00:00"`,
		six.Add(10_500 * time.Millisecond):  `"2026-11-25T06:00:10.5"`,
		six.Add(999_999 * time.Microsecond): `"2026-11-25T06:00:01"`,
	} {
		if got, _ := moment(at).MarshalJSON(); string(got) != want {
			t.Errorf("%v is written %s, want %s", at, got, want)
		}
	}
}

// Folding changes nothing but the blanks, and keeps what holds no list or object
// on one line.
func TestFold(t *testing.T) {
	want := "{\n  \"a\": [1, 2],\n  \"b\": {\"c\": \"x,{[:\\\"\"},\n  \"d\": [\n    [],\n    {}\n  ]\n}\n"
	if got := string(fold([]byte(`{"a":[1,2],"b":{"c":"x,{[:\""},"d":[[],{}]}`))); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 0))
		in, err := json.Marshal(drawn(r, 4))
		if err != nil {
			t.Fatal(err)
		}
		var back bytes.Buffer
		if err := json.Compact(&back, fold(in)); err != nil || back.String() != string(in) {
			t.Fatalf("seed %d: %s came back as %s (%v)", seed, in, back.String(), err)
		}
	}
}

// drawn draws a value of JSON.
func drawn(r *rand.Rand, depth int) any {
	switch kind := r.IntN(5); {
	case kind == 0 && depth > 0:
		list := []any{}
		for range r.IntN(4) {
			list = append(list, drawn(r, depth-1))
		}
		return list
	case kind <= 2 && depth > 0:
		object := map[string]any{}
		for range r.IntN(4) {
			object[strings.Repeat(`"\{`, r.IntN(3))+string(rune('a'+r.IntN(26)))] = drawn(r, depth-1)
		}
		return object
	case kind == 3:
		return r.IntN(1000) - 500
	}
	return [...]any{nil, true, `a"b\`, "]}{[,:", "\u2028ü"}[r.IntN(5)]
}
