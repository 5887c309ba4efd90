package sheet

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"bide/plan"
)

// runes is how many columns a text takes.
func runes(text string) int { return utf8.RuneCountInString(text) }

// cut is the text in at most n columns; what is left out shows as two points, as
// far as there is room for them.
func cut(text string, n int) string {
	r := []rune(tidy(text))
	if len(r) <= n {
		return string(r)
	}
	if n < 2 {
		return strings.Repeat(".", max(n, 0))
	}
	return string(r[:n-2]) + ".."
}

// pad is the text in exactly n columns, to the left.
func pad(text string, n int) string {
	text = cut(text, n)
	return text + strings.Repeat(" ", max(n-runes(text), 0))
}

// wrap breaks a text into lines of at most n columns, between words where it can.
func wrap(text string, n int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(tidy(text)) {
		if line != "" && runes(line)+1+runes(word) <= n {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for r := []rune(word); len(r) > n; r = []rune(word) {
			lines = append(lines, string(r[:n]))
			word = string(r[n:])
		}
		line = word
	}
	return append(lines, line)
}

// hang is a text wrapped behind a label, its further lines below its first.
func hang(label, text string) []string {
	lines := wrap(text, width-runes(label))
	for i := range lines {
		if i > 0 {
			label = strings.Repeat(" ", runes(label))
		}
		lines[i] = label + lines[i]
	}
	return lines
}

// labelled is a text behind the name of what it tells.
func labelled(name, text string) []string { return hang(pad(name, 11), text) }

// sideBySide puts cells of equal width into lines, along the lines first, so
// that a page may end after any of them. The head comes once over each cell.
func sideBySide(head string, cells []string) (heads []string, rows [][]string) {
	const gap = "   "
	n := (width + len(gap)) / (len(head) + len(gap))
	for from := 0; from < len(cells); from += n {
		rows = append(rows, []string{strings.Join(cells[from:min(from+n, len(cells))], gap)})
	}
	across := make([]string, min(n, len(cells)))
	for i := range across {
		across[i] = head
	}
	return []string{strings.Join(across, gap)}, rows
}

// ranges names numbers that ascend, runs of them in short: 1-17, 72, 80-84.
func ranges(numbers []int) string {
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

// count is a number with its noun: 1 job, 2 jobs.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// minutes is a span of time in minutes and tenths.
func minutes(d time.Duration) string { return fmt.Sprintf("%.1f", d.Minutes()) }

// hours is a span of time as a column headed h:min shows it.
func hours(d time.Duration) string {
	m := wholeMinutes(d)
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// span is a span of time in words: 10 min, 2 h 05 min.
func span(d time.Duration) string {
	m := wholeMinutes(d)
	if m < 60 {
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}

// wholeMinutes rounds a span of time; what is more than nought is never shown as
// nought.
func wholeMinutes(d time.Duration) int {
	m := int(d.Round(time.Minute) / time.Minute)
	if d > 0 {
		m = max(m, 1)
	}
	return m
}

// clock is a time of day to the minute, with the days since the sheet's own day
// behind it: 00:30+1.
func clock(t, day time.Time) string {
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

// towards names the side that a way leads to, in a word.
func towards(by plan.Length) string {
	switch {
	case by > 0:
		return "drive"
	case by < 0:
		return "oper."
	}
	return ""
}
