package ui

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// ink is what a piece of text is drawn with. Colour never tells anything alone:
// wherever an ink carries a meaning, a mark, a letter or a word stands beside it.
type ink uint8

const (
	plain  ink = iota
	faint      // what may be overlooked: rules, units, holders that bide
	strong     // names and figures
	head       // heads of columns
	accent     // where the keys go, and the web
	moved      // what moves
	picked     // what the cursor is on
	late       // late, refused, broken
	good       // better than before
	inks
)

// colours of the inks on a dark and on a light background, from the 256.
var colours = map[ink][2]string{
	faint:  {"245", "240"},
	head:   {"245", "240"},
	accent: {"74", "25"},
	moved:  {"214", "130"},
	picked: {"221", "132"},
	late:   {"175", "94"},
	good:   {"36", "29"},
}

// look is how the screen is drawn: the sequences that begin and end each ink, and
// the characters for marks and lines.
type look struct {
	ascii       bool
	open, close [inks]string
	glyphs
}

// newLook makes the look for a renderer, which knows how many colours there are.
func newLook(r *lipgloss.Renderer, light, ascii bool) *look {
	k := &look{ascii: ascii, glyphs: unicodeGlyphs}
	if ascii {
		k.glyphs = asciiGlyphs
	}
	side := 0
	if light {
		side = 1
	}
	for i := plain; i < inks; i++ {
		s := r.NewStyle().Bold(i == strong || i == picked || i == accent).Underline(i == head)
		if c, ok := colours[i]; ok {
			s = s.Foreground(lipgloss.Color(c[side]))
		}
		k.open[i], k.close[i], _ = strings.Cut(s.Render("x"), "x")
	}
	return k
}

// glyphs are the characters that differ between Unicode and ASCII.
type glyphs struct {
	rule, focusRule  string // above a pane, and above the one with the keys
	between          string // between two panes side by side
	cursor, cursorBy string // at the picked row, and there in a pane without the keys
	more             string // what is left out
	caret            string // where text is typed
	pending          string // a cost still being worked out
	to               string // from one to the next
	tick             string // on the scale
	bar              string // of cost
	leadsTo          string // from a changeover to the job on the next line
	setupFill        string // of time: setup, run, when it is due, when the shift ends
	runFill, due     string
	shiftEnd         string
	webFrom, webTo   string
	web, trim, cut   string
	aim              string   // at the picked place
	block            string   // of large figures
	bearing, damaged string   // of the anvil
	levels           []string // of a bar in one cell, ever higher
	legend           [classes]string
}

var unicodeGlyphs = glyphs{
	rule: "─", focusRule: "━", between: "│", cursor: "▸", cursorBy: "›", more: "…", caret: "▏", pending: "…",
	to: "→", tick: "╷", bar: "▬", leadsTo: "┌",
	setupFill: "▒", runFill: "█", due: "◆", shiftEnd: "┃",
	webFrom: "╞", webTo: "╡", web: "═", trim: "┄", cut: "╪", aim: "▾", block: "█",
	bearing: "△", damaged: "╳", levels: []string{"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"},
	legend: [classes]string{idles: "⠁", bides: "⠅", moves: "⢣", aimed: "⢳⡀"},
}

var asciiGlyphs = glyphs{
	rule: "-", focusRule: "=", between: "|", cursor: ">", cursorBy: ">", more: "..", caret: "_", pending: "..",
	to: "->", tick: "|", bar: "#", leadsTo: ",-",
	setupFill: ":", runFill: "#", due: "D", shiftEnd: "|",
	webFrom: "[", webTo: "]", web: "-", trim: "~", cut: "+", aim: "v", block: "#",
	bearing: "^", damaged: "x", levels: []string{".", ":", "#"},
	legend: [classes]string{idles: ".", bides: "|", moves: "',", aimed: "**"},
}
