package ui

import (
	"fmt"
)

// bar is the first line: whose beam it is, and how the day stands.
func (m *model) bar() line {
	l := m.line()
	l.add(accent, " bide ")
	l.add(strong, " "+m.shop.Beam.Name)
	if m.demo {
		l.add(late, "  DEMO, an invented day")
	}
	if m.changed() {
		l.add(late, "  * not saved")
	}
	r := m.ending()
	beam := fmt.Sprintf("  %s, pitch %s", count(len(m.shop.Beam.Holders), "holder"), m.shop.Unit.Show(m.shop.Beam.Pitch()))
	if l.width+cells(beam)+r.width+2 <= m.w {
		l.add(faint, beam)
	}
	if l.width+r.width+2 <= m.w {
		l.to(m.w - r.width - 1)
		l.join(r)
	}
	return l
}

// ending tells when the last run ends, against the shift's end.
func (m *model) ending() line {
	l := m.line()
	if !m.present.whole() {
		text := fmt.Sprintf("working out %d of %d", len(m.present.known), len(m.jobs()))
		if m.present.full() {
			text = "planning the day together"
		}
		l.add(faint, text+" "+m.pending)
		return l
	}
	n := len(m.present.known)
	if n == 0 {
		return l
	}
	day, end := m.shop.Day, m.present.known[n-1].clock
	l.add(faint, "ends ")
	l.add(strong, clock(end, day.Start))
	switch over := end.Sub(day.End); {
	case day.End.IsZero():
	case over > 0:
		l.add(late, fmt.Sprintf(" !%s past the shift's end", hours(over)))
	default:
		l.add(good, fmt.Sprintf(", %s before the shift's end", hours(-over)))
	}
	return l
}

// status is the line that tells what just happened until the next key; then what
// was taken for granted.
func (m *model) status() line {
	l := m.line()
	text, notes := m.told(), m.notes()
	switch {
	case m.asks:
		l.add(late, " "+m.short(m.question(), m.w-2))
	case m.prompt != nil:
		return m.prompting(m.w)
	case m.search.cancel != nil:
		return m.searching()
	case text == "" && m.unsaved != "":
		l.add(late, " "+m.short("NOT SAVED: "+m.unsaved, m.w-2))
	case text != "":
		l.add(strong, " "+m.short(text, m.w-2))
	case len(notes) == 1:
		l.add(faint, " note: "+m.short(notes[0], m.w-8))
	case len(notes) > 1:
		more := fmt.Sprintf(" (and %d more: ?)", len(notes)-1)
		l.add(faint, " note: "+m.short(notes[0], m.w-8-len(more))+more)
	}
	return l
}

// loses reports whether leaving would lose something.
func (d *desk) loses() bool { return d.changed() || len(d.drawer) > 0 || d.unsaved != "" || d.saving }

// question asks whether to leave, and tells what would be lost.
func (d *desk) question() string {
	switch {
	case d.saving:
		return "What was told last is still being saved. Leave?"
	case d.unsaved != "":
		return "What was told at the beam is not saved: " + d.unsaved + ". Leave?"
	}
	if !d.changed() {
		return "A form is put away unfinished, and would be lost. Leave?"
	}
	if d.keep.barred != "" {
		return "The day was changed, and can't be saved: " + d.keep.barred + ". Leave?"
	}
	return "The day was changed, and isn't saved: Ctrl-S saves it. Leave?"
}
