package list

import (
	"fmt"
	"strings"
)

// Filter leaves those rows of a list in which all of its words occur, in any case
// and order. Without words it leaves them all.
type Filter struct{ Text string }

// On reports whether the filter has words.
func (f *Filter) On() bool { return strings.TrimSpace(f.Text) != "" }

// Lets reports whether a row with these texts stays.
func (f *Filter) Lets(texts ...string) bool {
	all := strings.ToLower(strings.Join(texts, " "))
	for _, word := range strings.Fields(strings.ToLower(f.Text)) {
		if !strings.Contains(all, word) {
			return false
		}
	}
	return true
}

// Count tells how many of a list's rows are left; nothing without a filter.
func (f *Filter) Count(left, of int) string {
	if !f.On() {
		return ""
	}
	return fmt.Sprintf("/%s %d of %d ", strings.TrimSpace(f.Text), left, of)
}

// Rows are those of n rows that are left, each by the texts it has.
func (f *Filter) Rows(n int, texts func(row int) []string) []int {
	out := make([]int, 0, n)
	for row := range n {
		if !f.On() || f.Lets(texts(row)...) {
			out = append(out, row)
		}
	}
	return out
}
