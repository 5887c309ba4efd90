package sheet

import (
	"fmt"
	"strings"

	"bide/material"
	"bide/plan"
)

// Where the rows of a beam's picture lie, from above.
const (
	wasTop, wasFoot     = 30, 42
	thenTop, thenFoot   = 68, 84
	webTop, webFoot     = 98, 112
	edgeText            = 128
	bendTop, bendLowest = 142, 166
	beamHigh            = 134
	bentHigh            = 176
)

// drawBeam draws a changeover: where the holders were, how they move, where they are to
// stand, the cuts in the web, and below how the anvil bends.
func drawBeam(f *facts, i int) *drawing {
	s, b := f.steps[i], f.bending(i)
	over, high := f.plan.Beam.Rail, beamHigh
	over = plan.Span{From: min(over.From, s.Layout.Web.From), To: max(over.To, s.Layout.Web.To)}
	if b != nil {
		high = bentHigh
		over.From, over.To = min(over.From, inNM(b.Anvil.FromMM)), max(over.To, inNM(b.Anvil.FromMM+b.Anvil.SpanMM))
	}
	damaged := f.options.damaged()
	if len(damaged) > 0 {
		high = bentHigh
	}
	c := newCanvas(over, f.options.Unit, high)
	c.scale()
	c.holders(&s.Changeover)
	c.web(&s.Layout)
	if b != nil {
		c.bend(b)
	}
	c.damaged(damaged, bendTop-6, bendTop+6)
	cutting := len(s.Changeover.Holders) - s.Changeover.Parked - s.Changeover.Resting
	c.About = fmt.Sprintf("The beam before and after the changeover: %d holders cut, %d rest over the web, %d are parked outside it, %d move; the web is from %s to %s.",
		cutting, s.Changeover.Resting, s.Changeover.Parked, len(s.Changeover.Moves), c.unit.Number(s.Layout.Web.From), c.unit.Show(s.Layout.Web.To))
	return &c.drawing
}

// bending is the anvil under step i's blades; nil where it isn't known.
func (f *facts) bending(i int) *material.Bending {
	if k := f.options.turn(i); k != nil {
		return k.Bending
	}
	return nil
}

// inNM is a place of a formula on the beam's scale.
func inNM(mm float64) plan.Length { return plan.Length(mm * float64(plan.Millimetre)) }

// holders draws where they were, their ways, and where they are to stand: a full
// triangle cuts, an open box is idle.
func (c *canvas) holders(s *plan.Changeover) {
	const half = 2.0
	var was, ways, cutting, idle strings.Builder
	for i, h := range s.Holders {
		x := c.x(h.At)
		stroke(&was, c.x(s.From[i]), wasTop, c.x(s.From[i]), wasFoot)
		if h.Use == plan.Cutting {
			triangle(&cutting, x, half, thenTop, thenFoot)
		} else {
			box(&idle, x-half, thenTop, x+half, thenTop+(thenFoot-thenTop)/2)
		}
	}
	for _, m := range s.Moves {
		stroke(&ways, c.x(m.From), wasFoot, c.x(m.To), thenTop)
	}
	c.path("", &was)
	c.path("thin", &ways)
	c.path("full", &cutting)
	c.path("thin", &idle)
	c.name(wasFoot, "before")
	c.name(thenFoot-2, "after")
}

// web draws the web with its cuts, and writes where its edges lie.
func (c *canvas) web(l *plan.Layout) {
	var edges, cuts, trim strings.Builder
	from, to := c.x(l.Web.From), c.x(l.Web.To)
	box(&edges, from, webTop, to, webFoot)
	for _, at := range l.Cuts {
		stroke(&cuts, c.x(at), thenFoot+2, c.x(at), webFoot)
	}
	for side, wide := range l.Trim {
		if wide > 0 {
			edge, inner := l.Web.From, l.Web.From+wide
			if side == 1 {
				edge, inner = l.Web.To, l.Web.To-wide
			}
			stroke(&trim, c.x(edge), webTop, c.x(inner), webFoot)
			stroke(&trim, c.x(edge), webFoot, c.x(inner), webTop)
		}
	}
	c.path("thick", &edges)
	c.path("thin", &cuts)
	c.path("thin", &trim)
	c.name(webFoot-2, "web")
	c.text(from, edgeText, "middle", c.unit.Number(l.Web.From))
	c.text(to, edgeText, "middle", c.unit.Number(l.Web.To))
}

// bend draws the anvil from bearing to bearing, and its line under the blades, much
// exaggerated.
func (c *canvas) bend(b *material.Bending) {
	var roll, bent strings.Builder
	from, to := b.Anvil.FromMM, b.Anvil.FromMM+b.Anvil.SpanMM
	stroke(&roll, c.x(inNM(from)), bendTop, c.x(inNM(to)), bendTop)
	for _, at := range []float64{from, to} {
		triangle(&roll, c.x(inNM(at)), 6, bendTop+12, bendTop)
	}
	const points = 61
	for k, deflection := range b.Line(points) {
		y := float64(bendTop)
		if b.MostMM > 0 {
			y += (bendLowest - bendTop) * min(deflection/b.MostMM, 1)
		}
		letter := "L"
		if k == 0 {
			letter = "M"
		}
		fmt.Fprintf(&bent, "%s%s %s", letter, coordinate(c.x(inNM(from+b.Anvil.SpanMM*float64(k)/(points-1)))), coordinate(y))
	}
	c.path("thin", &roll)
	c.path("", &bent)
	c.name(bendLowest-8, "bend")
}

// damaged crosses out the damaged bands of the anvil, as wide as they are or as can be
// seen.
func (c *canvas) damaged(bands []plan.Span, top, foot float64) {
	const seen = 4.0
	var d strings.Builder
	for _, s := range bands {
		if s.To < c.over.From || s.From > c.over.To {
			continue
		}
		x1, x2 := c.x(s.From), c.x(s.To)
		if more := (seen - (x2 - x1)) / 2; more > 0 {
			x1, x2 = x1-more, x2+more
		}
		box(&d, x1, top, x2, foot)
		stroke(&d, x1, top, x2, foot)
		stroke(&d, x1, foot, x2, top)
	}
	c.path("crossed", &d)
}

// drawFace draws the metres that the day cuts on each band of the anvil's face.
func drawFace(f *facts) *drawing {
	const foot, tall, high = 84, 52, 92
	face := f.options.Knife.Face
	c := newCanvas(plan.Span{From: min(f.plan.Beam.Rail.From, plan.Length(face.From)), To: max(f.plan.Beam.Rail.To, plan.Length(face.To))}, f.options.Unit, high)
	c.scale()
	var bars, base strings.Builder
	for b, metres := range face.Metres {
		from, to := face.Span(b)
		if metres > 0 {
			box(&bars, c.x(plan.Length(from)), foot-tall*metres/face.Metres[face.Worst], c.x(plan.Length(to)), foot)
		}
	}
	stroke(&base, c.x(plan.Length(face.From)), foot, c.x(plan.Length(face.To)), foot)
	c.path("shade", &bars)
	c.path("", &base)
	c.damaged(f.options.damaged(), foot-tall, foot)
	c.name(foot-tall/2, "metres")
	c.About = "Metres that the day cuts on each band of the anvil's face, as bars along the beam; damaged bands are crossed out."
	return &c.drawing
}
