package draw

import "strings"

// Size is a width and a height in cells.
type Size struct{ W, H int }

// Box makes a pane exactly w by h: a rule with the pane's name and what it shows,
// then its lines, clipped or filled up. The rule of the pane that has the keys is
// heavy, and its name marked.
func Box(k *Theme, name string, title Line, body []Line, s Size, focused bool) []Line {
	if s.W <= 0 || s.H <= 0 {
		return nil
	}
	out := make([]Line, 0, s.H)
	out = append(out, Heading(k, name, title, s.W, focused))
	for _, l := range body[:min(len(body), s.H-1)] {
		out = append(out, l.Fit(s.W))
	}
	for len(out) < s.H {
		out = append(out, k.Line().Fit(s.W))
	}
	return out
}

// Heading is the rule above a pane.
func Heading(k *Theme, name string, title Line, w int, focused bool) Line {
	glyph, lines, names := k.Rule, Faint, Plain
	if focused {
		glyph, lines, names = k.focusRule, Accent, Accent
	}
	l := k.Line()
	l.Add(lines, glyph+glyph)
	if focused {
		l.Add(names, k.Cursor+name+" ")
	} else {
		l.Add(names, " "+name+" ")
	}
	if title.Width > 0 && l.Width < w {
		l.Join(title.Fit(min(title.Width, w-l.Width-1)))
		l.Add(Plain, " ")
	}
	l.Add(lines, strings.Repeat(glyph, max(w-l.Width, 0)))
	return l.Fit(w)
}
