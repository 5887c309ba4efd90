package schedule

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane draws the day along the clock: each job's setup and run, when it is due
// and the end of the shift. Where there are few lines all jobs are in one.
type Pane struct {
	draw.Size
	filter list.Filter
	Hours  timeView // what is shown
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnSchedule }

// HandleKey picks a job, or shows another part of the day.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) {
	page := max(p.jobs(d)-1, 1)
	switch a {
	case keys.Up:
		p.along(d, -1)
	case keys.Down:
		p.along(d, 1)
	case keys.PageUp:
		p.along(d, -page)
	case keys.PageDown:
		p.along(d, page)
	case keys.Top:
		p.along(d, -len(d.Jobs()))
	case keys.Bottom:
		p.along(d, len(d.Jobs()))
	default:
		p.Hours.look(a, d)
	}
}

// rows are the indexes of the jobs that the filter leaves; all where they are in one line.
func (p *Pane) rows(d *pane.Shared) []int {
	if p.inOne() {
		return new(list.Filter).Rows(len(d.Jobs()), d.FilterWords)
	}
	return p.filter.Rows(len(d.Jobs()), d.FilterWords)
}

// along picks the job n rows on.
func (p *Pane) along(d *pane.Shared, n int) {
	d.Pick(pane.Along(p.rows(d), d.JobAt, n))
	p.Hours.follow(d)
}

// fewLines is below how many lines all jobs are drawn in one.
const fewLines = 16

func (p *Pane) inOne() bool { return p.H < fewLines }

// jobs is how many jobs are shown, one a line; what is left tells about the picked one.
func (p *Pane) jobs(d *pane.Shared) int {
	room := p.H - 3
	return max(min(max(len(p.rows(d)), 1), room-min(room/4, 2)), 0)
}

// shown are the indexes of the jobs that there is room for, around the picked one.
func (p *Pane) shown(d *pane.Shared) []int {
	rows, n := p.rows(d), p.jobs(d)
	from := draw.Window(pane.RowAt(rows, d.JobAt), len(rows), n)
	return rows[from:min(from+n, len(rows))]
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	n := p.jobs(d)
	if p.inOne() {
		return draw.Box(d.Theme, "Schedule", p.legend(d), p.oneLine(d), p.Size, focused)
	}
	title := pane.RowsShown(d, &p.filter, p.rows(d), n)
	title.Join(p.legend(d))
	body := p.lines(d, p.shown(d), focused)
	return draw.Box(d.Theme, "Schedule", title, pane.WithDetail(d, body, p.Size, max(min(p.H-3-n, 5), 0)), p.Size, focused)
}

// oneLine draws all jobs in one line, with their names and when they are due below it.
func (p *Pane) oneLine(d *pane.Shared) []draw.Line {
	from, long := p.Hours.Span(d)
	s := timeScale{from, from.Add(long), p.W}
	bar, names, due := pane.NewLabels(p.W), pane.NewLabels(p.W), pane.NewLabels(p.W)
	mark := func(l pane.Labels) func(x int, i draw.Style, text string) {
		return func(x int, i draw.Style, text string) {
			if x >= 0 && x < len(l) {
				l[x] = draw.Span{Style: i, Text: text}
			}
		}
	}
	for index, j := range d.Jobs() {
		e := pane.JobRow{Shared: d, Index: index, Job: j, Outcome: d.Outcome(index), Focused: false}
		if e.Outcome == nil || e.Refused() {
			continue
		}
		step := *e.Outcome.Step
		late := step.Late > 0
		step.Late = 0 // the time since it is due is another job's here
		timeBar(e, &step, s, 0, mark(bar))
		if !j.Due.IsZero() {
			due.Put(s.column(j.Due), pickLate(late), d.Due+d.Safe(j.ID))
		}
		if e.Picked() {
			names.Put(s.column(step.SetupStart), draw.Picked, d.Aim+d.Safe(j.ID))
		}
	}
	for index, j := range d.Jobs() {
		if o := d.Outcome(index); index != d.JobAt && o != nil && len(o.Faults) == 0 {
			names.Put(s.column(o.Step.SetupStart), pickLate(o.Step.Late > 0), d.Safe(j.ID))
		}
	}
	if end := d.Shop.Day.End; !end.IsZero() {
		mark(bar)(s.column(end), draw.Strong, d.ShiftEnd)
	}
	out := []draw.Line{s.clocks(d)}
	for _, l := range []pane.Labels{bar, names, due} {
		out = append(out, draw.FromCells(d.Theme, l))
	}
	for len(out) < p.H-1 {
		out = append(out, d.Line())
	}
	return out
}

// pickLate is the ink of what is late, or not.
func pickLate(late bool) draw.Style {
	if late {
		return draw.Late
	}
	return draw.Plain
}

// WholeTime is the time that the schedule shows: from the day's start to the last run's
// end, due time, or the shift's end.
func WholeTime(d *pane.Shared) (from, to time.Time) {
	from, to = d.Forecast.Start.Clock, d.Shop.Day.End
	if from.IsZero() {
		from = d.Shop.Day.Start
	}
	later := func(t time.Time) {
		if t.After(to) {
			to = t
		}
	}
	later(from.Add(time.Hour))
	for _, o := range d.Forecast.Present.Known {
		later(o.Clock)
	}
	for _, j := range d.Jobs() {
		if !j.Due.IsZero() && j.Due.Sub(from) < 72*time.Hour {
			later(j.Due)
		}
	}
	return from, to
}

// timeView is the part of the time that is shown.
type timeView struct {
	zoom int       // how often it was halved
	from time.Time // where it begins, when it was
}

// nearestTime is how often the time may be halved.
const nearestTime = 5

// look changes what is shown: nearer, around the picked job, or along the clock.
func (v *timeView) look(a keys.Action, d *pane.Shared) {
	_, long := v.Span(d)
	switch a {
	case keys.ZoomIn:
		v.zoom = min(v.zoom+1, nearestTime)
		v.center(d)
	case keys.ZoomOut:
		v.zoom = max(v.zoom-1, 0)
		v.center(d)
	case keys.WholeBeam:
		v.zoom = 0
	case keys.Left:
		v.from = v.from.Add(-long / 2)
	case keys.Right:
		v.from = v.from.Add(long / 2)
	}
	v.from, _ = v.Span(d)
}

// center puts the picked job into the middle.
func (v *timeView) center(d *pane.Shared) {
	from, to := WholeTime(d)
	v.from = from
	if o := d.Outcome(d.JobAt); o != nil && len(o.Faults) == 0 {
		s := o.Step
		v.from = s.SetupStart.Add(s.RunEnd.Sub(s.SetupStart) / 2).Add(-(to.Sub(from) >> v.zoom) / 2)
	}
}

// follow brings the picked job into sight.
func (v *timeView) follow(d *pane.Shared) {
	from, long := v.Span(d)
	o := d.Outcome(d.JobAt)
	if o != nil && len(o.Faults) == 0 && (o.Step.SetupStart.Before(from) || o.Step.RunEnd.After(from.Add(long))) {
		v.center(d)
	}
}

// Span is where the view begins, and how long it is; it stays within the whole time.
func (v *timeView) Span(d *pane.Shared) (time.Time, time.Duration) {
	from, to := WholeTime(d)
	long := to.Sub(from) >> v.zoom
	if v.zoom == 0 {
		return from, long
	}
	last := to.Add(-long)
	switch {
	case v.from.Before(from):
		return from, long
	case v.from.After(last):
		return last, long
	}
	return v.from, long
}

// timeScale maps the clock to columns.
type timeScale struct {
	from, to time.Time
	width    int
}

func (s timeScale) column(t time.Time) int {
	all := int(max(s.to.Sub(s.from), time.Minute) / time.Second)
	return draw.Floor(int(t.Sub(s.from)/time.Second)*(s.width-1), all)
}

// steps between the hours that are numbered, in minutes.
var hourSteps = []int{5, 10, 15, 30, 60, 120, 240, 480, 720, 1440, 2880}

// clocks numbers the scale.
func (s timeScale) clocks(d *pane.Shared) draw.Line {
	l := pane.NewLabels(s.width)
	all := int(s.to.Sub(s.from) / time.Minute)
	step := hourSteps[len(hourSteps)-1]
	for _, n := range hourSteps {
		if all/n*(d.ClockWidth()+4) <= s.width {
			step = n
			break
		}
	}
	by := time.Duration(step) * time.Minute
	for t := s.from.Truncate(by); !t.After(s.to); t = t.Add(by) {
		if !t.Before(s.from) {
			l.Put(s.column(t), draw.Faint, d.Tick+d.Clock(t))
		}
	}
	return draw.FromCells(d.Theme, l)
}

// lines draw a line for each of the jobs: each job's setup and run, when it is due,
// and the shift's end.
func (p *Pane) lines(d *pane.Shared, indexes []int, focused bool) []draw.Line {
	f := pane.NewFrame(d, p.W)
	from, long := p.Hours.Span(d)
	s := timeScale{from, from.Add(long), f.Middle}
	out := []draw.Line{f.Headed(d, s.clocks(d)), shiftEnds(d, &f, s)}
	for _, index := range indexes {
		e := pane.JobRow{Shared: d, Index: index, Job: d.Jobs()[index], Outcome: d.Outcome(index), Focused: focused}
		l := f.Before(e, 0, 1)
		if e.Refused() {
			out = append(out, pane.RefusedRow(l, e, p.W))
			continue
		}
		l.Join(timeOf(e, s).Fit(f.Middle))
		l.Join(f.Behind(e))
		out = append(out, l)
	}
	return out
}

// shiftEnds marks where the shift ends.
func shiftEnds(d *pane.Shared, f *pane.Frame, s timeScale) draw.Line {
	l := d.Line()
	l.To(f.Left)
	m := pane.NewLabels(s.width)
	if end := d.Shop.Day.End; !end.IsZero() {
		x, text := s.column(end), "shift ends "+d.Clock(end)
		switch wide := draw.CellWidth(text) + 2; {
		case x < 0:
			m.Put(0, draw.Faint, "< "+text)
		case x >= s.width:
			m.Put(s.width-wide, draw.Faint, text+" >")
		case x+1 >= wide:
			m.Put(x+1-wide, draw.Strong, text+" "+d.ShiftEnd)
		default:
			m.Put(x, draw.Strong, d.ShiftEnd+" "+text)
		}
	}
	l.Join(draw.FromCells(d.Theme, m).Fit(f.Middle))
	return l
}

// legend tells what is drawn.
func (p *Pane) legend(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Moved, d.SetupFill+" setup  ")
	l.Add(draw.Accent, d.RunFill+" run  ")
	l.Add(draw.Strong, d.Due+" due  ")
	l.Add(draw.Late, draw.Fitting(p.W-90, "! late since due  ", "! late  "))
	if p.Hours.zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("%d times as large  ", 1<<p.Hours.zoom))
	}
	return l
}

// timeOf is a job's line: its setup and run, when it is due and, where it is late, the
// time since. What lies outside the view is pointed to.
func timeOf(e pane.JobRow, s timeScale) draw.Line {
	out := make([]draw.Span, s.width)
	for x := range out {
		out[x] = draw.Span{Style: draw.Plain, Text: " "}
	}
	mark := func(x int, i draw.Style, text string) {
		if x >= 0 && x < len(out) {
			out[x] = draw.Span{Style: i, Text: text}
		}
	}
	if end := e.Shop.Day.End; !end.IsZero() {
		mark(s.column(end), draw.Faint, e.ShiftEnd)
	}
	due := s.column(e.Job.Due)
	switch {
	case e.Outcome == nil:
		mark(0, draw.Faint, e.Pending)
	case !e.Refused():
		timeBar(e, e.Outcome.Step, s, due, mark)
	}
	if !e.Job.Due.IsZero() {
		i := draw.Strong
		if e.Outcome != nil && !e.Refused() && e.Outcome.Step.Late > 0 {
			i = draw.Late
		}
		mark(due, i, e.Due)
	}
	return draw.FromCells(e.Theme, out)
}

// timeBar marks when a job is set up and runs. In less than two columns there is but the
// run.
func timeBar(e pane.JobRow, step *plan.Step, s timeScale, due int, mark func(x int, i draw.Style, text string)) {
	from, runs, to := s.column(step.SetupStart), s.column(step.RunStart), s.column(step.RunEnd)
	if runs == from && to > from && step.RunStart.After(step.SetupStart) {
		runs++
	}
	for x := max(from, 0); x <= min(to, s.width-1); x++ {
		if x < runs {
			mark(x, draw.Moved, e.SetupFill)
		} else {
			mark(x, draw.Pick(e.Picked(), draw.Accent), e.RunFill)
		}
	}
	if step.Late > 0 {
		end := from - 1
		if due >= from {
			end = to
		}
		for x := max(due+1, 0); x <= min(end, s.width-1); x++ {
			mark(x, draw.Late, "!")
		}
	}
	switch {
	case to < 0:
		mark(0, draw.Faint, "<")
	case from >= s.width:
		mark(s.width-1, draw.Faint, ">")
	}
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) { p.along(d, 0) }

func (p *Pane) Hides(d *pane.Shared) bool {
	return d.Job() != nil && !slices.Contains(p.rows(d), d.JobAt)
}

// Click picks the job of a line, or where all are in one the job at a time.
func (p *Pane) Click(d *pane.Shared, x, y int) {
	const heads = 3 // with the pane's rule
	if !p.inOne() {
		if indexes := p.shown(d); y >= heads && y-heads < len(indexes) {
			d.Pick(indexes[y-heads])
		}
		return
	}
	from, long := p.Hours.Span(d)
	s := timeScale{from, from.Add(long), p.W}
	for index := range d.Jobs() {
		if o := d.Outcome(index); o != nil && len(o.Faults) == 0 && s.column(o.Step.SetupStart) <= x && x <= s.column(o.Step.RunEnd) {
			d.Pick(index)
		}
	}
}
