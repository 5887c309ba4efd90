package ui

import (
	"fmt"
	"time"

	"bide/plan/words"
	"bide/ui/draw"
)

// more is a number with its sign; nought is the same.
func more(n int) string {
	if n == 0 {
		return "="
	}
	return fmt.Sprintf("%+d", n)
}

// signedMinutes are minutes with their sign.
func signedMinutes(d time.Duration) string { return fmt.Sprintf("%+.1f", d.Minutes()) }

// sameOr is a figure, or that it is the same.
func sameOr(minutes string) string {
	if minutes == "+0.0" || minutes == "-0.0" {
		return "="
	}
	return minutes
}

// lateness is how late something is; nothing where it isn't.
func lateness(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return "!" + words.Hours(d)
}

// fitting is the first of the texts that fits into w cells, else the last.
func fitting(w int, texts ...string) string {
	for _, text := range texts {
		if draw.CellWidth(text) <= w {
			return text
		}
	}
	return texts[len(texts)-1]
}
