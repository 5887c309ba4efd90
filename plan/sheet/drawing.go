package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"bide/plan"
)

// drawing is a picture in lines, for SVG: everything in units of its own, 1000 across.
type drawing struct {
	High  int
	About string // what it shows, for who can't see it
	Paths []drawnPath
	Texts []drawnText
}

type drawnPath struct{ Class, D string } // D as SVG has path data

type drawnText struct {
	X, Y        string
	Class, Text string
}

// The picture's width, and where the beam lies in it: names of the rows stand before.
const (
	drawnWide  = 1000
	drawnFrom  = 64
	drawnTo    = drawnWide - 24
	drawnTicks = 12 // at most
)

// canvas is a picture being drawn, along a stretch of the beam.
type canvas struct {
	drawing
	over plan.Span
	unit plan.Unit
}

func newCanvas(over plan.Span, u plan.Unit, high int) *canvas {
	return &canvas{drawing{High: high}, over, u}
}

// x is where a place lies.
func (c *canvas) x(at plan.Length) float64 {
	if c.over.Length() <= 0 {
		return drawnFrom
	}
	part := float64(at-c.over.From) / float64(c.over.Length())
	return drawnFrom + (drawnTo-drawnFrom)*min(max(part, 0), 1)
}

// coordinate is a number as the drawing writes it.
func coordinate(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

// path adds strokes of one kind; nothing for none.
func (c *canvas) path(class string, d *strings.Builder) {
	if d.Len() > 0 {
		c.Paths = append(c.Paths, drawnPath{class, d.String()})
	}
}

// stroke adds a straight line to a path.
func stroke(d *strings.Builder, x1, y1, x2, y2 float64) {
	fmt.Fprintf(d, "M%s %sL%s %s", coordinate(x1), coordinate(y1), coordinate(x2), coordinate(y2))
}

// box adds a rectangle to a path.
func box(d *strings.Builder, x1, y1, x2, y2 float64) {
	fmt.Fprintf(d, "M%s %sH%sV%sH%sZ", coordinate(x1), coordinate(y1), coordinate(x2), coordinate(y2), coordinate(x1))
}

// triangle adds one with its point below, or above where y2 is.
func triangle(d *strings.Builder, x, half, y1, y2 float64) {
	fmt.Fprintf(d, "M%s %sH%sL%s %sZ", coordinate(x-half), coordinate(y1), coordinate(x+half), coordinate(x), coordinate(y2))
}

func (c *canvas) text(x, y float64, class, text string) {
	c.Texts = append(c.Texts, drawnText{coordinate(x), coordinate(y), class, text})
}

// name names a row of the picture.
func (c *canvas) name(y float64, text string) { c.text(0, y, "", text) }

// scale draws a scale along the top, with round numbers of the unit.
func (c *canvas) scale() {
	step := roundStep(c.over.Length(), c.unit)
	var d strings.Builder
	stroke(&d, c.x(c.over.From), 24, c.x(c.over.To), 24)
	for at := ceilTo(c.over.From, step); at <= c.over.To; at += step {
		x := c.x(at)
		stroke(&d, x, 18, x, 24)
		c.text(x, 14, "middle", c.unit.Number(at))
	}
	c.path("thin", &d)
	c.name(14, c.unit.String())
}

// roundStep is the least of 1, 2, 5, 10, ... units of which no more than drawnTicks make
// a length.
func roundStep(long plan.Length, u plan.Unit) plan.Length {
	unit := plan.Millimetre
	if u == plan.Inches {
		unit = plan.Inch
	}
	for size := unit; ; size *= 10 {
		for _, n := range []plan.Length{1, 2, 5} {
			if size*n*drawnTicks >= long {
				return size * n
			}
		}
	}
}

// ceilTo is the first whole number of steps from a place on.
func ceilTo(at, step plan.Length) plan.Length {
	n := at / step
	if n*step < at {
		n++
	}
	return n * step
}
