package ui

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
)

// dayPane lists the day's jobs in their order, with what each changeover costs.
type dayPane struct{ size }

func (p *dayPane) SetSize(s size) { p.size = s }
func (p *dayPane) Help() scope    { return onDay }

// HandleKey picks a job or moves it.
func (p *dayPane) HandleKey(a action, d *desk) {
	page := max(p.parts(d).list-1, 1)
	switch a {
	case up:
		p.along(d, -1)
	case down:
		p.along(d, 1)
	case pageUp:
		p.along(d, -page)
	case pageDown:
		p.along(d, page)
	case top:
		p.along(d, -len(d.jobs()))
	case bottom:
		p.along(d, len(d.jobs()))
	case earlier:
		d.shift(-1)
	case later:
		d.shift(1)
	}
}

// along picks the job n rows on.
func (p *dayPane) along(d *desk, n int) { d.pick(along(p.shown(d), d.turn, n)) }

// dayParts is how the pane's lines are shared out.
type dayParts struct {
	list   int  // jobs shown
	roomy  bool // two lines a job: its changeover and itself
	detail int  // lines about the picked job
}

// parts shares out the lines: one for the heads, two for the totals, one more for
// jobs that have no turn, some about the picked job, the rest for the list.
func (p *dayPane) parts(d *desk) dayParts {
	room := p.h - 1 - 3
	if len(d.away()) > 0 {
		room--
	}
	s := dayParts{detail: max(min(room/3, 5), 0)}
	s.list = max(room-s.detail, 0)
	if s.roomy = p.w >= 72 && s.list > 2*len(d.jobs()); s.roomy {
		s.list = (s.list - 1) / 2
	}
	return s
}

// View draws the pane.
func (p *dayPane) View(d *desk, focused bool) []line {
	s := p.parts(d)
	title := d.line()
	title.add(faint, p.heading(d, s.list))
	var body []line
	if s.roomy {
		body = p.roomy(d, s.list, focused)
	} else {
		body = p.compact(d, s.list, focused)
	}
	for len(body) < p.h-1-2-s.detail-min(len(d.away()), 1) {
		body = append(body, d.line())
	}
	body = append(body, p.detail(d, s.detail)...)
	if len(d.away()) > 0 {
		body = append(body, p.away(d))
	}
	body = append(body, p.total(d, d.thisOrder(), &d.present), p.total(d, "listed, centred", &d.listed))
	return box(d.look, "1 Day", title, body, p.size, focused)
}

// heading tells which jobs are in a list of n, and the day.
func (p *dayPane) heading(d *desk, n int) string {
	rows := p.shown(d)
	jobs := len(rows)
	some := some(window(rowOfTurn(rows, d.turn), jobs, n), n, jobs)
	if text := d.filters[theDay].count(jobs, len(d.jobs())); text != "" {
		return text
	}
	if some == "" {
		return span24(d.shop.Day, "Mon 2 Jan 2006, 15:04", " to ")
	}
	return fitting(p.w-len("-->1 Day  "), some+", "+span24(d.shop.Day, "Mon 2 Jan 2006, 15:04", " to "),
		some+" "+span24(d.shop.Day, "Mon 2 Jan 15:04", "-"), some+" "+d.shop.Day.Start.Format("Mon 2 Jan"))
}

// span24 is the day's date and hours.
func span24(d *plan.Day, begin, to string) string {
	text := d.Start.Format(begin)
	if !d.End.IsZero() {
		text += to + clock(d.End, d.Start)
	}
	return text
}

// entry is one row of the list.
type entry struct {
	*desk
	turn    int
	job     *plan.Job
	outcome *outcome // nil while it is worked out
	focused bool
}

func (p *dayPane) entries(d *desk, n int, focused bool) []entry {
	rows := p.shown(d)
	from := window(rowOfTurn(rows, d.turn), len(rows), n)
	var out []entry
	for _, t := range rows[from:min(from+n, len(rows))] {
		out = append(out, entry{d, t, d.jobs()[t], d.outcome(t), focused})
	}
	return out
}

func (e entry) picked() bool  { return e.turn == e.desk.turn }
func (e entry) refused() bool { return e.outcome != nil && len(e.outcome.faults) > 0 }

// cursor marks the picked row, in a pane without the keys less.
func (e entry) cursor() (ink, string) {
	switch {
	case !e.picked():
		return plain, ""
	case e.focused:
		return picked, e.look.cursor
	}
	return picked, e.cursorBy
}

// flag is the row's letter: refused, an order that breaks a rule, running, fixed to a
// turn, or to come after another job.
func (e entry) flag() (ink, string) {
	switch {
	case e.refused():
		return late, "x"
	case e.broken[e.job] != "":
		return late, "!"
	case e.job.State == plan.Running:
		return good, "r"
	case e.job.Turn != 0:
		return accent, "t"
	case len(e.job.After) > 0:
		return faint, "<"
	}
	return plain, ""
}

// at is a time of the day.
func (d *desk) at(t time.Time) string { return clock(t, d.shop.Day.Start) }

// travel is the moves' lengths together, in metres or feet.
func (d *desk) travel(l plan.Length) string {
	if d.shop.Unit == plan.Inches {
		return fmt.Sprintf("%.1f ft", float64(l)/float64(12*plan.Inch))
	}
	return fmt.Sprintf("%.1f m", float64(l)/float64(1000*plan.Millimetre))
}

// idWidth is the width of the column of job ids.
func (d *desk) idWidth() int {
	w := 3
	for _, j := range d.jobs() {
		w = max(w, cells(d.safe(j.ID)))
	}
	return min(w, 12)
}

// thisOrder names the present order, with a mark where it breaks a rule.
func (d *desk) thisOrder() string {
	if len(d.broken) > 0 {
		return "this order !"
	}
	return "this order"
}

// total is a line of the day's costs in one order, in fewer words where it is narrow.
func (p *dayPane) total(d *desk, name string, c *chain) (l line) {
	for _, word := range []string{" moves ", " mov "} {
		if l = p.totalled(d, name, c, word); l.width <= p.w {
			break
		}
	}
	return l
}

// totalled is that line with a word for moves.
func (p *dayPane) totalled(d *desk, name string, c *chain, word string) line {
	l := d.line()
	i := faint
	if strings.HasSuffix(name, "!") {
		i = late
	}
	l.left(i, " "+name, 16)
	if !c.whole() {
		text := fmt.Sprintf("%d of %d worked out", len(c.known), len(c.jobs))
		if c.full() {
			text = "being planned together"
		}
		l.add(faint, " "+d.pending+" "+text)
		return l
	}
	most := max(d.present.totals.Repositions, d.listed.totals.Repositions, 100)
	l.right(moved, fmt.Sprint(c.totals.Repositions), 1+len(fmt.Sprint(most)))
	l.add(faint, word)
	l.right(strong, minutes(c.totals.Setup), max(5, cells(minutes(c.totals.Setup))))
	l.add(faint, " min ")
	n := c.totals.LateJobs
	if n == 0 {
		l.add(good, fitting(p.w-l.width, "none late", "in time", "0 late"))
		return l
	}
	behind := "!" + hours(c.totals.Late)
	l.add(late, fitting(p.w-l.width, fmt.Sprintf("%s late (%s)", behind, count(n, "job")), behind+" late", behind))
	return l
}

// away names the jobs that have no turn.
func (p *dayPane) away(d *desk) line {
	l := d.line()
	var jobs []string
	for _, j := range d.away() {
		state := "done"
		if j.State == plan.Aside {
			state = "aside"
		}
		jobs = append(jobs, j.ID+" "+state)
	}
	l.add(faint, " "+d.short("left out: "+strings.Join(jobs, ", "), p.w-2))
	return l
}
