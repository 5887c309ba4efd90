package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
)

// schedulePane draws the day along the clock: each job's setup and run, when it is due
// and the end of the shift. Where there are few lines all jobs are in one.
type schedulePane struct {
	draw.Size
	filter list.Filter
	hours  timeView // what is shown
}

func (p *schedulePane) SetSize(s draw.Size) { p.Size = s }
func (p *schedulePane) Help() keys.Scope    { return keys.OnSchedule }

// HandleKey picks a job, or shows another part of the day.
func (p *schedulePane) HandleKey(a keys.Action, d *desk) {
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
		p.hours.look(a, d)
	}
}

// rows are the turns of the jobs that the filter leaves; all where they are in one line.
func (p *schedulePane) rows(d *desk) []int {
	if p.inOne() {
		return new(list.Filter).Rows(len(d.Jobs()), d.wordsOfJob)
	}
	return p.filter.Rows(len(d.Jobs()), d.wordsOfJob)
}

// along picks the job n rows on.
func (p *schedulePane) along(d *desk, n int) {
	d.pick(along(p.rows(d), d.turn, n))
	p.hours.follow(d)
}

// fewLines is below how many lines all jobs are drawn in one.
const fewLines = 16

func (p *schedulePane) inOne() bool { return p.H < fewLines }

// jobs is how many jobs are shown, one a line; what is left tells about the picked one.
func (p *schedulePane) jobs(d *desk) int {
	room := p.H - 3
	return max(min(max(len(p.rows(d)), 1), room-min(room/4, 2)), 0)
}

// shown are the turns of the rows that there is room for, around the picked one.
func (p *schedulePane) shown(d *desk) []int {
	rows, n := p.rows(d), p.jobs(d)
	from := draw.Window(rowOfTurn(rows, d.turn), len(rows), n)
	return rows[from:min(from+n, len(rows))]
}

// View draws the pane.
func (p *schedulePane) View(d *desk, focused bool) []draw.Line {
	n := p.jobs(d)
	if p.inOne() {
		return draw.Box(d.Theme, "Schedule", p.legend(d), p.oneLine(d), p.Size, focused)
	}
	title := rowsShown(d, &p.filter, p.rows(d), n)
	title.Join(p.legend(d))
	body := p.lines(d, p.shown(d), focused)
	return draw.Box(d.Theme, "Schedule", title, withDetail(d, body, p.Size, max(min(p.H-3-n, 5), 0)), p.Size, focused)
}

// oneLine draws all jobs in one line, with their names and when they are due below it.
func (p *schedulePane) oneLine(d *desk) []draw.Line {
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), p.W}
	bar, names, due := newLabels(p.W), newLabels(p.W), newLabels(p.W)
	mark := func(l labels) func(x int, i draw.Style, text string) {
		return func(x int, i draw.Style, text string) {
			if x >= 0 && x < len(l) {
				l[x] = draw.Span{Style: i, Text: text}
			}
		}
	}
	for turn, j := range d.Jobs() {
		e := entry{d, turn, j, d.Outcome(turn), false}
		if e.outcome == nil || e.refused() {
			continue
		}
		step := *e.outcome.Step
		late := step.Late > 0
		step.Late = 0 // the time since it is due is another job's here
		timeBar(e, &step, s, 0, mark(bar))
		if !j.Due.IsZero() {
			due.put(s.column(j.Due), pickLate(late), d.Due+d.Safe(j.ID))
		}
		if e.picked() {
			names.put(s.column(step.SetupStart), draw.Picked, d.Aim+d.Safe(j.ID))
		}
	}
	for turn, j := range d.Jobs() {
		if o := d.Outcome(turn); turn != d.turn && o != nil && len(o.Faults) == 0 {
			names.put(s.column(o.Step.SetupStart), pickLate(o.Step.Late > 0), d.Safe(j.ID))
		}
	}
	if end := d.Shop.Day.End; !end.IsZero() {
		mark(bar)(s.column(end), draw.Strong, d.ShiftEnd)
	}
	out := []draw.Line{s.clocks(d)}
	for _, l := range []labels{bar, names, due} {
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

// wholeTime is the time that the schedule shows: from the day's start to the last run's
// end, due time, or the shift's end.
func wholeTime(d *desk) (from, to time.Time) {
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
func (v *timeView) look(a keys.Action, d *desk) {
	_, long := v.span(d)
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
	v.from, _ = v.span(d)
}

// center puts the picked job into the middle.
func (v *timeView) center(d *desk) {
	from, to := wholeTime(d)
	v.from = from
	if o := d.Outcome(d.turn); o != nil && len(o.Faults) == 0 {
		s := o.Step
		v.from = s.SetupStart.Add(s.RunEnd.Sub(s.SetupStart) / 2).Add(-(to.Sub(from) >> v.zoom) / 2)
	}
}

// follow brings the picked job into sight.
func (v *timeView) follow(d *desk) {
	from, long := v.span(d)
	o := d.Outcome(d.turn)
	if o != nil && len(o.Faults) == 0 && (o.Step.SetupStart.Before(from) || o.Step.RunEnd.After(from.Add(long))) {
		v.center(d)
	}
}

// span is where the view begins, and how long it is; it stays within the whole time.
func (v *timeView) span(d *desk) (time.Time, time.Duration) {
	from, to := wholeTime(d)
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
func (s timeScale) clocks(d *desk) draw.Line {
	l := newLabels(s.width)
	all := int(s.to.Sub(s.from) / time.Minute)
	step := hourSteps[len(hourSteps)-1]
	for _, n := range hourSteps {
		if all/n*(d.clockWidth()+4) <= s.width {
			step = n
			break
		}
	}
	by := time.Duration(step) * time.Minute
	for t := s.from.Truncate(by); !t.After(s.to); t = t.Add(by) {
		if !t.Before(s.from) {
			l.put(s.column(t), draw.Faint, d.Tick+d.Clock(t))
		}
	}
	return draw.FromCells(d.Theme, l)
}

// lines draw a line for each of the jobs: each job's setup and run, when it is due,
// and the shift's end.
func (p *schedulePane) lines(d *desk, turns []int, focused bool) []draw.Line {
	f := frameOf(d, p.W)
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), f.middle}
	out := []draw.Line{f.headed(d, s.clocks(d)), shiftEnds(d, &f, s)}
	for _, turn := range turns {
		e := entry{d, turn, d.Jobs()[turn], d.Outcome(turn), focused}
		l := f.before(e, 0, 1)
		if e.refused() {
			out = append(out, refusedRow(l, e, p.W))
			continue
		}
		l.Join(timeOf(e, s).Fit(f.middle))
		l.Join(f.behind(e))
		out = append(out, l)
	}
	return out
}

// shiftEnds marks where the shift ends.
func shiftEnds(d *desk, f *mapFrame, s timeScale) draw.Line {
	l := d.Line()
	l.To(f.left)
	m := newLabels(s.width)
	if end := d.Shop.Day.End; !end.IsZero() {
		x, text := s.column(end), "shift ends "+d.Clock(end)
		switch wide := draw.CellWidth(text) + 2; {
		case x < 0:
			m.put(0, draw.Faint, "< "+text)
		case x >= s.width:
			m.put(s.width-wide, draw.Faint, text+" >")
		case x+1 >= wide:
			m.put(x+1-wide, draw.Strong, text+" "+d.ShiftEnd)
		default:
			m.put(x, draw.Strong, d.ShiftEnd+" "+text)
		}
	}
	l.Join(draw.FromCells(d.Theme, m).Fit(f.middle))
	return l
}

// legend tells what is drawn.
func (p *schedulePane) legend(d *desk) draw.Line {
	l := d.Line()
	l.Add(draw.Moved, d.SetupFill+" setup  ")
	l.Add(draw.Accent, d.RunFill+" run  ")
	l.Add(draw.Strong, d.Due+" due  ")
	l.Add(draw.Late, draw.Fitting(p.W-90, "! late since due  ", "! late  "))
	if p.hours.zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("%d times as large  ", 1<<p.hours.zoom))
	}
	return l
}

// timeOf is a job's line: its setup and run, when it is due and, where it is late, the
// time since. What lies outside the view is pointed to.
func timeOf(e entry, s timeScale) draw.Line {
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
	due := s.column(e.job.Due)
	switch {
	case e.outcome == nil:
		mark(0, draw.Faint, e.Pending)
	case !e.refused():
		timeBar(e, e.outcome.Step, s, due, mark)
	}
	if !e.job.Due.IsZero() {
		i := draw.Strong
		if e.outcome != nil && !e.refused() && e.outcome.Step.Late > 0 {
			i = draw.Late
		}
		mark(due, i, e.Due)
	}
	return draw.FromCells(e.Theme, out)
}

// timeBar marks when a job is set up and runs. In less than two columns there is but the
// run.
func timeBar(e entry, step *plan.Step, s timeScale, due int, mark func(x int, i draw.Style, text string)) {
	from, runs, to := s.column(step.SetupStart), s.column(step.RunStart), s.column(step.RunEnd)
	if runs == from && to > from && step.RunStart.After(step.SetupStart) {
		runs++
	}
	for x := max(from, 0); x <= min(to, s.width-1); x++ {
		if x < runs {
			mark(x, draw.Moved, e.SetupFill)
		} else {
			mark(x, draw.Pick(e.picked(), draw.Accent), e.RunFill)
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

func (p *schedulePane) Filtered() *list.Filter { return &p.filter }

func (p *schedulePane) PickShown(d *desk) { p.along(d, 0) }

func (p *schedulePane) Hides(d *desk) bool {
	return d.job() != nil && !slices.Contains(p.rows(d), d.turn)
}

// Click picks the job of a line, or where all are in one the job at a time.
func (p *schedulePane) Click(d *desk, x, y int) {
	const heads = 3 // with the pane's rule
	if !p.inOne() {
		if turns := p.shown(d); y >= heads && y-heads < len(turns) {
			d.pick(turns[y-heads])
		}
		return
	}
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), p.W}
	for turn := range d.Jobs() {
		if o := d.Outcome(turn); o != nil && len(o.Faults) == 0 && s.column(o.Step.SetupStart) <= x && x <= s.column(o.Step.RunEnd) {
			d.pick(turn)
		}
	}
}
