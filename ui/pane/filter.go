package pane

import (
	"slices"

	"bide/plan"
)

// RowAt is which of the rows is picked, or the one where it would be, were it
// shown.
func RowAt(rows []int, picked int) int {
	at, _ := slices.BinarySearch(rows, picked)
	return at
}

// Along is the row n rows on from the picked one, which may be hidden; the first or
// last where there are not as many, and the picked one where there are none.
func Along(rows []int, picked, n int) int {
	if len(rows) == 0 {
		return picked
	}
	at, there := slices.BinarySearch(rows, picked)
	if !there && n > 0 {
		at--
	}
	return rows[max(0, min(at+n, len(rows)-1))]
}

// FilterWords are what a filter looks for its words in, for one job.
func (d *Shared) FilterWords(index int) []string {
	j, o := d.Jobs()[index], d.Outcome(index)
	out := []string{j.ID, j.Material, j.Customer, d.Shop.Unit.Number(j.Web)}
	switch {
	case d.Broken[j] != "":
		out = append(out, "broken")
	case j.State == plan.Running:
		out = append(out, "running")
	}
	switch {
	case o == nil:
	case len(o.Faults) > 0:
		out = append(out, "refused")
	case o.Step.Late > 0:
		out = append(out, "late")
	}
	return out
}
