package ui

import "strings"

// bars draws heights between 0 and 1 upwards, a column each, over some rows: what is
// above 0 is never drawn as nothing.
func bars(k *look, heights []float64, rows int) []line {
	each := len(k.levels)
	out := make([]line, rows)
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
				row.WriteString(k.levels[min(level, each)-1])
			}
		}
		out[y] = k.line()
		out[y].add(moved, row.String())
	}
	return out
}

// curve draws depths between 0 and 1 downwards from the top, over some rows. Depths
// below 0 aren't drawn. There are as many depths as asks, evenly over w columns.
func curve(k *look, w, rows int, depth func(x float64) float64) []line {
	if k.ascii {
		return asciiCurve(k, w, rows, depth)
	}
	p := &dots{look: k, w: w, h: rows, fields: make([]dotted, w*rows)}
	for x := range 2 * w {
		if d := depth((float64(x) + 0.5) / 2); d >= 0 {
			p.dot(x, int(d*float64(4*rows-1)+0.5), aimed)
		}
	}
	out := make([]line, rows)
	for y := range out {
		out[y] = p.line(y)
	}
	return out
}

// asciiCurve has three heights in a row: ' - and a point.
func asciiCurve(k *look, w, rows int, depth func(x float64) float64) []line {
	marks := [3]byte{'\'', '-', '.'}
	grid := make([][]byte, rows)
	for y := range grid {
		grid[y] = []byte(blanks(w))
	}
	for x := range w {
		if d := depth(float64(x) + 0.5); d >= 0 {
			level := int(d*float64(3*rows-1) + 0.5)
			grid[level/3][x] = marks[level%3]
		}
	}
	out := make([]line, rows)
	for y := range out {
		out[y] = k.line()
		out[y].add(picked, string(grid[y]))
	}
	return out
}
