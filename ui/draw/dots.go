package draw

// dots is a picture of braille dots, two across and four down in each cell.
type dots struct {
	look   *Theme
	w, h   int
	fields []dotted
	most   bool // most holders move: those that stay and cut are what stands out
}

// dotted is one cell: its dots as Unicode counts them, and the highest class.
type dotted struct {
	bits  uint8
	class class
}

// dotBits are the dots of a cell by row and column (Unicode, block U+2800).
var dotBits = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// gaps are the rows of each cell that a class leaves out, so that the classes differ
// without colours too: what moves runs through, what stays is dotted, what is idle
// dotted with wider gaps.
var gaps = [classes][4]bool{Idles: {1: true, 2: true, 3: true}, Stays: {1: true, 3: true}}

func (p *dots) Across() int { return 2 }

func (p *dots) dot(x, y int, of class) {
	if x < 0 || x >= 2*p.w || gaps[of][y%4] {
		return
	}
	f := &p.fields[y/4*p.w+x/2]
	f.bits |= dotBits[y%4][x%2]
	if p.most && (of == Stays && f.class == Moves || of == Moves && f.class == Stays) {
		f.class = Stays
		return
	}
	f.class = max(f.class, of)
}

// Draw draws every thread from top to bottom along an S: at each height all of them
// have gone the same part of their ways, so they keep their order. Where more move than
// can be told apart, only some of them are drawn all the way.
func (p *dots) Draw(ts []Thread) {
	n, nth := 4*p.h-1, 0
	every := p.crowd(ts)
	for _, t := range ts {
		ends := n
		if t.Class == Moves {
			if nth++; nth%every != 0 {
				ends = min(2, p.h-1)
			}
		}
		p.thread(t, n, ends)
	}
}

// crowd tells of how many that move one is drawn all the way, so that at most about half
// of all dots are taken; and whether it is most that move.
func (p *dots) crowd(ts []Thread) (every int) {
	all, moving, taken := 0, 0, 0
	for _, t := range ts {
		if max(t.From, t.To) < 0 || min(t.From, t.To) >= 2*p.w {
			continue // out of sight
		}
		if all++; t.Class == Moves {
			moving++
			taken += max(4*p.h, t.To-t.From, t.From-t.To)
		}
	}
	p.most = 2*moving > all
	if p.h == 1 && moving <= p.w { // there is nothing in between to be left out
		return 1
	}
	return 1 + taken/max(4*p.w*p.h, 1)
}

// thread draws one thread over n rows of dots; of the rows between, those at most so far
// from its ends.
func (p *dots) thread(t Thread, n, ends int) {
	last := t.From
	for y := 0; y <= n; y++ {
		x := t.From + part(t.To-t.From, y, n)
		if y > ends && y < n-ends {
			last = x
			continue
		}
		for ; last < x-1; last++ {
			p.dot(last+1, y, t.Class)
		}
		for ; last > x+1; last-- {
			p.dot(last-1, y, t.Class)
		}
		p.dot(x, y, t.Class)
		if last = x; t.Class == Aimed {
			p.dot(x+1, y, t.Class)
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
	return Floor(2*way*y*y*(3*n-2*y)+whole, 2*whole)
}

func (p *dots) Line(y int) Line {
	cells := make([]Span, p.w)
	for x := range cells {
		f := p.fields[y*p.w+x]
		cells[x] = Span{classInk[f.class], " "}
		if f.bits != 0 {
			cells[x].Text = string(rune(0x2800 + int(f.bits)))
		}
	}
	return FromCells(p.look, cells)
}
