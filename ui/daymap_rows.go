package ui

import (
	"bide/plan"
	"bide/ui/draw"
)

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

// heads are the heads of the columns around the scale, and the holders' numbers.
func (p *dayMapPane) heads(d *desk, f *mapFrame, sc draw.Scale, from int) []draw.Line {
	l := f.headed(d, numbers(d.Theme, sc, d.Shop.Unit))
	below := d.Line()
	below.To(f.left)
	below.Join(numberedAt(d, sc, d.Before(from), tracked(d)).Fit(f.middle))
	return []draw.Line{l, below}
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
	going, next := movedIn(c), movedNextIn(e)
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

// movedIn are the holders that move in a changeover.
func movedIn(c *plan.Changeover) map[int]bool {
	out := map[int]bool{}
	for _, m := range c.Moves {
		out[m.Holder-1] = true
	}
	return out
}

// movedNext are the holders that move in the changeover behind this one.
func movedNextIn(e entry) map[int]bool {
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
