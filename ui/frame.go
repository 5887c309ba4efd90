package ui

import (
	"bide/plan/words"
	"bide/ui/draw"
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"
)

// mapFrame is what is beside the day map and the schedule: how wide it is, and what it needs to
// know of all of the day.
type mapFrame struct {
	left, middle, right int
	times, ids, late    int
	bar                 int // cells of the longest setup; 0 where it is narrow
	longest             time.Duration
	worst               map[int]int // rank by turn of those that cost most
}

// frameOf shares out the width.
func frameOf(d *desk, w int) mapFrame {
	f := mapFrame{times: d.clockWidth(), ids: min(d.idWidth(), max(5, w/12)), worst: worst(d)}
	f.left = 2 + f.times + 1 + f.ids + 1
	f.late = max(d.lateWidth(), len("!00:00"))
	f.right = len(" mov  min.0 #1 ") + f.late
	if w >= 110 {
		f.bar = min(20, w/10)
		f.right += f.bar + 1
	}
	f.middle = max(w-f.left-f.right, 1)
	for _, s := range d.Forecast.Present.Steps() {
		f.longest = max(f.longest, s.Setup.Total())
	}
	return f
}

// mostRanked is how many changeovers are said to be the worst.
const mostRanked = 3

// worst ranks, by turn, the changeovers whose setup is the longest of the day and
// longer than usual.
func worst(d *desk) map[int]int {
	var turns []int
	var sum time.Duration
	cost := func(t int) time.Duration { return d.Forecast.Present.Known[t].Step.Setup.Total() }
	for t, o := range d.Forecast.Present.Known {
		if len(o.Faults) == 0 {
			turns = append(turns, t)
			sum += cost(t)
		}
	}
	slices.SortStableFunc(turns, func(a, b int) int { return cmp.Compare(cost(b), cost(a)) })
	out := map[int]int{}
	for rank, t := range turns[:min(mostRanked, len(turns))] {
		if cost(t)*time.Duration(len(turns)) > sum {
			out[t] = rank + 1
		}
	}
	return out
}

// headed is the line of heads around what stands over the middle.
func (f *mapFrame) headed(d *desk, middle draw.Line) draw.Line {
	l := d.Line()
	l.Add(draw.Plain, "  ")
	l.Left(draw.Head, "setup", f.times)
	l.Add(draw.Plain, " ")
	l.Left(draw.Head, "job", f.ids)
	l.Add(draw.Plain, " ")
	l.Join(middle.Fit(f.middle))
	l.Right(draw.Head, "mov", 4)
	l.Right(draw.Head, "min", 7)
	l.To(l.Width + len(" #1 "))
	l.Left(draw.Head, "late", f.late)
	if f.bar > 0 {
		l.Add(draw.Plain, " ")
		l.Add(draw.Head, barHead(f.bar))
	}
	return l
}

// before is what stands left of a job's line n of so many: the clock, and the job.
func (f *mapFrame) before(e entry, n, of int) draw.Line {
	l := e.Line()
	if n > 0 && n < of-1 {
		l.To(f.left)
		return l
	}
	last := n == of-1
	i, text := e.cursor()
	l.Left(i, text, 1)
	i, text = draw.Plain, ""
	if last {
		i, text = e.flag()
	}
	l.Left(i, text, 1)
	if o := e.outcome; o != nil && len(o.Faults) == 0 {
		at := o.Step.SetupStart
		if n > 0 {
			at = o.Step.RunStart
		}
		l.Left(draw.Pick(e.picked(), draw.Faint), e.Clock(at), f.times)
	} else {
		l.Left(draw.Faint, "", f.times)
	}
	l.Add(draw.Plain, " ")
	if last {
		l.Left(draw.Pick(e.picked(), draw.Strong), e.job.ID, f.ids)
	}
	l.To(f.left)
	return l
}

// behind is what stands right of a job's first line: what the changeover costs.
func (f *mapFrame) behind(e entry) draw.Line {
	l := e.Line()
	if e.outcome == nil || e.refused() {
		return l
	}
	s := e.outcome.Step
	rank := ""
	ink := draw.Plain
	if r := f.worst[e.turn]; r > 0 {
		rank, ink = fmt.Sprintf("#%d", r), draw.Moved
	}
	behind := draw.Late
	if e.about() {
		ink, behind = draw.Faint, draw.Faint
	}
	l.Right(ink, e.aboutMark()+fmt.Sprint(s.Changeover.Repositions), 4)
	l.Right(ink, words.Minutes(s.Setup.Total()), 7)
	l.Add(draw.Plain, " ")
	l.Left(ink, rank, 2)
	l.Add(draw.Plain, " ")
	l.Left(behind, e.lateBy(s), f.late)
	if f.bar > 0 {
		l.Add(draw.Plain, " ")
		n := int((s.Setup.Total()*time.Duration(f.bar) + f.longest/2) / max(f.longest, 1))
		l.Left(ink, strings.Repeat(e.Glyphs.Bar, n), f.bar)
	}
	return l
}

// behindRun is what stands right of the line on which it runs.
func (f *mapFrame) behindRun(e entry) draw.Line {
	l := e.Line()
	if e.outcome == nil || e.refused() {
		return l
	}
	text := "ends " + e.Clock(e.outcome.Step.RunEnd)
	if due := e.Clock(e.job.Due); due != "" {
		text += draw.Fitting(f.right-2-draw.CellWidth(text), ", due "+due, " by "+due, "")
	}
	l.Add(draw.Faint, " "+text)
	return l
}

// refusedRow tells why a job is refused, behind what stands left of its line.
func refusedRow(l draw.Line, e entry, w int) draw.Line {
	l.Add(draw.Late, e.Short("x "+e.refusal(), w-l.Width))
	return l
}
