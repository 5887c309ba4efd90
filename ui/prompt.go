package ui

import (
	"strings"

	"bide/plan/shop"
	"bide/ui/draw"

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
func (d *desk) prompting(w int) draw.Line {
	l := d.Line()
	l.Add(draw.Strong, " "+d.prompt.label+": ")
	l = l.Fit(min(l.Width, max(w-12, 0)))
	text := d.Safe(d.prompt.text)
	for text != "" && draw.CellWidth(text) > max(w-l.Width-1, 0) {
		text = string([]rune(text)[1:])
	}
	l.Add(draw.Picked, text)
	l.Add(draw.Accent, "_")
	return l
}

// smallPrompt is the prompt over a small screen.
func smallPrompt(d *desk, s draw.Size) []draw.Line {
	rows := append(d.Wrap(d.prompt.label+":", max(s.W, 1)), "")
	rows = rows[max(len(rows)-s.H, 0):]
	out := make([]draw.Line, 0, s.H)
	for _, text := range rows[:len(rows)-1] {
		l := d.Line()
		l.Add(draw.Strong, text)
		out = append(out, l.Fit(s.W))
	}
	text := d.Safe(d.prompt.text)
	for text != "" && draw.CellWidth(text) > max(s.W-1, 0) {
		text = string([]rune(text)[1:])
	}
	l := d.Line()
	l.Add(draw.Picked, text)
	l.Add(draw.Accent, "_")
	for out = append(out, l.Fit(s.W)); len(out) < s.H; {
		out = append(out, d.Line().Fit(s.W))
	}
	return out
}
