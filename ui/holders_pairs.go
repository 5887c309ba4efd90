package ui

import (
	"fmt"
	"strings"

	"bide/plan"
)

// pairRow is one changeover in the list of those that take most moves.
type pairRow struct {
	*desk
	plan.Pair
	turn    int
	focused bool
}

// pairRows are the changeovers that the filter lets through.
func (p *holdersPane) pairRows(d *desk) (out []plan.Pair) {
	f := &d.filters[theHolders]
	for _, pair := range d.use().pairs {
		if !f.on() || f.lets(d.beforeID(&pair), pair.Job.ID, pair.Job.Material) {
			out = append(out, pair)
		}
	}
	return out
}

// beforeID names the job that a changeover leads away from.
func (d *desk) beforeID(p *plan.Pair) string {
	switch {
	case p.Before != nil:
		return p.Before.ID
	case d.start.stands.Job != "":
		return d.start.stands.Job
	}
	return "as it stands"
}

// pairLines are the head and n of the rows from the given one on.
func (p *holdersPane) pairLines(d *desk, from, n int, focused bool) []line {
	columns := columnsFor(pairColumns(d), p.w)
	pairs := p.pairRows(d)
	out := []line{heads(d.look, columns)}
	for _, pair := range pairs[min(from, len(pairs)):min(from+n, len(pairs))] {
		out = append(out, rowOf(d.look, columns, pairRow{d, pair, d.use().turns[pair.Step], focused}))
	}
	if len(pairs) == 0 {
		l := d.line()
		l.add(faint, " nothing to show yet, or no changeover has all of the filter's words")
		out = append(out, l)
	}
	return out
}

func pairColumns(d *desk) []column[pairRow] {
	most := 1
	for _, p := range d.use().pairs {
		most = max(most, p.Repositions)
	}
	of := func(i ink, text func(pairRow) string) func(pairRow) (ink, string) {
		return func(r pairRow) (ink, string) {
			if r.turn == r.desk.turn {
				return picked, text(r)
			}
			return i, text(r)
		}
	}
	return []column[pairRow]{
		{width: 1, left: true, cell: pairRow.cursor},
		{head: "moves", width: 5, cell: of(moved, func(r pairRow) string { return fmt.Sprint(r.Repositions) })},
		{width: barWidth, rank: 4, left: true, cell: of(moved, func(r pairRow) string {
			return strings.Repeat(r.glyphs.bar, (r.Repositions*barWidth+most/2)/most)
		})},
		{head: "from", width: 12, left: true, cell: of(plain, func(r pairRow) string { return r.beforeID(&r.Pair) })},
		{width: 2, rank: 1, left: true, cell: of(faint, func(r pairRow) string { return r.to })},
		{head: "to", width: d.idWidth(), left: true, cell: of(strong, func(r pairRow) string { return r.Job.ID })},
		{head: "turn", width: 4, rank: 2, cell: of(faint, func(r pairRow) string { return r.turnText(r.turn) })},
		{head: "travel", width: 8, rank: 2, cell: of(plain, func(r pairRow) string { return r.travel(r.Travel) })},
		{head: "min", width: 5, rank: 1, cell: of(strong, func(r pairRow) string { return minutes(r.Setup) })},
		{head: "share", width: 6, rank: 3, cell: of(plain, pairRow.share)},
		{head: "material", width: 12, rank: 5, left: true, flex: 24, cell: of(faint, func(r pairRow) string { return r.Job.Material })},
	}
}

func (r pairRow) cursor() (ink, string) {
	switch {
	case r.turn != r.desk.turn:
		return plain, ""
	case r.focused:
		return picked, r.look.cursor
	}
	return picked, r.cursorBy
}

// share is the changeover's part of the day's moves.
func (r pairRow) share() string {
	all := r.present.totals.Repositions
	if all == 0 {
		return ""
	}
	return fmt.Sprintf("%d %%", (100*r.Repositions+all/2)/all)
}

// aboutPair tells which holders move in the picked changeover.
func aboutPair(d *desk) (out []span) {
	step := d.use().step(d.turn)
	if step < 0 {
		return nil
	}
	var moving []int
	for i := range d.use().holders {
		if d.used.holders[i].Stints[step].Way != 0 {
			moving = append(moving, i+1)
		}
	}
	j := d.job()
	if len(moving) == 0 {
		return []span{{plain, fmt.Sprintf("to %s no holder moves", j.ID)}}
	}
	out = append(out, span{plain, fmt.Sprintf("to %s move: %s", j.ID, ranges(moving))})
	s := &d.outcome(d.turn).step
	out = append(out, span{plain, fmt.Sprintf("setup %s min: %s", minutes(s.Setup.Total()), causes(s.Setup))})
	return append(out, span{faint, layoutOf(j, &s.Layout, d.shop.Unit)})
}
