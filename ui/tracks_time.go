package ui

import (
	"fmt"
	"time"
)

// wholeTime is the time that the time line shows: from the day's start to the last run's
// end, due time, or the shift's end.
func (d *desk) wholeTime() (from, to time.Time) {
	from, to = d.start.clock, d.shop.Day.End
	if from.IsZero() {
		from = d.shop.Day.Start
	}
	later := func(t time.Time) {
		if t.After(to) {
			to = t
		}
	}
	later(from.Add(time.Hour))
	for _, o := range d.present.known {
		later(o.clock)
	}
	for _, j := range d.jobs() {
		if !j.Due.IsZero() && j.Due.Sub(from) < 72*time.Hour {
			later(j.Due)
		}
	}
	return from, to
}

// timeScale maps the clock to columns.
type timeScale struct {
	from, to time.Time
	width    int
}

func (s timeScale) column(t time.Time) int {
	all := max(s.to.Sub(s.from), time.Minute)
	return int(int64(t.Sub(s.from)) * int64(s.width-1) / int64(all))
}

// steps between the hours told, in minutes.
var hourSteps = []int{15, 30, 60, 120, 240, 480, 720, 1440, 2880}

// clocks numbers the time line.
func (s timeScale) clocks(d *desk) line {
	l := newLabels(s.width)
	all := int(s.to.Sub(s.from) / time.Minute)
	step := hourSteps[len(hourSteps)-1]
	for _, n := range hourSteps {
		if all/n*9 <= s.width {
			step = n
			break
		}
	}
	by := time.Duration(step) * time.Minute
	for t := s.from.Truncate(by); !t.After(s.to); t = t.Add(by) {
		if !t.Before(s.from) {
			l.put(s.column(t), faint, d.tick+d.at(t))
		}
	}
	return runs(d.look, l)
}

// timeLine draws the day over the clock: each job's setup and run, when it is due,
// and the shift's end.
func (p *tracksPane) timeLine(d *desk, from, n int, focused bool) []line {
	f := p.frame(d)
	s := timeScale{width: f.middle}
	s.from, s.to = d.wholeTime()
	heads := p.headed(d, f, s.clocks(d))
	out := []line{heads, p.shiftEnds(d, f, s)}
	for turn := from; turn < min(from+n, len(d.jobs())); turn++ {
		e := entry{d, turn, d.jobs()[turn], d.outcome(turn), focused}
		l := p.before(e, f, 0, 1)
		l.join(p.timeOf(e, s).fit(f.middle))
		l.join(p.behind(e, f))
		out = append(out, l)
	}
	return out
}

// shiftEnds tells where the shift ends.
func (p *tracksPane) shiftEnds(d *desk, f trackFrame, s timeScale) line {
	l := d.line()
	l.to(f.left)
	m := newLabels(s.width)
	if end := d.shop.Day.End; !end.IsZero() {
		x := s.column(end)
		text := "shift's end " + d.at(end) + " " + d.shiftEnd
		m.put(x+1-cells(text), strong, text)
	}
	l.join(runs(d.look, m).fit(f.middle))
	return l
}

// timeLegend tells what is drawn.
func timeLegend(d *desk) line {
	l := d.line()
	l.add(moved, d.setupFill+" setup  ")
	l.add(accent, d.runFill+" run  ")
	l.add(strong, d.due+" due  ")
	l.add(late, "! late  ")
	return l
}

// timeOf is a job's line.
func (p *tracksPane) timeOf(e entry, s timeScale) line {
	out := make([]span, s.width)
	for x := range out {
		out[x] = span{plain, " "}
	}
	mark := func(x int, i ink, text string) {
		if x >= 0 && x < len(out) {
			out[x] = span{i, text}
		}
	}
	if end := e.shop.Day.End; !end.IsZero() {
		mark(s.column(end), faint, e.shiftEnd)
	}
	switch o := e.outcome; {
	case o == nil:
		mark(0, faint, e.pending)
	case len(o.faults) > 0:
		l := e.line()
		l.add(late, e.short("x "+e.refusal(), s.width))
		return l
	default:
		step := &o.step
		for x := s.column(step.SetupStart); x <= s.column(step.RunEnd); x++ {
			if x < s.column(step.RunStart) || x == s.column(step.SetupStart) {
				mark(x, moved, e.setupFill)
				continue
			}
			mark(x, pick(e.picked(), accent), e.runFill)
		}
		if step.Late > 0 {
			for x := s.column(e.job.Due) + 1; x <= s.column(step.RunEnd); x++ {
				mark(x, late, "!")
			}
			text := fmt.Sprintf("!%s late", hours(step.Late))
			for i, r := range []rune(text) {
				if x := s.column(step.RunEnd) + 2 + i; x+len(text)-i <= s.width {
					mark(x, late, string(r))
				}
			}
		}
	}
	if due := e.job.Due; !due.IsZero() {
		mark(s.column(due), strong, e.due)
	}
	return runs(e.look, out)
}
