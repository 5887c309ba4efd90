package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
)

// gapRow is one gap of a lifted job.
type gapRow struct {
	*lift
	d           *desk
	gap         int
	best        int
	least, most time.Duration // of all gaps
}

// gapFigure makes a cell of what the gap costs; a figure that is only an estimate is
// faint, and marked beside it.
func gapFigure(i draw.Style, text func(r gapRow, s plan.Slip) string) func(gapRow) (draw.Style, string) {
	return func(r gapRow) (draw.Style, string) {
		c, known := r.cost(r.gap)
		switch {
		case !known && r.seen:
			return draw.Faint, ""
		case !known:
			return draw.Faint, r.d.Pending
		case !c.settled && i != draw.Late:
			return pick(r.on(), draw.Faint), text(r, c.Slip)
		}
		return pick(r.on(), i), text(r, c.Slip)
	}
}

// on reports whether the gap is the picked one.
func (r gapRow) on() bool { return r.gap == r.lift.gap }

// mark tells, of a gap, that nothing can be dropped there, that a rule is broken or
// something refused there, or that it costs least.
func (r gapRow) mark() (draw.Style, string) {
	c, known := r.cost(r.gap)
	switch {
	case r.barred(r.gap) || known && len(c.Refused) > 0:
		return draw.Late, "x"
	case known && len(c.Broken) > 0:
		return draw.Late, "!"
	case known && r.gap == r.best:
		return draw.Good, "*"
	}
	return draw.Plain, ""
}

// about marks a figure that isn't settled yet.
func (r gapRow) about() (draw.Style, string) {
	if c, known := r.cost(r.gap); known && !c.settled {
		return pick(r.on(), draw.Faint), "~"
	}
	return draw.Plain, ""
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
func (l *lift) gapColumns() []draw.Column[gapRow] {
	where := 0
	for gap := range len(l.rest) + 1 {
		where = max(where, draw.CellWidth(l.where(gap)))
	}
	return []draw.Column[gapRow]{
		{Width: 1, Left: true, Cell: func(r gapRow) (draw.Style, string) {
			if r.on() {
				return draw.Picked, r.d.Cursor
			}
			return draw.Plain, ""
		}},
		{Head: "n", Width: 3, Cell: func(r gapRow) (draw.Style, string) { return pick(r.on(), draw.Faint), fmt.Sprint(r.gap + 1) }},
		{Width: 1, Left: true, Cell: gapRow.mark},
		{Head: "where", Width: min(where, 24), Left: true, Cell: func(r gapRow) (draw.Style, string) { return pick(r.on(), draw.Plain), r.where(r.gap) }},
		{Width: 1, Left: true, Cell: gapRow.about},
		{Head: "+/- min", Width: 7, Cell: gapFigure(draw.Strong, func(r gapRow, s plan.Slip) string { return sameOr(signedMinutes(s.Setup)) })},
		{Head: "+/- moves", Width: 9, Cell: gapFigure(draw.Moved, func(r gapRow, s plan.Slip) string { return more(s.Repositions) })},
		{Head: "+/- late", Width: 10, Left: true, Flex: 30, Cell: gapRow.late},
		{Head: "day min", Width: 7, Rank: 1, Cell: gapFigure(draw.Plain, func(r gapRow, s plan.Slip) string { return words.Minutes(s.Totals.Setup) })},
		{Head: "moves", Width: 5, Rank: 1, Cell: gapFigure(draw.Plain, func(r gapRow, s plan.Slip) string { return fmt.Sprint(s.Totals.Repositions) })},
		{Head: "late", Width: 7, Rank: 2, Left: true, Cell: gapFigure(draw.Late, func(r gapRow, s plan.Slip) string { return lateness(s.Totals.Late) })},
		{Head: "min above best", Width: barWidth, Rank: 3, Left: true, Cell: gapFigure(draw.Moved, gapRow.bar)},
	}
}

// bar shows what a gap costs more than the one that takes least setup.
func (r gapRow) bar(s plan.Slip) string {
	n := int(((s.Setup-r.least)*barWidth + (r.most-r.least)/2) / max(r.most-r.least, 1))
	return strings.Repeat(r.d.Glyphs.Bar, n)
}

// late tells what becomes late: how much in all, and which jobs.
func (r gapRow) late() (draw.Style, string) {
	c, _ := r.cost(r.gap)
	if c.LateBy < 0 && len(c.Late) == 0 {
		return gapFigure(draw.Good, func(gapRow, plan.Slip) string { return "-" + words.Hours(-c.LateBy) })(r)
	}
	return gapFigure(draw.Late, func(gapRow, plan.Slip) string {
		text := ""
		switch {
		case c.LateBy > 0:
			text = "!+" + words.Hours(c.LateBy)
		case c.LateBy < 0:
			text = "-" + words.Hours(-c.LateBy)
		}
		return words.Join(" ", text, jobList(c.Late))
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

// list is the gaps on a page of that size: below them is room for what the picked one does.
func (l *lift) list(s draw.Size) list.List {
	below := max(min((s.H-2)/3, 5), 0)
	return list.List{At: l.gap, Rows: len(l.rest) + 1, Shown: max(s.H-2-below, 0)}
}

// View draws the gaps, and about the picked one what it would do.
func (l *lift) View(m *model) []draw.Line {
	s := m.pageSize()
	rows := l.list(s)
	columns := draw.ColumnsFor(l.gapColumns(), s.W)
	body := []draw.Line{draw.Heads(m.Theme, columns)}
	row := gapRow{lift: l, d: m.desk, best: l.best()}
	for _, c := range l.costs {
		row.least, row.most = min(row.least, c.Setup), max(row.most, c.Setup)
	}
	for row.gap = rows.From(); row.gap < rows.To(); row.gap++ {
		body = append(body, draw.RowOf(m.Theme, columns, row))
	}
	for len(body) < 1+rows.Shown {
		body = append(body, m.Line())
	}
	body = append(body, paragraphs(m.Theme, l.says(m.desk), draw.Size{W: s.W, H: s.H - 2 - rows.Shown})...)
	title := m.Line()
	if text := rows.Range(); text != "" {
		title.Add(draw.Faint, text+"  ")
	}
	name := "Move " + m.Safe(l.job.ID) + " to ..."
	title.Join(l.state(m, s.W-draw.CellWidth("-->  ")-draw.CellWidth(name)-title.Width))
	return m.page(name, title, body, keys.OnMoveTo)
}

// state tells how exact the figures are, what is being settled first, and what they are
// against where there is room.
func (l *lift) state(m *model, w int) draw.Line {
	t := m.Line()
	t.Add(draw.Plain, " ")
	gaps, settled := len(l.rest)+1, 0
	for _, c := range l.costs {
		if c.settled {
			settled++
		}
	}
	switch {
	case len(l.costs) < gaps && !l.seen:
		t.Add(draw.Accent, fmt.Sprintf("%d of %d estimated", len(l.costs), gaps))
	case settled < gaps:
		text := fmt.Sprintf("%d of %d still to plan", gaps-settled, gaps)
		if gap := l.settling; gap >= 0 {
			text = fmt.Sprintf("planning number %d, %d to go", gap+1, gaps-settled)
		}
		t.Add(draw.Accent, text)
		t.Add(draw.Faint, "  ~ estimate")
	default:
		t.Add(draw.Good, "all planned")
	}
	t.Add(draw.Faint, fitting(w-t.Width, "  +/- against its number now", "  +/- against now", ""))
	return t
}

// says tells of the picked gap what the row has no room for.
func (l *lift) says(d *desk) (out []draw.Span) {
	say := func(i draw.Style, format string, args ...any) {
		out = append(out, draw.Span{Style: i, Text: fmt.Sprintf(format, args...)})
	}
	c, known := l.cost(l.gap)
	switch {
	case l.barred(l.gap):
		say(draw.Late, "x %s is running: nothing can come before it", l.rest[l.gap].ID)
		return out
	case !known:
		say(draw.Faint, "planning the day with it there")
		return out
	}
	for _, b := range c.Broken {
		say(draw.Late, "! %s", b.Why(d.shop.Unit))
	}
	for _, r := range c.Refused {
		say(draw.Late, "x %s would be refused: %s", r.Job.ID, r.Faults[0].Why(d.shop.Unit))
	}
	if len(c.Late) > 0 {
		say(draw.Late, "newly late there: %s", jobList(c.Late))
	}
	estimate := " (estimate)"
	if c.settled {
		estimate = ""
	}
	switch {
	case l.gap == l.was:
		say(draw.Plain, "its number now: the day has %s%s", totalWords(c.Totals), estimate)
	default:
		say(draw.Plain, "moved here, against now: %s%s", costWords(c.Slip), estimate)
	}
	if c.settled && l.gap != l.was {
		say(draw.Plain, "the day then has %s", totalWords(c.Totals))
	}
	if !c.settled {
		say(draw.Faint, "estimate: each job planned on its own, not yet the day together")
	}
	if l.out.settled == c.settled {
		out = append(out, draw.Span{Style: draw.Faint, Text: "without it, against this: " + costWords(l.out.lessThan(c)) + estimate})
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
	return fmt.Sprintf("%s min of setup, %s, %s", words.Minutes(t.Setup), words.Count(t.Repositions, "move"), lateWords(t))
}

// lateWords tell how late a day is.
func lateWords(t plan.Totals) string {
	if t.LateJobs == 0 {
		return "none late"
	}
	return fmt.Sprintf("%s late (%s)", words.Hours(t.Late), words.Count(t.LateJobs, "job"))
}

// costWords tell what a slip costs against the other day.
func costWords(s plan.Slip) string {
	other := s.Totals
	other.Setup -= s.Setup
	other.Repositions -= s.Repositions
	other.Late -= s.LateBy
	return against(s.Totals, other)
}
