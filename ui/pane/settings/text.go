package settings

import (
	"fmt"

	"bide/material"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// text is the settings of a job growing line by line.
type text struct {
	*pane.Shared
	w   int
	out []draw.Line
}

const (
	settingsIndent = 18  // of what stands behind a name
	sideBySide     = 110 // cells from which the why stands beside what it is of
)

// chapter begins a chapter, after a blank line.
func (t *text) chapter(name, about string) {
	if len(t.out) > 0 {
		t.out = append(t.out, t.Line())
	}
	l := t.Line()
	l.Add(draw.Accent, " "+name)
	if about != "" {
		l.Add(draw.Faint, " "+about)
	}
	t.out = append(t.out, l.Fit(t.w))
}

// para adds a text over the whole width.
func (t *text) para(i draw.Style, text string) { t.entry(draw.Plain, "", 1, i, text) }

// entry adds a text, broken, behind a name in so many cells.
func (t *text) entry(names draw.Style, name string, indent int, i draw.Style, text string) {
	for n, row := range t.Wrap(text, max(t.w-indent-1, 1)) {
		l := t.Line()
		if n == 0 && name != "" {
			l.Add(draw.Plain, " ")
			l.Left(names, name, max(indent-2, 1))
		}
		l.To(indent)
		l.Add(i, row)
		t.out = append(t.out, l)
	}
}

// pair adds a name, what is set, and why: side by side where there is room.
func (t *text) pair(names draw.Style, name string, values draw.Style, value, why string) {
	const column = 44
	if t.w < sideBySide || why == "" {
		t.entry(names, name, settingsIndent, values, value)
		if why != "" {
			t.entry(draw.Plain, "", settingsIndent, draw.Faint, why)
		}
		return
	}
	left, right := t.Wrap(value, column-2), t.Wrap(why, t.w-settingsIndent-column-1)
	for n := range max(len(left), len(right)) {
		l := t.Line()
		if n == 0 {
			l.Add(draw.Plain, " ")
			l.Left(names, name, settingsIndent-2)
		}
		l.To(settingsIndent)
		if n < len(left) {
			l.Add(values, left[n])
		}
		l.To(settingsIndent + column)
		if n < len(right) {
			l.Add(draw.Faint, right[n])
		}
		t.out = append(t.out, l)
	}
}

// glance is one sentence on what is set.
func (t *text) glance(s *material.Settings) {
	t.para(draw.Strong, fmt.Sprintf("%s; %.0f m/min (%.0f ft/min)", pane.SetWords(s), s.Speed.Speed, material.Feet(s.Speed.Speed)))
}

// changes is what is set otherwise than for the job before.
func (t *text) changes(k *material.Turn, o *planning.Outcome) {
	if o == nil || len(o.Faults) > 0 {
		return
	}
	switch {
	case k.Before == "":
		t.chapter("Changes", "what ran before is not known")
	default:
		t.chapter("Changes against "+k.Before, "")
	}
	if len(k.Changes) == 0 {
		t.para(draw.Plain, "nothing at the knife changes")
	}
	for _, c := range k.Changes {
		t.pair(draw.Moved, string(c.ID), draw.Plain, c.From+" "+t.To+" "+c.To, c.Do)
	}
}

// settings is every setting, with why and its source.
func (t *text) settings(s *material.Settings) {
	t.chapter("What to set", "starting values for a trial; [source]")
	for _, l := range s.Lines {
		t.pair(draw.Strong, string(l.ID), draw.Plain, l.Value, words.Join(" ", l.Why, "["+l.Source+"]"))
	}
}

// force is one for people.
func force(n float64) string {
	if n >= 1e4 {
		return fmt.Sprintf("%.1f kN (%.0f lbf)", n/1000, material.Pounds(n))
	}
	return fmt.Sprintf("%.0f N (%.0f lbf)", n, material.Pounds(n))
}
