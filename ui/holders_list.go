package ui

import (
	"fmt"

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
	all := p.all(d)
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
	return before, newStrip(d, room), after
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

// all are all columns of the list; what it is sorted by doesn't go where it is narrow.
func (p *holdersPane) all(d *desk) []column[holderRow] {
	places := ruler{unit: d.shop.Unit}
	for n := 1; n <= len(d.forecast.beam.Holders); n++ {
		places.fineAs(d.stands(n))
	}
	ways := ruler{unit: d.shop.Unit}
	for i := range d.use().holders {
		ways.fineAs(d.used.holders[i].Travel)
	}
	wide := len("stands")
	for n := 1; n <= len(d.forecast.beam.Holders); n++ {
		wide = max(wide, len(places.number(d.stands(n))))
	}
	edge := 7
	if p.by == byEdge {
		edge = 1
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
		{head: "way, " + d.shop.Unit.String(), width: 8, rank: 5, cell: of(faint, func(r holderRow) string { return r.wayText(ways) })},
		{head: "blade", width: 8, rank: 6, left: true, cell: of(faint, holderRow.blade)},
		{head: "edge m", width: 7, rank: edge, cell: of(faint, holderRow.edgeText)},
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

// wayText is how far it is moved in all.
func (r holderRow) wayText(in ruler) string {
	if r.movesToday() == 0 {
		return ""
	}
	return in.number(r.usage.Travel)
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
