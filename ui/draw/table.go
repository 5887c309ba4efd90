package draw

import (
	"fmt"
	"slices"
)

// Column is one column of a table whose rows are R.
type Column[R any] struct {
	Head  string
	Width int
	Rank  int  // columns of a high rank go first where it is narrow
	Left  bool // text to the left; numbers to the right
	Flex  int  // how much wider it may get
	Cell  func(R) (Style, string)
}

// ColumnsFor are the columns that fit into w cells with one between any two, in
// their order, with what is left over given to those that may be wider.
func ColumnsFor[R any](all []Column[R], w int) []Column[R] {
	byRank := slices.Clone(all)
	slices.SortStableFunc(byRank, func(a, b Column[R]) int { return a.Rank - b.Rank })
	left, last, more := w+1, -1, 0 // the last rank, and how many columns of it
	for _, c := range byRank {
		if c.Width+1 > left {
			break
		}
		if left -= c.Width + 1; c.Rank > last {
			last, more = c.Rank, 0
		}
		more++
	}
	var out []Column[R]
	for _, c := range all {
		if c.Rank < last || c.Rank == last && more > 0 {
			out = append(out, c)
		}
		if c.Rank == last {
			more--
		}
	}
	for i := range out {
		more := min(out[i].Flex, left)
		out[i].Width += more
		left -= more
	}
	return out
}

// Heads is the line of the columns' heads.
func Heads[R any](k *Theme, columns []Column[R]) Line {
	return tableLine(k, columns, func(c Column[R]) (Style, string) { return Head, c.Head })
}

// RowOf is the line of one row.
func RowOf[R any](k *Theme, columns []Column[R], r R) Line {
	return tableLine(k, columns, func(c Column[R]) (Style, string) { return c.Cell(r) })
}

func tableLine[R any](k *Theme, columns []Column[R], cell func(Column[R]) (Style, string)) Line {
	l := k.Line()
	for i, c := range columns {
		if i > 0 {
			l.Add(Plain, " ")
		}
		if ink, text := cell(c); c.Left {
			l.Left(ink, text, c.Width)
		} else {
			l.Right(ink, text, c.Width)
		}
	}
	return l
}

// Range tells which of n rows are shown, from the first on at most h; nothing where
// they all are.
func Range(from, h, n int) string {
	if h <= 0 || h >= n {
		return ""
	}
	return fmt.Sprintf("%d-%d of %d", from+1, min(from+h, n), n)
}

// Window is the first of n rows to show in h lines, so that the picked one is
// among them, in the middle where there is more on both sides.
func Window(picked, n, h int) int {
	return max(0, min(picked-h/2, n-h))
}
