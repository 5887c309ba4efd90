package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
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

// against tells how the day's costs differ from those it had, what matters most first.
func against(now, was plan.Totals) string {
	var parts []string
	part := func(d time.Duration, text, less, more string) {
		switch {
		case d < 0 && text != "":
			parts = append(parts, text+" "+less)
		case d > 0 && text != "":
			parts = append(parts, text+" "+more)
		}
	}
	setup, behind := now.Setup-was.Setup, now.Late-was.Late
	part(behind, words.Hours(behind.Abs()), "less late", "more late")
	if text := words.Minutes(setup.Abs()); text != "0.0" {
		part(setup, text+" min", "less setup", "more setup")
	}
	switch n := now.Repositions - was.Repositions; {
	case n < 0:
		parts = append(parts, fmt.Sprintf("%s fewer", words.Count(-n, "move")))
	case n > 0:
		parts = append(parts, fmt.Sprintf("%s more", words.Count(n, "move")))
	}
	if len(parts) == 0 {
		return "it costs the same"
	}
	return strings.Join(parts, ", ")
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
