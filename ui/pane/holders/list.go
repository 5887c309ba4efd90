package holders

import (
	"fmt"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// holderLines are the head and n of the list's rows from the given one on.
func (p *Pane) holderLines(d *pane.Shared, from, n int, focused bool) []draw.Line {
	rows := p.rows(d, focused)
	before, strip, after := p.columns(d)
	out := []draw.Line{p.heads(d, before, strip, after)}
	for _, r := range rows[min(from, len(rows)):min(from+n, len(rows))] {
		l := draw.RowOf(d.Theme, before, r)
		l.Add(draw.Plain, " ")
		l.Join(strip.row(r))
		if len(after) > 0 {
			l.Add(draw.Plain, " ")
			l.Join(draw.RowOf(d.Theme, after, r))
		}
		out = append(out, l)
	}
	if len(rows) == 0 {
		l := d.Line()
		l.Add(draw.Faint, " no holder matches the filter; "+d.KeyFor(keys.FilterRows)+" changes it")
		out = append(out, l)
	}
	return out
}

// columns are those to the left of the strip, the strip, and those to its right. The
// strip has one cell a job, where there is room for all.
func (p *Pane) columns(d *pane.Shared) (before []draw.Column[holderRow], s strip, after []draw.Column[holderRow]) {
	all := p.all(d)
	const beside = 6 // columns before the strip
	least := min(len(d.Jobs()), max(p.W/4, 1))
	shown := draw.ColumnsFor(all, max(p.W-least-1, 1))
	for _, c := range shown {
		if slot := columnAt(all, c.Head); slot < beside {
			before = append(before, c)
		} else {
			after = append(after, c)
		}
	}
	room := p.W - widthOf(before) - 1
	if len(after) > 0 {
		room -= widthOf(after) + 1
	}
	return before, newStrip(d, room), after
}

// columnAt is the place of a column among all by its head.
func columnAt(all []draw.Column[holderRow], head string) int {
	for i, c := range all {
		if c.Head == head {
			return i
		}
	}
	return 0
}

// widthOf is how wide columns are with one between any two.
func widthOf(columns []draw.Column[holderRow]) int {
	w := len(columns) - 1
	for _, c := range columns {
		w += c.Width
	}
	return max(w, 0)
}

// heads is the line of heads; above the strip it numbers the jobs.
func (p *Pane) heads(d *pane.Shared, before []draw.Column[holderRow], s strip, after []draw.Column[holderRow]) draw.Line {
	l := draw.Heads(d.Theme, before)
	l.Add(draw.Plain, " ")
	l.Join(s.head())
	if len(after) > 0 {
		l.Add(draw.Plain, " ")
		l.Join(draw.Heads(d.Theme, after))
	}
	return l
}

// all are all columns of the list; what it is sorted by doesn't go where it is narrow.
func (p *Pane) all(d *pane.Shared) []draw.Column[holderRow] {
	var far []plan.Length
	for _, h := range d.Use().Holders {
		far = append(far, h.Travel)
	}
	positions, ways := words.NewRuler(d.Shop.Unit, "now at", d.Start.Positions.At...), words.NewRuler(d.Shop.Unit, "", far...)
	edge := 7
	if p.by == byEdge {
		edge = 1
	}
	of := func(i draw.Style, text func(holderRow) string) func(holderRow) (draw.Style, string) {
		return func(r holderRow) (draw.Style, string) { return draw.Pick(r.picked(), i), text(r) }
	}
	return []draw.Column[holderRow]{
		{Width: 1, Left: true, Cell: holderRow.cursor},
		{Head: "n", Width: 3, Cell: of(draw.Strong, func(r holderRow) string { return fmt.Sprint(r.number) })},
		{Head: "", Width: 1, Left: true, Cell: holderRow.flag},
		{Head: "state", Width: 6, Rank: 4, Left: true, Cell: holderRow.state},
		{Head: "now at", Width: positions.Width, Rank: 1, Cell: of(draw.Plain, func(r holderRow) string { return positions.Number(PositionOf(r.Shared, r.number)) })},
		{Head: "use", Width: 7, Rank: 2, Left: true, Cell: of(draw.Plain, holderRow.does)},
		{Head: "idle", Width: 5, Rank: 1, Cell: of(draw.Plain, holderRow.idleText)},
		{Head: "next", Width: d.IDWidth() + 1 + d.ClockWidth(), Rank: 3, Left: true, Cell: of(draw.Plain, holderRow.nextText)},
		{Head: "moves", Width: 5, Rank: 2, Cell: of(draw.Moved, holderRow.movesText)},
		{Head: "m today", Width: 7, Rank: 2, Cell: of(draw.Plain, holderRow.metresText)},
		{Head: "travel, " + d.Shop.Unit.String(), Width: 10, Rank: 5, Cell: of(draw.Faint, func(r holderRow) string { return r.wayText(ways) })},
		{Head: "blade", Width: 8, Rank: 6, Left: true, Cell: of(draw.Faint, holderRow.blade)},
		{Head: "blade m", Width: 7, Rank: edge, Cell: of(draw.Faint, holderRow.edgeText)},
		{Head: "stuck", Width: 5, Rank: 8, Cell: of(draw.Late, holderRow.jamsText)},
	}
}

// PositionOf is where a holder is now.
func PositionOf(d *pane.Shared, number int) plan.Length {
	return d.Start.Positions.At[number-1]
}

func (r holderRow) picked() bool { return r.number == Picked(r.Shared) }

func (r holderRow) cursor() (draw.Style, string) { return r.RowCursor(r.picked(), r.focused) }

// flag is the letter of its condition, as beside its number on the beam.
func (r holderRow) flag() (draw.Style, string) {
	return draw.Late, [...]string{plan.Good: "", plan.NoCut: "n", plan.Stuck: "s", plan.Out: "o"}[r.condition]
}

func (r holderRow) state() (draw.Style, string) {
	if r.condition == plan.Good {
		return draw.Faint, r.condition.String()
	}
	return draw.Late, r.condition.String()
}

// idleText is how long it is idle around the picked job.
func (r holderRow) idleText() string {
	if r.stint == nil || r.stint.Use == plan.Cutting {
		return ""
	}
	return words.Hours(r.idle)
}

// nextText is the job that needs it next, and when that is set up.
func (r holderRow) nextText() string {
	switch {
	case r.usage == nil:
		return r.Pending
	case r.next == r.JobAt:
		return "now"
	case r.next >= 0:
		id := r.Short(r.Jobs()[r.next].ID, r.IDWidth())
		return id + draw.Blanks(r.IDWidth()-draw.CellWidth(id)+1) + r.Clock(r.Outcome(r.next).Step.SetupStart)
	case !r.Present.Whole():
		return r.Pending
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
func (r holderRow) wayText(in words.Ruler) string {
	if r.movesToday() == 0 {
		return ""
	}
	return in.Number(r.usage.Travel)
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
	if w := wearOf(r.Shared, r.number); w != nil && w.Jams > 0 {
		return fmt.Sprint(w.Jams)
	}
	return ""
}
