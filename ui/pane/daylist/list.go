package daylist

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// figure makes a cell of something the changeover costs; an estimate is faint.
func figure(i draw.Style, text func(e pane.JobRow, s *plan.Step) string) func(pane.JobRow) (draw.Style, string) {
	return func(e pane.JobRow) (draw.Style, string) {
		switch {
		case e.Outcome == nil:
			return draw.Faint, e.Pending
		case e.Refused():
			return draw.Plain, ""
		}
		switch {
		case e.Picked() && i != draw.Late:
			return draw.Picked, text(e, e.Outcome.Step)
		case e.Estimated():
			return draw.Faint, text(e, e.Outcome.Step)
		}
		return i, text(e, e.Outcome.Step)
	}
}

// movesFigure is the same for moves: none is nothing to look at.
func movesFigure(text func(e pane.JobRow, s *plan.Step) string) func(pane.JobRow) (draw.Style, string) {
	some, none := figure(draw.Moved, text), figure(draw.Faint, text)
	return func(e pane.JobRow) (draw.Style, string) {
		if e.Outcome != nil && !e.Refused() && e.Outcome.Step.Changeover.Repositions == 0 {
			return none(e)
		}
		return some(e)
	}
}

// fact makes a cell of something known of the job, in the cursor's ink where that is.
func fact(i draw.Style, text func(e pane.JobRow) string) func(pane.JobRow) (draw.Style, string) {
	return func(e pane.JobRow) (draw.Style, string) { return draw.Pick(e.Picked(), i), text(e) }
}

// The cells of the day's rows.
var (
	dayTurn     = fact(draw.Faint, func(e pane.JobRow) string { return e.NumberText(e.Index) })
	dayID       = fact(draw.Strong, func(e pane.JobRow) string { return e.Job.ID })
	dayMaterial = fact(draw.Plain, func(e pane.JobRow) string { return e.Job.Material })
	dayCustomer = fact(draw.Plain, func(e pane.JobRow) string { return e.Job.Customer })
	dayWeb      = fact(draw.Plain, func(e pane.JobRow) string { return e.Shop.Unit.Number(e.Job.Web) })
	dayDue      = fact(draw.Faint, func(e pane.JobRow) string { return e.Clock(e.Job.Due) })
	dayCuts     = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return fmt.Sprint(len(s.Layout.Cuts)) })
	movesCell   = movesFigure(func(e pane.JobRow, s *plan.Step) string {
		return e.EstimateMark() + fmt.Sprint(s.Changeover.Repositions)
	})
	dayParked = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return fmt.Sprint(s.Changeover.Parked) })
	dayTravel = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return e.Travel(s.Changeover.Travel) })
	daySetup  = figure(draw.Strong, func(e pane.JobRow, s *plan.Step) string { return words.Minutes(s.Setup.Total()) })
	dayBegins = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return e.Clock(s.SetupStart) })
	dayRuns   = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return e.Clock(s.RunStart) })
	dayEnds   = figure(draw.Plain, func(e pane.JobRow, s *plan.Step) string { return e.Clock(s.RunEnd) })
	lateCell  = figure(draw.Late, func(e pane.JobRow, s *plan.Step) string { return e.LateBy(s) })
	dayBar    = figure(draw.Moved, func(e pane.JobRow, s *plan.Step) string { return setupBar(e, s) })
)

// leastIDWidth is how wide the column of ids is at least: other columns are worth more than
// the rest of a long one.
const leastIDWidth = 7

// columns are those of the compact list: one line a job.
func columns(d *pane.Shared, w int) []draw.Column[pane.JobRow] {
	times, due, material := d.ClockWidth(), 2, 8
	switch {
	case w >= 70 && !noCustomers(d):
		material = 14 // there is room for the customer then
	case w >= 70:
		material = 20
	case d.NoneLate():
		material = 14
	}
	if d.NoneDue() {
		due = 12
	}
	id := min(d.IDWidth(), leastIDWidth)
	columns := []draw.Column[pane.JobRow]{
		{Width: 1, Left: true, Cell: pane.JobRow.Cursor},
		{Head: "n", Width: d.NumberWidth(), Cell: dayTurn},
		{Width: 1, Left: true, Cell: pane.JobRow.Flag},
		{Head: "job", Width: id, Left: true, Flex: d.IDWidth() - id, Cell: dayID},
		{Head: "material", Width: material, Rank: 1, Left: true, Flex: 30 - material, Cell: dayMaterial},
		{Head: "customer", Width: 10, Rank: 4, Left: true, Flex: 10, Cell: dayCustomer},
		{Head: "web", Width: 7, Rank: 5, Cell: dayWeb},
		{Head: "cuts", Width: 4, Rank: 6, Cell: dayCuts},
		{Head: "moves", Width: 5, Rank: 1, Cell: movesCell},
		{Head: "parked", Width: 6, Rank: 8, Cell: dayParked},
		{Head: "travel", Width: 7, Rank: 7, Cell: dayTravel},
		{Head: "min", Width: 5, Rank: 1, Cell: daySetup},
		{Head: pane.BarHead(pane.BarWidth), Width: pane.BarWidth, Rank: 10, Left: true, Cell: dayBar},
		{Head: "setup", Width: times + 2, Rank: 9, Cell: dayBegins},
		{Head: "run", Width: times, Rank: 1, Cell: dayRuns},
		{Head: "end", Width: times, Rank: 3, Cell: dayEnds},
		{Head: "due", Width: times, Rank: due, Cell: dayDue},
		{Head: "late", Width: d.LateWidth(), Rank: 1, Left: true, Cell: lateCell},
	}
	if d.NoneLate() { // nothing would be in it
		columns = columns[:len(columns)-1]
	}
	return withCustomers(d, columns)
}

// withCustomers are the columns, that of customers among them only where a job names one.
func withCustomers(d *pane.Shared, columns []draw.Column[pane.JobRow]) []draw.Column[pane.JobRow] {
	return slices.DeleteFunc(columns, func(c draw.Column[pane.JobRow]) bool { return c.Head == "customer" && noCustomers(d) })
}

// noCustomers reports whether no job of the day names its customer.
func noCustomers(d *pane.Shared) bool {
	return !slices.ContainsFunc(d.Jobs(), func(j *plan.Job) bool { return j.Customer != "" })
}

// changeoverColumns are those of a changeover's own line in the roomy list.
func changeoverColumns(d *pane.Shared) []draw.Column[pane.JobRow] {
	times := d.ClockWidth()
	return []draw.Column[pane.JobRow]{
		{Width: 3 + d.NumberWidth(), Cell: func(e pane.JobRow) (draw.Style, string) { return draw.Faint, e.LeadsTo + " " }},
		{Head: "setup", Width: times + 2, Left: true, Cell: dayBegins},
		{Head: "moves", Width: 5, Cell: movesCell},
		{Head: "parked", Width: 6, Cell: dayParked},
		{Head: "travel", Width: 7, Cell: dayTravel},
		{Head: "min", Width: 6, Cell: daySetup},
		{Head: pane.BarHead(pane.BarWidth), Width: pane.BarWidth, Rank: 1, Left: true, Cell: dayBar},
	}
}

// jobColumns are those of a job's own line there.
func jobColumns(d *pane.Shared) []draw.Column[pane.JobRow] {
	times := d.ClockWidth()
	return withCustomers(d, []draw.Column[pane.JobRow]{
		{Width: 1, Left: true, Cell: pane.JobRow.Cursor},
		{Head: "n", Width: d.NumberWidth(), Cell: dayTurn},
		{Width: 1, Left: true, Cell: pane.JobRow.Flag},
		{Head: "job", Width: d.IDWidth(), Left: true, Cell: dayID},
		{Head: "material", Width: 16, Left: true, Flex: 12, Cell: dayMaterial},
		{Head: "customer", Width: 10, Rank: 1, Left: true, Flex: 10, Cell: dayCustomer},
		{Head: "web", Width: 7, Rank: 2, Cell: dayWeb},
		{Head: "cuts", Width: 4, Rank: 3, Cell: dayCuts},
		{Head: "run", Width: times + 2, Cell: dayRuns},
		{Head: "end", Width: times + 2, Cell: dayEnds},
		{Head: "due", Width: times + 2, Cell: dayDue},
		{Head: "late", Width: max(d.LateWidth(), len("!00:00")), Left: true, Cell: lateCell},
	})
}

// compact lists the jobs one line each, in as many columns as there is room for.
func (p *Pane) compact(d *pane.Shared, n int, focused bool) []draw.Line {
	columns := draw.ColumnsFor(columns(d, p.W), p.W)
	out := []draw.Line{draw.Heads(d.Theme, columns)}
	for _, e := range p.entries(d, n, focused) {
		l := draw.RowOf(d.Theme, columns, e)
		if e.Refused() {
			l = draw.RowOf(d.Theme, columns[:4], e)
			l.Add(draw.Late, " "+d.Short(e.Refusal(), p.W-l.Width-1))
		}
		out = append(out, l)
	}
	return out
}

// roomy lists the jobs two lines each: the changeover, and the job it leads to.
func (p *Pane) roomy(d *pane.Shared, n int, focused bool) []draw.Line {
	jobs, changeovers := draw.ColumnsFor(jobColumns(d), p.W), draw.ColumnsFor(changeoverColumns(d), p.W)
	out := []draw.Line{draw.Heads(d.Theme, changeovers), draw.Heads(d.Theme, jobs)}
	for _, e := range p.entries(d, n, focused) {
		l := draw.RowOf(d.Theme, changeovers, e)
		if e.Refused() {
			l = d.Line()
			l.Add(draw.Late, draw.Blanks(6)+d.Short(e.Refusal(), p.W-6))
		}
		out = append(out, l, draw.RowOf(d.Theme, jobs, e))
	}
	return out
}

// setupBar draws the setup against the longest of the day.
func setupBar(e pane.JobRow, s *plan.Step) string {
	longest := time.Nanosecond
	for _, s := range e.Present.Steps() {
		longest = max(longest, s.Setup.Total())
	}
	n := int((s.Setup.Total()*pane.BarWidth + longest/2) / longest)
	return strings.Repeat(e.Glyphs.Bar, n)
}
