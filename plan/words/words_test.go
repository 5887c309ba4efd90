package words

import (
	"testing"
	"time"

	"bide/plan"
)

func TestRanges(t *testing.T) {
	for _, c := range []struct {
		numbers []int
		want    string
	}{
		{nil, ""}, {[]int{4}, "4"}, {[]int{1, 2}, "1-2"}, {[]int{1, 3, 4, 5, 9}, "1, 3-5, 9"},
	} {
		if got := Ranges(c.numbers); got != c.want {
			t.Errorf("ranges(%v) = %q, want %q", c.numbers, got, c.want)
		}
	}
}

func TestClock(t *testing.T) {
	day := time.Date(2026, 11, 25, 22, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		at   time.Time
		want string
	}{
		{time.Time{}, ""},
		{day, "22:00"},
		{day.Add(29 * time.Second), "22:00"},
		{day.Add(31 * time.Second), "22:01"},
		{day.Add(2*time.Hour - 29*time.Second), "00:00+1"}, // rounded, it is tomorrow
		{day.Add(150 * time.Minute), "00:30+1"},
		{day.AddDate(0, 0, -1), "22:00-1"},
		{day.AddDate(0, 0, 9), "22:00+9"},
		{day.AddDate(0, 0, 10), "22:00+10"},
	} {
		if got := Clock(c.at, day); got != c.want {
			t.Errorf("clock(%v) = %q, want %q", c.at, got, c.want)
		}
	}
}

func TestHours(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0:00", time.Second: "0:01", 89 * time.Second: "0:01", 91 * time.Second: "0:02", 125 * time.Minute: "2:05", 100 * time.Hour: "100:00",
	} {
		if got := Hours(d); got != want {
			t.Errorf("hours(%v) = %q, want %q", d, got, want)
		}
	}
}

func TestLasting(t *testing.T) {
	for d, want := range map[time.Duration]string{
		0: "0 min", time.Second: "1 min", 10 * time.Minute: "10 min", 3599 * time.Second: "1 h 00 min", 125 * time.Minute: "2 h 05 min",
	} {
		if got := Lasting(d); got != want {
			t.Errorf("span(%v) = %q, want %q", d, got, want)
		}
	}
}

// Lengths of a column have their points in a line.
func TestRuler(t *testing.T) {
	mm := plan.Millimetre
	r := NewRuler(plan.Millimetres, "to", -12*mm, 1500*mm+500_000, 0)
	for l, want := range map[plan.Length]string{-12 * mm: " -12.0", 1500*mm + 500_000: "1500.5", 0: "   0.0"} {
		if got := r.Place(l); got != want {
			t.Errorf("place(%d) = %q, want %q", l, got, want)
		}
	}
	for l, want := range map[plan.Length]string{-12 * mm: "  -12.0", 12 * mm: "  +12.0", 0: "    0.0", 1: "   +0.0", -1: "   -0.0"} {
		if got := r.Way(l); got != want {
			t.Errorf("way(%d) = %q, want %q", l, got, want)
		}
	}
}

// The other unit stands beside a length where it says something.
func TestBoth(t *testing.T) {
	for _, c := range []struct {
		l    plan.Length
		u    plan.Unit
		want string
	}{
		{plan.Inch * 3 / 2, plan.Inches, "1-1/2 in (38.1 mm)"},
		{plan.Inch * 3 / 2, plan.Millimetres, "38.1 mm (1-1/2 in)"},
		{50 * plan.Millimetre, plan.Millimetres, "50 mm"},
		{50 * plan.Millimetre, plan.Inches, "1.9685 in (50 mm)"}, // 50/25.4 = 1.968503...
		{0, plan.Millimetres, "0 mm"},
	} {
		if got := Both(c.l, c.u); got != c.want {
			t.Errorf("both(%d, %v) = %q, want %q", c.l, c.u, got, c.want)
		}
	}
}
