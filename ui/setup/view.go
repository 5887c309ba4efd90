package setup

import (
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// View draws the guided setup over the whole screen: which changeover and how far, what is
// to be done now, what just happened, and the keys.
func (w *Page) View(d *pane.Shared) []draw.Line {
	s := d.Size
	var out []draw.Line
	if w.Obscures(d) {
		return w.message(d)
	}
	headed, room := rooms(s)
	if headed {
		out = append(out, w.head(d, s.W).Fit(s.W))
	}
	if text, _, _ := w.status(d); text != "" && s.H == 3 && w.shows() { // the move on one line, the text on the other
		out = append(out, d.Line().Fit(s.W))
		room.H--
	}
	body := w.body(d, room)
	for i := range room.H {
		if i < len(body) {
			out = append(out, body[i].Fit(s.W))
		} else {
			out = append(out, d.Line().Fit(s.W))
		}
	}
	out = w.over(d, out)
	if s.H >= 2 {
		out = append(out, w.keysLine(d, s.W))
	}
	return out
}

// rooms are whether there is room for the head, and the room between it and what stands
// below: the keys and, where there is room for that, what just happened.
func rooms(s draw.Size) (headed bool, room draw.Size) {
	room = draw.Size{W: s.W, H: s.H - min(s.H-1, 1)}
	if headed = s.H >= 4; headed {
		room.H--
	}
	if s.H >= 6 {
		room.H--
	}
	return headed, room
}

// over lays what just happened over the frame: on its last lines, or on its first where
// there are few, since the last tell what to do.
func (w *Page) over(d *pane.Shared, out []draw.Line) []draw.Line {
	text, brief, ink := w.status(d)
	if d.H >= 6 {
		rows := d.Rows(ink, pane.FitMessage(text, brief, d.Size), d.W, w.spare(d))
		return append(out[:len(out)+1-len(rows)], rows...)
	}
	if text != "" && d.H >= 3 {
		copy(out, d.Rows(ink, pane.FitMessage(text, brief, d.Size), d.W, min(w.spare(d), len(out))))
	}
	return out
}

// shows reports whether a move is shown, that Enter confirms.
func (w *Page) shows() bool {
	return w.Warned && w.form == nil && w.Ending == nil && w.Plan != nil && !w.Refused() && w.Move() != nil
}

// spare is on how many lines what just happened may be shown: all but those that show which
// holder goes from where to where, while such a move is shown.
func (w *Page) spare(d *pane.Shared) int {
	headed, room := rooms(d.Size)
	all := room.H + 1
	if headed {
		all++
	}
	switch {
	case !w.shows() || d.AsksToQuit:
		return all
	case d.H < 6:
		return 1
	}
	lines := len(figures(w, d, w.Move(), room)) + 3 // from, to, by
	if lines == 3 || d.W < 36 {
		lines = 2 // see pane.MoveInFull
	}
	return max(room.H-lines+1, 1)
}

// Obscures reports whether what just happened takes more lines than there are beside the
// move shown. It has the screen to itself then, and the next key only puts it away: no
// key confirms a move that isn't seen.
func (w *Page) Obscures(d *pane.Shared) bool {
	text, brief, _ := w.status(d)
	if d.H < 3 || d.Notice.Text == "" || d.AsksToQuit || d.Saving.Busy() || !w.shows() {
		return false
	}
	short := pane.FitMessage(text, brief, d.Size)
	return (short != brief || short == text) && len(d.Wrap(d.Safe(short), max(d.W-2, 1))) > w.spare(d)
}

// message is the frame when it does.
func (w *Page) message(d *pane.Shared) []draw.Line {
	text, brief, ink := w.status(d)
	out := d.Rows(ink, pane.FitMessage(text, brief, d.Size), d.W, d.H-1)
	for len(out) < d.H-1 {
		out = append(out, d.Line().Fit(d.W))
	}
	l := d.Line()
	l.Add(draw.Accent, draw.Fitting(d.W, " any key: the move", "any key: on", "any key"))
	return append(out, l.Fit(d.W))
}

// body is what is to be done now, in that many lines.
func (w *Page) body(d *pane.Shared, s draw.Size) []draw.Line {
	switch {
	case w.Ending != nil:
		return asking(w, d, s.W)
	case w.form != nil:
		return w.form.view(d, s)
	case !w.Warned:
		return w.part(d, w.cautions(d, s), s)
	case w.Plan == nil:
		return texts(d, s.W, draw.Span{Style: draw.Faint, Text: d.Pending + " planning the rest from the current positions"})
	case w.Refused():
		return w.part(d, stopped(w, d, s.W), s)
	case w.Move() == nil:
		return w.part(d, w.ended(d, s), s)
	}
	return w.step(d, s)
}

// part is what there is room for of a text that can be turned over line by line; a sign
// tells that there is more.
func (w *Page) part(d *pane.Shared, all []draw.Line, s draw.Size) []draw.Line {
	from := max(0, min(w.from, len(all)-s.H))
	if len(all) <= s.H || s.H < 2 {
		return all
	}
	out := all[from : from+s.H]
	if from+s.H < len(all) {
		more := d.Line()
		more.Add(draw.Faint, " "+d.More+" "+d.KeyIn(keys.Right, keys.OnSetup|keys.OnCautions))
		out = append(out[:s.H-1:s.H-1], more)
	}
	return out
}

// beyond is how many lines of such a text there is no room for; 0 while a move is shown.
func (w *Page) beyond(d *pane.Shared) int {
	_, s := rooms(d.Size)
	switch {
	case !w.Warned:
		return max(len(w.cautions(d, s))-s.H, 0)
	case w.Plan == nil:
		return 0
	case w.Refused():
		return max(len(stopped(w, d, s.W))-s.H, 0)
	case w.Move() == nil:
		return max(len(w.ended(d, s))-s.H, 0)
	}
	return 0
}

// texts are texts broken to the width.
func texts(d *pane.Shared, width int, all ...draw.Span) (out []draw.Line) {
	for _, t := range all {
		for i, row := range d.Wrap(t.Text, max(width-2-2*min(1, len(out)), 1)) {
			l := d.Line()
			l.Add(draw.Plain, draw.Blanks(1+2*min(i, 1)))
			l.Add(t.Style, row)
			out = append(out, l)
		}
	}
	return out
}

// stopped tells why the job can't be set up from the positions now.
func stopped(w *Page, d *pane.Shared, width int) []draw.Line {
	all := []draw.Span{{Style: draw.Late, Text: "x " + w.Job.ID + " can't be set up from the current positions:"}}
	for _, f := range w.Plan.Faults {
		all = append(all, draw.Span{Style: draw.Plain, Text: f.Why(d.Shop.Unit)})
	}
	if w.Undoable {
		all = append(all, draw.Span{Style: draw.Faint, Text: d.KeyFor(keys.TakeBack) + " undoes the last entry."})
	}
	return texts(d, width, append(all, draw.Span{Style: draw.Faint, Text: d.KeyFor(keys.Fault) + " sets a holder's condition, " + d.KeyFor(keys.Correct) + " corrects a position."},
		draw.Span{Style: draw.Faint, Text: d.KeyFor(keys.Back) + " goes back to the day; there " + w.Job.ID + " can be put on hold, and the setup is then of the next job. All confirmed moves are kept."})...)
}
