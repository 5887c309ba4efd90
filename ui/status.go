package ui

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"bide/plan/shop"
	"bide/plan/words"
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
	text, notes := m.told(), m.notes()
	switch {
	case m.asks:
		return m.Rows(draw.Late, m.question(), m.W, most)
	case m.prompt != nil:
		return []draw.Line{m.prompting(m.W)}
	case m.search.Running():
		return []draw.Line{m.searching()}
	case text == "" && m.journal.fault != "":
		return m.Rows(draw.Late, "NOT SAVED: "+m.journal.fault, m.W, most)
	case text != "":
		return m.Rows(draw.Strong, text, m.W, most)
	}
	if text, _ := m.outdated(); text != "" {
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

// loses reports whether leaving would lose something.
func (d *session) loses() bool { return d.journal.busy || len(d.losing()) > 0 }

// losing names what leaving would lose.
func (d *session) losing() (all []string) {
	told := sumOf(d.journal.owed)
	if told == "" && d.journal.fault != "" {
		told = "what was entered at the beam"
	}
	if told != "" {
		all = append(all, told)
	}
	switch {
	case !d.changed():
	case d.journal.writes():
		all = append(all, "the changes to the day (Ctrl-S saves them)")
	default:
		all = append(all, "the changes to the day")
	}
	if text := d.viewer.unfinished(); text != "" {
		all = append(all, text)
	}
	switch {
	case d.search.Busy():
		all = append(all, "what the search has found so far")
	case d.offer != nil:
		all = append(all, "the order that a search found ("+d.viewer.keyOf(toCompare)+" shows it)")
	}
	return all
}

// question asks whether to quit, and says what would be lost, and why.
func (d *desk) question() string {
	if d.journal.busy {
		return "The last entry is still being saved. Quit anyway?"
	}
	text, why := "Not saved: "+strings.Join(d.losing(), "; ")+". ", words.Join("; ", d.journal.fault, d.journal.why)
	if d.changed() || d.journal.fault != "" || sumOf(d.journal.owed) != "" {
		text += capital(why)
	}
	return text + "Quit anyway?"
}

// capital is a text as a sentence before another; nothing stays nothing.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + ". "
}

// sumOf says how much of what was entered at the beam is in these events, without what
// was taken back; empty when nothing is left.
func sumOf(events []shop.Event) string {
	n := map[shop.Kind]int{}
	for _, e := range events {
		if e.Back {
			n[e.Kind]--
		} else {
			n[e.Kind]++
		}
	}
	var parts []string
	for _, k := range []struct {
		kind      shop.Kind
		one, many string
	}{
		{shop.EventMoved, "1 move made", "%d moves made"}, {shop.EventCorrected, "1 position corrected", "%d positions corrected"},
		{shop.EventCondition, "1 condition", "%d conditions"}, {shop.EventJob, "the state of 1 job", "the states of %d jobs"},
	} {
		switch n := n[k.kind]; {
		case n == 1:
			parts = append(parts, k.one)
		case n > 1:
			parts = append(parts, fmt.Sprintf(k.many, n))
		}
	}
	return words.Join(", ", parts...)
}
