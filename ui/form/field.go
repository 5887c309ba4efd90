// Package form takes what a person types: a Field is one line of text with a caret, or a
// choice of a few words, and a Form several fields of which one is typed into. It knows
// nothing of what the fields are about; what is typed is safe to show and to keep.
package form

import (
	"slices"
	"strings"
	"unicode/utf8"

	"bide/plan/words"
	"bide/ui/draw"
	_ "bide/ui/quiet" // before Bubble Tea

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// Field is one line of text, edited at its caret.
type Field struct {
	Key      string   // what it is to its form
	Label    string   // what people call it
	Hint     string   // how it is filled in
	Choices  []string // the words that it takes, the first where it is empty; none: any text
	Proposed bool     // its text is only proposed: typing replaces it, any other key keeps it
	Breaks   string   // what a line break in pasted text becomes

	most int // characters that may be typed; a text that was there may have more
	line textinput.Model
}

// New is a field with a text, which may be typed on up to so many characters.
func New(key, text string, most int) Field {
	f := Field{Key: key, Breaks: " ", most: most, line: textinput.New()}
	f.line.Cursor.SetMode(cursor.CursorStatic)
	f.line.KeyMap.Paste.SetEnabled(false) // the terminal pastes: no clipboard is read
	f.line.Focus()
	f.Set(text)
	return f
}

// Value is the text.
func (f *Field) Value() string { return f.line.Value() }

// Set replaces the text; the caret is behind it.
func (f *Field) Set(text string) {
	f.line.SetValue(text)
	f.line.CursorEnd()
}

// Type takes a key, or what is pasted, as text or as a change of it: false when it is
// none. What there is no room for is left out; whole reports whether all was taken.
func (f *Field) Type(msg tea.KeyMsg) (taken, whole bool) {
	letters := !msg.Alt && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace)
	switch name := msg.String(); {
	case f.Choices != nil:
		return f.choose(name, letters, msg.Runes), true
	case letters:
		if f.Proposed {
			f.Set("")
		}
		whole = f.insert(string(msg.Runes))
	case name == "ctrl+u": // all of it, wherever the caret is
		f.Set("")
		whole = true
	case edits(msg, f.line.KeyMap):
		f.line, _ = f.line.Update(msg)
		whole = true
	default:
		return false, true
	}
	f.Proposed = false
	return true, whole
}

// edits reports whether a key moves the caret or takes away something.
func edits(msg tea.KeyMsg, k textinput.KeyMap) bool {
	return key.Matches(msg, k.CharacterForward, k.CharacterBackward, k.WordForward, k.WordBackward, k.LineStart, k.LineEnd,
		k.DeleteCharacterBackward, k.DeleteCharacterForward, k.DeleteWordBackward, k.DeleteWordForward, k.DeleteAfterCursor)
}

// insert puts text at the caret, on one line and safe, as much of it as there is room for.
func (f *Field) insert(text string) (whole bool) {
	room := max(f.most-utf8.RuneCountInString(f.Value()), 0)
	typed := []rune(text)
	whole = len(typed) <= room
	typed = typed[:min(len(typed), room)]
	text = strings.NewReplacer("\r\n", f.Breaks, "\n", f.Breaks, "\r", f.Breaks, "\t", " ").Replace(string(typed))
	typed = []rune(words.Clean(text))
	f.line, _ = f.line.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: typed[:min(len(typed), room)]})
	return whole && len(typed) <= room
}

// choose goes to another of a few words: the next, the one before, or the one that begins
// with the letter typed.
func (f *Field) choose(name string, letters bool, typed []rune) bool {
	at, n := max(slices.Index(f.Choices, f.Value()), 0), len(f.Choices)
	switch {
	case name == "right" || name == " ":
		f.Set(f.Choices[(at+1)%n])
	case name == "left":
		f.Set(f.Choices[(at+n-1)%n])
	case letters && len(typed) > 0:
		first := strings.ToLower(string(typed[:1]))
		if i := slices.IndexFunc(f.Choices, func(word string) bool { return strings.HasPrefix(word, first) }); i >= 0 {
			f.Set(f.Choices[i])
		}
	default:
		return name == "backspace" || name == "delete"
	}
	return true
}

// Draw adds the field to a line, in at most w cells: with its caret where it is typed into,
// scrolled so that the caret shows.
func (f *Field) Draw(k *draw.Theme, l *draw.Line, w int, open bool) {
	switch {
	case f.Choices != nil:
		f.drawChoices(l, w, open)
	case !open:
		l.Add(draw.Plain, k.Short(f.Value(), w))
	case f.Proposed:
		l.Add(draw.Picked, k.Short(f.Value(), w-1)+k.Caret)
	default:
		text := []rune(f.Value())
		before := endOf(k.Safe(string(text[:f.line.Position()])), w-2)
		l.Add(draw.Strong, before)
		l.Add(draw.Picked, k.Caret)
		l.Add(draw.Strong, draw.Clip(k.Safe(string(text[f.line.Position():])), w-1-draw.CellWidth(before)))
	}
}

// drawChoices shows all words, the chosen one in brackets; where they are too long it alone.
func (f *Field) drawChoices(l *draw.Line, w int, open bool) {
	chosen, ink := f.Value(), draw.Strong
	if chosen == "" {
		chosen = f.Choices[0]
	}
	if open {
		ink = draw.Picked
	}
	if draw.CellWidth(strings.Join(f.Choices, "    "))+2 > w {
		l.Add(ink, "("+chosen+")")
		return
	}
	for _, word := range f.Choices {
		if word == chosen {
			l.Add(ink, "("+word+") ")
		} else {
			l.Add(draw.Faint, " "+word+"  ")
		}
	}
}

// endOf is the end of a text, in at most w cells.
func endOf(text string, w int) string {
	runes := []rune(text)
	from := len(runes)
	for wide := 0; from > 0; from-- {
		if wide += draw.CellWidth(string(runes[from-1])); wide > w {
			break
		}
	}
	return string(runes[from:])
}
