package form

import "bide/ui/draw"

// Form is several fields, of which one is typed into.
type Form struct {
	Fields []Field
	At     int // the field that is typed into
}

// Open is the field that is typed into.
func (f *Form) Open() *Field { return &f.Fields[f.At] }

// Go opens a field, the first behind the last, with the caret behind its text. What is
// proposed in the one that is left is kept.
func (f *Form) Go(to int) {
	n := len(f.Fields)
	if to = (to + n) % n; to != f.At {
		f.Open().Proposed = false
	}
	f.At = to
	f.Open().line.CursorEnd()
}

// Field is the one with a key; nil when there is none.
func (f *Form) Field(key string) *Field {
	for i := range f.Fields {
		if f.Fields[i].Key == key {
			return &f.Fields[i]
		}
	}
	return nil
}

// Row draws a field in a line of w cells: the cursor where it is typed into, its label, its
// text and, with what room is left but at least so many cells, a note.
func (f *Form) Row(k *draw.Theme, i, label, w int, note draw.Span, least int) draw.Line {
	l, in, open := k.Line(), &f.Fields[i], i == f.At
	ink := draw.Faint
	if open {
		l.Add(draw.Picked, k.Cursor)
		ink = draw.Picked
	}
	l.To(2)
	l.Left(ink, in.Label, label)
	l.To(2 + label)
	room := w - l.Width - 1
	if least > 0 {
		room = min(max(room/2, min(room, draw.CellWidth(in.Value())+4)), room+1-least)
	}
	in.Draw(k, &l, room, open)
	if note.Text != "" {
		l.Add(draw.Plain, " ")
		l.Add(note.Style, k.Short(note.Text, w-l.Width))
	}
	return l
}
