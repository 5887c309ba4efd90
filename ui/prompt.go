package ui

import (
	"strings"

	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// prompt is one line of text that the screen asks for, in the place of the status
// line. Enter takes it, Esc drops it.
type prompt struct {
	label   string
	text    string
	changed func(text string) // after each key; may be nil
	done    func(text string)
	dropped func() // may be nil
}

// longestText bounds what is typed, in bytes.
const longestText = 200

// Type takes a key, or what is pasted, as text.
func (p *prompt) Type(msg tea.KeyMsg, m *model) bool {
	was := p.text
	switch msg.Type {
	case tea.KeyEnter:
		m.prompt = nil
		p.done(strings.TrimSpace(p.text))
	case tea.KeyEsc:
		if m.prompt = nil; p.dropped != nil {
			p.dropped()
		}
	case tea.KeyBackspace:
		p.text = withoutLast(p.text)
	case tea.KeyCtrlU:
		p.text = ""
	case tea.KeyCtrlW:
		p.text = p.text[:strings.LastIndex(" "+strings.TrimRight(p.text, " "), " ")]
	case tea.KeyRunes, tea.KeySpace:
		p.add(string(msg.Runes))
	case tea.KeyCtrlC, tea.KeyCtrlZ:
		return false
	}
	if p.text != was && p.changed != nil {
		p.changed(p.text)
	}
	return true
}

// add puts text at the end, in one line and safe.
func (p *prompt) add(text string) {
	for _, r := range shop.Clean(strings.Join(strings.FieldsFunc(text, isBreak), " ")) {
		if len(p.text)+len(string(r)) > longestText {
			return
		}
		p.text += string(r)
	}
}

// isBreak reports whether the character ends a line.
func isBreak(r rune) bool { return r == '\n' || r == '\r' }

// withoutLast is the text without its last character.
func withoutLast(text string) string {
	r := []rune(text)
	return string(r[:max(len(r)-1, 0)])
}

// prompting is the line that a prompt is typed in. Where it is narrow, the end of the
// text stays in sight.
func (d *desk) prompting(w int) line {
	l := d.line()
	l.add(strong, " "+d.prompt.label+": ")
	l = l.fit(min(l.width, max(w-12, 0)))
	text := d.safe(d.prompt.text)
	for text != "" && cells(text) > max(w-l.width-1, 0) {
		text = string([]rune(text)[1:])
	}
	l.add(picked, text)
	l.add(accent, "_")
	return l
}

// smallPrompt is the prompt over a small screen.
func smallPrompt(d *desk, s size) []line {
	rows := append(d.wrap(d.prompt.label+":", max(s.w, 1)), "")
	rows = rows[max(len(rows)-s.h, 0):]
	out := make([]line, 0, s.h)
	for _, text := range rows[:len(rows)-1] {
		l := d.line()
		l.add(strong, text)
		out = append(out, l.fit(s.w))
	}
	text := d.safe(d.prompt.text)
	for text != "" && cells(text) > max(s.w-1, 0) {
		text = string([]rune(text)[1:])
	}
	l := d.line()
	l.add(picked, text)
	l.add(accent, "_")
	for out = append(out, l.fit(s.w)); len(out) < s.h; {
		out = append(out, d.line().fit(s.w))
	}
	return out
}
