package draw

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

// FaceRows is how many fields a figure is high.
const FaceRows = 5

// magnified is the size of a field in cells.
type magnified struct{ Across, down int }

// magnitudes are the sizes to choose from, the largest first: fields about as wide as
// high, some a little narrower, since width is what is short.
var magnitudes = []magnified{{8, 4}, {6, 3}, {5, 3}, {4, 2}, {3, 2}, {2, 1}, {1, 1}}

// Wide is how many cells a text of figures takes.
func (g magnified) Wide(text string) int {
	n := 0
	for _, r := range text {
		n += (len(faces[r][0]) + 1) * g.Across
	}
	return max(n-g.Across, 0)
}

// High is how many lines.
func (g magnified) High() int { return FaceRows * g.down }

// Rows draw a text of figures.
func (g magnified) Rows(text, fill string) []string {
	var out []string
	for y := range FaceRows {
		var row strings.Builder
		for i, r := range []rune(text) {
			if i > 0 {
				row.WriteString(Blanks(g.Across))
			}
			for _, field := range faces[r][y] {
				if field == '#' {
					row.WriteString(strings.Repeat(fill, g.Across))
				} else {
					row.WriteString(Blanks(g.Across))
				}
			}
		}
		for range g.down {
			out = append(out, row.String())
		}
	}
	return out
}

// Magnify is the largest size in which the text fits; false when none does.
func Magnify(text string, s Size) (magnified, bool) {
	for _, g := range magnitudes {
		if g.Wide(text) <= s.W && g.High() <= s.H {
			return g, true
		}
	}
	return magnified{}, false
}
