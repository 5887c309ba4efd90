package moveto

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// moveRow is one number that a job can be moved to.
type moveRow struct {
	*workday.Moving
	d           *pane.Shared
	index       int
	best        int
	least, most time.Duration // of all
}

// moveFigure makes a cell of what moving there costs; a figure that is only an estimate is
// faint, and marked beside it.
func moveFigure(i draw.Style, text func(r moveRow, s plan.Difference) string) func(moveRow) (draw.Style, string) {
	return func(r moveRow) (draw.Style, string) {
		c, known := r.Cost(r.index)
		switch {
		case !known && r.Estimated:
			return draw.Faint, ""
		case !known:
			return draw.Faint, r.d.Pending
		case !c.Exact && i != draw.Late:
			return draw.Pick(r.on(), draw.Faint), text(r, c.Difference)
		}
		return draw.Pick(r.on(), i), text(r, c.Difference)
	}
}

// on reports whether it is the picked one.
func (r moveRow) on() bool { return r.index == r.To }

// mark says that nothing can be moved there, that a rule is broken or something refused
// there, or that it costs least.
func (r moveRow) mark() (draw.Style, string) {
	c, known := r.Cost(r.index)
	switch {
	case r.Barred(r.index) || known && len(c.Refused) > 0:
		return draw.Late, "x"
	case known && len(c.Broken) > 0:
		return draw.Late, "!"
	case known && r.index == r.best:
		return draw.Good, "*"
	}
	return draw.Plain, ""
}

// estimate marks a figure that is one.
func (r moveRow) estimate() (draw.Style, string) {
	if c, known := r.Cost(r.index); known && !c.Exact {
		return draw.Pick(r.on(), draw.Faint), "~"
	}
	return draw.Plain, ""
}

// Where names a number by the job before it.
func Where(m *planning.MoveCosts, index int) string {
	text := "first"
	if index > 0 {
		text = "after " + m.Rest[index-1].ID
	}
	if index == m.Was {
		text += " (now)"
	}
	return text
}

// moveColumns are those of the list.
func moveColumns(m *workday.Moving) []draw.Column[moveRow] {
	where := 0
	for index := range len(m.Rest) + 1 {
		where = max(where, draw.CellWidth(Where(&m.MoveCosts, index)))
	}
	return []draw.Column[moveRow]{
		{Width: 1, Left: true, Cell: func(r moveRow) (draw.Style, string) { return r.d.RowCursor(r.on(), true) }},
		{Head: "n", Width: 3, Cell: func(r moveRow) (draw.Style, string) { return draw.Pick(r.on(), draw.Faint), fmt.Sprint(r.index + 1) }},
		{Width: 1, Left: true, Cell: moveRow.mark},
		{Head: "where", Width: min(where, 24), Left: true, Cell: func(r moveRow) (draw.Style, string) {
			return draw.Pick(r.on(), draw.Plain), Where(&r.MoveCosts, r.index)
		}},
		{Width: 1, Left: true, Cell: moveRow.estimate},
		{Head: "+/- min", Width: 7, Cell: moveFigure(draw.Strong, func(r moveRow, s plan.Difference) string { return words.SameOr(words.SignedMinutes(s.Setup)) })},
		{Head: "+/- moves", Width: 9, Cell: moveFigure(draw.Moved, func(r moveRow, s plan.Difference) string { return words.Change(s.Repositions) })},
		{Head: "+/- late", Width: 10, Left: true, Flex: 30, Cell: moveRow.late},
		{Head: "day min", Width: 7, Rank: 1, Cell: moveFigure(draw.Plain, func(r moveRow, s plan.Difference) string { return words.Minutes(s.Totals.Setup) })},
		{Head: "moves", Width: 5, Rank: 1, Cell: moveFigure(draw.Plain, func(r moveRow, s plan.Difference) string { return fmt.Sprint(s.Totals.Repositions) })},
		{Head: "late", Width: 7, Rank: 2, Left: true, Cell: moveFigure(draw.Late, func(r moveRow, s plan.Difference) string { return words.Lateness(s.Totals.Late) })},
		{Head: "min above best", Width: pane.BarWidth, Rank: 3, Left: true, Cell: moveFigure(draw.Moved, moveRow.bar)},
	}
}

// bar shows what one costs more than the one that takes least setup.
func (r moveRow) bar(s plan.Difference) string {
	n := int(((s.Setup-r.least)*pane.BarWidth + (r.most-r.least)/2) / max(r.most-r.least, 1))
	return strings.Repeat(r.d.Glyphs.Bar, n)
}

// late tells what becomes late: how much in all, and which jobs.
func (r moveRow) late() (draw.Style, string) {
	c, _ := r.Cost(r.index)
	if c.LateBy < 0 && len(c.Late) == 0 {
		return moveFigure(draw.Good, func(moveRow, plan.Difference) string { return "-" + words.Hours(-c.LateBy) })(r)
	}
	return moveFigure(draw.Late, func(moveRow, plan.Difference) string {
		text := ""
		switch {
		case c.LateBy > 0:
			text = "!+" + words.Hours(c.LateBy)
		case c.LateBy < 0:
			text = "-" + words.Hours(-c.LateBy)
		}
		return words.Join(" ", text, words.Jobs(c.Late))
	})(r)
}

// listOf are the numbers on a page of that size: below them is room for what the picked one does.
func listOf(m *workday.Moving, s draw.Size) list.List {
	below := max(min((s.H-2)/3, 5), 0)
	return list.List{At: m.To, Rows: len(m.Rest) + 1, Shown: max(s.H-2-below, 0)}
}

// View draws the numbers, and of the picked one what it would do.
func (Page) View(d *pane.Shared) []draw.Line {
	s, m := d.PageSize(), d.Moving
	rows := listOf(m, s)
	columns := draw.ColumnsFor(moveColumns(m), s.W)
	body := []draw.Line{draw.Heads(d.Theme, columns)}
	row := moveRow{Moving: m, d: d, best: m.Best(m.To)}
	row.least, row.most = m.Range()
	for row.index = rows.From(); row.index < rows.To(); row.index++ {
		body = append(body, draw.RowOf(d.Theme, columns, row))
	}
	for len(body) < 1+rows.Shown {
		body = append(body, d.Line())
	}
	body = append(body, draw.Paragraphs(d.Theme, says(m, d.Shop.Unit), draw.Size{W: s.W, H: s.H - 2 - rows.Shown})...)
	title := d.Line()
	if text := rows.Range(); text != "" {
		title.Add(draw.Faint, text+"  ")
	}
	name := "Move " + d.Safe(m.Job.ID) + " to ..."
	title.Join(state(d, s.W-draw.CellWidth("-->  - ")-draw.CellWidth(name)-title.Width))
	return d.Frame(name, title, body, keys.OnMoveTo)
}

// state says how exact the figures are, what is being planned now, and what they are
// against where there is room.
func state(d *pane.Shared, w int) draw.Line {
	m, t := d.Moving, d.Line()
	all := len(m.Rest) + 1
	known, exact := m.Known()
	switch {
	case known < all && !m.Estimated:
		t.Add(draw.Accent, fmt.Sprintf("%d of %d estimated", known, all))
	case exact < all:
		text := fmt.Sprintf("%d of %d still to plan", all-exact, all)
		if m.Improving >= 0 {
			text = fmt.Sprintf("planning number %d, %d left", m.Improving+1, all-exact)
		}
		t.Add(draw.Accent, text)
		t.Add(draw.Faint, "  ~ estimate")
	default:
		t.Add(draw.Good, "all planned")
	}
	t.Add(draw.Faint, draw.Fitting(w-t.Width, "  +/- against where it is now", "  +/- against now", ""))
	return t
}

// says is what the row of the picked one has no room for.
func says(m *workday.Moving, u plan.Unit) (out []draw.Span) {
	say := func(i draw.Style, format string, args ...any) {
		out = append(out, draw.Span{Style: i, Text: fmt.Sprintf(format, args...)})
	}
	c, known := m.Cost(m.To)
	switch {
	case m.Barred(m.To):
		say(draw.Late, "x %s is running: nothing can come before it", m.Rest[m.To].ID)
		return out
	case !known:
		say(draw.Faint, "planning the day with the job there")
		return out
	}
	for _, b := range c.Broken {
		say(draw.Late, "! %s", b.Why(u))
	}
	for _, r := range c.Refused {
		say(draw.Late, "x %s would be refused: %s", r.Job.ID, r.Faults[0].Why(u))
	}
	if len(c.Late) > 0 {
		say(draw.Late, "late there, but not now: %s", words.Jobs(c.Late))
	}
	estimate := " (estimate)"
	if c.Exact {
		estimate = ""
	}
	switch {
	case m.To == m.Was:
		say(draw.Plain, "where it is now, the day has %s%s", words.Totals(c.Totals), estimate)
	default:
		say(draw.Plain, "moved here, against now: %s%s", words.Cost(c.Difference), estimate)
	}
	if c.Exact && m.To != m.Was {
		say(draw.Plain, "the day then has %s", words.Totals(c.Totals))
	}
	if !c.Exact {
		say(draw.Faint, "estimate: each job planned on its own, not yet the day together")
	}
	if without := m.Out(c); without.Exact == c.Exact {
		out = append(out, draw.Span{Style: draw.Faint, Text: "without this job: " + words.Cost(without.Difference) + estimate})
	}
	return out
}
