// Package beamview is the pane of the beam: where the holders are now, where they will be for the
// picked job, and how each gets there, from near or as a whole.
package beamview

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Pane draws the beam now and next, with the threads of the holders between.
type Pane struct {
	draw.Size
	Zoom int // how often the stretch was halved
}

// Nearest is how often the beam may be halved.
const Nearest = 8

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnBeam }

// HandleKey picks a moved holder along the beam, or another changeover, or looks
// from nearer.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	switch a {
	case keys.Left:
		pickAlong(d, -1)
	case keys.Right:
		pickAlong(d, 1)
	case keys.Top:
		pickAlong(d, -len(d.Moves()))
	case keys.Bottom:
		pickAlong(d, len(d.Moves()))
	case keys.Up:
		d.Pick(d.JobAt - 1)
	case keys.Down:
		d.Pick(d.JobAt + 1)
	case keys.ZoomIn:
		p.Zoom = min(p.Zoom+1, Nearest)
	case keys.ZoomOut:
		p.Zoom = max(p.Zoom-1, 0)
	case keys.WholeBeam:
		p.Zoom = 0
	}
	return nil
}

// pickAlong picks the nth next moved holder along the beam.
func pickAlong(d *pane.Shared, n int) {
	moves := d.Moves()
	if len(moves) == 0 {
		return
	}
	along := make([]int, 0, len(moves)) // moves by holder
	for i := range moves {
		along = append(along, i)
	}
	slices.SortFunc(along, func(a, b int) int { return moves[a].Holder - moves[b].Holder })
	at := slices.Index(along, d.MoveAt) + n
	d.MoveAt = along[max(0, min(at, len(along)-1))]
}

// view is the stretch of the beam to show: all of it, or a part around the picked
// holder.
func (p *Pane) view(d *pane.Shared) plan.Span {
	all := pane.BeamSpan(d.Shop.Beam)
	half := all.Length() >> p.Zoom / 2
	if p.Zoom == 0 || half == 0 {
		return all
	}
	at := (all.From + all.To) / 2
	if moves := d.Moves(); d.MoveAt < len(moves) {
		at = (moves[d.MoveAt].From + moves[d.MoveAt].To) / 2
	}
	at = max(all.From+half, min(at, all.To-half))
	return plan.Span{From: at - half, To: at + half}
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	s := draw.NewScale(p.view(d), p.W, d.Shop.Unit)
	o := d.Outcome(d.JobAt)
	planned := o != nil && len(o.Faults) == 0
	rows := p.H - 1 - 2
	body := []draw.Line{pane.ScaleNumbers(d.Theme, s, d.Shop.Unit)}
	var below []draw.Line
	if planned {
		below = append(below, pane.WebRow(d.Theme, s, &o.Step.Layout))
		if rows >= 6 {
			below = append(below, strips(d, s, &o.Step.Layout))
		}
	}
	if rows >= 7 {
		body = append(body, numbered(d, s))
	}
	rows = p.H - 1 - len(body) - len(below)
	body = append(body, p.threads(d, s, rows)...)
	return draw.Box(d.Theme, "Beam", p.title(d), append(body, below...), p.Size, focused)
}

// title tells from which job to which, how many move and stay, and the picked move. Where
// there is no room for all, what other panes tell too goes first.
func (p *Pane) title(d *pane.Shared) (l draw.Line) {
	room := p.W - draw.CellWidth("-->Beam  ")
	for terse := range 5 {
		if l = p.titled(d, terse); l.Width <= room {
			break
		}
	}
	return l
}

// titled is the title in ever fewer words: from 1 on what those that stay do is short, from 2
// on it is left out, from 3 on where the beam comes from, from 4 on how many move.
func (p *Pane) titled(d *pane.Shared, terse int) draw.Line {
	l := d.Line()
	if j := d.Job(); j != nil {
		from := "now "
		if s := d.Before(d.JobAt); s != nil && s.Job != "" {
			from = s.Job + " "
		}
		if terse >= 3 {
			from = ""
		}
		l.Add(draw.Strong, from+d.To+" "+j.ID)
	}
	if o := d.Outcome(d.JobAt); o != nil && len(o.Faults) == 0 && terse < 4 {
		tally(d, &l, &o.Step.Changeover, terse)
	}
	if moves := d.Moves(); d.MoveAt < len(moves) {
		l.Add(draw.Faint, "  "+d.Aim)
		l.Join(pane.MoveInShort(d, &moves[d.MoveAt], p.W))
	}
	if p.Zoom > 0 {
		l.Add(draw.Faint, fmt.Sprintf("  zoom %d times", 1<<p.Zoom))
	}
	return l
}

// tally tells how many holders move and how many stay, which together are all, and of
// those that stay how many cut and how many are idle, which together are these.
func tally(d *pane.Shared, l *draw.Line, c *plan.Changeover, terse int) {
	idle, stay := idle(c), len(c.Holders)-c.Repositions
	l.Add(pane.MovesStyle(c.Repositions), fmt.Sprintf("  %s %s%d move", d.Legend[draw.Moves], d.EstimateMark(), c.Repositions))
	l.Add(draw.Plain, fmt.Sprintf("  %d stay", stay))
	if terse >= 2 || stay == 0 {
		return
	}
	cut := " cutting"
	if terse == 1 {
		cut = " cut"
	}
	l.Add(draw.Plain, fmt.Sprintf(": %s %d%s", d.Legend[draw.Stays], stay-idle, cut))
	l.Add(draw.Faint, fmt.Sprintf(" %s %d idle", d.Legend[draw.Idles], idle))
}

// idle is how many holders stay without cutting.
func idle(c *plan.Changeover) (n int) {
	for i, h := range c.Holders {
		if h.At == c.From[i] && h.Use != plan.Cutting {
			n++
		}
	}
	return n
}

// threads draws the changeover in h lines, or the holders now while it is worked out. In
// two lines it is the holders now and next, each at its position: with so many that ways can't
// be told apart.
func (p *Pane) threads(d *pane.Shared, s draw.Scale, h int) []draw.Line {
	pic := draw.NewPicture(d.Theme, p.W, h)
	s.Cols *= pic.Across()
	switch o, now := d.Outcome(d.JobAt), d.Before(d.JobAt); {
	case o != nil && len(o.Faults) == 0 && h == 2:
		return p.nowAndNext(d, &o.Step.Changeover, s, h)
	case o != nil && len(o.Faults) == 0:
		pic.Draw(draw.Threads(&o.Step.Changeover, d.AimedHolder(), s.Column))
	case now != nil:
		pic.Draw(draw.Unmoved(now.At, s.Column))
	}
	var out []draw.Line
	for y := range h {
		out = append(out, pic.Line(y))
	}
	return out
}

// nowAndNext draws where the holders are now, and below where they will be.
func (p *Pane) nowAndNext(d *pane.Shared, c *plan.Changeover, s draw.Scale, h int) (out []draw.Line) {
	all := draw.Threads(c, d.AimedHolder(), s.Column)
	for _, next := range []bool{false, true} {
		pic := draw.NewPicture(d.Theme, p.W, h/2)
		at := slices.Clone(all)
		for i := range at {
			if next {
				at[i].From = at[i].To
			}
			at[i].To = at[i].From
		}
		pic.Draw(at)
		for y := range h / 2 {
			out = append(out, pic.Line(y))
		}
	}
	for len(out) < h {
		out = append(out, d.Line())
	}
	return out
}

// Click picks the moved holder nearest to a column.
func (p *Pane) Click(d *pane.Shared, x, _ int) {
	s := draw.NewScale(p.view(d), p.W, d.Shop.Unit)
	best, near := -1, 0
	for n, m := range d.Moves() {
		for _, at := range []int{s.Column(m.From), s.Column(m.To)} {
			if off := max(at-x, x-at); best < 0 || off < near {
				best, near = n, off
			}
		}
	}
	if best >= 0 {
		d.PickMove(best)
	}
}
