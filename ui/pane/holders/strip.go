package holders

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/pane"
)

// strip shows what a holder does in each job: one mark a job, and room between them
// where there is some.
type strip struct {
	*pane.Shared
	from, jobs int // turns shown
	each       int // cells a job
}

// newStrip is a strip in so many cells, around the picked job.
func newStrip(d *pane.Shared, cells int) strip {
	const most = 3 // cells a job
	n := len(d.Jobs())
	s := strip{Shared: d, jobs: max(min(cells, n), 0), each: 1}
	if n > 0 {
		s.each = max(1, min(cells/n, most))
	}
	s.from = draw.Window(d.JobAt, n, s.jobs)
	return s
}

// stripLegend says what the marks mean.
const stripLegend = "| cutting . resting _ parked; moved there: X + =; x refused"

// The marks of a strip; what moved to be there has a mark of its own.
const (
	stripCuts, stripMovedCuts   = "|", "X"
	stripRests, stripMovedRests = ".", "+"
	stripParks, stripMovedParks = "_", "="
	stripRefused, stripUnknown  = "x", "?"
)

// head numbers the jobs, every fifth of them, and marks the picked one.
func (s strip) head() draw.Line {
	row := []byte(draw.Blanks(s.jobs * s.each))
	for i := range s.jobs {
		c, n := i*s.each, fmt.Sprint(s.from+i+1)
		often := s.each > 2 || (s.from+i+1)%5 == 0 || s.from+i == 0
		if often && c+len(n) <= len(row) && strings.TrimSpace(string(row[max(c-1, 0):c+len(n)])) == "" {
			copy(row[c:], n)
		}
	}
	l := s.Line()
	at := (s.JobAt - s.from) * s.each
	if at < 0 || at >= len(row) {
		l.Add(draw.Head, string(row))
		return l
	}
	l.Add(draw.Head, string(row[:at]))
	l.Add(draw.Picked, s.Aim)
	l.Add(draw.Head, string(row[at+1:]))
	return l
}

// row is a holder's strip.
func (s strip) row(r holderRow) draw.Line {
	l, use := s.Line(), s.Use()
	for t := s.from; t < s.from+s.jobs; t++ {
		switch step := use.Step(t); {
		case t >= len(use.Steps):
			l.Add(draw.Faint, stripUnknown)
		case step < 0:
			l.Add(draw.Late, stripRefused)
		default:
			l.Add(s.mark(&r.usage.Stints[step]))
		}
		l.Add(draw.Plain, draw.Blanks(s.each-1))
	}
	return l
}

// mark is one cell of a strip.
func (s strip) mark(st *plan.Stint) (draw.Style, string) {
	marks, idle := [2]string{stripCuts, stripMovedCuts}, draw.Faint
	switch st.Use {
	case plan.Cutting:
		idle = draw.Strong
	case plan.Resting:
		marks = [2]string{stripRests, stripMovedRests}
	case plan.Parked:
		marks = [2]string{stripParks, stripMovedParks}
	}
	if st.Way != 0 {
		return draw.Moved, marks[1]
	}
	return idle, marks[0]
}
