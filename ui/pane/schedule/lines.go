package schedule

import (
	"fmt"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/pane"
)

// oneLine draws all jobs in one line, with their names and when they are due below it.
func (p *Pane) oneLine(d *pane.Shared) []draw.Line {
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), p.W}
	bar, names, due := pane.NewLabels(p.W), pane.NewLabels(p.W), pane.NewLabels(p.W)
	mark := markIn(bar)
	s.closed(d, mark)
	for index, j := range d.Jobs() {
		e := pane.JobRow{Shared: d, Index: index, Job: j, Outcome: d.Outcome(index), Focused: false}
		if e.Outcome == nil || e.Refused() {
			continue
		}
		step := *e.Outcome.Step
		late := step.Late > 0
		step.Late = 0 // the time since it is due is another job's here
		timeBar(e, &step, s, 0, mark)
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
		mark(s.column(end), draw.Strong, d.ShiftEnd)
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

// marking puts a sign into a column; nothing where the column isn't shown.
type marking func(x int, i draw.Style, text string)

// markIn marks in a row of cells.
func markIn(cells []draw.Span) marking {
	return func(x int, i draw.Style, text string) {
		if x >= 0 && x < len(cells) {
			cells[x] = draw.Span{Style: i, Text: text}
		}
	}
}

// pickLate is the ink of what is late, or not.
func pickLate(late bool) draw.Style {
	if late {
		return draw.Late
	}
	return draw.Plain
}

// lines draw a line for each of the jobs: each job's setup and run, when it is due,
// and the shift's end.
func (p *Pane) lines(d *pane.Shared, indexes []int, focused bool) []draw.Line {
	f := pane.NewFrame(d, p.W)
	from, long := p.hours.span(d)
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
	if d.Shop.Day.Calendar != nil {
		l.Add(draw.Faint, d.Closed+" no setups  ")
	}
	if p.hours.zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("%d times as large  ", 1<<p.hours.zoom))
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
	mark := markIn(out)
	s.closed(e.Shared, mark)
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
func timeBar(e pane.JobRow, step *plan.Step, s timeScale, due int, mark marking) {
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
