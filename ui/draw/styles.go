// Package draw is the drawing kit of the screen: styled lines and what is built of them
// (panes, tables, charts, large figures, the lines of holders along the beam), each in
// exactly as many cells as it is given. It knows nothing of a day or a shop.
package draw

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// Style is what a piece of text is drawn with. Colour never tells anything alone:
// wherever an ink carries a meaning, a mark, a letter or a word stands beside it.
type Style uint8

const (
	Plain  Style = iota
	Faint        // what may be overlooked: rules, units, holders that stay
	Strong       // names and figures
	Head         // heads of columns
	Accent       // where the keys go, and the web
	Moved        // what moves
	Picked       // what the cursor is on
	Late         // late, refused, broken
	Good         // better than before
	inks
)

// colours of the styles on a dark and on a light background, from the 256.
var colours = map[Style][2]string{
	Faint:  {"245", "240"},
	Head:   {"245", "240"},
	Accent: {"74", "25"},
	Moved:  {"214", "130"},
	Picked: {"221", "132"},
	Late:   {"175", "94"},
	Good:   {"36", "29"},
}

// Theme is how the screen is drawn: the sequences that begin and end each style, and
// the characters for marks and lines.
type Theme struct {
	ASCII       bool
	Open, close [inks]string
	Glyphs
}

// NewTheme makes the theme for a renderer, which knows how many colours there are.
func NewTheme(r *lipgloss.Renderer, light, ascii bool) *Theme {
	k := &Theme{ASCII: ascii, Glyphs: unicodeGlyphs}
	if ascii {
		k.Glyphs = asciiGlyphs
	}
	side := 0
	if light {
		side = 1
	}
	for i := Plain; i < inks; i++ {
		s := r.NewStyle().Bold(i == Strong || i == Picked || i == Accent).Underline(i == Head)
		if c, ok := colours[i]; ok {
			s = s.Foreground(lipgloss.Color(c[side]))
		}
		k.Open[i], k.close[i], _ = strings.Cut(s.Render("x"), "x")
	}
	return k
}

// Glyphs are the characters that differ between Unicode and ASCII.
type Glyphs struct {
	Rule, focusRule  string // above a pane, and above the one with the keys
	Between          string // between two panes side by side
	Cursor, CursorBy string // at the picked row, and there in a pane without the keys
	More             string // what is left out
	Caret            string // where text is typed
	Pending          string // a cost still being worked out
	To               string // from one to the next
	Tick             string // on the scale
	Bar              string // of cost
	LeadsTo          string // from a changeover to the job on the next line
	SetupFill        string // of time: setup, run, when it is due, when the shift ends
	RunFill, Due     string
	ShiftEnd, Closed string // of time: when nobody works
	WebFrom, WebTo   string
	Web, Trim, Cut   string
	Aim              string   // at the picked place
	Block            string   // of large figures
	Bearing, Damaged string   // of the anvil
	Levels           []string // of a bar in one cell, ever higher
	Legend           [classes]string
}

var unicodeGlyphs = Glyphs{
	Rule: "─", focusRule: "━", Between: "│", Cursor: "▸", CursorBy: "›", More: "…", Caret: "▏", Pending: "…",
	To: "→", Tick: "╷", Bar: "▬", LeadsTo: "┌",
	SetupFill: "▒", RunFill: "█", Due: "◆", ShiftEnd: "┃", Closed: "╌",
	WebFrom: "╞", WebTo: "╡", Web: "═", Trim: "┄", Cut: "╪", Aim: "▾", Block: "█",
	Bearing: "△", Damaged: "╳", Levels: []string{"▁", "▂", "▃", "▄", "▅", "▆", "▇", "█"},
	Legend: [classes]string{Idles: "⠁", Stays: "⠅", Moves: "⢣", Aimed: "⢳⡀"},
}

var asciiGlyphs = Glyphs{
	Rule: "-", focusRule: "=", Between: "|", Cursor: ">", CursorBy: ">", More: "..", Caret: "_", Pending: "..",
	To: "->", Tick: "|", Bar: "#", LeadsTo: ",-",
	SetupFill: ":", RunFill: "#", Due: "D", ShiftEnd: "|", Closed: "-",
	WebFrom: "[", WebTo: "]", Web: "-", Trim: "~", Cut: "+", Aim: "v", Block: "#",
	Bearing: "^", Damaged: "x", Levels: []string{".", ":", "#"},
	Legend: [classes]string{Idles: ".", Stays: "|", Moves: "',", Aimed: "**"},
}
