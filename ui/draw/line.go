package draw

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"bide/plan/words"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// Line is one line of the screen, built from left to right.
type Line struct {
	look  *Theme
	spans []Span
	Width int // in cells
}

// Span is a part of a line in one style.
type Span struct {
	Style Style
	Text  string
}

// Line is an empty line in the theme's look.
func (k *Theme) Line() Line { return Line{look: k} }

// Add appends text, safe for the screen whatever it is.
func (l *Line) Add(i Style, text string) {
	if text = l.look.Safe(text); text == "" {
		return
	}
	l.Width += CellWidth(text)
	if n := len(l.spans); n > 0 && l.spans[n-1].Style == i {
		l.spans[n-1].Text += text
		return
	}
	l.spans = append(l.spans, Span{i, text})
}

// Right appends a number in w cells, to the right. Part of a number would be read as
// another one: where it is too long, there is a sign in its place.
func (l *Line) Right(i Style, text string, w int) {
	if text = l.look.Safe(text); CellWidth(text) > w {
		text = Clip(l.look.More, w)
	}
	l.Add(Plain, Blanks(w-CellWidth(text)))
	l.Add(i, text)
}

// Left appends text in w cells, to the left; too long a text is cut.
func (l *Line) Left(i Style, text string, w int) {
	text = l.look.Short(text, w)
	l.Add(i, text)
	l.Add(Plain, Blanks(w-CellWidth(text)))
}

// To appends blanks up to column w.
func (l *Line) To(w int) { l.Add(Plain, Blanks(w-l.Width)) }

// Join appends another line.
func (l *Line) Join(m Line) {
	l.spans = append(l.spans, m.spans...)
	l.Width += m.Width
}

// Fit is the line in exactly w cells: clipped, or filled up with blanks. Of a number
// that would be clipped nothing stays but a sign that something is left out.
func (l Line) Fit(w int) Line {
	if l.Width > w {
		out := l.clipped(w)
		if n := begun(l.Text(), out.Text()); n > 0 {
			out = l.clipped(out.Width - n)
			out.Add(Plain, Clip(l.look.More, w-out.Width))
		}
		l = out
	}
	l.To(w)
	return l
}

func (l Line) clipped(w int) Line {
	out := l.look.Line()
	for _, s := range l.spans {
		out.Add(s.Style, Clip(s.Text, w-out.Width))
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

// Text is the line without its inks.
func (l Line) Text() string {
	var b strings.Builder
	for _, s := range l.spans {
		b.WriteString(s.Text)
	}
	return b.String()
}

// Paint writes the line with its sequences.
func (l Line) Paint(b *strings.Builder) {
	for _, s := range l.spans {
		b.WriteString(l.look.Open[s.Style])
		b.WriteString(s.Text)
		b.WriteString(l.look.close[s.Style])
	}
}

// Longest bounds, in bytes, what is drawn of a text that isn't plain ASCII: more
// than the widest screen, and no work worth mentioning.
const Longest = 8192

// Safe is the text without anything that a terminal would obey, and without what
// its characters can't show or would run together with their neighbours.
func (k *Theme) Safe(text string) string {
	if printable(text) {
		return text
	}
	text = words.Clean(text[:min(len(text), Longest)])
	if k.ASCII || !apart(text) {
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
func apart(text string) bool { return CellWidth("x"+text+"x") == CellWidth(text)+2 }

// Short is the text in at most w cells, with a sign where something is left out.
func (k *Theme) Short(text string, w int) string {
	text = k.Safe(text)
	if CellWidth(text) <= w {
		return text
	}
	if CellWidth(k.More) > w {
		return Clip(text, w)
	}
	part := Clip(text, w-CellWidth(k.More))
	return part[:len(part)-begun(text, part)] + k.More
}

// Clip is the longest start of the text in at most w cells.
func Clip(text string, w int) string {
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

// CellWidth is how many cells the text takes on the screen.
func CellWidth(text string) int {
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

// Blanks are n spaces; none where n is below 0.
func Blanks(n int) string {
	return strings.Repeat(" ", max(n, 0))
}

// Wrap breaks a text into lines of at most w cells, between words where it can.
func (k *Theme) Wrap(text string, w int) []string {
	var out []string
	row := ""
	for _, word := range strings.Fields(k.Safe(text)) {
		switch {
		case row == "":
			row = word
		case CellWidth(row)+1+CellWidth(word) <= w:
			row += " " + word
		default:
			out, row = append(out, row), word
		}
		for CellWidth(row) > w && Clip(row, w) != "" {
			start := Clip(row, w)
			out, row = append(out, start), row[len(start):]
		}
	}
	return append(out, row)
}

// Noted is the first of the notes in w cells; the help has them all.
func (k *Theme) Noted(notes []string, w int) string {
	switch more := len(notes) - 1; {
	case more > 0:
		tail := fmt.Sprintf(" (and %d more: ?)", more)
		return k.Short(notes[0], w-len(tail)) + tail
	case CellWidth(k.Safe(notes[0])) > w:
		const tail = " (?)"
		return k.Short(notes[0], w-len(tail)) + tail
	}
	return notes[0]
}

// Rows are a text broken to lines of w cells, a blank on either side, at most so many;
// where they are too few for it, the last ends with a sign that there is more.
func (k *Theme) Rows(i Style, text string, w, most int) (out []Line) {
	rest := k.Safe(text)
	for _, row := range k.Wrap(rest, max(w-2, 1)) {
		if rest = strings.TrimSpace(rest); len(out) == most-1 {
			row = k.Short(rest, max(w-2, 1))
		}
		rest = strings.TrimPrefix(rest, row)
		l := k.Line()
		l.Add(i, " "+row)
		if out = append(out, l.Fit(w)); len(out) == most {
			break
		}
	}
	return out
}

// FromCells makes a line of cells, those of one ink together.
func FromCells(k *Theme, cells []Span) Line {
	l := k.Line()
	for x := 0; x < len(cells); {
		var text strings.Builder
		i := cells[x].Style
		for ; x < len(cells) && cells[x].Style == i; x++ {
			text.WriteString(cells[x].Text)
		}
		l.Add(i, text.String())
	}
	return l
}
