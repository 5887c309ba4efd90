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

// askFilter asks for the words of the filter of a pane that has one. The list follows as one types,
// and what is picked is always among the rows shown; Esc shows all rows again, with what was
// picked.
func askFilter(of any, d *pane.Shared) pane.Want {
	listed, is := of.(lister)
	if !is {
		return pane.Say("there is no list here to filter; %s does it in the day and in the moves", d.KeyFor(keys.FilterRows))
	}
	f := listed.Filtered()
	index, move, holder := d.JobAt, d.MoveAt, d.Holder
	set := func(text string) {
		f.Text = text
		listed.PickShown(d)
	}
	d.Prompt = pane.NewPrompt("show only rows with", f.Text, func(text string) pane.Want {
		set(text)
		return nil
	})
	d.Prompt.In, d.Prompt.Changed = keys.OnFilter, set
	d.Prompt.Dropped = func() pane.Want {
		f.Text = ""
		d.Pick(index)
		d.PickMove(move)
		d.Holder = holder
		return nil
	}
	return nil
}

// filtered reports whether a pane has a list that is filtered.
func filtered(of any) bool {
	l, is := of.(lister)
	return is && l.Filtered().On()
}

// changesPicked are the actions that change what is picked.
var changesPicked = []keys.Action{keys.Earlier, keys.Later, keys.MoveTo, keys.EditJob, keys.CopyJob, keys.RemoveJob, keys.Fix, keys.OrderJob, keys.ShiftRule, keys.ArrangeRule, keys.Replan, keys.MarkRunning, keys.MarkDone, keys.Hold, keys.Marking}

// hidden reports whether an action would change what the filter of a pane hides.
func hidden(in any, d *pane.Shared, a keys.Action) bool {
	l, is := in.(lister)
	return is && slices.Contains(changesPicked, a) && l.Hides(d)
}
