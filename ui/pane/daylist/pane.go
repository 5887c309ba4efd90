// Package daylist is the pane of the day: its jobs in their sequence, what each changeover costs, and
// the day in all against the listed order.
package daylist

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane lists the day's jobs in their order, with what each changeover costs.
type Pane struct {
	draw.Size
	filter list.Filter
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnDay }

// HandleKey picks a job or moves it.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	d.Pick(pane.PickRow(p.shown(d), d.JobAt, a, max(p.parts(d).list-1, 1)))
	by := map[keys.Action]int{keys.Earlier: -1, keys.Later: 1}[a]
	if by == 0 {
		return nil
	}
	return func(s *session.Session) { s.MoveBy(d.JobAt, by) }
}

// dayParts is how the pane's lines are shared out.
type dayParts struct {
	list   int  // jobs shown
	roomy  bool // two lines a job: its changeover and itself
	detail int  // lines about the picked job
}

// leastJobs is how many jobs are listed before there are lines about the picked one.
const leastJobs = 14

// parts shares out the lines: one for the heads, two for the totals, one more for
// jobs that are done or on hold, some about the picked job, the rest for the list.
func (p *Pane) parts(d *pane.Shared) dayParts {
	room := p.H - 1 - 3
	if len(d.Away()) > 0 {
		room--
	}
	s := dayParts{detail: max(min(room-min(len(d.Jobs()), leastJobs), 5), 0)}
	s.list = max(room-s.detail, 0)
	if s.roomy = p.W >= 72 && s.list > 2*len(d.Jobs()); s.roomy {
		s.list = (s.list - 1) / 2
	}
	return s
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	s := p.parts(d)
	title := d.Line()
	title.Add(draw.Faint, p.heading(d, s.list))
	var body []draw.Line
	if s.roomy {
		body = p.roomy(d, s.list, focused)
	} else {
		body = p.compact(d, s.list, focused)
	}
	for len(body) < p.H-1-2-s.detail-min(len(d.Away()), 1) {
		body = append(body, d.Line())
	}
	body = append(body, p.detail(d, s.detail)...)
	if len(d.Away()) > 0 {
		body = append(body, p.Away(d))
	}
	body = append(body, p.Total(d, ThisOrder(d), &d.Present), p.Total(d, "as listed, centred", &d.Listed))
	return draw.Box(d.Theme, "Day", title, body, p.Size, focused)
}

// heading says which jobs are in a list of n, and the day.
func (p *Pane) heading(d *pane.Shared, n int) string {
	rows := p.shown(d)
	jobs := len(rows)
	some := pane.ListOf(rows, d.JobAt, n).Range()
	if text := p.filter.Count(jobs, len(d.Jobs())); text != "" {
		return text
	}
	if some == "" {
		return DayHours(d.Shop.Day, "Mon 2 Jan 2006, 15:04", " to ")
	}
	return draw.Fitting(p.W-len("-->Day  "), some+", "+DayHours(d.Shop.Day, "Mon 2 Jan 2006, 15:04", " to "),
		some+" "+DayHours(d.Shop.Day, "Mon 2 Jan 15:04", "-"), some+" "+d.Shop.Day.Start.Format("Mon 2 Jan"))
}

// DayHours is the day's date and hours.
func DayHours(d *plan.Day, begin, to string) string {
	text := d.Start.Format(begin)
	if !d.End.IsZero() {
		text += to + words.Clock(d.End, d.Start)
	}
	return text
}

func (p *Pane) entries(d *pane.Shared, n int, focused bool) []pane.JobRow {
	rows := p.shown(d)
	l := pane.ListOf(rows, d.JobAt, n)
	var out []pane.JobRow
	for _, t := range rows[l.From():l.To()] {
		out = append(out, pane.JobRow{Shared: d, Index: t, Job: d.Jobs()[t], Outcome: d.Outcome(t), Focused: focused})
	}
	return out
}

// ThisOrder names the present order, with a mark where it breaks a rule.
func ThisOrder(d *pane.Shared) string {
	if len(d.Broken) > 0 {
		return "this order !"
	}
	return "this order"
}

// Total is a line of the day's costs in one order, in fewer words where it is narrow.
func (p *Pane) Total(d *pane.Shared, name string, c *planning.Order) (l draw.Line) {
	for _, word := range []string{" moves ", " mov "} {
		if l = p.totalled(d, name, c, word); l.Width <= p.W {
			break
		}
	}
	return l
}

// totalled is that line with a word for moves.
func (p *Pane) totalled(d *pane.Shared, name string, c *planning.Order, word string) draw.Line {
	l := d.Line()
	i := draw.Faint
	if strings.HasSuffix(name, "!") {
		i = draw.Late
	}
	l.Left(i, " "+name, 19)
	if !c.Whole() {
		text := fmt.Sprintf("%d of %d planned", len(c.Known), len(c.Jobs))
		if c.Full() {
			text = "planning all jobs together"
		}
		l.Add(draw.Faint, " "+d.Pending+" "+text)
		return l
	}
	most := max(d.Present.Totals.Repositions, d.Listed.Totals.Repositions, 100)
	l.Right(pane.MovesStyle(c.Totals.Repositions), fmt.Sprint(c.Totals.Repositions), 1+len(fmt.Sprint(most)))
	l.Add(draw.Faint, word)
	l.Right(draw.Strong, words.Minutes(c.Totals.Setup), max(5, draw.CellWidth(words.Minutes(c.Totals.Setup))))
	l.Add(draw.Faint, " min ")
	n := c.Totals.LateJobs
	if n == 0 {
		l.Add(draw.Good, draw.Fitting(p.W-l.Width, "none late", "0 late"))
		return l
	}
	behind := "!" + words.Hours(c.Totals.Late)
	l.Add(draw.Late, draw.Fitting(p.W-l.Width, fmt.Sprintf("%s late (%s)", behind, words.Count(n, "job")), behind+" late", behind))
	return l
}

// Away names the jobs that are done or on hold.
func (p *Pane) Away(d *pane.Shared) draw.Line {
	l := d.Line()
	var jobs []string
	for _, j := range d.Away() {
		state := "done"
		if j.State == plan.OnHold {
			state = "on hold"
		}
		jobs = append(jobs, j.ID+" "+state)
	}
	l.Add(draw.Faint, " "+d.Short("done or on hold: "+strings.Join(jobs, ", "), p.W-2))
	return l
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) { d.Pick(pane.ShownRow(p.shown(d), d.JobAt)) }

func (p *Pane) Hides(d *pane.Shared) bool {
	return d.Job() != nil && !slices.Contains(p.shown(d), d.JobAt)
}

// shown are the jobs, by index, that the filter leaves.
func (p *Pane) shown(d *pane.Shared) []int {
	return p.filter.Rows(len(d.Jobs()), d.FilterWords)
}

// Click picks the job of a row.
func (p *Pane) Click(d *pane.Shared, _, y int) {
	s := p.parts(d)
	rows, row := p.shown(d), y-2
	if s.roomy {
		row = (y - 3) / 2
	}
	l := pane.ListOf(rows, d.JobAt, s.list)
	if row += l.From(); row >= l.From() && row < l.To() {
		d.Pick(rows[row])
	}
}

// detail says of the picked job what its row has no room for, in n lines.
func (p *Pane) detail(d *pane.Shared, n int) []draw.Line { return pane.AboutPicked(d, n, p.W) }
