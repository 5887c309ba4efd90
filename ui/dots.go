package ui

// dots is a picture of braille dots, two across and four down in each cell.
type dots struct {
	look   *look
	w, h   int
	fields []dotted
}

// dotted is one cell: its dots as Unicode counts them, and the highest class.
type dotted struct {
	bits  uint8
	class class
}

// dotBits are the dots of a cell by row and column (Unicode, block U+2800).
var dotBits = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// gaps are the rows of each cell that a class leaves out, so that the classes differ
// without colours too: what moves runs through, what bides is dotted, what is idle
// dotted with wider gaps.
var gaps = [classes][4]bool{idles: {1: true, 2: true, 3: true}, bides: {1: true, 3: true}}

func (p *dots) across() int { return 2 }

func (p *dots) dot(x, y int, of class) {
	if x < 0 || x >= 2*p.w || gaps[of][y%4] {
		return
	}
	f := &p.fields[y/4*p.w+x/2]
	f.bits |= dotBits[y%4][x%2]
	f.class = max(f.class, of)
}

// draw draws every thread from top to bottom along an S: at each height all of them
// have gone the same part of their ways, so they keep their order.
func (p *dots) draw(ts []thread) {
	n := 4*p.h - 1
	for _, t := range ts {
		last := t.from
		for y := 0; y <= n; y++ {
			x := t.from + part(t.to-t.from, y, n)
			for ; last < x-1; last++ {
				p.dot(last+1, y, t.class)
			}
			for ; last > x+1; last-- {
				p.dot(last-1, y, t.class)
			}
			p.dot(x, y, t.class)
			if last = x; t.class == aimed {
				p.dot(x+1, y, t.class)
			}
		}
	}
}

// part is the part of a way gone at height y of n, rounded: slow at both ends,
// 3s^2 - 2s^3 with s = y/n.
func part(way, y, n int) int {
	whole := n * n * n
	if whole == 0 {
		return 0
	}
	return floor(2*way*y*y*(3*n-2*y)+whole, 2*whole)
}

func (p *dots) line(y int) line {
	cells := make([]span, p.w)
	for x := range cells {
		f := p.fields[y*p.w+x]
		cells[x] = span{classInk[f.class], " "}
		if f.bits != 0 {
			cells[x].text = string(rune(0x2800 + int(f.bits)))
		}
	}
	return runs(p.look, cells)
}
