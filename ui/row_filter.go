package ui

import (
	"bide/plan"
	"slices"
)

// rowOfTurn is which of the rows is picked, or the one where it would be, were it
// shown.
func rowOfTurn(rows []int, picked int) int {
	at, _ := slices.BinarySearch(rows, picked)
	return at
}

// along is the row n rows on from the picked one, which may be hidden; the first or
// last where there are not as many, and the picked one where there are none.
func along(rows []int, picked, n int) int {
	if len(rows) == 0 {
		return picked
	}
	at, there := slices.BinarySearch(rows, picked)
	if !there && n > 0 {
		at--
	}
	return rows[max(0, min(at+n, len(rows)-1))]
}

// wordsOfJob are what a filter looks in.
func (d *desk) wordsOfJob(turn int) []string {
	j, o := d.Jobs()[turn], d.Outcome(turn)
	out := []string{j.ID, j.Material, d.Shop.Unit.Number(j.Web)}
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
