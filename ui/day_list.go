package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
)

// figure makes a cell of something the changeover costs; an estimate is faint.
func figure(i draw.Style, text func(e entry, s *plan.Step) string) func(entry) (draw.Style, string) {
	return func(e entry) (draw.Style, string) {
		switch {
		case e.outcome == nil:
			return draw.Faint, e.Pending
		case e.refused():
			return draw.Plain, ""
		}
		switch {
		case e.picked() && i != draw.Late:
			return draw.Picked, text(e, e.outcome.Step)
		case e.about():
			return draw.Faint, text(e, e.outcome.Step)
		}
		return i, text(e, e.outcome.Step)
	}
}

// movesFigure is the same for moves: none is nothing to look at.
func movesFigure(text func(e entry, s *plan.Step) string) func(entry) (draw.Style, string) {
	some, none := figure(draw.Moved, text), figure(draw.Faint, text)
	return func(e entry) (draw.Style, string) {
		if e.outcome != nil && !e.refused() && e.outcome.Step.Changeover.Repositions == 0 {
			return none(e)
		}
		return some(e)
	}
}

// fact makes a cell of something known of the job, in the cursor's ink where that is.
func fact(i draw.Style, text func(e entry) string) func(entry) (draw.Style, string) {
	return func(e entry) (draw.Style, string) {
		if e.picked() {
			return draw.Picked, text(e)
		}
		return i, text(e)
	}
}

// The cells of the day's rows.
var (
	dayTurn     = fact(draw.Faint, func(e entry) string { return e.turnText(e.turn) })
	dayID       = fact(draw.Strong, func(e entry) string { return e.job.ID })
	dayMaterial = fact(draw.Plain, func(e entry) string { return e.job.Material })
	dayWeb      = fact(draw.Plain, func(e entry) string { return e.Shop.Unit.Number(e.job.Web) })
	dayDue      = fact(draw.Faint, func(e entry) string { return e.Clock(e.job.Due) })
	dayCuts     = figure(draw.Plain, func(e entry, s *plan.Step) string { return fmt.Sprint(len(s.Layout.Cuts)) })
	dayMoves    = movesFigure(func(e entry, s *plan.Step) string { return e.aboutMark() + fmt.Sprint(s.Changeover.Repositions) })
	dayParked   = figure(draw.Plain, func(e entry, s *plan.Step) string { return fmt.Sprint(s.Changeover.Parked) })
	dayTravel   = figure(draw.Plain, func(e entry, s *plan.Step) string { return e.travel(s.Changeover.Travel) })
	daySetup    = figure(draw.Strong, func(e entry, s *plan.Step) string { return words.Minutes(s.Setup.Total()) })
	dayBegins   = figure(draw.Plain, func(e entry, s *plan.Step) string { return e.Clock(s.SetupStart) })
	dayRuns     = figure(draw.Plain, func(e entry, s *plan.Step) string { return e.Clock(s.RunStart) })
	dayEnds     = figure(draw.Plain, func(e entry, s *plan.Step) string { return e.Clock(s.RunEnd) })
	dayLate     = figure(draw.Late, func(e entry, s *plan.Step) string { return e.lateBy(s) })
	dayBar      = figure(draw.Moved, func(e entry, s *plan.Step) string { return setupBar(e, s) })
)

// leastID is how wide the column of ids is at least: other columns are worth more than
// the rest of a long one.
const leastID = 7

// dayColumns are those of the compact list: one line a job.
func dayColumns(d *desk, w int) []draw.Column[entry] {
	times, due, material := d.clockWidth(), 2, 8
	switch {
	case w >= 70:
		material = 20
	case d.NoneLate():
		material = 14
	}
	if d.NoneDue() {
		due = 12
	}
	id := min(d.idWidth(), leastID)
	columns := []draw.Column[entry]{
		{Width: 1, Left: true, Cell: entry.cursor},
		{Head: "n", Width: d.turnWidth(), Cell: dayTurn},
		{Width: 1, Left: true, Cell: entry.flag},
		{Head: "job", Width: id, Left: true, Flex: d.idWidth() - id, Cell: dayID},
		{Head: "material", Width: material, Rank: 1, Left: true, Flex: 30 - material, Cell: dayMaterial},
		{Head: "web", Width: 7, Rank: 5, Cell: dayWeb},
		{Head: "cuts", Width: 4, Rank: 6, Cell: dayCuts},
		{Head: "moves", Width: 5, Rank: 1, Cell: dayMoves},
		{Head: "parked", Width: 6, Rank: 8, Cell: dayParked},
		{Head: "travel", Width: 7, Rank: 7, Cell: dayTravel},
		{Head: "min", Width: 5, Rank: 1, Cell: daySetup},
		{Head: barHead(barWidth), Width: barWidth, Rank: 10, Left: true, Cell: dayBar},
		{Head: "setup", Width: times + 2, Rank: 9, Cell: dayBegins},
		{Head: "run", Width: times, Rank: 1, Cell: dayRuns},
		{Head: "end", Width: times, Rank: 3, Cell: dayEnds},
		{Head: "due", Width: times, Rank: due, Cell: dayDue},
		{Head: "late", Width: d.lateWidth(), Rank: 1, Left: true, Cell: dayLate},
	}
	if d.NoneLate() { // nothing would be in it
		columns = columns[:len(columns)-1]
	}
	return columns
}

// changeoverColumns are those of a changeover's own line in the roomy list.
func changeoverColumns(d *desk) []draw.Column[entry] {
	times := d.clockWidth()
	return []draw.Column[entry]{
		{Width: 3 + d.turnWidth(), Cell: func(e entry) (draw.Style, string) { return draw.Faint, e.LeadsTo + " " }},
		{Head: "setup", Width: times + 2, Left: true, Cell: dayBegins},
		{Head: "moves", Width: 5, Cell: dayMoves},
		{Head: "parked", Width: 6, Cell: dayParked},
		{Head: "travel", Width: 7, Cell: dayTravel},
		{Head: "min", Width: 6, Cell: daySetup},
		{Head: barHead(barWidth), Width: barWidth, Rank: 1, Left: true, Cell: dayBar},
	}
}

// jobColumns are those of a job's own line there.
func jobColumns(d *desk) []draw.Column[entry] {
	times := d.clockWidth()
	return []draw.Column[entry]{
		{Width: 1, Left: true, Cell: entry.cursor},
		{Head: "n", Width: d.turnWidth(), Cell: dayTurn},
		{Width: 1, Left: true, Cell: entry.flag},
		{Head: "job", Width: d.idWidth(), Left: true, Cell: dayID},
		{Head: "material", Width: 16, Left: true, Flex: 12, Cell: dayMaterial},
		{Head: "web", Width: 7, Cell: dayWeb},
		{Head: "cuts", Width: 4, Cell: dayCuts},
		{Head: "run", Width: times + 2, Cell: dayRuns},
		{Head: "end", Width: times + 2, Cell: dayEnds},
		{Head: "due", Width: times + 2, Cell: dayDue},
		{Head: "late", Width: max(d.lateWidth(), len("!00:00")), Left: true, Cell: dayLate},
	}
}

// compact lists the jobs one line each, in as many columns as there is room for.
func (p *dayPane) compact(d *desk, n int, focused bool) []draw.Line {
	columns := draw.ColumnsFor(dayColumns(d, p.W), p.W)
	out := []draw.Line{draw.Heads(d.Theme, columns)}
	for _, e := range p.entries(d, n, focused) {
		l := draw.RowOf(d.Theme, columns, e)
		if e.refused() {
			l = draw.RowOf(d.Theme, columns[:4], e)
			l.Add(draw.Late, " "+d.Short(e.refusal(), p.W-l.Width-1))
		}
		out = append(out, l)
	}
	return out
}

// roomy lists the jobs two lines each: the changeover, and the job it leads to.
func (p *dayPane) roomy(d *desk, n int, focused bool) []draw.Line {
	jobs, changeovers := draw.ColumnsFor(jobColumns(d), p.W), draw.ColumnsFor(changeoverColumns(d), p.W)
	out := []draw.Line{draw.Heads(d.Theme, changeovers), draw.Heads(d.Theme, jobs)}
	for _, e := range p.entries(d, n, focused) {
		l := draw.RowOf(d.Theme, changeovers, e)
		if e.refused() {
			l = d.Line()
			l.Add(draw.Late, draw.Blanks(6)+d.Short(e.refusal(), p.W-6))
		}
		out = append(out, l, draw.RowOf(d.Theme, jobs, e))
	}
	return out
}

// bar draws the setup against the longest of the day.
func setupBar(e entry, s *plan.Step) string {
	longest := time.Nanosecond
	for _, s := range e.Forecast.Present.Steps() {
		longest = max(longest, s.Setup.Total())
	}
	n := int((s.Setup.Total()*barWidth + longest/2) / longest)
	return strings.Repeat(e.Glyphs.Bar, n)
}
