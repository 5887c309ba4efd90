package draw

// Fitting is the first of the texts that fits into w cells, else the last.
func Fitting(w int, texts ...string) string {
	for _, text := range texts {
		if CellWidth(text) <= w {
			return text
		}
	}
	return texts[len(texts)-1]
}

// Pick is the cursor's ink, or another.
func Pick(yes bool, other Style) Style {
	if yes {
		return Picked
	}
	return other
}

// RowCursor marks the picked row of a list, in a pane without the keys less.
func (k *Theme) RowCursor(picked, focused bool) (Style, string) {
	switch {
	case !picked:
		return Plain, ""
	case focused:
		return Picked, k.Cursor
	}
	return Picked, k.CursorBy
}

// Paragraphs are texts broken to a width, in exactly as many lines as there is room
// for, what follows a first line indented.
func Paragraphs(k *Theme, spans []Span, s Size) []Line {
	out := make([]Line, 0, s.H)
	for _, sp := range spans {
		for i, text := range k.Wrap(sp.Text, max(s.W-3, 1)) {
			if len(out) == s.H {
				return out
			}
			l := k.Line()
			l.Add(Plain, Blanks(1+min(i, 1)*2))
			l.Add(sp.Style, text)
			out = append(out, l)
		}
	}
	for len(out) < s.H {
		out = append(out, k.Line())
	}
	return out
}
