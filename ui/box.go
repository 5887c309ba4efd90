package ui

import "strings"

// size is a width and a height in cells.
type size struct{ w, h int }

// box makes a pane exactly w by h: a rule with the pane's name and what it shows,
// then its lines, clipped or filled up. The rule of the pane that has the keys is
// heavy, and its name marked.
func box(k *look, name string, title line, body []line, s size, focused bool) []line {
	if s.w <= 0 || s.h <= 0 {
		return nil
	}
	out := make([]line, 0, s.h)
	out = append(out, heading(k, name, title, s.w, focused))
	for _, l := range body[:min(len(body), s.h-1)] {
		out = append(out, l.fit(s.w))
	}
	for len(out) < s.h {
		out = append(out, k.line().fit(s.w))
	}
	return out
}

// heading is the rule above a pane.
func heading(k *look, name string, title line, w int, focused bool) line {
	glyph, lines, names := k.rule, faint, plain
	if focused {
		glyph, lines, names = k.focusRule, accent, accent
	}
	l := k.line()
	l.add(lines, glyph+glyph)
	if focused {
		l.add(names, k.cursor+name+" ")
	} else {
		l.add(names, " "+name+" ")
	}
	if title.width > 0 && l.width < w {
		l.join(title.fit(min(title.width, w-l.width-1)))
		l.add(plain, " ")
	}
	l.add(lines, strings.Repeat(glyph, max(w-l.width, 0)))
	return l.fit(w)
}
