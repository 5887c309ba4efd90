package ui

import (
	"slices"
	"strings"

	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// Type takes keys as text.
func (f *jobForm) Type(msg tea.KeyMsg, m *model) bool {
	m.news = news{}
	was := f.value()
	text, at := []rune(was), f.caret
	words := fieldChoices[f.key()]
	switch name := msg.String(); {
	case msg.Alt:
		return false
	case f.proposes() && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace || name == "backspace" || name == "delete"):
		f.put("", 0)
		f.insert(msg.Runes, m)
		f.fresh = false
	case words != nil && (name == "left" || name == "right" || name == " "):
		f.turn(words, name == "left")
	case words != nil && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace || name == "backspace" || name == "delete"):
		f.jump(words, msg.Runes)
	case msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace:
		f.insert(msg.Runes, m)
	case name == "left":
		f.carry(max(at-1, 0))
	case name == "right":
		f.carry(min(at+1, len(text)))
	case name == "home" || name == "ctrl+a":
		f.carry(0)
	case name == "end" || name == "ctrl+e":
		f.carry(len(text))
	case name == "backspace" && at > 0:
		f.put(string(slices.Delete(text, at-1, at)), at-1)
	case name == "delete" && at < len(text):
		f.put(string(slices.Delete(text, at, at+1)), at)
	case name == "ctrl+u":
		f.put("", 0)
	case name == "backspace" || name == "delete":
	default:
		return false
	}
	if f.naming() && f.value() != was {
		f.narrow(m)
	}
	f.check(m)
	return true
}

// insert puts what is typed or pasted at the caret, as much of it as there is room for.
func (f *jobForm) insert(typed []rune, m *model) {
	text := []rune(f.value())
	room := max(longestValue-len(text), 0)
	beyond := len(typed) > room
	typed = []rune(shop.Clean(oneLine(string(typed[:min(len(typed), room)]))))
	if len(typed) > room {
		typed, beyond = typed[:room], true
	}
	f.put(string(slices.Insert(text, f.caret, typed...)), f.caret+len(typed))
	if beyond {
		m.say("a field has room for %d characters: what is beyond that isn't taken", longestValue)
	}
}

// proposes reports whether the field typed into has a value that typing replaces.
func (f *jobForm) proposes() bool { return f.fresh && f.key() == "id" }

// carry takes the caret to a place; an id that was only proposed is taken with it.
func (f *jobForm) carry(caret int) {
	f.caret = caret
	if f.key() == "id" {
		f.fresh = false
	}
}

// oneLine is a pasted text on one line: its line ends part the items of a list.
func oneLine(text string) string {
	return strings.NewReplacer("\r\n", "; ", "\n", "; ", "\r", "; ", "\t", " ").Replace(text)
}

// turn goes to the next word of a few.
func (f *jobForm) turn(words []string, back bool) {
	at := max(slices.Index(words, f.value()), 0)
	by := 1
	if back {
		by = len(words) - 1
	}
	f.put(words[(at+by)%len(words)], 0)
}

// jump goes to the word that begins with the letter typed.
func (f *jobForm) jump(words []string, letters []rune) {
	for _, word := range words {
		if len(letters) > 0 && strings.HasPrefix(word, strings.ToLower(string(letters[:1]))) {
			f.put(word, 0)
			return
		}
	}
}
