package sheet

import (
	"strings"
	"unicode/utf8"

	"bide/plan/words"
)

// runes is how many columns a text takes.
func runes(text string) int { return utf8.RuneCountInString(text) }

// cut is the text in at most n columns; what is left out shows as two points, as
// far as there is room for them.
func cut(text string, n int) string {
	r := []rune(words.Clean(text))
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
	for _, word := range strings.Fields(words.Clean(text)) {
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

// labelled is a text behind the name of what it says.
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
