package ui

import (
	"fmt"
	"slices"
)

// column is one column of a table whose rows are R.
type column[R any] struct {
	head  string
	width int
	rank  int  // columns of a high rank go first where it is narrow
	left  bool // text to the left; numbers to the right
	flex  int  // how much wider it may get
	cell  func(R) (ink, string)
}

// columnsFor are the columns that fit into w cells with one between any two, in
// their order, with what is left over given to those that may be wider.
func columnsFor[R any](all []column[R], w int) []column[R] {
	byRank := slices.Clone(all)
	slices.SortStableFunc(byRank, func(a, b column[R]) int { return a.rank - b.rank })
	left, last, more := w+1, -1, 0 // the last rank, and how many columns of it
	for _, c := range byRank {
		if c.width+1 > left {
			break
		}
		if left -= c.width + 1; c.rank > last {
			last, more = c.rank, 0
		}
		more++
	}
	var out []column[R]
	for _, c := range all {
		if c.rank < last || c.rank == last && more > 0 {
			out = append(out, c)
		}
		if c.rank == last {
			more--
		}
	}
	for i := range out {
		more := min(out[i].flex, left)
		out[i].width += more
		left -= more
	}
	return out
}

// heads is the line of the columns' heads.
func heads[R any](k *look, columns []column[R]) line {
	return tableLine(k, columns, func(c column[R]) (ink, string) { return head, c.head })
}

// rowOf is the line of one row.
func rowOf[R any](k *look, columns []column[R], r R) line {
	return tableLine(k, columns, func(c column[R]) (ink, string) { return c.cell(r) })
}

func tableLine[R any](k *look, columns []column[R], cell func(column[R]) (ink, string)) line {
	l := k.line()
	for i, c := range columns {
		if i > 0 {
			l.add(plain, " ")
		}
		if ink, text := cell(c); c.left {
			l.left(ink, text, c.width)
		} else {
			l.right(ink, text, c.width)
		}
	}
	return l
}

// some tells which of n rows are shown, from the first on at most h; nothing where
// they all are.
func some(from, h, n int) string {
	if h <= 0 || h >= n {
		return ""
	}
	return fmt.Sprintf("%d-%d of %d", from+1, min(from+h, n), n)
}

// window is the first of n rows to show in h lines, so that the picked one is
// among them, in the middle where there is more on both sides.
func window(picked, n, h int) int {
	return max(0, min(picked-h/2, n-h))
}
