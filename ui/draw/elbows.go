package draw

import "cmp"

// Elbows is a picture in ASCII: a thread runs down, along a row, and down again.
type Elbows struct {
	look   *Theme
	w, h   int
	fields []elbow
}

// elbow is what is in a cell: the arms of the lines that meet there.
type elbow struct {
	arms  uint8
	class class
}

// The arms of a cell. What only runs down has its upper arm alone above its turn,
// where its holder was, and its lower arm alone below, where it will be.
const (
	north uint8 = 1 << iota
	east
	south
	west
)

// Strokes draw the arms: | stays, . idle, ' was, , will be, ; both in one column,
// - along, + where lines meet, > and < where many go that way, * and = for the
// picked one.
var Strokes = [classes]string{
	none:  "                ",
	Idles: "................",
	Stays: "||||||||||||||||",
	Moves: " '>',;,+<'-+,+++",
	Aimed: " *=*****=*=*****",
}

func (p *Elbows) Across() int { return 1 }

// arm adds arms to a cell; what is of a lower class gives way.
func (p *Elbows) arm(x, y int, arms uint8, of class) {
	if x < 0 || x >= p.w {
		return
	}
	switch f := &p.fields[y*p.w+x]; {
	case of > f.class:
		*f = elbow{arms, of}
	case of == f.class:
		f.arms |= arms
	}
}

// Draw draws the threads, those together that overlap: each on a row of its own, or
// all as a stream where they are more than the rows.
func (p *Elbows) Draw(ts []Thread) {
	levels := levels(ts)
	for i := 0; i < len(ts); {
		n, deepest := i, 0
		for ; n < len(ts) && (n == i || overlap(ts[n-1], ts[n]) && ts[n].way() == ts[i].way()); n++ {
			deepest = max(deepest, levels[n])
		}
		if deepest < p.h {
			for k := i; k < n; k++ {
				p.Thread(ts[k], levels[k])
			}
		} else {
			p.stream(ts[i:n])
		}
		i = n
	}
}

// stream draws threads that overlap by where they were and where they will be, and
// by which way they go in between; only the picked one is joined.
func (p *Elbows) stream(ts []Thread) {
	way := east
	if ts[0].way() < 0 {
		way = west
	}
	for _, t := range ts {
		for y := 1; y < p.h-1; y++ {
			for x := max(min(t.From, t.To), 0); x <= min(max(t.From, t.To), p.w-1); x++ {
				p.fields[y*p.w+x] = elbow{way, max(p.fields[y*p.w+x].class, Moves)}
			}
		}
		if p.h > 0 {
			p.arm(t.From, 0, north, t.Class)
			p.arm(t.To, p.h-1, south, t.Class)
		}
	}
	for _, t := range ts {
		if t.Class == Aimed && p.h > 1 {
			p.Thread(t, p.h/2)
		}
	}
}

// Thread draws one thread that turns on a row.
func (p *Elbows) Thread(t Thread, row int) {
	if t.From == t.To {
		for y := range p.h {
			p.arm(t.From, y, north|south, t.Class)
		}
		return
	}
	ahead, behind := east, west
	if t.To < t.From {
		ahead, behind = west, east
	}
	for y := range row {
		p.arm(t.From, y, north, t.Class)
	}
	p.arm(t.From, row, north|ahead, t.Class)
	for x := max(min(t.From, t.To)+1, 0); x < min(max(t.From, t.To), p.w); x++ {
		p.arm(x, row, ahead|behind, t.Class)
	}
	p.arm(t.To, row, south|behind, t.Class)
	for y := row + 1; y < p.h; y++ {
		p.arm(t.To, y, south, t.Class)
	}
}

func (p *Elbows) Line(y int) Line {
	cells := make([]Span, p.w)
	for x := range cells {
		f := p.fields[y*p.w+x]
		cells[x] = Span{classInk[f.class], Strokes[f.class][f.arms : f.arms+1]}
	}
	return FromCells(p.look, cells)
}

// way is 1 for a thread that goes to the drive side, -1 for the other, else 0.
func (t Thread) way() int { return cmp.Compare(t.To, t.From) }

// levels gives each thread the row on which it runs along the beam. Of two that
// overlap and go the same way, the one in front must turn above the other, or they
// would cross; so rows are counted from the one in front. Threads that go apart
// never overlap. O(H^2) when all overlap, O(H) when few do.
func levels(ts []Thread) []int {
	out := make([]int, len(ts))
	for i := len(ts) - 1; i >= 0; i-- {
		if ts[i].way() > 0 {
			out[i] = below(ts, out, i, 1)
		}
	}
	for i := range ts {
		if ts[i].way() < 0 {
			out[i] = below(ts, out, i, -1)
		}
	}
	return out
}

// below is the row below all those that thread i overlaps in front of it.
func below(ts []Thread, levels []int, i, front int) int {
	out := 0
	for k := i + front; k >= 0 && k < len(ts) && overlap(ts[i], ts[k]); k += front {
		if ts[k].way() != 0 {
			out = max(out, levels[k]+1)
		}
	}
	return out
}

// overlap reports whether two threads share a column.
func overlap(a, b Thread) bool {
	return max(min(a.From, a.To), min(b.From, b.To)) <= min(max(a.From, a.To), max(b.From, b.To))
}
