package ui

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"bide/plan/shop"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// line is one line of the screen, built from left to right.
type line struct {
	look  *look
	spans []span
	width int // in cells
}

type span struct {
	ink  ink
	text string
}

func (k *look) line() line { return line{look: k} }

// add appends text, safe for the screen whatever it is.
func (l *line) add(i ink, text string) {
	if text = l.look.safe(text); text == "" {
		return
	}
	l.width += cells(text)
	if n := len(l.spans); n > 0 && l.spans[n-1].ink == i {
		l.spans[n-1].text += text
		return
	}
	l.spans = append(l.spans, span{i, text})
}

// right appends a number in w cells, to the right. Part of a number would be read as
// another one: where it is too long, there is a sign in its place.
func (l *line) right(i ink, text string, w int) {
	if text = l.look.safe(text); cells(text) > w {
		text = clip(l.look.more, w)
	}
	l.add(plain, blanks(w-cells(text)))
	l.add(i, text)
}

// left appends text in w cells, to the left; too long a text is cut.
func (l *line) left(i ink, text string, w int) {
	text = l.look.short(text, w)
	l.add(i, text)
	l.add(plain, blanks(w-cells(text)))
}

// to appends blanks up to column w.
func (l *line) to(w int) { l.add(plain, blanks(w-l.width)) }

// join appends another line.
func (l *line) join(m line) {
	l.spans = append(l.spans, m.spans...)
	l.width += m.width
}

// fit is the line in exactly w cells: clipped, or filled up with blanks. Of a number
// that would be clipped nothing stays but a sign that something is left out.
func (l line) fit(w int) line {
	if l.width > w {
		out := l.clipped(w)
		if n := begun(l.text(), out.text()); n > 0 {
			out = l.clipped(out.width - n)
			out.add(plain, clip(l.look.more, w-out.width))
		}
		l = out
	}
	l.to(w)
	return l
}

func (l line) clipped(w int) line {
	out := l.look.line()
	for _, s := range l.spans {
		out.add(s.ink, clip(s.text, w-out.width))
	}
	return out
}

// begun is how many characters at the end of a text's beginning are only part of a
// number, or of the unit mm or min, which would be read as metres.
func begun(all, part string) int {
	if len(part) >= len(all) {
		return 0
	}
	if next := all[len(part)]; strings.HasSuffix(part, " m") && (next == 'm' || next == 'i') {
		return 1
	}
	if !strings.ContainsRune(figures, rune(all[len(part)])) {
		return 0
	}
	rest := strings.TrimRight(part, figures)
	if end := part[len(rest):]; strings.ContainsAny(end, "0123456789") || end == "-" || end == "+" {
		return len(end)
	}
	return 0
}

// figures are what numbers and times are written with.
const figures = "0123456789.:+-/"

// text is the line without its inks.
func (l line) text() string {
	var b strings.Builder
	for _, s := range l.spans {
		b.WriteString(s.text)
	}
	return b.String()
}

// paint writes the line with its sequences.
func (l line) paint(b *strings.Builder) {
	for _, s := range l.spans {
		b.WriteString(l.look.open[s.ink])
		b.WriteString(s.text)
		b.WriteString(l.look.close[s.ink])
	}
}

// longest bounds, in bytes, what is drawn of a text that isn't plain ASCII: more
// than the widest screen, and no work worth mentioning.
const longest = 8192

// safe is the text without anything that a terminal would obey, and without what
// its characters can't show or would run together with their neighbours.
func (k *look) safe(text string) string {
	if printable(text) {
		return text
	}
	text = shop.Clean(text[:min(len(text), longest)])
	if k.ascii || !apart(text) {
		text = strings.Map(func(r rune) rune {
			if r > '~' {
				return '?'
			}
			return r
		}, text)
	}
	return text
}

// apart reports whether the text takes as many cells between neighbours as alone.
// A few characters of some scripts join what comes before or after them.
func apart(text string) bool { return cells("x"+text+"x") == cells(text)+2 }

// short is the text in at most w cells, with a sign where something is left out.
func (k *look) short(text string, w int) string {
	text = k.safe(text)
	if cells(text) <= w {
		return text
	}
	if cells(k.more) > w {
		return clip(text, w)
	}
	part := clip(text, w-cells(k.more))
	return part[:len(part)-begun(text, part)] + k.more
}

// clip is the longest start of the text in at most w cells.
func clip(text string, w int) string {
	if w <= 0 {
		return ""
	}
	if printable(text) {
		return text[:min(w, len(text))]
	}
	text = ansi.Truncate(text, w, "")
	for text != "" && !apart(text) {
		_, last := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-last]
	}
	return text
}

// cells is how many cells the text takes on the screen.
func cells(text string) int {
	if printable(text) {
		return len(text)
	}
	return lipgloss.Width(text)
}

// printable reports whether the text is printable ASCII throughout.
func printable(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

func blanks(n int) string {
	return strings.Repeat(" ", max(n, 0))
}

// wrap breaks a text into lines of at most w cells, between words where it can.
func (k *look) wrap(text string, w int) []string {
	var out []string
	row := ""
	for _, word := range strings.Fields(k.safe(text)) {
		switch {
		case row == "":
			row = word
		case cells(row)+1+cells(word) <= w:
			row += " " + word
		default:
			out, row = append(out, row), word
		}
		for cells(row) > w && clip(row, w) != "" {
			start := clip(row, w)
			out, row = append(out, start), row[len(start):]
		}
	}
	return append(out, row)
}

// noted is the first of the notes in w cells; the help has them all.
func (k *look) noted(notes []string, w int) string {
	switch more := len(notes) - 1; {
	case more > 0:
		tail := fmt.Sprintf(" (and %d more: ?)", more)
		return k.short(notes[0], w-len(tail)) + tail
	case cells(k.safe(notes[0])) > w:
		const tail = " (?)"
		return k.short(notes[0], w-len(tail)) + tail
	}
	return notes[0]
}

// rows are a text broken to lines of w cells, a blank on either side, at most so many;
// where they are too few for it, the last ends with a sign that there is more.
func (k *look) rows(i ink, text string, w, most int) (out []line) {
	rest := k.safe(text)
	for _, row := range k.wrap(rest, max(w-2, 1)) {
		if rest = strings.TrimSpace(rest); len(out) == most-1 {
			row = k.short(rest, max(w-2, 1))
		}
		rest = strings.TrimPrefix(rest, row)
		l := k.line()
		l.add(i, " "+row)
		if out = append(out, l.fit(w)); len(out) == most {
			break
		}
	}
	return out
}

// runs makes a line of cells, those of one ink together.
func runs(k *look, cells []span) line {
	l := k.line()
	for x := 0; x < len(cells); {
		var text strings.Builder
		i := cells[x].ink
		for ; x < len(cells) && cells[x].ink == i; x++ {
			text.WriteString(cells[x].text)
		}
		l.add(i, text.String())
	}
	return l
}
