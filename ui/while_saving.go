package ui

import "slices"

// While something is being saved, all that it rests on stays as it is: nothing is
// opened, changed or left until the save has ended, which is seldom longer than a
// blink. Looking around goes on, and leaving the program asks.

// looking are the actions that change nothing but what is looked at.
var looking = []action{
	nothing, help, nextPane, lastPane, pane1, pane2, pane3, pane4, pane5, pane6, enlarge, toggleMouse,
	up, down, left, right, pageUp, pageDown, top, bottom,
	nearer, farther, wholeBeam, onlyMoved, overTime, holderBefore, holderNext, orderBy, turnRound, otherView,
}

// holdsBack reports whether an action has to wait for what is being saved.
func (m *model) holdsBack(a action) bool {
	if _, walks := m.over.(*walk); a == back && (!walks || m.help != nil) {
		return false
	}
	return m.saving && !slices.Contains(looking, a)
}

// tellsToWait says that what was told before is still being saved.
func (d *desk) tellsToWait() { d.say("wait: the last one is still being saved") }
