package ui

import (
	"strings"

	"bide/ui/form"

	tea "github.com/charmbracelet/bubbletea"
)

// prompt is one line of text that the screen asks for, in the place of the status
// line. Enter takes it, Esc drops it.
type prompt struct {
	form.Field
	changed func(text string) // after each key; may be nil
	done    func(text string)
	dropped func() // may be nil
}

// longestText bounds what is typed, in characters.
const longestText = 200

// newPrompt asks for a text, which may be there already.
func newPrompt(label, text string, done func(text string)) *prompt {
	p := &prompt{Field: form.New("", text, longestText), done: done}
	p.Label = label
	return p
}

// Type takes a key, or what is pasted, as text.
func (p *prompt) Type(msg tea.KeyMsg, d *desk) bool {
	was := p.Value()
	switch msg.Type {
	case tea.KeyEnter:
		d.prompt = nil
		p.done(strings.TrimSpace(was))
	case tea.KeyEsc:
		if d.prompt = nil; p.dropped != nil {
			p.dropped()
		}
	case tea.KeyCtrlC, tea.KeyCtrlZ:
		return false
	default:
		p.Field.Type(msg)
	}
	if p.Value() != was && p.changed != nil {
		p.changed(p.Value())
	}
	return true
}
