package ui

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// dayMapPane draws the day along the beam: jobs downward with the clock, the beam
// across. Each holder is a line that runs straight down where it stays and bends
// where it moves.
type dayMapPane struct {
	draw.Size
	zoom   int         // how often the stretch was halved
	at     plan.Length // its middle, when it was
	filter list.Filter
	only   bool // only the holders that move
}

// nearestOnMap is how often the beam may be halved here.
const nearestOnMap = 5

func (p *dayMapPane) SetSize(s draw.Size) { p.Size = s }
func (p *dayMapPane) Help() keys.Scope    { return keys.OnDayMap }

// HandleKey picks a changeover or a holder, or looks at another part of the beam.
func (p *dayMapPane) HandleKey(a keys.Action, d *pane.Shared) {
	page := max(p.parts(d).jobs-1, 1)
	switch a {
	case keys.Up:
		p.along(d, -1)
	case keys.Down:
		p.along(d, 1)
	case keys.PageUp:
		p.along(d, -page)
	case keys.PageDown:
		p.along(d, page)
	case keys.Top:
		p.along(d, -len(d.Jobs()))
	case keys.Bottom:
		p.along(d, len(d.Jobs()))
	case keys.HolderBefore:
		pickHolder(d, d.Holder-1)
	case keys.HolderNext:
		pickHolder(d, d.Holder+1)
	case keys.OnlyMoved:
		p.only = !p.only
	case keys.ZoomIn, keys.ZoomOut, keys.WholeBeam, keys.Left, keys.Right:
		p.look(a, d)
	}
}

// rows are the indexes of the jobs that the filter leaves.
func (p *dayMapPane) rows(d *pane.Shared) []int {
	return p.filter.Rows(len(d.Jobs()), d.FilterWords)
}

// along picks the job n rows on.
func (p *dayMapPane) along(d *pane.Shared, n int) { d.Pick(pane.Along(p.rows(d), d.JobAt, n)) }

// shown are the indexes of the jobs that there is room for, around the picked one.
func (p *dayMapPane) shown(d *pane.Shared, n int) []int {
	rows := p.rows(d)
	from := draw.Window(pane.RowAt(rows, d.JobAt), len(rows), n)
	return rows[from:min(from+n, len(rows))]
}

// look changes the stretch that is shown.
func (p *dayMapPane) look(a keys.Action, d *pane.Shared) {
	whole := pane.BeamSpan(d.Shop.Beam)
	if p.zoom == 0 {
		p.at = (whole.From + whole.To) / 2
		if n := tracked(d); n > 0 && d.Before(d.JobAt) != nil {
			p.at = d.Before(d.JobAt).At[n-1]
		}
	}
	switch a {
	case keys.ZoomIn:
		p.zoom = min(p.zoom+1, nearestOnMap)
	case keys.ZoomOut:
		p.zoom = max(p.zoom-1, 0)
	case keys.Left:
		p.at = p.view(d).From
	case keys.Right:
		p.at = p.view(d).To
	}
	if a == keys.WholeBeam {
		p.zoom = 0
	}
	half := whole.Length() >> p.zoom / 2
	p.at = max(whole.From+half, min(p.at, whole.To-half))
}

// view is the stretch of the beam to show.
func (p *dayMapPane) view(d *pane.Shared) plan.Span {
	whole := pane.BeamSpan(d.Shop.Beam)
	half := whole.Length() >> p.zoom / 2
	if p.zoom == 0 || half == 0 {
		return whole
	}
	return plan.Span{From: p.at - half, To: p.at + half}
}

// pickHolder picks a holder by number; 0 picks none.
func pickHolder(d *pane.Shared, n int) {
	d.Holder = max(0, min(n, len(d.Shop.Beam.Holders)))
	if d.Holder == 0 {
		d.Say("no holder is picked")
		return
	}
	d.Say("holder %d is picked", d.Holder)
}

// tracked is the number of the holder whose line stands out: the picked one, else
// that of the picked move.
func tracked(d *pane.Shared) int {
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
func (p *dayMapPane) parts(d *pane.Shared) mapParts {
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
func (p *dayMapPane) View(d *pane.Shared, focused bool) []draw.Line {
	s := p.parts(d)
	indexes := p.shown(d, s.jobs)
	title := pane.RowsShown(d, &p.filter, p.rows(d), s.jobs)
	title.Join(p.legend(d))
	body := p.tracks(d, indexes, s, focused)
	return draw.Box(d.Theme, "Day map", title, pane.WithDetail(d, body, p.Size, s.detail), p.Size, focused)
}

// legend tells what is drawn.
func (p *dayMapPane) legend(d *pane.Shared) draw.Line {
	l := d.Line()
	l.Add(draw.Moved, d.Legend[draw.Moves]+" moves  ")
	if !p.only {
		l.Add(draw.Plain, d.Legend[draw.Stays]+" stays ")
		l.Add(draw.Faint, " "+d.Legend[draw.Idles]+" idle  ")
	} else {
		l.Add(draw.Plain, "only those that move  ")
	}
	if n := tracked(d); n > 0 {
		l.Add(draw.Picked, fmt.Sprintf("%s holder %d  ", d.Legend[draw.Aimed], n))
	}
	if p.zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("%d times as large  ", 1<<p.zoom))
	}
	return l
}

func (p *dayMapPane) Filtered() *list.Filter { return &p.filter }

func (p *dayMapPane) PickShown(d *pane.Shared) { p.along(d, 0) }

func (p *dayMapPane) Hides(d *pane.Shared) bool {
	return d.Job() != nil && !slices.Contains(p.rows(d), d.JobAt)
}

// Click picks the job of a row.
func (p *dayMapPane) Click(d *pane.Shared, _, y int) {
	const heads = 3 // with the pane's rule
	s := p.parts(d)
	indexes := p.shown(d, s.jobs)
	if row := draw.Floor(y-heads, s.bends+s.runs); row >= 0 && row < len(indexes) {
		d.Pick(indexes[row])
	}
}
