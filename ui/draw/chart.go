package draw

import "strings"

// Bars draws heights between 0 and 1 upwards, a column each, over some rows: what is
// above 0 is never drawn as nothing.
func Bars(k *Theme, heights []float64, rows int) []Line {
	each := len(k.Levels)
	out := make([]Line, rows)
	for y := range out {
		var row strings.Builder
		for _, h := range heights {
			level := int(h*float64(rows*each) + 0.5)
			if h > 0 {
				level = max(level, 1)
			}
			switch level -= (rows - 1 - y) * each; {
			case level <= 0:
				row.WriteByte(' ')
			default:
				row.WriteString(k.Levels[min(level, each)-1])
			}
		}
		out[y] = k.Line()
		out[y].Add(Moved, row.String())
	}
	return out
}

// Curve draws depths between 0 and 1 downwards from the top, over some rows. Depths
// below 0 aren't drawn. There are as many depths as asks, evenly over w columns.
func Curve(k *Theme, w, rows int, depth func(x float64) float64) []Line {
	if k.ASCII {
		return asciiCurve(k, w, rows, depth)
	}
	p := &dots{look: k, w: w, h: rows, fields: make([]dotted, w*rows)}
	for x := range 2 * w {
		if d := depth((float64(x) + 0.5) / 2); d >= 0 {
			p.dot(x, int(d*float64(4*rows-1)+0.5), Aimed)
		}
	}
	out := make([]Line, rows)
	for y := range out {
		out[y] = p.Line(y)
	}
	return out
}

// asciiCurve has three heights in a row: ' - and a point.
func asciiCurve(k *Theme, w, rows int, depth func(x float64) float64) []Line {
	marks := [3]byte{'\'', '-', '.'}
	grid := make([][]byte, rows)
	for y := range grid {
		grid[y] = []byte(Blanks(w))
	}
	for x := range w {
		if d := depth(float64(x) + 0.5); d >= 0 {
			level := int(d*float64(3*rows-1) + 0.5)
			grid[level/3][x] = marks[level%3]
		}
	}
	out := make([]Line, rows)
	for y := range out {
		out[y] = k.Line()
		out[y].Add(Picked, string(grid[y]))
	}
	return out
}
