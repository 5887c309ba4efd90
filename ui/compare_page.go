package ui

import (
	"bide/ui/draw"
	"bide/ui/list"
	"fmt"
	"time"

	"bide/plan/words"
)

// View draws the totals of both orders and their jobs.
func (c *compare) View(m *model) []draw.Line {
	s := m.pageSize()
	lefts, right := m.sides(c.offered())
	left := lefts[c.other%len(lefts)]
	body := []draw.Line{
		c.heads(m, left.name, right.name),
		c.total(m, &left, &right, "min of setup", time.Minute/10, func(s *sequence) time.Duration { return s.Totals.Setup }),
		c.counts(m, &left, &right),
		c.total(m, &left, &right, "late in all", time.Minute, func(s *sequence) time.Duration { return s.Totals.Late }),
		c.ends(m, &left, &right),
		c.floor(m),
	}
	columns := draw.ColumnsFor(compareColumns(m.desk), s.W)
	body = append(body, draw.Heads(m.Theme, columns))
	rows := c.list(s, len(right.Jobs))
	for turn := rows.From(); turn < rows.To(); turn++ {
		body = append(body, draw.RowOf(m.Theme, columns, compared{m.desk, &left, &right, turn, right.Jobs[turn], turn == c.at}))
	}
	title := m.Line()
	if text := rows.Range(); text != "" {
		title.Add(draw.Faint, text+"  ")
	}
	if c.offered() != nil {
		title.Add(draw.Good, "Enter accepts the order found, x discards it")
	}
	return m.page("Two orders", title, body, c.Help())
}

// aboveJobs is how many lines stand above the jobs: the rule, the totals, the heads.
const aboveJobs = 1 + 6 + 1

// list is the jobs on a page of that size.
func (c *compare) list(s draw.Size, jobs int) list.List {
	return list.List{At: c.at, Rows: jobs, Shown: max(s.H-aboveJobs, 0)}
}

// The columns of the totals.
const (
	compareLabel = 14
	compareLeft  = 26
	compareRight = 23
)

// row is a line of the totals.
func (c *compare) row(m *model, label, a, b string, ink draw.Style, more string) draw.Line {
	l := m.Line()
	l.Add(draw.Plain, " ")
	l.Left(draw.Faint, label, compareLabel)
	l.Left(draw.Plain, a, compareLeft)
	l.Left(draw.Strong, b, compareRight)
	l.Add(ink, more)
	return l
}

func (c *compare) heads(m *model, a, b string) draw.Line {
	l := m.Line()
	l.To(1 + compareLabel)
	l.Left(draw.Head, a, compareLeft)
	l.Left(draw.Head, b, compareRight)
	return l
}

// total compares two spans of time, to the minute or to its tenth: their difference is
// that of the figures shown.
func (c *compare) total(m *model, a, b *sequence, label string, fine time.Duration, of func(*sequence) time.Duration) draw.Line {
	if !a.Full() || !b.Full() {
		return c.row(m, label, c.known(m, a), c.known(m, b), draw.Faint, "")
	}
	text := words.Minutes
	if fine == time.Minute {
		text = words.Hours
	}
	x, y := of(a).Round(fine), of(b).Round(fine)
	by, more := worse(int(y-x)), "the same"
	switch {
	case y < x:
		more = text(x-y) + " less"
	case y > x:
		more = text(y-x) + " more"
	}
	return c.row(m, label, text(x), text(y), by, more)
}

// known tells how much of an order is worked out.
func (c *compare) known(m *model, s *sequence) string {
	if s.Full() {
		return ""
	}
	return fmt.Sprintf("%s %d of %d planned", m.Pending, len(s.Known), len(s.Jobs))
}

// counts compares the repositions.
func (c *compare) counts(m *model, a, b *sequence) draw.Line {
	if !a.Full() || !b.Full() {
		return c.row(m, "moves", "", "", draw.Faint, "")
	}
	x, y := a.Totals.Repositions, b.Totals.Repositions
	more := "the same"
	switch {
	case y < x:
		more = fmt.Sprintf("%d fewer", x-y)
	case y > x:
		more = fmt.Sprintf("%d more", y-x)
	}
	return c.row(m, "moves", fmt.Sprint(x), fmt.Sprint(y), worse(y-x), more)
}

// ends compares when the days end, and how many jobs are late.
func (c *compare) ends(m *model, a, b *sequence) draw.Line {
	text := func(s *sequence) string {
		if !s.Full() || len(s.Known) == 0 {
			return ""
		}
		jobs := "no job late"
		if n := s.Totals.LateJobs; n > 0 {
			jobs = words.Count(n, "job") + " late"
		}
		return fmt.Sprintf("%s, %s", m.Clock(s.Ends()), jobs)
	}
	l, more := draw.Faint, ""
	if a.Full() && b.Full() && len(a.Known) > 0 && len(b.Known) > 0 {
		switch by := b.Ends().Round(time.Minute).Sub(a.Ends().Round(time.Minute)); {
		case by < 0:
			l, more = draw.Good, words.Hours(-by)+" earlier"
		case by > 0:
			l, more = draw.Moved, words.Hours(by)+" later"
		}
	}
	return c.row(m, "ends", text(a), text(b), l, more)
}

// floor tells how few moves any order needs, where that is proven.
func (c *compare) floor(m *model) draw.Line {
	l := m.Line()
	l.Add(draw.Plain, " ")
	l.Left(draw.Faint, "proven least", compareLabel)
	switch found := c.offered(); {
	case found == nil:
		l.Add(draw.Faint, "a search (s) finds how few moves any order needs")
	case found.Floor == nil:
		l.Add(draw.Faint, "nothing above 0 is proven")
	default:
		f := found.Floor
		l.Add(draw.Plain, m.Short(fmt.Sprintf("no order needs fewer than %s: %s", words.Count(f.Repositions, "move"), f.By), m.W-l.Width-1))
	}
	return l
}
