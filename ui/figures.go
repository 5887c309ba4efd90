package ui

import "strings"

// Figures that can be read from some steps away: each of three by five fields, a
// field of several cells.

// figure faces, row by row; # is a field that is filled.
var faces = map[rune][5]string{
	'0': {"###", "#.#", "#.#", "#.#", "###"},
	'1': {".#.", "##.", ".#.", ".#.", "###"},
	'2': {"###", "..#", "###", "#..", "###"},
	'3': {"###", "..#", ".##", "..#", "###"},
	'4': {"#.#", "#.#", "###", "..#", "..#"},
	'5': {"###", "#..", "###", "..#", "###"},
	'6': {"###", "#..", "###", "#.#", "###"},
	'7': {"###", "..#", ".#.", ".#.", ".#."},
	'8': {"###", "#.#", "###", "#.#", "###"},
	'9': {"###", "#.#", "###", "..#", "###"},
	'-': {"...", "...", "###", "...", "..."},
	'.': {".", ".", ".", ".", "#"},
	'>': {"#..", "##.", "###", "##.", "#.."},
	'<': {"..#", ".##", "###", ".##", "..#"},
	' ': {".", ".", ".", ".", "."},
}

// faceRows is how many fields a figure is high.
const faceRows = 5

// magnified is the size of a field in cells.
type magnified struct{ across, down int }

// magnitudes are the sizes to choose from, the largest first: fields about as wide as
// high, some a little narrower, since width is what is short.
var magnitudes = []magnified{{8, 4}, {6, 3}, {5, 3}, {4, 2}, {3, 2}, {2, 1}, {1, 1}}

// wide is how many cells a text of figures takes.
func (g magnified) wide(text string) int {
	n := 0
	for _, r := range text {
		n += (len(faces[r][0]) + 1) * g.across
	}
	return max(n-g.across, 0)
}

// high is how many lines.
func (g magnified) high() int { return faceRows * g.down }

// rows draw a text of figures.
func (g magnified) rows(text, fill string) []string {
	var out []string
	for y := range faceRows {
		var row strings.Builder
		for i, r := range []rune(text) {
			if i > 0 {
				row.WriteString(blanks(g.across))
			}
			for _, field := range faces[r][y] {
				if field == '#' {
					row.WriteString(strings.Repeat(fill, g.across))
				} else {
					row.WriteString(blanks(g.across))
				}
			}
		}
		for range g.down {
			out = append(out, row.String())
		}
	}
	return out
}

// magnify is the largest size in which the text fits; false when none does.
func magnify(text string, s size) (magnified, bool) {
	for _, g := range magnitudes {
		if g.wide(text) <= s.w && g.high() <= s.h {
			return g, true
		}
	}
	return magnified{}, false
}
