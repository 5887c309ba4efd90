package ui

import (
	"path/filepath"
	"slices"
	"strings"

	"bide/ui/draw"
	"bide/ui/keys"
)

// foot lays what just happened and the keys under a frame that has all lines but these
// two. A text that is too long for one line takes as many of the frame's last ones as it
// needs: nothing else moves, and it is there only until the next key.
func (m *model) foot(frame []draw.Line, in keys.Scope) []draw.Line {
	rows := m.status(max(len(frame)-1, 1))
	out := frame[:max(len(frame)-len(rows)+1, 0)]
	for _, l := range rows {
		out = append(out, l.Fit(m.W))
	}
	return append(out, keys.Footer(m.Theme, m.Table, in, m.W))
}

// status are the lines that tell what just happened until the next key, at most so
// many; then what is assumed.
func (m *model) status(most int) []draw.Line {
	text, notes := m.Told(m.Pending), m.notes()
	switch {
	case m.AsksToQuit:
		return m.Rows(draw.Late, m.Question(), m.W, most)
	case m.Prompt != nil:
		return []draw.Line{prompting(m.Shared, m.W)}
	case m.Search.Running():
		return []draw.Line{m.searching()}
	case text == "" && m.Journal.Fault() != "":
		return m.Rows(draw.Late, "NOT SAVED: "+m.Journal.Fault(), m.W, most)
	case text != "":
		return m.Rows(draw.Strong, text, m.W, most)
	}
	if text, _ := m.Files.Outdated(); text != "" {
		return m.Rows(draw.Late, text, m.W, most)
	}
	l := m.Line()
	if len(notes) > 0 {
		if m.config != "" { // the help has the whole path; here it would hide what is wrong
			notes = slices.Clone(notes)
			notes[0] = strings.Replace(notes[0], m.config, filepath.Base(m.config), 1)
		}
		l.Add(draw.Faint, " note: "+m.Noted(notes, m.W-8))
	}
	return []draw.Line{l.Fit(m.W)}
}
