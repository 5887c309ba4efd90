// Package daymap is the page of the day along the beam: each holder is a line from job to job.
package daymap

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane draws the day along the beam: jobs downward with the clock, the beam
// across. Each holder is a line that runs straight down where it stays and bends
// where it moves.
type Pane struct {
	draw.Size
	Zoom   int         // how often the stretch was halved
	At     plan.Length // its middle, when it was
	filter list.Filter
	only   bool // only the holders that move
}

// Nearest is how often the beam may be halved here.
const Nearest = 5

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnDayMap }

// HandleKey picks a changeover or a holder, or looks at another part of the beam.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	d.Pick(pane.PickRow(p.rows(d), d.JobAt, a, max(p.parts(d).jobs-1, 1)))
	switch a {
	case keys.HolderBefore:
		return pickHolder(d, d.Holder-1)
	case keys.HolderNext:
		return pickHolder(d, d.Holder+1)
	case keys.OnlyMoved:
		p.only = !p.only
	case keys.ZoomIn, keys.ZoomOut, keys.WholeBeam, keys.Left, keys.Right:
		p.look(a, d)
	}
	return nil
}

// rows are the indexes of the jobs that the filter leaves.
func (p *Pane) rows(d *pane.Shared) []int {
	return p.filter.Rows(len(d.Jobs()), d.FilterWords)
}

// shown are the indexes of the jobs that there is room for, around the picked one.
func (p *Pane) shown(d *pane.Shared, n int) []int {
	rows := p.rows(d)
	l := pane.ListOf(rows, d.JobAt, n)
	return rows[l.From():l.To()]
}

// look changes the stretch that is shown.
func (p *Pane) look(a keys.Action, d *pane.Shared) {
	whole := pane.BeamSpan(d.Shop.Beam)
	if p.Zoom == 0 {
		p.At = (whole.From + whole.To) / 2
		if n := outlined(d); n > 0 && d.Before(d.JobAt) != nil {
			p.At = d.Before(d.JobAt).At[n-1]
		}
	}
	switch a {
	case keys.ZoomIn:
		p.Zoom = min(p.Zoom+1, Nearest)
	case keys.ZoomOut:
		p.Zoom = max(p.Zoom-1, 0)
	case keys.Left:
		p.At = p.stretch(d).From
	case keys.Right:
		p.At = p.stretch(d).To
	}
	if a == keys.WholeBeam {
		p.Zoom = 0
	}
	half := whole.Length() >> p.Zoom / 2
	p.At = max(whole.From+half, min(p.At, whole.To-half))
}

// stretch is the stretch of the beam to show.
func (p *Pane) stretch(d *pane.Shared) plan.Span {
	whole := pane.BeamSpan(d.Shop.Beam)
	half := whole.Length() >> p.Zoom / 2
	if p.Zoom == 0 || half == 0 {
		return whole
	}
	return plan.Span{From: p.At - half, To: p.At + half}
}

// pickHolder picks a holder by number, and says so; 0 picks none.
func pickHolder(d *pane.Shared, n int) pane.Want {
	d.Holder = max(0, min(n, len(d.Shop.Beam.Holders)))
	if d.Holder == 0 {
		return pane.Say("no holder is picked")
	}
	return pane.Say("holder %d is picked", d.Holder)
}

// outlined is the number of the holder whose line stands out: the picked one, else
// that of the picked move.
func outlined(d *pane.Shared) int {
	if d.Holder > 0 {
		return d.Holder
	}
	return d.AimedHolder()
}

// mapParts is how the pane's lines are shared out.
type mapParts struct {
	bends  int // lines of a job for its changeover
	runs   int // lines of a job for its run
	jobs   int // shown
	detail int // lines about the picked changeover
}

// parts shares out the lines below the rule, the heads and the scale: a job has one
// line, or more where all have, and what is left tells about the picked one.
func (p *Pane) parts(d *pane.Shared) mapParts {
	room, n := p.H-3, max(len(p.rows(d)), 1)
	s := mapParts{bends: 1}
	if each := (room - 2) / n; each > 1 {
		s.runs = 1
		s.bends = min(each-1, 3)
	}
	s.jobs = max(min(n, (room-min(room/4, 2))/(s.bends+s.runs)), 0)
	s.detail = max(min(room-s.jobs*(s.bends+s.runs), 5), 0)
	return s
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	s := p.parts(d)
	indexes := p.shown(d, s.jobs)
	title := pane.RowsShown(d, &p.filter, p.rows(d), s.jobs)
	title.Join(p.legend(d))
	body := p.lines(d, indexes, s, focused)
	return draw.Box(d.Theme, "Day map", title, pane.WithDetail(d, body, p.Size, s.detail), p.Size, focused)
}

// legend tells what is drawn.
func (p *Pane) legend(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Moved, d.Legend[draw.Moves]+" moves  ")
	if !p.only {
		l.Add(draw.Plain, d.Legend[draw.Stays]+" stays ")
		l.Add(draw.Faint, " "+d.Legend[draw.Idles]+" idle  ")
	} else {
		l.Add(draw.Plain, "only those that move  ")
	}
	if n := outlined(d); n > 0 {
		l.Add(draw.Picked, fmt.Sprintf("%s holder %d  ", d.Legend[draw.Aimed], n))
	}
	if p.Zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("%d times as large  ", 1<<p.Zoom))
	}
	return l
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) { d.Pick(pane.ShownRow(p.rows(d), d.JobAt)) }

func (p *Pane) Hides(d *pane.Shared) bool {
	return d.Job() != nil && !slices.Contains(p.rows(d), d.JobAt)
}

// Click picks the job of a row.
func (p *Pane) Click(d *pane.Shared, _, y int) {
	const heads = 3 // with the pane's rule
	s := p.parts(d)
	indexes := p.shown(d, s.jobs)
	if row := draw.Floor(y-heads, s.bends+s.runs); row >= 0 && row < len(indexes) {
		d.Pick(indexes[row])
	}
}
