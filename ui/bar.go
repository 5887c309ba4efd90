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
	switch {
	case m.changed():
		l.add(late, "  * not saved")
	case m.aside != "":
		l.add(late, "  * kept in "+m.aside)
	}
	if c, open := m.over.(*compare); m.offer != nil && !(open && c.offered() != nil) {
		l.add(good, "  * an order waits: "+m.keyFor(compareOrders))
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
			text = "planning the jobs together"
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
