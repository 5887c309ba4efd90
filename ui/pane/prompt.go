package pane

import (
	"strings"

	"bide/ui/form"

	tea "github.com/charmbracelet/bubbletea"
)

// Prompt is one line of text that the screen asks for, in the place of the status
// line. Enter takes it, Esc drops it.
type Prompt struct {
	form.Field
	Changed func(text string) // after each key; may be nil
	done    func(text string)
	Dropped func() // may be nil
}

// LongestText bounds what is typed, in characters.
const LongestText = 200

// NewPrompt asks for a text, of which some may be there already.
func NewPrompt(label, text string, done func(text string)) *Prompt {
	p := &Prompt{Field: form.New("", text, LongestText), done: done}
	p.Label = label
	return p
}

// Type takes a key, or what is pasted, as text.
func (p *Prompt) Type(msg tea.KeyMsg, d *Shared) bool {
	was := p.Value()
	switch msg.Type {
	case tea.KeyEnter:
		d.Prompt = nil
		p.done(strings.TrimSpace(was))
	case tea.KeyEsc:
		if d.Prompt = nil; p.Dropped != nil {
			p.Dropped()
		}
	case tea.KeyCtrlC, tea.KeyCtrlZ:
		return false
	default:
		p.Field.Type(msg)
	}
	if p.Value() != was && p.Changed != nil {
		p.Changed(p.Value())
	}
	return true
}
