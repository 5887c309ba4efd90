package ui

import (
	"slices"

	"bide/ui/keys"
)

// While something is being saved, all that it rests on stays as it is: nothing is
// opened, changed or left until the save has ended, which is seldom longer than a
// blink. Looking around goes on, and leaving the program asks.

// looking are the actions that change nothing but what is looked at.
var looking = []keys.Action{
	keys.None, keys.Help, keys.NextPane, keys.LastPane, keys.Pane1, keys.Pane2, keys.Pane3, keys.Pane4, keys.Pane5, keys.Pane6, keys.Enlarge, keys.ToggleMouse,
	keys.Up, keys.Down, keys.Left, keys.Right, keys.PageUp, keys.PageDown, keys.Top, keys.Bottom,
	keys.ZoomIn, keys.ZoomOut, keys.WholeBeam, keys.OnlyMoved, keys.Schedule, keys.HolderBefore, keys.HolderNext, keys.Sort, keys.Reverse, keys.Pairs,
}

// holdsBack reports whether an action has to wait for what is being saved.
func (m *model) holdsBack(a keys.Action) bool {
	if a == keys.Back && (m.Guided() == nil || m.help != nil) {
		return false
	}
	return m.Journal.Busy() && !slices.Contains(looking, a)
}
