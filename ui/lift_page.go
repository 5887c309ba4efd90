package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
)

// gapRow is one gap of a lifted job.
type gapRow struct {
	*lift
	d    *desk
	gap  int
	best int
	most time.Duration // of all gaps
}

func (r gapRow) slip() (plan.Slip, bool) { s, known := r.slips[r.gap]; return s, known }

func (r gapRow) ink(other ink) ink { return pick(r.gap == r.lift.gap, other) }

// figure makes a cell of what the gap costs.
func gapFigure(i ink, text func(r gapRow, s plan.Slip) string) func(gapRow) (ink, string) {
	return func(r gapRow) (ink, string) {
		s, known := r.slip()
		switch {
		case !known && r.done:
			return faint, ""
		case !known:
			return faint, r.d.pending
		}
		return r.ink(i), text(r, s)
	}
}

// mark tells, of a gap, that a rule is broken or something refused there, that the job
// came from it, or that it costs least.
func (r gapRow) mark() (ink, string) {
	s, known := r.slip()
	switch {
	case known && len(s.Refused) > 0:
		return late, "x"
	case known && len(s.Broken) > 0:
		return late, "!"
	case known && r.gap == r.best:
		return good, "*"
	}
	return plain, ""
}

// where names the gap by its neighbours.
func (r gapRow) where() string {
	text := "first"
	if r.gap > 0 {
		text = "after " + r.rest[r.gap-1].ID
	}
	if r.gap == r.was {
		text += " (now)"
	}
	return text
}

// more is a number with its sign.
func more(n int) string { return fmt.Sprintf("%+d", n) }

// gapColumns are those of the list of gaps.
func gapColumns() []column[gapRow] {
	return []column[gapRow]{
		{width: 1, left: true, cell: func(r gapRow) (ink, string) {
			if r.gap == r.lift.gap {
				return picked, r.d.cursor
			}
			return plain, ""
		}},
		{head: "n", width: 3, cell: func(r gapRow) (ink, string) { return r.ink(faint), fmt.Sprint(r.gap + 1) }},
		{width: 1, left: true, cell: gapRow.mark},
		{head: "where", width: 19, left: true, flex: 8, cell: func(r gapRow) (ink, string) { return r.ink(plain), r.where() }},
		{head: "min", width: 7, cell: gapFigure(strong, func(r gapRow, s plan.Slip) string { return signedMinutes(s.Setup) })},
		{head: "moves", width: 5, cell: gapFigure(moved, func(r gapRow, s plan.Slip) string { return more(s.Repositions) })},
		{head: "late", width: 14, left: true, flex: 30, cell: gapFigure(late, gapLate)},
		{head: "day min", width: 7, rank: 1, cell: gapFigure(plain, func(r gapRow, s plan.Slip) string { return minutes(s.Totals.Setup) })},
		{head: "moves", width: 5, rank: 1, cell: gapFigure(plain, func(r gapRow, s plan.Slip) string { return fmt.Sprint(s.Totals.Repositions) })},
		{width: barWidth, rank: 2, left: true, cell: gapFigure(moved, func(r gapRow, s plan.Slip) string {
			n := int((max(s.Setup, 0)*barWidth + r.most/2) / max(r.most, 1))
			return strings.Repeat(r.d.glyphs.bar, n)
		})},
	}
}

// signedMinutes are minutes with their sign.
func signedMinutes(d time.Duration) string { return fmt.Sprintf("%+.1f", d.Minutes()) }

// gapLate tells what becomes late: how much in all, and which jobs.
func gapLate(r gapRow, s plan.Slip) string {
	text := ""
	switch {
	case s.LateBy > 0:
		text = "!+" + hours(s.LateBy)
	case s.LateBy < 0:
		text = "-" + hours(-s.LateBy)
	}
	return join(" ", text, jobList(s.Late))
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
	detail := max(min((s.h-2)/3, 4), 0)
	n := max(s.h-2-detail, 0)
	columns := columnsFor(gapColumns(), s.w)
	body := []line{heads(m.look, columns)}
	from, best, most := window(l.gap, len(l.rest)+1, n), l.best(), time.Nanosecond
	for _, s := range l.slips {
		most = max(most, s.Setup)
	}
	for gap := from; gap < min(from+n, len(l.rest)+1); gap++ {
		body = append(body, rowOf(m.look, columns, gapRow{l, m.desk, gap, best, most}))
	}
	for len(body) < 1+n {
		body = append(body, m.line())
	}
	body = append(body, l.about(m, detail, s.w)...)
	title := m.line()
	if text := some(from, n, len(l.rest)+1); text != "" {
		title.add(faint, text+"  ")
	}
	title.add(faint, "what each gap costs, job by job, against leaving it out")
	if !l.done {
		title.add(accent, fmt.Sprintf("  %d of %d worked out", len(l.slips), len(l.rest)+1))
	}
	return m.page("Lift "+m.safe(l.job.ID), title, body, onLift)
}

// about tells of the picked gap what the row has no room for.
func (l *lift) about(m *model, n, w int) (out []line) {
	for _, sp := range l.says(m.desk) {
		for _, text := range m.wrap(sp.text, w-2) {
			if len(out) == n {
				return out
			}
			row := m.line()
			row.add(plain, " ")
			row.add(sp.ink, text)
			out = append(out, row)
		}
	}
	for len(out) < n {
		out = append(out, m.line())
	}
	return out
}

func (l *lift) says(d *desk) (out []span) {
	s, known := l.slips[l.gap]
	if !known {
		return []span{{faint, "the day with it there is being worked out"}}
	}
	for _, b := range s.Broken {
		out = append(out, span{late, "! " + b.Why(d.shop.Unit)})
	}
	for _, r := range s.Refused {
		out = append(out, span{late, "x " + r.Job.ID + " would be refused: " + r.Faults[0].Why(d.shop.Unit)})
	}
	if len(s.Late) > 0 {
		out = append(out, span{late, "late by it: " + jobList(s.Late)})
	}
	text := "dropped here"
	if now, ok := l.slips[l.was]; ok && l.gap != l.was {
		text += ", against where it is now: " + against(s.Totals, now.Totals)
	} else if l.gap == l.was {
		text = "this is where it is now"
	}
	out = append(out, span{plain, text})
	total := fmt.Sprintf("the day with it: %s min of setup, %s, ", minutes(s.Totals.Setup), count(s.Totals.Repositions, "move"))
	if s.Totals.LateJobs > 0 {
		total += fmt.Sprintf("%s late (%s)", hours(s.Totals.Late), count(s.Totals.LateJobs, "job"))
	} else {
		total += "none late"
	}
	return append(out, span{faint, total})
}
