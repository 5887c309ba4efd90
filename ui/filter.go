package ui

import (
	"slices"

	"bide/ui/keys"
	"bide/ui/list"
)

// unfiltered tells of the panes that aren't lists why they have no filter.
var unfiltered = map[which]string{
	theBeam:     "one picture, nothing to filter: / filters the moves",
	theSettings: "one text, nothing to filter: / filters the jobs in the day",
}

// lister is a pane whose rows may be filtered.
type lister interface {
	PickShown(*desk)    // picks a row that is shown, where the picked one isn't and any is
	Hides(d *desk) bool // whether what its keys change isn't shown
	Filtered() *list.Filter
}

// askFilter asks for the words of a list's filter. The list follows as one types, and
// what is picked is always among the rows shown; Esc shows all rows again, with what was
// picked.
func (m *model) askFilter(of which) {
	if why, is := unfiltered[of]; is {
		m.Say("%s", why)
		return
	}
	pane := m.panel(of).(lister)
	f := pane.Filtered()
	turn, move, holder := m.turn, m.move, m.holder
	set := func(text string) {
		f.Text = text
		pane.PickShown(m.desk)
	}
	m.prompt = newPrompt("show only rows with", f.Text, set)
	m.prompt.changed = set
	m.prompt.dropped = func() {
		f.Text = ""
		m.pick(turn)
		m.pickMove(move)
		m.holder = holder
	}
}

// changesPicked are the actions that change what is picked.
var changesPicked = []keys.Action{keys.Earlier, keys.Later, keys.MoveTo, keys.EditJob, keys.CopyJob, keys.RemoveJob, keys.Fix, keys.OrderJob, keys.ShiftRule, keys.ArrangeRule, keys.Replan, keys.MarkRunning, keys.MarkDone, keys.Hold, keys.Marking}

// hidden reports whether an action would change what the filter hides.
func (m *model) hidden(a keys.Action) bool {
	l, is := m.panel(m.focus).(lister)
	return is && slices.Contains(changesPicked, a) && l.Hides(m.desk)
}
