package compare

import (
	"fmt"
	"time"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/list"
)

// View draws the totals of both orders and their jobs in a box of that size. The title is what
// stands beside the name of the page.
func (p *table) View(s draw.Size) (title draw.Line, body []draw.Line) {
	left, right := &p.left, &p.right
	body = []draw.Line{
		p.heads(left.name, right.name),
		p.total(left, right, "min of setup", time.Minute/10, func(s *Sequence) time.Duration { return s.Totals.Setup }),
		p.counts(left, right),
		p.total(left, right, "late in all", time.Minute, func(s *Sequence) time.Duration { return s.Totals.Late }),
		p.ends(left, right),
		p.floor(s.W),
	}
	columns, rows := draw.ColumnsFor(p.columns(), s.W), p.list(s)
	body = append(body, draw.Heads(p.Theme, columns))
	for index := rows.From(); index < rows.To(); index++ {
		body = append(body, draw.RowOf(p.Theme, columns, row{p, index, right.Jobs[index], index == p.at}))
	}
	title = p.Line()
	if text := rows.Range(); text != "" {
		title.Add(draw.Faint, text+"  ")
	}
	if p.offer != nil {
		title.Add(draw.Good, "Enter accepts the order found, x discards it")
	}
	return title, body
}

// aboveJobs is how many lines stand above the jobs: the rule, the totals, the heads.
const aboveJobs = 1 + 6 + 1

// list is the jobs on a page of that size.
func (p *table) list(s draw.Size) list.List {
	return list.List{At: p.at, Rows: len(p.right.Jobs), Shown: max(s.H-aboveJobs, 0)}
}

// The columns of the totals.
const (
	compareLabel = 14
	compareLeft  = 26
	compareRight = 23
)

// totals is a line of the totals.
func (p *table) totals(label, a, b string, ink draw.Style, more string) draw.Line {
	l := p.Line()
	l.Add(draw.Plain, " ")
	l.Left(draw.Faint, label, compareLabel)
	l.Left(draw.Plain, a, compareLeft)
	l.Left(draw.Strong, b, compareRight)
	l.Add(ink, more)
	return l
}

func (p *table) heads(a, b string) draw.Line {
	l := p.Line()
	l.To(1 + compareLabel)
	l.Left(draw.Head, a, compareLeft)
	l.Left(draw.Head, b, compareRight)
	return l
}

// total compares two spans of time, to the minute or to its tenth: their difference is
// that of the figures shown.
func (p *table) total(a, b *Sequence, label string, fine time.Duration, of func(*Sequence) time.Duration) draw.Line {
	if !a.Full() || !b.Full() {
		return p.totals(label, p.known(a), p.known(b), draw.Faint, "")
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
	return p.totals(label, text(x), text(y), by, more)
}

// known tells how much of an order is worked out.
func (p *table) known(s *Sequence) string {
	if s.Full() {
		return ""
	}
	return fmt.Sprintf("%s %d of %d planned", p.Pending, len(s.Known), len(s.Jobs))
}

// counts compares the repositions.
func (p *table) counts(a, b *Sequence) draw.Line {
	if !a.Full() || !b.Full() {
		return p.totals("moves", "", "", draw.Faint, "")
	}
	x, y := a.Totals.Repositions, b.Totals.Repositions
	more := "the same"
	switch {
	case y < x:
		more = fmt.Sprintf("%d fewer", x-y)
	case y > x:
		more = fmt.Sprintf("%d more", y-x)
	}
	return p.totals("moves", fmt.Sprint(x), fmt.Sprint(y), worse(y-x), more)
}

// ends compares when the days end, and how many jobs are late.
func (p *table) ends(a, b *Sequence) draw.Line {
	text := func(s *Sequence) string {
		if !s.Full() || len(s.Known) == 0 {
			return ""
		}
		jobs := "no job late"
		if n := s.Totals.LateJobs; n > 0 {
			jobs = words.Count(n, "job") + " late"
		}
		return fmt.Sprintf("%s, %s", p.time(s.Ends()), jobs)
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
	return p.totals("ends", text(a), text(b), l, more)
}

// floor tells how few moves any order needs, where that is proven.
func (p *table) floor(w int) draw.Line {
	l := p.Line()
	l.Add(draw.Plain, " ")
	l.Left(draw.Faint, "proven least", compareLabel)
	f := p.proven
	if p.offer != nil {
		f = p.offer.Floor
	}
	switch {
	case f == nil && p.offer == nil:
		l.Add(draw.Faint, "a search ("+p.searchKey+") finds how few moves any order needs")
	case f == nil:
		l.Add(draw.Faint, "nothing above 0 is proven")
	default:
		l.Add(draw.Plain, p.Short(fmt.Sprintf("no order needs fewer than %s: %s", words.Count(f.Repositions, "move"), f.By), w-l.Width-1))
	}
	return l
}
