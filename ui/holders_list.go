package ui

import (
	"fmt"
	"strings"

	"bide/plan"
)

// holderLines are the head and n of the list's rows from the given one on.
func (p *holdersPane) holderLines(d *desk, from, n int, focused bool) []line {
	rows := p.rows(d, focused)
	before, strip, after := p.columns(d)
	out := []line{p.heads(d, before, strip, after)}
	for _, r := range rows[min(from, len(rows)):min(from+n, len(rows))] {
		l := rowOf(d.look, before, r)
		l.add(plain, " ")
		l.join(strip.row(r))
		if len(after) > 0 {
			l.add(plain, " ")
			l.join(rowOf(d.look, after, r))
		}
		out = append(out, l)
	}
	if len(rows) == 0 {
		l := d.line()
		l.add(faint, " no holder has all of these words; / changes them")
		out = append(out, l)
	}
	return out
}

// columns are those to the left of the strip, the strip, and those to its right. The
// strip has one cell a job, where there is room for all.
func (p *holdersPane) columns(d *desk) (before []column[holderRow], s strip, after []column[holderRow]) {
	all := holderColumns(d)
	const beside = 6 // columns before the strip
	least := min(len(d.jobs()), max(p.w/4, 1))
	shown := columnsFor(all, max(p.w-least-1, 1))
	for _, c := range shown {
		if slot := columnAt(all, c.head); slot < beside {
			before = append(before, c)
		} else {
			after = append(after, c)
		}
	}
	room := p.w - widthOf(before) - 1
	if len(after) > 0 {
		room -= widthOf(after) + 1
	}
	s = strip{desk: d, width: max(min(room, len(d.jobs())), 0)}
	s.from = window(d.turn, len(d.jobs()), s.width)
	return before, s, after
}

// columnAt is the place of a column among all by its head.
func columnAt(all []column[holderRow], head string) int {
	for i, c := range all {
		if c.head == head {
			return i
		}
	}
	return 0
}

// widthOf is how wide columns are with one between any two.
func widthOf(columns []column[holderRow]) int {
	w := len(columns) - 1
	for _, c := range columns {
		w += c.width
	}
	return max(w, 0)
}

// heads is the line of heads; above the strip it numbers the turns.
func (p *holdersPane) heads(d *desk, before []column[holderRow], s strip, after []column[holderRow]) line {
	l := heads(d.look, before)
	l.add(plain, " ")
	l.join(s.head())
	if len(after) > 0 {
		l.add(plain, " ")
		l.join(heads(d.look, after))
	}
	return l
}

// holderColumns are all columns of the list.
func holderColumns(d *desk) []column[holderRow] {
	places := ruler{unit: d.shop.Unit}
	for n := 1; n <= len(d.forecast.beam.Holders); n++ {
		places.fineAs(d.stands(n))
	}
	wide := len("stands")
	for n := 1; n <= len(d.forecast.beam.Holders); n++ {
		wide = max(wide, len(places.number(d.stands(n))))
	}
	of := func(i ink, text func(holderRow) string) func(holderRow) (ink, string) {
		return func(r holderRow) (ink, string) {
			if r.picked() {
				return picked, text(r)
			}
			return i, text(r)
		}
	}
	return []column[holderRow]{
		{width: 1, left: true, cell: holderRow.cursor},
		{head: "n", width: 3, cell: of(strong, func(r holderRow) string { return fmt.Sprint(r.number) })},
		{head: "", width: 1, left: true, cell: holderRow.flag},
		{head: "state", width: 6, rank: 4, left: true, cell: holderRow.state},
		{head: "stands", width: wide, rank: 1, cell: of(plain, func(r holderRow) string { return places.number(r.stands(r.number)) })},
		{head: "does", width: 7, rank: 2, left: true, cell: of(plain, holderRow.does)},
		{head: "idle", width: 5, rank: 1, cell: of(plain, holderRow.idleText)},
		{head: "next", width: d.idWidth() + 1 + d.clockWidth(), rank: 3, left: true, cell: of(plain, holderRow.nextText)},
		{head: "moves", width: 5, rank: 2, cell: of(moved, holderRow.movesText)},
		{head: "m today", width: 7, rank: 2, cell: of(plain, holderRow.metresText)},
		{head: "travel", width: 7, rank: 5, cell: of(faint, holderRow.travelText)},
		{head: "blade", width: 8, rank: 6, left: true, cell: of(faint, holderRow.blade)},
		{head: "edge m", width: 7, rank: 7, cell: of(faint, holderRow.edgeText)},
		{head: "jams", width: 4, rank: 8, cell: of(late, holderRow.jamsText)},
	}
}

// stands is where a holder stands now.
func (d *desk) stands(number int) plan.Length { return d.start.stands.At[number-1] }

func (r holderRow) picked() bool { return r.number == r.atHolder() }

func (r holderRow) cursor() (ink, string) {
	switch {
	case !r.picked():
		return plain, ""
	case r.focused:
		return picked, r.look.cursor
	}
	return picked, r.cursorBy
}

// flag is the letter of its condition, as beside its number on the beam.
func (r holderRow) flag() (ink, string) {
	return late, [...]string{plan.Good: "", plan.NoCut: "n", plan.Stuck: "s", plan.Out: "o"}[r.condition]
}

func (r holderRow) state() (ink, string) {
	if r.condition == plan.Good {
		return faint, r.condition.String()
	}
	return late, r.condition.String()
}

// idleText is how long it is idle around the picked job.
func (r holderRow) idleText() string {
	if r.stint == nil || r.stint.Use == plan.Cutting {
		return ""
	}
	return hours(r.idle)
}

// nextText is the job that needs it next, and when that is set up.
func (r holderRow) nextText() string {
	switch {
	case r.usage == nil:
		return r.pending
	case r.next == r.turn:
		return "now"
	case r.next >= 0:
		id := r.short(r.jobs()[r.next].ID, r.idWidth())
		return id + blanks(r.idWidth()-cells(id)+1) + r.at(r.outcome(r.next).step.SetupStart)
	case !r.present.whole():
		return r.pending
	case r.usage.Never():
		return "never"
	}
	return "no more"
}

func (r holderRow) movesText() string {
	if r.movesToday() == 0 {
		return ""
	}
	return fmt.Sprint(r.movesToday())
}

func (r holderRow) metresText() string {
	if r.metresToday() == 0 {
		return ""
	}
	return fmt.Sprintf("%.0f", r.metresToday())
}

func (r holderRow) travelText() string {
	if r.movesToday() == 0 {
		return ""
	}
	return r.travel(r.usage.Travel)
}

// edgeText is what its edge had cut at the start of the day.
func (r holderRow) edgeText() string {
	if metres, known := r.worn(); known {
		return fmt.Sprintf("%.0f", metres)
	}
	return ""
}

// jamsText is how often the record has it stuck.
func (r holderRow) jamsText() string {
	if w := r.wearOf(r.number); w != nil && w.Jams > 0 {
		return fmt.Sprint(w.Jams)
	}
	return ""
}

// strip shows what a holder does in each job, one cell a job.
type strip struct {
	*desk
	from, width int // turns shown
}

// The marks of a strip; what moved to be there has a mark of its own.
const (
	stripCuts, stripMovedCuts   = "|", "X"
	stripRests, stripMovedRests = ".", "+"
	stripParks, stripMovedParks = "_", "="
	stripRefused, stripUnknown  = "x", "?"
)

// head numbers the turns, every fifth of them, and marks the picked one.
func (s strip) head() line {
	row := []rune(blanks(s.width))
	for c := 0; c < s.width; c++ {
		if turn := s.from + c + 1; turn == 1 || turn%5 == 0 {
			if n := fmt.Sprint(turn); c+len(n) <= s.width && strings.TrimSpace(string(row[max(c-1, 0):c+len(n)])) == "" {
				copy(row[c:], []rune(n))
			}
		}
	}
	l := s.line()
	at := s.turn - s.from
	if at < 0 || at >= s.width {
		l.add(head, string(row))
		return l
	}
	l.add(head, string(row[:at]))
	l.add(picked, s.aim)
	l.add(head, string(row[at+1:]))
	return l
}

// row is a holder's strip.
func (s strip) row(r holderRow) line {
	l, use := s.line(), s.use()
	for t := s.from; t < s.from+s.width; t++ {
		switch step := use.step(t); {
		case t >= len(use.steps):
			l.add(faint, stripUnknown)
		case step < 0:
			l.add(late, stripRefused)
		default:
			l.add(s.mark(&r.usage.Stints[step]))
		}
	}
	return l
}

// mark is one cell of a strip.
func (s strip) mark(st *plan.Stint) (ink, string) {
	marks, idle := [2]string{stripCuts, stripMovedCuts}, faint
	switch st.Use {
	case plan.Cutting:
		idle = strong
	case plan.Resting:
		marks = [2]string{stripRests, stripMovedRests}
	case plan.Parked:
		marks = [2]string{stripParks, stripMovedParks}
	}
	if st.Way != 0 {
		return moved, marks[1]
	}
	return idle, marks[0]
}
