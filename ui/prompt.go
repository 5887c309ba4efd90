package ui

import (
	"strings"

	"bide/ui/draw"
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

// prompting is the line that a prompt is typed in.
func prompting(d *desk, w int) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, " "+d.prompt.Label+": ")
	l = l.Fit(min(l.Width, max(w-12, 0)))
	d.prompt.Draw(d.Theme, &l, w-l.Width, true)
	return l
}

// smallPrompt is the prompt over a small screen.
func smallPrompt(d *desk, s draw.Size) []draw.Line {
	rows := append(d.Wrap(d.prompt.Label+":", max(s.W, 1)), "")
	rows = rows[max(len(rows)-s.H, 0):]
	out := make([]draw.Line, 0, s.H)
	for _, text := range rows[:len(rows)-1] {
		l := d.Line()
		l.Add(draw.Strong, text)
		out = append(out, l.Fit(s.W))
	}
	l := d.Line()
	d.prompt.Draw(d.Theme, &l, s.W, true)
	for out = append(out, l.Fit(s.W)); len(out) < s.H; {
		out = append(out, d.Line().Fit(s.W))
	}
	return out
}
