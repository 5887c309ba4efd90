package pane

import (
	"strings"

	"bide/ui/form"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// Prompt is one line of text that the screen asks for, in the place of the status
// line. Enter takes it, Esc drops it.
type Prompt struct {
	form.Field
	In      keys.Scope        // where its keys work
	Changed func(text string) // after each key; may be nil
	done    func(text string) Want
	Dropped func() Want // may be nil
}

// longestText bounds what is typed, in characters.
const longestText = 200

// NewPrompt asks for a text, of which some may be there already.
func NewPrompt(label, text string, done func(text string) Want) *Prompt {
	p := &Prompt{Field: form.New("", text, longestText), In: keys.OnPrompt, done: done}
	p.Label = label
	return p
}

// Type takes a key, or what is pasted, as text.
func (p *Prompt) Type(msg tea.KeyMsg, d *Shared) (taken bool, want Want) {
	was := p.Value()
	switch msg.Type {
	case tea.KeyEnter:
		d.Prompt = nil
		want = p.done(strings.TrimSpace(was))
	case tea.KeyEsc:
		if d.Prompt = nil; p.Dropped != nil {
			want = p.Dropped()
		}
	case tea.KeyCtrlC, tea.KeyCtrlZ:
		return false, nil
	default:
		p.Field.Type(msg)
	}
	if p.Value() != was && p.Changed != nil {
		p.Changed(p.Value())
	}
	return true, want
}
