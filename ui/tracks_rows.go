package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
)

// trackFrame is what stands beside the tracks: how wide it is, and what it needs to
// know of all of the day.
type trackFrame struct {
	left, middle, right int
	times, ids, late    int
	bar                 int // cells of the longest setup; nought where it is narrow
	longest             time.Duration
	worst               map[int]int // rank by turn of those that cost most
}

// frame shares out the width.
func (p *tracksPane) frame(d *desk) trackFrame {
	f := trackFrame{times: d.clockWidth(), ids: min(d.idWidth(), max(5, p.w/12)), worst: d.worst()}
	f.left = 2 + f.times + 1 + f.ids + 1
	f.late = max(d.lateWidth(), len("!00:00"))
	f.right = len(" mov  min.0 #1 ") + f.late
	if p.w >= 110 {
		f.bar = min(20, p.w/10)
		f.right += f.bar + 1
	}
	f.middle = max(p.w-f.left-f.right, 1)
	for _, o := range d.present.known {
		f.longest = max(f.longest, o.step.Setup.Total())
	}
	return f
}

// lateWidth is how wide a column of the jobs' lateness is.
func (d *desk) lateWidth() int {
	wide := len("!0:00")
	for _, o := range d.present.known {
		wide = max(wide, cells(lateness(o.step.Late)))
	}
	return wide
}

// mostRanked is how many changeovers are said to be the worst.
const mostRanked = 3

// worst ranks, by turn, the changeovers whose setup is the longest of the day and
// longer than usual.
func (d *desk) worst() map[int]int {
	var turns []int
	var sum time.Duration
	cost := func(t int) time.Duration { return d.present.known[t].step.Setup.Total() }
	for t, o := range d.present.known {
		if len(o.faults) == 0 {
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
func (p *tracksPane) tracks(d *desk, turns []int, s trackParts, focused bool) []line {
	f := p.frame(d)
	sc := newScale(p.view(d), f.middle, d.shop.Unit)
	first := d.turn
	if len(turns) > 0 {
		first = turns[0]
	}
	out := p.heads(d, f, sc, first)
	for _, turn := range turns {
		e := entry{d, turn, d.jobs()[turn], d.outcome(turn), focused}
		drawn := p.trackOf(e, sc, s)
		for n, middle := range drawn {
			l := p.before(e, f, n, len(drawn))
			if e.refused() && n == 0 {
				out = append(out, p.refusedRow(l, e))
				continue
			}
			l.join(middle.fit(f.middle))
			switch n {
			case 0:
				l.join(p.behind(e, f))
			case len(drawn) - 1:
				l.join(p.behindRun(e, f))
			}
			out = append(out, l)
		}
	}
	return out
}

// headed is the line of heads around what stands over the middle.
func (p *tracksPane) headed(d *desk, f trackFrame, middle line) line {
	l := d.line()
	l.add(plain, "  ")
	l.left(head, "setup", f.times)
	l.add(plain, " ")
	l.left(head, "job", f.ids)
	l.add(plain, " ")
	l.join(middle.fit(f.middle))
	l.right(head, "mov", 4)
	l.right(head, "min", 7)
	l.to(l.width + len(" #1 "))
	l.left(head, "late", f.late)
	if f.bar > 0 {
		l.add(plain, " ")
		l.add(head, barHead(f.bar))
	}
	return l
}

// heads are the heads of the columns around the scale, and the holders' numbers.
func (p *tracksPane) heads(d *desk, f trackFrame, sc scale, from int) []line {
	l := p.headed(d, f, numbers(d.look, sc, d.shop.Unit))
	below := d.line()
	below.to(f.left)
	below.join(d.numberedAt(sc, d.before(from), d.tracked()).fit(f.middle))
	return []line{l, below}
}

// before is what stands left of a job's line n of so many: the clock, and the job.
func (p *tracksPane) before(e entry, f trackFrame, n, of int) line {
	l := e.line()
	if n > 0 && n < of-1 {
		l.to(f.left)
		return l
	}
	last := n == of-1
	i, text := e.cursor()
	l.left(i, text, 1)
	i, text = plain, ""
	if last {
		i, text = e.flag()
	}
	l.left(i, text, 1)
	if o := e.outcome; o != nil && len(o.faults) == 0 {
		at := o.step.SetupStart
		if n > 0 {
			at = o.step.RunStart
		}
		l.left(pick(e.picked(), faint), e.at(at), f.times)
	} else {
		l.left(faint, "", f.times)
	}
	l.add(plain, " ")
	if last {
		l.left(pick(e.picked(), strong), e.job.ID, f.ids)
	}
	l.to(f.left)
	return l
}

// pick is the cursor's ink, or another.
func pick(yes bool, other ink) ink {
	if yes {
		return picked
	}
	return other
}

// behind is what stands right of a job's first line: what the changeover costs.
func (p *tracksPane) behind(e entry, f trackFrame) line {
	l := e.line()
	if e.outcome == nil || e.refused() {
		return l
	}
	s := &e.outcome.step
	rank := ""
	ink := plain
	if r := f.worst[e.turn]; r > 0 {
		rank, ink = fmt.Sprintf("#%d", r), moved
	}
	behind := late
	if e.about() {
		ink, behind = faint, faint
	}
	l.right(ink, e.aboutMark()+fmt.Sprint(s.Changeover.Repositions), 4)
	l.right(ink, minutes(s.Setup.Total()), 7)
	l.add(plain, " ")
	l.left(ink, rank, 2)
	l.add(plain, " ")
	l.left(behind, e.lateBy(s), f.late)
	if f.bar > 0 {
		l.add(plain, " ")
		n := int((s.Setup.Total()*time.Duration(f.bar) + f.longest/2) / max(f.longest, 1))
		l.left(ink, strings.Repeat(e.glyphs.bar, n), f.bar)
	}
	return l
}

// behindRun is what stands right of the line on which it runs.
func (p *tracksPane) behindRun(e entry, f trackFrame) line {
	l := e.line()
	if e.outcome == nil || e.refused() {
		return l
	}
	text := "ends " + e.at(e.outcome.step.RunEnd)
	if due := e.at(e.job.Due); due != "" {
		text += fitting(f.right-2-cells(text), ", due "+due, " by "+due, "")
	}
	l.add(faint, " "+text)
	return l
}

// trackOf draws the holders' lines while a job's changeover is made and while it runs.
func (p *tracksPane) trackOf(e entry, sc scale, s trackParts) []line {
	o, now := e.outcome, e.before(e.turn)
	switch {
	case now == nil:
		l := e.line()
		l.add(faint, " "+e.pending)
		return append([]line{l}, make([]line, s.bends+s.runs-1)...)
	case o == nil || len(o.faults) > 0:
		out := drawThreads(e.look, sc, s.bends+s.runs, func(column func(plan.Length) int) []thread { return standing(now.At, column) })
		return out
	}
	c := &o.step.Changeover
	going, next := movedIn(c), e.movedNext()
	out := drawThreads(e.look, sc, s.bends, func(column func(plan.Length) int) []thread {
		all := threads(c, e.tracked(), column)
		if n := e.tracked(); n > 0 {
			all[n-1].class = aimed
		}
		return p.kept(all, func(i int) bool { return going[i] })
	})
	if s.runs == 0 {
		return out
	}
	return append(out, drawThreads(e.look, sc, s.runs, func(column func(plan.Length) int) []thread {
		return p.kept(runThreads(c, e.tracked(), column), func(i int) bool { return going[i] || next[i] })
	})...)
}

// refusedRow tells why a job is refused, behind what stands left of its line.
func (p *tracksPane) refusedRow(l line, e entry) line {
	l.add(late, e.short("x "+e.refusal(), p.w-l.width))
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
	if o := e.desk.outcome(e.turn + 1); o != nil {
		return movedIn(&o.step.Changeover)
	}
	return nil
}

// kept are the threads to be drawn.
func (p *tracksPane) kept(all []thread, moved func(int) bool) []thread {
	if !p.only {
		return all
	}
	var out []thread
	for i, t := range all {
		if moved(i) || t.class == aimed {
			out = append(out, t)
		}
	}
	return out
}

// runThreads are all holders' lines while a job runs.
func runThreads(c *plan.Changeover, aim int, column func(plan.Length) int) []thread {
	out := make([]thread, len(c.Holders))
	for i, h := range c.Holders {
		x := column(h.At)
		out[i] = thread{x, x, bides}
		if h.Use != plan.Cutting {
			out[i].class = idles
		}
		if i+1 == aim {
			out[i].class = aimed
		}
	}
	return out
}

// drawThreads draws threads in h lines of the scale's width.
func drawThreads(k *look, sc scale, h int, make func(column func(plan.Length) int) []thread) []line {
	pic := newPicture(k, sc.width, h)
	sc.cols *= pic.across()
	w := sc.width * pic.across()
	onScreen := func(t thread) bool { return max(t.from, t.to) >= 0 && min(t.from, t.to) < w }
	var shown []thread
	for _, t := range make(sc.column) {
		if onScreen(t) {
			shown = append(shown, t)
		}
	}
	if flat, ok := pic.(*elbows); ok && h == 1 {
		for _, t := range shown {
			flat.thread(t, 0)
		}
	} else {
		pic.draw(shown)
	}
	out := []line{}
	for y := range h {
		out = append(out, pic.line(y))
	}
	return out
}
