package holders

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// pairRow is one changeover in the list of those that take most moves.
type pairRow struct {
	*pane.Shared
	plan.Pair
	index   int
	focused bool
}

// pairRows are the changeovers that the filter lets through.
func (p *Pane) pairRows(d *pane.Shared) (out []plan.Pair) {
	f := &p.filter
	for _, pair := range d.Use().Pairs {
		if !f.On() || f.Lets(BeforeID(d, &pair), pair.Job.ID, pair.Job.Material) {
			out = append(out, pair)
		}
	}
	return out
}

// BeforeID names the job that a changeover leads away from.
func BeforeID(d *pane.Shared, p *plan.Pair) string {
	switch {
	case p.Before != nil:
		return p.Before.ID
	case d.Start.Positions.Job != "":
		return d.Start.Positions.Job
	}
	return "now"
}

// pairLines are the head and n of the rows from the given one on.
func (p *Pane) pairLines(d *pane.Shared, from, n int, focused bool) []draw.Line {
	columns := draw.ColumnsFor(pairColumns(d), p.W)
	pairs := p.pairRows(d)
	out := []draw.Line{draw.Heads(d.Theme, columns)}
	for _, pair := range pairs[min(from, len(pairs)):min(from+n, len(pairs))] {
		out = append(out, draw.RowOf(d.Theme, columns, pairRow{d, pair, d.Use().Turns[pair.Step], focused}))
	}
	if len(pairs) == 0 {
		l := d.Line()
		l.Add(draw.Faint, " no changeover is planned yet, or none matches the filter")
		out = append(out, l)
	}
	return out
}

func pairColumns(d *pane.Shared) []draw.Column[pairRow] {
	most := 1
	for _, p := range d.Use().Pairs {
		most = max(most, p.Repositions)
	}
	of := func(i draw.Style, text func(pairRow) string) func(pairRow) (draw.Style, string) {
		return func(r pairRow) (draw.Style, string) { return draw.Pick(r.picked(), i), text(r) }
	}
	return []draw.Column[pairRow]{
		{Width: 1, Left: true, Cell: pairRow.cursor},
		{Head: "moves", Width: 5, Cell: of(draw.Moved, func(r pairRow) string { return fmt.Sprint(r.Repositions) })},
		{Width: pane.BarWidth, Rank: 4, Left: true, Cell: of(draw.Moved, func(r pairRow) string {
			return strings.Repeat(r.Glyphs.Bar, (r.Repositions*pane.BarWidth+most/2)/most)
		})},
		{Head: "from", Width: 12, Left: true, Cell: of(draw.Plain, func(r pairRow) string { return BeforeID(r.Shared, &r.Pair) })},
		{Width: 2, Rank: 1, Left: true, Cell: of(draw.Faint, func(r pairRow) string { return r.To })},
		{Head: "to", Width: d.IDWidth(), Left: true, Cell: of(draw.Strong, func(r pairRow) string { return r.Pair.Job.ID })},
		{Head: "no.", Width: 4, Rank: 2, Cell: of(draw.Faint, func(r pairRow) string { return r.NumberText(r.index) })},
		{Head: "travel", Width: 8, Rank: 2, Cell: of(draw.Plain, func(r pairRow) string { return r.Shared.Travel(r.Pair.Travel) })},
		{Head: "min", Width: 5, Rank: 1, Cell: of(draw.Strong, func(r pairRow) string { return words.Minutes(r.Setup) })},
		{Head: "share", Width: 6, Rank: 3, Cell: of(draw.Plain, pairRow.share)},
		{Head: "material", Width: 12, Rank: 5, Left: true, Flex: 24, Cell: of(draw.Faint, func(r pairRow) string { return r.Pair.Job.Material })},
	}
}

func (r pairRow) picked() bool { return r.index == r.Shared.JobAt }

func (r pairRow) cursor() (draw.Style, string) { return r.RowCursor(r.picked(), r.focused) }

// share is the changeover's part of the day's moves.
func (r pairRow) share() string {
	all := r.Present.Totals.Repositions
	if all == 0 {
		return ""
	}
	return fmt.Sprintf("%d %%", (100*r.Repositions+all/2)/all)
}

// aboutPair says which holders move in the picked changeover.
func aboutPair(d *pane.Shared) (out []draw.Span) {
	step := d.Use().Step(d.JobAt)
	if step < 0 {
		return nil
	}
	var moving []int
	for i := range d.Use().Holders {
		if d.Use().Holders[i].Stints[step].Way != 0 {
			moving = append(moving, i+1)
		}
	}
	j := d.Job()
	if len(moving) == 0 {
		return []draw.Span{{Style: draw.Plain, Text: fmt.Sprintf("no holder moves for %s", j.ID)}}
	}
	out = append(out, draw.Span{Style: draw.Plain, Text: fmt.Sprintf("moving for %s: holders %s", j.ID, words.Ranges(moving))})
	s := d.Outcome(d.JobAt).Step
	out = append(out, draw.Span{Style: draw.Plain, Text: fmt.Sprintf("setup %s min: %s", words.Minutes(s.Setup.Total()), words.BriefCauses(&s.Setup, d.Beam.Drive.Kind))})
	return append(out, draw.Span{Style: draw.Faint, Text: pane.LayoutText(j, &s.Layout, d.Shop.Unit)})
}
