package ui

import (
	"fmt"

	"bide/plan"
)

// tracksPane draws the day as tracks: jobs downward with the clock, the beam
// across. Each holder is a line that runs straight down where it bides and bends
// where it moves. Across may be the clock instead: then it is the time line.
type tracksPane struct {
	size
	zoom  int         // how often the stretch was halved
	at    plan.Length // its middle, when it was
	only  bool        // only the holders that move
	clock bool        // the time line
}

// nearestTracks is how often the beam may be halved here.
const nearestTracks = 5

func (p *tracksPane) SetSize(s size) { p.size = s }
func (p *tracksPane) Help() scope    { return onTracks }

// HandleKey picks a changeover or a holder, or looks at another part of the beam.
func (p *tracksPane) HandleKey(a action, d *desk) {
	page := max(p.parts(d).jobs-1, 1)
	switch a {
	case up:
		d.pick(d.turn - 1)
	case down:
		d.pick(d.turn + 1)
	case pageUp:
		d.pick(d.turn - page)
	case pageDown:
		d.pick(d.turn + page)
	case top:
		d.pick(0)
	case bottom:
		d.pick(len(d.jobs()) - 1)
	case holderBefore:
		d.pickHolder(d.holder - 1)
	case holderNext:
		d.pickHolder(d.holder + 1)
	case onlyMoved:
		p.only = !p.only
	case overTime:
		p.clock = !p.clock
	default:
		p.look(a, d)
	}
}

// look changes the stretch that is shown.
func (p *tracksPane) look(a action, d *desk) {
	whole := beamSpan(d.shop.Beam)
	if p.zoom == 0 {
		p.at = (whole.From + whole.To) / 2
		if n := d.tracked(); n > 0 && d.before(d.turn) != nil {
			p.at = d.before(d.turn).At[n-1]
		}
	}
	switch a {
	case nearer:
		p.zoom = min(p.zoom+1, nearestTracks)
	case farther:
		p.zoom = max(p.zoom-1, 0)
	case left:
		p.at = p.view(d).From
	case right:
		p.at = p.view(d).To
	}
	if a == wholeBeam {
		p.zoom = 0
	}
	half := whole.Length() >> p.zoom / 2
	p.at = max(whole.From+half, min(p.at, whole.To-half))
}

// view is the stretch of the beam to show.
func (p *tracksPane) view(d *desk) plan.Span {
	whole := beamSpan(d.shop.Beam)
	half := whole.Length() >> p.zoom / 2
	if p.zoom == 0 || half == 0 {
		return whole
	}
	return plan.Span{From: p.at - half, To: p.at + half}
}

// pickHolder picks a holder by number; nought picks none.
func (d *desk) pickHolder(n int) {
	d.holder = max(0, min(n, len(d.shop.Beam.Holders)))
	if d.holder == 0 {
		d.say("no holder is picked")
		return
	}
	d.say("holder %d is picked", d.holder)
}

// tracked is the number of the holder whose line stands out: the picked one, else
// that of the picked move.
func (d *desk) tracked() int {
	if d.holder > 0 {
		return d.holder
	}
	return d.aimed()
}

// trackParts is how the pane's lines are shared out.
type trackParts struct {
	bends  int // lines of a job for its changeover
	runs   int // lines of a job for its run
	jobs   int // shown
	detail int // lines about the picked changeover
}

// parts shares out the lines below the rule, the heads and the scale: a job has one
// line, or more where all have, and what is left tells about the picked one.
func (p *tracksPane) parts(d *desk) trackParts {
	room, n := p.h-3, max(len(d.jobs()), 1)
	s := trackParts{bends: 1}
	if each := (room - 2) / n; each > 1 && !p.clock {
		s.runs = 1
		s.bends = min(each-1, 3)
	}
	s.jobs = max(min(n, (room-min(room/4, 2))/(s.bends+s.runs)), 0)
	s.detail = max(min(room-s.jobs*(s.bends+s.runs), 5), 0)
	return s
}

// View draws the pane.
func (p *tracksPane) View(d *desk, focused bool) []line {
	s := p.parts(d)
	from := window(d.turn, len(d.jobs()), s.jobs)
	title := d.line()
	if text := some(from, s.jobs, len(d.jobs())); text != "" {
		title.add(faint, text+"  ")
	}
	var body []line
	if p.clock {
		title.join(timeLegend(d))
		body = p.timeLine(d, from, s.jobs, focused)
	} else {
		title.join(p.legend(d))
		body = p.tracks(d, from, s, focused)
	}
	for len(body) < p.h-1-s.detail {
		body = append(body, d.line())
	}
	return box(d.look, p.name(), title, append(body, tellAbout(d, s.detail, p.w)...), p.size, focused)
}

func (p *tracksPane) name() string {
	if p.clock {
		return "4 Time line"
	}
	return "4 Tracks"
}

// legend tells what is drawn.
func (p *tracksPane) legend(d *desk) line {
	l := d.line()
	l.add(moved, d.legend[moves]+" moves  ")
	if !p.only {
		l.add(plain, d.legend[bides]+" bides ")
		l.add(faint, " "+d.legend[idles]+" idle  ")
	} else {
		l.add(plain, "only the moved  ")
	}
	if n := d.tracked(); n > 0 {
		l.add(picked, fmt.Sprintf("%s holder %d  ", d.legend[aimed], n))
	}
	if p.zoom > 0 {
		l.add(faint, fmt.Sprintf("%d times as large  ", 1<<p.zoom))
	}
	return l
}
