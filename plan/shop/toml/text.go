package toml

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
)

// String is a text as a TOML string on one line.
func String(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range words.Clean(text) { // nothing that would need another escape is left
		if r == '"' || r == '\\' {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	b.WriteByte('"')
	return b.String()
}

// Number is a number in full.
func Number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Time is a date and time of day by the clock on the wall, without a zone.
func Time(t time.Time) string { return t.Format("2006-01-02T15:04:05.999999999") }

// Length is a length that reads back exactly in a file of unit u: a number
// where that is short, else text with its own unit.
func Length(l plan.Length, u plan.Unit) string {
	text, plainNumber := LengthText(l, u)
	if plainNumber {
		return text
	}
	return String(text)
}

// Entry is a run of equal slits as an item of a list of slits.
func Entry(e plan.Entry, u plan.Unit) string {
	if e.Count == 1 {
		return Length(e.Finished, u)
	}
	return String(EntryText(e, u))
}

// EntryText is a run of equal slits as people write it.
func EntryText(e plan.Entry, u plan.Unit) string {
	text, _ := LengthText(e.Finished, u)
	if e.Count == 1 {
		return text
	}
	return fmt.Sprintf("%d x %s", e.Count, text)
}

// LengthText is a length, exactly, the way that is shortest to read: a decimal of
// the unit with up to 3 decimals of a millimetre or 4 of an inch, then a fraction
// of an inch, then millimetres in full. plainNumber is false where the text needs
// its own mark to be read as the same length.
func LengthText(l plan.Length, u plan.Unit) (text string, plainNumber bool) {
	text = u.Number(l)
	if back, err := plan.ParseLength(text, u); err == nil && back == l {
		return text, true
	}
	if fraction, ok := l.Fraction(); ok {
		return fraction + " in", false
	}
	return l.MM() + " mm", false
}

// List is a list on one line.
func List(items []string) string { return "[" + strings.Join(items, ", ") + "]" }

// Local is the local time of day that a moment shows, kept as files keep it.
func Local(t time.Time) time.Time {
	if t.IsZero() {
		return time.Time{}
	}
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), time.UTC)
}
