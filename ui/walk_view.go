package ui

import (
	"fmt"
	"strings"
)

// View draws the walk over the whole screen: which changeover and how far, what is
// to be done now, what just happened, and the keys.
func (w *walk) View(m *model) []line {
	s := m.size
	var out []line
	if w.obscures(m) {
		return w.aside(m)
	}
	headed, room := w.rooms(s)
	if headed {
		out = append(out, w.head(m.desk, s.w).fit(s.w))
	}
	if text, _, _ := w.status(m); text != "" && s.h == 3 && w.shows(m.desk) { // the move on one line, the text on the other
		out = append(out, m.line().fit(s.w))
		room.h--
	}
	body := w.body(m, room)
	for i := range room.h {
		if i < len(body) {
			out = append(out, body[i].fit(s.w))
		} else {
			out = append(out, m.line().fit(s.w))
		}
	}
	out = w.over(m, out)
	if s.h >= 2 {
		out = append(out, w.keysLine(m, s.w))
	}
	return out
}

// rooms are whether there is room for the head, and the room between it and what stands
// below: the keys and, where there is room for that, what just happened.
func (w *walk) rooms(s size) (headed bool, room size) {
	room = size{s.w, s.h - min(s.h-1, 1)}
	if headed = s.h >= 4; headed {
		room.h--
	}
	if s.h >= 6 {
		room.h--
	}
	return headed, room
}

// over lays what just happened over the frame: on its last lines, or on its first where
// there are few, since the last tell what to do.
func (w *walk) over(m *model, out []line) []line {
	text, brief, ink := w.status(m)
	if m.h >= 6 {
		rows := m.rows(ink, fitted(text, brief, m.size), m.w, w.spare(m))
		return append(out[:len(out)+1-len(rows)], rows...)
	}
	if text != "" && m.h >= 3 {
		copy(out, m.rows(ink, fitted(text, brief, m.size), m.w, min(w.spare(m), len(out))))
	}
	return out
}

// shows reports whether a move is shown, that Enter ticks.
func (w *walk) shows(d *desk) bool {
	return w.warned && w.form == nil && w.ending == nil && w.o != nil && !w.refused() && w.move(d) != nil
}

// spare is on how many lines what just happened may be told: all but those that tell which
// holder goes from where to where, while such a move is shown.
func (w *walk) spare(m *model) int {
	headed, room := w.rooms(m.size)
	all := room.h + 1
	if headed {
		all++
	}
	switch {
	case !w.shows(m.desk) || m.asks:
		return all
	case m.h < 6:
		return 1
	}
	told := len(w.figures(m.desk, w.move(m.desk), room)) + 3 // from, to, by
	if told == 3 || m.w < 36 {
		told = 2 // see inFull
	}
	return max(room.h-told+1, 1)
}

// obscures reports whether what just happened takes more lines than there are beside the
// move shown. It has the screen to itself then, and the next key only puts it away: no
// key ticks a move that isn't seen.
func (w *walk) obscures(m *model) bool {
	text, brief, _ := w.status(m)
	if m.h < 3 || m.news.text == "" || m.asks || m.saving || !w.shows(m.desk) {
		return false
	}
	short := fitted(text, brief, m.size)
	return (short != brief || short == text) && len(m.wrap(m.safe(short), max(m.w-2, 1))) > w.spare(m)
}

// aside is the frame when it does.
func (w *walk) aside(m *model) []line {
	text, brief, ink := w.status(m)
	out := m.rows(ink, fitted(text, brief, m.size), m.w, m.h-1)
	for len(out) < m.h-1 {
		out = append(out, m.line().fit(m.w))
	}
	l := m.line()
	l.add(accent, fitting(m.w, " any key: the move", "any key: on", "any key"))
	return append(out, l.fit(m.w))
}

// fitted is a text, or the same in few words where there is little room for it.
func fitted(text, brief string, s size) string {
	if brief != "" && cells(text) > s.w-2 && (s.w < 40 || s.h < 12) {
		return brief
	}
	return text
}

// body is what is to be done now, in that many lines.
func (w *walk) body(m *model, s size) []line {
	switch {
	case w.ending != nil:
		return w.ending.view(w, m.desk, s.w)
	case w.form != nil:
		return w.form.view(m.desk, s)
	case !w.warned:
		return w.part(m.desk, w.cautions(m.desk, s), s)
	case w.o == nil:
		return w.texts(m.desk, s.w, span{faint, m.pending + " the rest is being planned from what stands"})
	case w.refused():
		return w.part(m.desk, w.stopped(m.desk, s.w), s)
	case w.move(m.desk) == nil:
		return w.part(m.desk, w.ended(m.desk, s), s)
	}
	return w.step(m.desk, s)
}

// part is what there is room for of a text that can be turned over line by line; a sign
// tells that there is more.
func (w *walk) part(d *desk, all []line, s size) []line {
	from := max(0, min(w.from, len(all)-s.h))
	if len(all) <= s.h || s.h < 2 {
		return all
	}
	out := all[from : from+s.h]
	if from+s.h < len(all) {
		more := d.line()
		more.add(faint, " "+d.more+" "+d.keyIn(right, onWalk|onCautions))
		out = append(out[:s.h-1:s.h-1], more)
	}
	return out
}

// beyond is how many lines of such a text there is no room for; 0 while a move is shown.
func (w *walk) beyond(m *model) int {
	_, s := w.rooms(m.size)
	switch {
	case !w.warned:
		return max(len(w.cautions(m.desk, s))-s.h, 0)
	case w.o == nil:
		return 0
	case w.refused():
		return max(len(w.stopped(m.desk, s.w))-s.h, 0)
	case w.move(m.desk) == nil:
		return max(len(w.ended(m.desk, s))-s.h, 0)
	}
	return 0
}

// texts are texts broken to the width.
func (w *walk) texts(d *desk, width int, all ...span) (out []line) {
	for _, t := range all {
		for i, row := range d.wrap(t.text, max(width-2-2*min(1, len(out)), 1)) {
			l := d.line()
			l.add(plain, blanks(1+2*min(i, 1)))
			l.add(t.ink, row)
			out = append(out, l)
		}
	}
	return out
}

// head tells which changeover, which move of how many, and how long the rest takes.
func (w *walk) head(d *desk, width int) line {
	made, ahead := len(w.made(d)), len(w.ahead(d))
	from := d.truth.stands.Job
	if j := w.running(d); j != nil {
		from = j.ID
	}
	if from == w.job.ID {
		from = ""
	}
	l := d.line()
	if width < 60 {
		l.add(strong, from+d.to+w.job.ID)
		l.add(faint, fmt.Sprintf(" %d/%d", min(made+1, made+ahead), made+ahead))
		if w.warned && w.look > 0 && ahead > 0 {
			l.add(late, fmt.Sprintf(" ahead %d", min(w.look, ahead-1)))
		} else if d.demo && l.width+6 <= width {
			l.add(late, "  DEMO")
		}
		return l
	}
	l.add(accent, " walk ")
	if from != "" {
		l.add(strong, " "+from+" "+d.to+" "+w.job.ID)
	} else {
		l.add(faint, " to")
		l.add(strong, " "+w.job.ID)
	}
	if d.demo {
		l.add(late, "  DEMO")
	}
	switch {
	case w.o == nil || w.refused():
	case ahead == 0:
		l.add(strong, fmt.Sprintf("   all %s made", count(made, "move")))
	default:
		l.add(strong, fmt.Sprintf("   move %d of %d", made+1, made+ahead))
		l.add(faint, fmt.Sprintf("   %d left, %s min", ahead, minutes(d.forecast.beam.Takes(w.ahead(d)))))
	}
	if room := width - l.width - 4; room >= 10 && made+ahead > 0 && w.o != nil && !w.refused() {
		bar := min(room, 40)
		done := bar * made / (made + ahead)
		l.to(width - bar - 1)
		l.add(moved, strings.Repeat(d.bar, done))
		l.add(faint, strings.Repeat(d.trim, bar-done))
	}
	return l
}

// status tells what isn't saved, before all; then what just happened. Both in few words
// too.
func (w *walk) status(m *model) (text, brief string, i ink) {
	switch {
	case m.asks:
		return m.question(), "", late
	case m.saving:
		return m.pending + " being saved", "", faint
	case m.unsaved != "":
		again := m.keyFor(saveAgain)
		return "NOT SAVED (" + again + " tries again): " + join("; ", m.unsaved, m.news.text), "NOT SAVED: " + again, late
	}
	if text, brief := m.outdated(); text != "" {
		return join("; ", m.news.text, text), brief, late
	}
	return m.news.text, m.news.brief, strong
}

// keysLine names the keys: the first whatever the width, then as many as there is
// room for.
func (w *walk) keysLine(m *model, width int) line {
	d, in := m.desk, m.scope()
	l := d.line()
	for _, b := range d.keyTable.all {
		if b.where&in == 0 || b.word == "" || !w.works(d, b.act) {
			continue
		}
		next := d.line()
		if l.width > 0 {
			next.add(plain, "  ")
		}
		next.add(accent, b.shown(d.look.ascii))
		next.add(faint, " "+b.word)
		if l.width > 0 && l.width+next.width > width {
			continue
		}
		l.join(next)
	}
	return l.fit(width)
}

// works reports whether a key is worth a place in the line of keys now.
func (w *walk) works(d *desk, a action) bool {
	left := len(w.ahead(d)) > 0
	switch a {
	case tickMove:
		return left
	case setUp:
		return w.o != nil && !w.refused() && !left
	case untickMove:
		return w.backable(d)
	case saveAgain:
		return d.owes()
	}
	return true
}

// stopped tells why the job can't be set up from what stands.
func (w *walk) stopped(d *desk, width int) []line {
	all := []span{{late, "x " + w.job.ID + " can't be set up from what stands:"}}
	for _, f := range w.o.faults {
		all = append(all, span{plain, f.Why(d.shop.Unit)})
	}
	if w.backable(d) {
		all = append(all, span{faint, d.keyFor(untickMove) + " takes back what was told last."})
	}
	return w.texts(d, width, append(all, span{faint, d.keyFor(trouble) + " marks a holder good again, " + d.keyFor(asFound) + " tells where one really stands."},
		span{faint, d.keyFor(back) + " goes back to the day; there " + w.job.ID + " can be set aside, and the walk is to the next. All ticks are kept."})...)
}
