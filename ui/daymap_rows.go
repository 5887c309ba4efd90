package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
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

// lateWidth is how wide a column of the jobs' lateness is.
func (d *desk) lateWidth() int {
	wide := len("!0:00")
	for _, s := range d.Forecast.Present.Steps() {
		wide = max(wide, draw.CellWidth(words.Lateness(s.Late)))
	}
	return wide
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

// tracks are the heads, the scale and the jobs.
func (p *dayMapPane) tracks(d *desk, turns []int, s mapParts, focused bool) []draw.Line {
	f := frameOf(d, p.W)
	sc := draw.NewScale(p.view(d), f.middle, d.Shop.Unit)
	first := d.turn
	if len(turns) > 0 {
		first = turns[0]
	}
	out := p.heads(d, &f, sc, first)
	for _, turn := range turns {
		e := entry{d, turn, d.Jobs()[turn], d.Outcome(turn), focused}
		drawn := p.trackOf(e, sc, s)
		for n, middle := range drawn {
			l := f.before(e, n, len(drawn))
			if e.refused() && n == 0 {
				out = append(out, refusedRow(l, e, p.W))
				continue
			}
			l.Join(middle.Fit(f.middle))
			switch n {
			case 0:
				l.Join(f.behind(e))
			case len(drawn) - 1:
				l.Join(f.behindRun(e))
			}
			out = append(out, l)
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

// heads are the heads of the columns around the scale, and the holders' numbers.
func (p *dayMapPane) heads(d *desk, f *mapFrame, sc draw.Scale, from int) []draw.Line {
	l := f.headed(d, numbers(d.Theme, sc, d.Shop.Unit))
	below := d.Line()
	below.To(f.left)
	below.Join(numberedAt(d, sc, d.Before(from), tracked(d)).Fit(f.middle))
	return []draw.Line{l, below}
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

// trackOf draws the holders' lines while a job's changeover is made and while it runs.
func (p *dayMapPane) trackOf(e entry, sc draw.Scale, s mapParts) []draw.Line {
	o, now := e.outcome, e.Before(e.turn)
	switch {
	case now == nil:
		l := e.Line()
		l.Add(draw.Faint, " "+e.Pending)
		return append([]draw.Line{l}, make([]draw.Line, s.bends+s.runs-1)...)
	case o == nil || len(o.Faults) > 0:
		out := drawThreads(e.Theme, sc, s.bends+s.runs, func(column func(plan.Length) int) []draw.Thread { return draw.Standing(now.At, column) })
		return out
	}
	c := &o.Step.Changeover
	going, next := movedIn(c), e.movedNext()
	out := drawThreads(e.Theme, sc, s.bends, func(column func(plan.Length) int) []draw.Thread {
		all := draw.Threads(c, tracked(e.desk), column)
		if n := tracked(e.desk); n > 0 {
			all[n-1].Class = draw.Aimed
		}
		return p.kept(all, func(i int) bool { return going[i] })
	})
	if s.runs == 0 {
		return out
	}
	return append(out, drawThreads(e.Theme, sc, s.runs, func(column func(plan.Length) int) []draw.Thread {
		return p.kept(runThreads(c, tracked(e.desk), column), func(i int) bool { return going[i] || next[i] })
	})...)
}

// refusedRow tells why a job is refused, behind what stands left of its line.
func refusedRow(l draw.Line, e entry, w int) draw.Line {
	l.Add(draw.Late, e.Short("x "+e.refusal(), w-l.Width))
	return l
}

// movedIn are the holders that move in a changeover.
func movedIn(c *plan.Changeover) map[int]bool {
	out := map[int]bool{}
	for _, m := range c.Moves {
		out[m.Holder-1] = true
	}
	return out
}

// movedNext are the holders that move in the changeover behind this one.
func (e entry) movedNext() map[int]bool {
	if o := e.desk.Outcome(e.turn + 1); o != nil && !o.Refused() {
		return movedIn(&o.Step.Changeover)
	}
	return nil
}

// kept are the threads to be drawn.
func (p *dayMapPane) kept(all []draw.Thread, moved func(int) bool) []draw.Thread {
	if !p.only {
		return all
	}
	var out []draw.Thread
	for i, t := range all {
		if moved(i) || t.Class == draw.Aimed {
			out = append(out, t)
		}
	}
	return out
}

// runThreads are all holders' lines while a job runs.
func runThreads(c *plan.Changeover, aim int, column func(plan.Length) int) []draw.Thread {
	out := make([]draw.Thread, len(c.Holders))
	for i, h := range c.Holders {
		x := column(h.At)
		out[i] = draw.Thread{From: x, To: x, Class: draw.Stays}
		if h.Use != plan.Cutting {
			out[i].Class = draw.Idles
		}
		if i+1 == aim {
			out[i].Class = draw.Aimed
		}
	}
	return out
}

// drawThreads draws threads in h lines of the scale's width.
func drawThreads(k *draw.Theme, sc draw.Scale, h int, make func(column func(plan.Length) int) []draw.Thread) []draw.Line {
	pic := draw.NewPicture(k, sc.Width, h)
	sc.Cols *= pic.Across()
	w := sc.Width * pic.Across()
	onScreen := func(t draw.Thread) bool { return max(t.From, t.To) >= 0 && min(t.From, t.To) < w }
	var shown []draw.Thread
	for _, t := range make(sc.Column) {
		if onScreen(t) {
			shown = append(shown, t)
		}
	}
	if flat, ok := pic.(*draw.Elbows); ok && h == 1 {
		for _, t := range shown {
			flat.Thread(t, 0)
		}
	} else {
		pic.Draw(shown)
	}
	out := []draw.Line{}
	for y := range h {
		out = append(out, pic.Line(y))
	}
	return out
}
