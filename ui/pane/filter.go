package pane

import (
	"slices"

	"bide/plan"
	"bide/ui/keys"
	"bide/ui/list"
)

// ListOf is a list of rows, each by its index among all, of which one is picked and so many are
// shown. Where the picked one is hidden it is the one in its place.
func ListOf(rows []int, picked, shown int) list.List {
	at, _ := slices.BinarySearch(rows, picked)
	return list.List{At: at, Rows: len(rows), Shown: shown}
}

// PickRow is the row that a key of a list leads to from the picked one, which may be hidden: a row
// or a page on, the first or the last. It stays the picked one where that is no such key, or where
// there are no rows.
func PickRow(rows []int, picked int, a keys.Action, page int) int {
	l := ListOf(rows, picked, page)
	if len(rows) == 0 || !list.Steps(a) {
		return picked
	}
	if forward := a == keys.Down || a == keys.PageDown; forward && !slices.Contains(rows, picked) {
		l.At--
	}
	return rows[l.Step(a)]
}

// ShownRow is the picked row or, where that is hidden, the nearest one that is shown after it.
func ShownRow(rows []int, picked int) int {
	if len(rows) == 0 {
		return picked
	}
	return rows[min(ListOf(rows, picked, 0).At, len(rows)-1)]
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
