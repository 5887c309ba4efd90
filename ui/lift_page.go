package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
)

// gapRow is one gap of a lifted job.
type gapRow struct {
	*lift
	d           *desk
	gap         int
	best        int
	least, most time.Duration // of all gaps
}

// gapFigure makes a cell of what the gap costs; a figure that is only about that is
// faint, and marked beside it.
func gapFigure(i ink, text func(r gapRow, s plan.Slip) string) func(gapRow) (ink, string) {
	return func(r gapRow) (ink, string) {
		c, known := r.cost(r.gap)
		switch {
		case !known && r.seen:
			return faint, ""
		case !known:
			return faint, r.d.pending
		case !c.settled && i != late:
			return pick(r.on(), faint), text(r, c.Slip)
		}
		return pick(r.on(), i), text(r, c.Slip)
	}
}

// on reports whether the gap is the picked one.
func (r gapRow) on() bool { return r.gap == r.lift.gap }

// mark tells, of a gap, that nothing can be dropped there, that a rule is broken or
// something refused there, or that it costs least.
func (r gapRow) mark() (ink, string) {
	c, known := r.cost(r.gap)
	switch {
	case r.barred(r.gap) || known && len(c.Refused) > 0:
		return late, "x"
	case known && len(c.Broken) > 0:
		return late, "!"
	case known && r.gap == r.best:
		return good, "*"
	}
	return plain, ""
}

// about marks a figure that isn't settled yet.
func (r gapRow) about() (ink, string) {
	if c, known := r.cost(r.gap); known && !c.settled {
		return pick(r.on(), faint), "~"
	}
	return plain, ""
}

// where names a gap by its neighbours.
func (l *lift) where(gap int) string {
	text := "first"
	if gap > 0 {
		text = "after " + l.rest[gap-1].ID
	}
	if gap == l.was {
		text += " (now)"
	}
	return text
}

// gapColumns are those of the list of gaps.
func (l *lift) gapColumns() []column[gapRow] {
	where := 0
	for gap := range len(l.rest) + 1 {
		where = max(where, cells(l.where(gap)))
	}
	return []column[gapRow]{
		{width: 1, left: true, cell: func(r gapRow) (ink, string) {
			if r.on() {
				return picked, r.d.cursor
			}
			return plain, ""
		}},
		{head: "n", width: 3, cell: func(r gapRow) (ink, string) { return pick(r.on(), faint), fmt.Sprint(r.gap + 1) }},
		{width: 1, left: true, cell: gapRow.mark},
		{head: "where", width: min(where, 24), left: true, cell: func(r gapRow) (ink, string) { return pick(r.on(), plain), r.where(r.gap) }},
		{width: 1, left: true, cell: gapRow.about},
		{head: "+/- min", width: 7, cell: gapFigure(strong, func(r gapRow, s plan.Slip) string { return sameOr(signedMinutes(s.Setup)) })},
		{head: "+/- moves", width: 9, cell: gapFigure(moved, func(r gapRow, s plan.Slip) string { return more(s.Repositions) })},
		{head: "+/- late", width: 10, left: true, flex: 30, cell: gapRow.late},
		{head: "day min", width: 7, rank: 1, cell: gapFigure(plain, func(r gapRow, s plan.Slip) string { return minutes(s.Totals.Setup) })},
		{head: "moves", width: 5, rank: 1, cell: gapFigure(plain, func(r gapRow, s plan.Slip) string { return fmt.Sprint(s.Totals.Repositions) })},
		{head: "late", width: 7, rank: 2, left: true, cell: gapFigure(late, func(r gapRow, s plan.Slip) string { return lateness(s.Totals.Late) })},
		{head: "min above the least", width: barWidth, rank: 3, left: true, cell: gapFigure(moved, gapRow.bar)},
	}
}

// bar shows what a gap costs more than the one that takes least setup.
func (r gapRow) bar(s plan.Slip) string {
	n := int(((s.Setup-r.least)*barWidth + (r.most-r.least)/2) / max(r.most-r.least, 1))
	return strings.Repeat(r.d.glyphs.bar, n)
}

// late tells what becomes late: how much in all, and which jobs.
func (r gapRow) late() (ink, string) {
	c, _ := r.cost(r.gap)
	if c.LateBy < 0 && len(c.Late) == 0 {
		return gapFigure(good, func(gapRow, plan.Slip) string { return "-" + hours(-c.LateBy) })(r)
	}
	return gapFigure(late, func(gapRow, plan.Slip) string {
		text := ""
		switch {
		case c.LateBy > 0:
			text = "!+" + hours(c.LateBy)
		case c.LateBy < 0:
			text = "-" + hours(-c.LateBy)
		}
		return join(" ", text, jobList(c.Late))
	})(r)
}

// jobList names jobs.
func jobList(jobs []*plan.Job) string {
	var names []string
	for _, j := range jobs {
		names = append(names, j.ID)
	}
	return strings.Join(names, ", ")
}

// View draws the gaps, and about the picked one what it would do.
func (l *lift) View(m *model) []line {
	s := m.pageSize()
	detail := max(min((s.h-2)/3, 5), 0)
	n := max(s.h-2-detail, 0)
	columns := columnsFor(l.gapColumns(), s.w)
	body := []line{heads(m.look, columns)}
	row := gapRow{lift: l, d: m.desk, best: l.best()}
	for _, c := range l.costs {
		row.least, row.most = min(row.least, c.Setup), max(row.most, c.Setup)
	}
	from := window(l.gap, len(l.rest)+1, n)
	for row.gap = from; row.gap < min(from+n, len(l.rest)+1); row.gap++ {
		body = append(body, rowOf(m.look, columns, row))
	}
	for len(body) < 1+n {
		body = append(body, m.line())
	}
	body = append(body, paragraphs(m.look, l.says(m.desk), size{s.w, detail})...)
	title := m.line()
	if text := some(from, n, len(l.rest)+1); text != "" {
		title.add(faint, text+"  ")
	}
	name := "Lift " + m.safe(l.job.ID)
	title.join(l.state(m, s.w-cells("-->  ")-cells(name)-title.width))
	return m.page(name, title, body, onLift)
}

// state tells how exact the figures are, what is being settled first, and what they are
// against where there is room.
func (l *lift) state(m *model, w int) line {
	t := m.line()
	t.add(plain, " ")
	gaps, settled := len(l.rest)+1, 0
	for _, c := range l.costs {
		if c.settled {
			settled++
		}
	}
	switch {
	case len(l.costs) < gaps && !l.seen:
		t.add(accent, fmt.Sprintf("%d of %d seen at first sight", len(l.costs), gaps))
	case settled < gaps:
		text := fmt.Sprintf("%d of %d to be settled", gaps-settled, gaps)
		if gap := slices.Index(l.steps, l.settling); gap >= 0 {
			text = fmt.Sprintf("gap %d is being settled, %d of %d to go", gap+1, gaps-settled, gaps)
		}
		t.add(accent, text)
		t.add(faint, "  ~ about")
	default:
		t.add(good, "all are settled")
	}
	t.add(faint, fitting(w-t.width, "  +/- against where it is now", "  +/- against now", ""))
	return t
}

// says tells of the picked gap what the row has no room for.
func (l *lift) says(d *desk) (out []span) {
	say := func(i ink, format string, args ...any) { out = append(out, span{i, fmt.Sprintf(format, args...)}) }
	c, known := l.cost(l.gap)
	switch {
	case l.barred(l.gap):
		say(late, "x %s is running: nothing can come before it", l.rest[l.gap].ID)
		return out
	case !known:
		say(faint, "the day with it there is being worked out")
		return out
	}
	for _, b := range c.Broken {
		say(late, "! %s", b.Why(d.shop.Unit))
	}
	for _, r := range c.Refused {
		say(late, "x %s would be refused: %s", r.Job.ID, r.Faults[0].Why(d.shop.Unit))
	}
	if len(c.Late) > 0 {
		say(late, "late there and not now: %s", jobList(c.Late))
	}
	about := "about "
	if c.settled {
		about = ""
	}
	switch {
	case l.gap == l.was:
		say(plain, "this is where it is now: the day has %s%s", about, totalWords(c.Totals))
	case c.settled:
		say(plain, "dropped here, against where it is now: %s", costWords(c.Slip))
		say(plain, "the day then has exactly %s", totalWords(c.Totals))
	default:
		say(plain, "dropped here, against where it is now: about %s", costWords(c.Slip))
	}
	if !c.settled {
		say(faint, "about: job by job, at first sight; the day together is still to be settled")
	}
	if l.out.settled == c.settled {
		out = append(out, span{faint, "left out, against this: " + about + costWords(l.out.lessThan(c))})
	}
	return out
}

// lessThan is what a day costs against that of another gap, both against the day as it
// is now.
func (c gapCost) lessThan(of gapCost) plan.Slip {
	out := c.Slip
	out.Setup -= of.Setup
	out.Repositions -= of.Repositions
	out.LateBy -= of.LateBy
	return out
}

// totalWords tell what a day costs.
func totalWords(t plan.Totals) string {
	return fmt.Sprintf("%s min of setup, %s, %s", minutes(t.Setup), count(t.Repositions, "move"), lateWords(t))
}

// lateWords tell how late a day is.
func lateWords(t plan.Totals) string {
	if t.LateJobs == 0 {
		return "none late"
	}
	return fmt.Sprintf("%s late (%s)", hours(t.Late), count(t.LateJobs, "job"))
}

// costWords tell what a slip costs against the other day.
func costWords(s plan.Slip) string {
	other := s.Totals
	other.Setup -= s.Setup
	other.Repositions -= s.Repositions
	other.Late -= s.LateBy
	return against(s.Totals, other)
}
