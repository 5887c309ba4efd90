package daymap

import (
	"bide/plan"
	"bide/ui/draw"
	"bide/ui/pane"
)

// lines are the heads, the scale and the jobs.
func (p *Pane) lines(d *pane.Shared, indexes []int, s mapParts, focused bool) []draw.Line {
	f := pane.NewFrame(d, p.W)
	sc := draw.NewScale(p.stretch(d), f.Middle, d.Shop.Unit)
	first := d.JobAt
	if len(indexes) > 0 {
		first = indexes[0]
	}
	out := p.heads(d, &f, sc, first)
	for _, index := range indexes {
		e := pane.JobRow{Shared: d, Index: index, Job: d.Jobs()[index], Outcome: d.Outcome(index), Focused: focused}
		drawn := p.linesOf(e, sc, s)
		for n, middle := range drawn {
			l := f.Before(e, n, len(drawn))
			if e.Refused() && n == 0 {
				out = append(out, pane.RefusedRow(l, e, p.W))
				continue
			}
			l.Join(middle.Fit(f.Middle))
			switch n {
			case 0:
				l.Join(f.Behind(e))
			case len(drawn) - 1:
				l.Join(f.BehindRun(e))
			}
			out = append(out, l)
		}
	}
	return out
}

// heads are the heads of the columns around the scale, and the holders' numbers.
func (p *Pane) heads(d *pane.Shared, f *pane.Frame, sc draw.Scale, from int) []draw.Line {
	l := f.Headed(d, pane.ScaleNumbers(d.Theme, sc, d.Shop.Unit))
	below := d.Line()
	below.To(f.Left)
	below.Join(pane.HolderNumbers(d, sc, d.Before(from), outlined(d)).Fit(f.Middle))
	return []draw.Line{l, below}
}

// linesOf draws the holders' lines while a job's changeover is made and while it runs.
func (p *Pane) linesOf(e pane.JobRow, sc draw.Scale, s mapParts) []draw.Line {
	o, now := e.Outcome, e.Before(e.Index)
	switch {
	case now == nil:
		l := e.Line()
		l.Add(draw.Faint, " "+e.Pending)
		return append([]draw.Line{l}, make([]draw.Line, s.bends+s.runs-1)...)
	case o == nil || len(o.Faults) > 0:
		out := drawThreads(e.Theme, sc, s.bends+s.runs, func(column func(plan.Length) int) []draw.Thread { return draw.Unmoved(now.At, column) })
		return out
	}
	c := &o.Step.Changeover
	going, next := movedIn(c), movedNextIn(e)
	out := drawThreads(e.Theme, sc, s.bends, func(column func(plan.Length) int) []draw.Thread {
		all := draw.Threads(c, outlined(e.Shared), column)
		if n := outlined(e.Shared); n > 0 {
			all[n-1].Class = draw.Aimed
		}
		return p.kept(all, func(i int) bool { return going[i] })
	})
	if s.runs == 0 {
		return out
	}
	return append(out, drawThreads(e.Theme, sc, s.runs, func(column func(plan.Length) int) []draw.Thread {
		return p.kept(runThreads(c, outlined(e.Shared), column), func(i int) bool { return going[i] || next[i] })
	})...)
}

// movedIn are the holders that move in a changeover.
func movedIn(c *plan.Changeover) map[int]bool {
	out := map[int]bool{}
	for _, m := range c.Moves {
		out[m.Holder-1] = true
	}
	return out
}

// movedNextIn are the holders that move in the changeover behind this one.
func movedNextIn(e pane.JobRow) map[int]bool {
	if o := e.Shared.Outcome(e.Index + 1); o != nil && !o.Refused() {
		return movedIn(&o.Step.Changeover)
	}
	return nil
}

// kept are the threads to be drawn.
func (p *Pane) kept(all []draw.Thread, moved func(int) bool) []draw.Thread {
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
