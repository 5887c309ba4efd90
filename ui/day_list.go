package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
)

// barWidth is how many cells the longest setup of the day takes as a bar.
const barWidth = 20

// about reports whether what is known of the day is only about that: its jobs are still
// to be planned together.
func (d *desk) about() bool { return !d.present.final }

// aboutMark stands before a figure that is only about that.
func (d *desk) aboutMark() string {
	if d.about() {
		return "~"
	}
	return ""
}

// barHead is the head over bars of setups, in w cells.
func barHead(w int) string { return fitting(w, "against the longest", "of longest", "") }

// figure makes a cell of something the changeover costs; what is only about that is
// faint.
func figure(i ink, text func(e entry, s *plan.Step) string) func(entry) (ink, string) {
	return func(e entry) (ink, string) {
		switch {
		case e.outcome == nil:
			return faint, e.pending
		case e.refused():
			return plain, ""
		}
		switch {
		case e.picked() && i != late:
			return picked, text(e, &e.outcome.step)
		case e.about():
			return faint, text(e, &e.outcome.step)
		}
		return i, text(e, &e.outcome.step)
	}
}

// fact makes a cell of something known of the job, in the cursor's ink where that is.
func fact(i ink, text func(e entry) string) func(entry) (ink, string) {
	return func(e entry) (ink, string) {
		if e.picked() {
			return picked, text(e)
		}
		return i, text(e)
	}
}

// lateBy is how late a job is, or about that.
func (d *desk) lateBy(s *plan.Step) string {
	if text := lateness(s.Late); text != "" && d.about() {
		return "~" + strings.TrimPrefix(text, "!")
	}
	return lateness(s.Late)
}

// The cells of the day's rows.
var (
	dayTurn     = fact(faint, func(e entry) string { return e.turnText(e.turn) })
	dayID       = fact(strong, func(e entry) string { return e.job.ID })
	dayMaterial = fact(plain, func(e entry) string { return e.job.Material })
	dayWeb      = fact(plain, func(e entry) string { return e.shop.Unit.Number(e.job.Web) })
	dayDue      = fact(faint, func(e entry) string { return e.at(e.job.Due) })
	dayCuts     = figure(plain, func(e entry, s *plan.Step) string { return fmt.Sprint(len(s.Layout.Cuts)) })
	dayMoves    = figure(moved, func(e entry, s *plan.Step) string { return e.aboutMark() + fmt.Sprint(s.Changeover.Repositions) })
	dayParked   = figure(plain, func(e entry, s *plan.Step) string { return fmt.Sprint(s.Changeover.Parked) })
	dayTravel   = figure(plain, func(e entry, s *plan.Step) string { return e.travel(s.Changeover.Travel) })
	daySetup    = figure(strong, func(e entry, s *plan.Step) string { return minutes(s.Setup.Total()) })
	dayBegins   = figure(plain, func(e entry, s *plan.Step) string { return e.at(s.SetupStart) })
	dayRuns     = figure(plain, func(e entry, s *plan.Step) string { return e.at(s.RunStart) })
	dayEnds     = figure(plain, func(e entry, s *plan.Step) string { return e.at(s.RunEnd) })
	dayLate     = figure(late, func(e entry, s *plan.Step) string { return e.lateBy(s) })
	dayBar      = figure(moved, func(e entry, s *plan.Step) string { return e.bar(s) })
)

// turnWidth and clockWidth are the widths of the columns of turns and of times.
func (d *desk) turnWidth() int { return max(2, len(fmt.Sprint(d.nth(len(d.jobs()))))) }

// nth is a turn as people count it: from 1, with those of the day that are done. Jobs
// that the beam can't run have none, as far as that is known.
func (d *desk) nth(turn int) int {
	n := d.history.now.done() + 1
	for t := range turn {
		if !d.turnedDown(t) {
			n++
		}
	}
	return n
}

// turnedDown reports whether it is known that the beam can't run the job at that turn.
func (d *desk) turnedDown(turn int) bool {
	o := d.outcome(turn)
	return o != nil && len(o.faults) > 0
}

// turnText is the number of a turn; nothing for a job that is refused.
func (d *desk) turnText(turn int) string {
	if d.turnedDown(turn) {
		return ""
	}
	return fmt.Sprint(d.nth(turn))
}

func (d *desk) clockWidth() int {
	w := 5
	for _, o := range d.present.known {
		w = max(w, len(d.at(o.clock)))
	}
	for _, j := range d.jobs() {
		w = max(w, len(d.at(j.Due)))
	}
	return w
}

// leastID is how wide the column of ids is at least: other columns are worth more than
// the rest of a long one.
const leastID = 7

// noneLate reports whether it is known that no job of the day is late.
func (d *desk) noneLate() bool { return d.present.full() && d.present.totals.LateJobs == 0 }

// noneDue reports whether no job has a time by which it is due.
func (d *desk) noneDue() bool {
	return !slices.ContainsFunc(d.jobs(), func(j *plan.Job) bool { return !j.Due.IsZero() })
}

// dayColumns are those of the compact list: one line a job.
func dayColumns(d *desk) []column[entry] {
	times, late, due := d.clockWidth(), 1, 2
	if d.noneLate() { // what is empty goes first
		late = due
	}
	if d.noneDue() {
		due = 12
	}
	id := min(d.idWidth(), leastID)
	return []column[entry]{
		{width: 1, left: true, cell: entry.cursor},
		{head: "n", width: d.turnWidth(), cell: dayTurn},
		{width: 1, left: true, cell: entry.flag},
		{head: "job", width: id, left: true, flex: d.idWidth() - id, cell: dayID},
		{head: "material", width: 12, rank: 5, left: true, flex: 18, cell: dayMaterial},
		{head: "web", width: 7, rank: 8, cell: dayWeb},
		{head: "cuts", width: 4, rank: 7, cell: dayCuts},
		{head: "moves", width: 5, rank: 1, cell: dayMoves},
		{head: "parked", width: 6, rank: 4, cell: dayParked},
		{head: "travel", width: 7, rank: 6, cell: dayTravel},
		{head: "min", width: 5, rank: 1, cell: daySetup},
		{head: barHead(barWidth), width: barWidth, rank: 10, left: true, cell: dayBar},
		{head: "setup", width: times + 2, rank: 9, cell: dayBegins},
		{head: "run", width: times, rank: 1, cell: dayRuns},
		{head: "end", width: times, rank: 3, cell: dayEnds},
		{head: "due", width: times, rank: due, cell: dayDue},
		{head: "late", width: d.lateWidth(), rank: late, left: true, cell: dayLate},
	}
}

// changeoverColumns are those of a changeover's own line in the roomy list.
func changeoverColumns(d *desk) []column[entry] {
	times := d.clockWidth()
	return []column[entry]{
		{width: 3 + d.turnWidth(), cell: func(e entry) (ink, string) { return faint, e.leadsTo + " " }},
		{head: "setup", width: times + 2, left: true, cell: dayBegins},
		{head: "moves", width: 5, cell: dayMoves},
		{head: "parked", width: 6, cell: dayParked},
		{head: "travel", width: 7, cell: dayTravel},
		{head: "min", width: 6, cell: daySetup},
		{head: barHead(barWidth), width: barWidth, rank: 1, left: true, cell: dayBar},
	}
}

// jobColumns are those of a job's own line there.
func jobColumns(d *desk) []column[entry] {
	times := d.clockWidth()
	return []column[entry]{
		{width: 1, left: true, cell: entry.cursor},
		{head: "n", width: d.turnWidth(), cell: dayTurn},
		{width: 1, left: true, cell: entry.flag},
		{head: "job", width: d.idWidth(), left: true, cell: dayID},
		{head: "material", width: 16, left: true, flex: 12, cell: dayMaterial},
		{head: "web", width: 7, cell: dayWeb},
		{head: "cuts", width: 4, cell: dayCuts},
		{head: "run", width: times + 2, cell: dayRuns},
		{head: "end", width: times + 2, cell: dayEnds},
		{head: "due", width: times + 2, cell: dayDue},
		{head: "late", width: max(d.lateWidth(), len("!00:00")), left: true, cell: dayLate},
	}
}

// compact lists the jobs one line each, in as many columns as there is room for.
func (p *dayPane) compact(d *desk, n int, focused bool) []line {
	columns := columnsFor(dayColumns(d), p.w)
	out := []line{heads(d.look, columns)}
	for _, e := range p.entries(d, n, focused) {
		l := rowOf(d.look, columns, e)
		if e.refused() {
			l = rowOf(d.look, columns[:4], e)
			l.add(late, " "+d.short(e.refusal(), p.w-l.width-1))
		}
		out = append(out, l)
	}
	return out
}

// roomy lists the jobs two lines each: the changeover, and the job it leads to.
func (p *dayPane) roomy(d *desk, n int, focused bool) []line {
	jobs, changeovers := columnsFor(jobColumns(d), p.w), columnsFor(changeoverColumns(d), p.w)
	out := []line{heads(d.look, changeovers), heads(d.look, jobs)}
	for _, e := range p.entries(d, n, focused) {
		l := rowOf(d.look, changeovers, e)
		if e.refused() {
			l = d.line()
			l.add(late, blanks(6)+d.short(e.refusal(), p.w-6))
		}
		out = append(out, l, rowOf(d.look, jobs, e))
	}
	return out
}

// refusal is why the beam can't run the job.
func (e entry) refusal() string { return "refused: " + e.outcome.faults[0].Why(e.shop.Unit) }

// bar draws the setup against the longest of the day.
func (e entry) bar(s *plan.Step) string {
	longest := time.Nanosecond
	for _, o := range e.present.known {
		longest = max(longest, o.step.Setup.Total())
	}
	n := int((s.Setup.Total()*barWidth + longest/2) / longest)
	return strings.Repeat(e.glyphs.bar, n)
}
