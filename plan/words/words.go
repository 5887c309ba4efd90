// Package words holds the phrases for times, counts, holders, sides and lengths that
// screens and sheets share, so that both say a thing in the same way. It knows nothing
// of widths, colours or pages: it gives text, and the caller puts it somewhere.
package words

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
)

// Minutes is a span of time in minutes and tenths.
func Minutes(d time.Duration) string { return fmt.Sprintf("%.1f", d.Minutes()) }

// Hours is a span of time as a column headed h:min shows it; what is above zero is
// never shown as 0:00.
func Hours(d time.Duration) string {
	m := WholeMinutes(d)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// Lasting is a span of time in words: 10 min, 2 h 05 min.
func Lasting(d time.Duration) string {
	m := WholeMinutes(d)
	if m < 60 {
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}

// WholeMinutes rounds a span of time; what is above zero is never shown as zero.
func WholeMinutes(d time.Duration) int {
	m := int(d.Round(time.Minute) / time.Minute)
	if d > 0 {
		m = max(m, 1)
	}
	return m
}

// Clock is a time of day to the minute, with the days since the plan's own day behind
// it: 00:30+1. No time is no text.
func Clock(t, day time.Time) string {
	if t.IsZero() {
		return ""
	}
	t = t.Round(time.Minute)
	if days := daysBetween(day, t); days != 0 {
		return fmt.Sprintf("%s%+d", t.Format("15:04"), days)
	}
	return t.Format("15:04")
}

func daysBetween(from, to time.Time) int {
	date := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC) }
	return int(date(to).Sub(date(from)).Hours()) / 24
}

// Count is a number with its noun: 1 job, 2 jobs.
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Times is how often something happened.
func Times(n int) string {
	if n == 0 {
		return "never"
	}
	return Count(n, "time")
}

// Ranges names numbers that ascend, runs of them in short: 1-17, 72, 80-84.
func Ranges(numbers []int) string {
	var parts []string
	for i := 0; i < len(numbers); {
		j := i
		for j+1 < len(numbers) && numbers[j+1] == numbers[j]+1 {
			j++
		}
		if i == j {
			parts = append(parts, fmt.Sprint(numbers[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", numbers[i], numbers[j]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

// Holders names holders by their numbers, which ascend.
func Holders(numbers []int) string {
	if len(numbers) == 1 {
		return fmt.Sprintf("holder %d", numbers[0])
	}
	return "holders " + Ranges(numbers)
}

// Join joins those of the texts that say something.
func Join(between string, texts ...string) string {
	said := slices.DeleteFunc(texts, func(text string) bool { return text == "" })
	return strings.Join(said, between)
}

// Towards names the side of the beam that a way leads to; no way is no text.
func Towards(by plan.Length) string {
	switch {
	case by > 0:
		return "drive side"
	case by < 0:
		return "operator side"
	}
	return ""
}

// Side is the same in a narrow column.
func Side(by plan.Length) string {
	switch {
	case by > 0:
		return "drive"
	case by < 0:
		return "oper."
	}
	return ""
}

// Other is the unit that the shop doesn't use.
func Other(u plan.Unit) plan.Unit {
	if u == plan.Inches {
		return plan.Millimetres
	}
	return plan.Inches
}

// Exactly is a length in the shop's unit, in inches as a fraction where it is one.
func Exactly(l plan.Length, u plan.Unit) string {
	if fraction, ok := l.Fraction(); ok && u == plan.Inches {
		return fraction + " in"
	}
	return u.Show(l)
}

// Both is a length in the shop's unit and behind it in the other, where that says
// something: always the millimetres of inches, the inches of millimetres where they
// are a whole number of 64ths.
func Both(l plan.Length, u plan.Unit) string {
	switch fraction, whole := l.Fraction(); {
	case u == plan.Inches:
		return Exactly(l, u) + " (" + plan.Millimetres.Show(l) + ")"
	case whole && l != 0:
		return u.Show(l) + " (" + fraction + " in)"
	}
	return u.Show(l)
}
