package pane

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan/words"
	"bide/ui/draw"
)

// Frame is what is beside the day map and the schedule: how wide it is, and what it needs to
// know of all of the day.
type Frame struct {
	Left, Middle, right int
	times, ids, late    int
	bar                 int // cells of the longest setup; 0 where it is narrow
	longest             time.Duration
	worst               map[int]int // rank by turn of those that cost most
}

// NewFrame shares out the width.
func NewFrame(d *Shared, w int) Frame {
	f := Frame{times: d.ClockWidth(), ids: min(d.IDWidth(), max(5, w/12)), worst: worst(d)}
	f.Left = 2 + f.times + 1 + f.ids + 1
	f.late = max(d.LateWidth(), len("!00:00"))
	f.right = len(" mov  min.0 #1 ") + f.late
	if w >= 110 {
		f.bar = min(20, w/10)
		f.right += f.bar + 1
	}
	f.Middle = max(w-f.Left-f.right, 1)
	for _, s := range d.Present.Steps() {
		f.longest = max(f.longest, s.Setup.Total())
	}
	return f
}

// mostRanked is how many changeovers are said to be the worst.
const mostRanked = 3

// worst ranks, by index of the job, the changeovers whose setup is the longest of the day and
// longer than usual.
func worst(d *Shared) map[int]int {
	var indexes []int
	var sum time.Duration
	cost := func(t int) time.Duration { return d.Present.Known[t].Step.Setup.Total() }
	for t, o := range d.Present.Known {
		if len(o.Faults) == 0 {
			indexes = append(indexes, t)
			sum += cost(t)
		}
	}
	slices.SortStableFunc(indexes, func(a, b int) int { return cmp.Compare(cost(b), cost(a)) })
	out := map[int]int{}
	for rank, t := range indexes[:min(mostRanked, len(indexes))] {
		if cost(t)*time.Duration(len(indexes)) > sum {
			out[t] = rank + 1
		}
	}
	return out
}

// Headed is the line of heads around what stands over the middle.
func (f *Frame) Headed(d *Shared, middle draw.Line) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, "  ")
	l.Left(draw.Head, "setup", f.times)
	l.Add(draw.Plain, " ")
	l.Left(draw.Head, "job", f.ids)
	l.Add(draw.Plain, " ")
	l.Join(middle.Fit(f.Middle))
	l.Right(draw.Head, "mov", 4)
	l.Right(draw.Head, "min", 7)
	l.To(l.Width + len(" #1 "))
	l.Left(draw.Head, "late", f.late)
	if f.bar > 0 {
		l.Add(draw.Plain, " ")
		l.Add(draw.Head, BarHead(f.bar))
	}
	return l
}

// Before is what stands left of a job's line n of so many: the clock, and the job.
func (f *Frame) Before(e JobRow, n, of int) draw.Line {
	l := e.Line()
	if n > 0 && n < of-1 {
		l.To(f.Left)
		return l
	}
	last := n == of-1
	i, text := e.Cursor()
	l.Left(i, text, 1)
	i, text = draw.Plain, ""
	if last {
		i, text = e.Flag()
	}
	l.Left(i, text, 1)
	if o := e.Outcome; o != nil && len(o.Faults) == 0 {
		at := o.Step.SetupStart
		if n > 0 {
			at = o.Step.RunStart
		}
		l.Left(draw.Pick(e.Picked(), draw.Faint), e.Clock(at), f.times)
	} else {
		l.Left(draw.Faint, "", f.times)
	}
	l.Add(draw.Plain, " ")
	if last {
		l.Left(draw.Pick(e.Picked(), draw.Strong), e.Job.ID, f.ids)
	}
	l.To(f.Left)
	return l
}

// Behind is what stands right of a job's first line: what the changeover costs.
func (f *Frame) Behind(e JobRow) draw.Line {
	l := e.Line()
	if e.Outcome == nil || e.Refused() {
		return l
	}
	s := e.Outcome.Step
	rank := ""
	ink := draw.Plain
	if r := f.worst[e.Index]; r > 0 {
		rank, ink = fmt.Sprintf("#%d", r), draw.Moved
	}
	behind := draw.Late
	if e.Estimated() {
		ink, behind = draw.Faint, draw.Faint
	}
	l.Right(ink, e.EstimateMark()+fmt.Sprint(s.Changeover.Repositions), 4)
	l.Right(ink, words.Minutes(s.Setup.Total()), 7)
	l.Add(draw.Plain, " ")
	l.Left(ink, rank, 2)
	l.Add(draw.Plain, " ")
	l.Left(behind, e.LateBy(s), f.late)
	if f.bar > 0 {
		l.Add(draw.Plain, " ")
		n := int((s.Setup.Total()*time.Duration(f.bar) + f.longest/2) / max(f.longest, 1))
		l.Left(ink, strings.Repeat(e.Glyphs.Bar, n), f.bar)
	}
	return l
}

// BehindRun is what stands right of the line on which it runs.
func (f *Frame) BehindRun(e JobRow) draw.Line {
	l := e.Line()
	if e.Outcome == nil || e.Refused() {
		return l
	}
	text := "ends " + e.Clock(e.Outcome.Step.RunEnd)
	if due := e.Clock(e.Job.Due); due != "" {
		text += draw.Fitting(f.right-2-draw.CellWidth(text), ", due "+due, " by "+due, "")
	}
	l.Add(draw.Faint, " "+text)
	return l
}

// RefusedRow tells why a job is refused, behind what stands left of its line.
func RefusedRow(l draw.Line, e JobRow, w int) draw.Line {
	l.Add(draw.Late, e.Short("x "+e.Refusal(), w-l.Width))
	return l
}
