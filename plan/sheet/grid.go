package sheet

import "strings"

// grid is a table whose columns are as wide as what stands in them; one of them,
// a column of names, takes what is left of the line.
type grid struct {
	heads [][]string // by line of the head, then by column
	full  []string   // the heads in full, where there is room for them
	rows  [][]string
	names []bool // by column: names stand to the left, numbers to the right
	wide  int    // the column that takes what is left
}

// lines lays the grid out: its head, and a line for each row.
func (g grid) lines() (head []string, rows []string) {
	widths := g.widths()
	for _, h := range g.heads {
		head = append(head, g.line(h, widths))
	}
	for _, r := range g.rows {
		rows = append(rows, g.line(r, widths))
	}
	return head, rows
}

func (g grid) widths() []int {
	const widestName = 12 // of the columns that aren't the wide one
	out := make([]int, len(g.names))
	rest := width - len(g.names) + 1
	for c := range out {
		for _, row := range append(append([][]string{}, g.heads...), g.rows...) {
			out[c] = max(out[c], runes(row[c]))
		}
		if g.names[c] {
			out[c] = min(out[c], widestName)
		}
		if c != g.wide {
			rest -= out[c]
		}
	}
	out[g.wide] = rest
	g.narrow(out)
	return out
}

// narrow leaves the wide column a few letters where the others fill the line: those
// of names give way, the first of them first. Numbers never do.
func (g grid) narrow(widths []int) {
	const least = 4
	for c := range widths {
		if g.names[c] && c != g.wide {
			by := max(0, min(least-widths[g.wide], widths[c]-least))
			widths[c] -= by
			widths[g.wide] += by
		}
	}
	widths[g.wide] = max(widths[g.wide], least)
}

func (g grid) line(cells []string, widths []int) string {
	out := make([]string, len(cells))
	for c, text := range cells {
		if g.names[c] {
			out[c] = pad(text, widths[c])
		} else {
			out[c] = strings.Repeat(" ", widths[c]-runes(text)) + text
		}
	}
	return strings.Join(out, " ")
}
