package ui

import (
	"slices"

	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// lister is a pane whose rows may be filtered.
type lister interface {
	PickShown(*pane.Shared)    // picks a row that is shown, where the picked one isn't and any is
	Hides(d *pane.Shared) bool // whether what its keys change isn't shown
	Filtered() *list.Filter
}

// askFilter asks for the words of a list's filter. The list follows as one types, and
// what is picked is always among the rows shown; Esc shows all rows again, with what was
// picked.
func askFilter(m *model, of paneID) {
	listed, is := m.panel(of).(lister)
	switch {
	case is:
	case of == theSettings:
		m.Say("one text, nothing to filter: %s filters the jobs in the day", m.KeyFor(keys.FilterRows))
		return
	default:
		m.Say("one picture, nothing to filter: %s filters the moves", m.KeyFor(keys.FilterRows))
		return
	}
	f := listed.Filtered()
	index, move, holder := m.JobAt, m.MoveAt, m.Holder
	set := func(text string) {
		f.Text = text
		listed.PickShown(m.Shared)
	}
	m.Prompt = pane.NewPrompt("show only rows with", f.Text, set)
	m.Prompt.Changed = set
	m.Prompt.Dropped = func() {
		f.Text = ""
		m.Pick(index)
		m.PickMove(move)
		m.Holder = holder
	}
}

// showAll takes the filter off the list that has the keys, and reports whether there was one.
func showAll(m *model) bool {
	l, is := m.panel(m.focus).(lister)
	if !is || !l.Filtered().On() {
		return false
	}
	l.Filtered().Text = ""
	m.Say("all rows are shown")
	return true
}

// changesPicked are the actions that change what is picked.
var changesPicked = []keys.Action{keys.Earlier, keys.Later, keys.MoveTo, keys.EditJob, keys.CopyJob, keys.RemoveJob, keys.Fix, keys.OrderJob, keys.ShiftRule, keys.ArrangeRule, keys.Replan, keys.MarkRunning, keys.MarkDone, keys.Hold, keys.Marking}

// hidden reports whether an action would change what the filter hides.
func hidden(m *model, a keys.Action) bool {
	l, is := m.panel(m.focus).(lister)
	return is && slices.Contains(changesPicked, a) && l.Hides(m.Shared)
}
