package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/ui/keys"
	"bide/ui/page/compare"
)

// viewer is the screen as the session sees it, its session.Viewer. The session may have changed
// since the last key, so what is picked is first seen as it is now.
type viewer struct{ *model }

// Look picks the job that what happened last is about; the one picked stays so where
// that is about none.
func (m viewer) Look(turn int) {
	m.follow()
	if turn < 0 {
		turn = m.JobAt
	}
	m.JobAt, m.MoveAt = max(0, min(turn, len(m.Jobs())-1)), 0
}

// Picked is the turn of the picked job.
func (m viewer) Picked() int { return m.JobAt }

// ReadAnew picks the job again that was picked, or the one at its place in the sequence now.
func (m viewer) ReadAnew() {
	m.follow()
	m.Holder = min(m.Holder, len(m.Shop.Beam.Holders))
	index := slices.IndexFunc(m.Jobs(), func(j *plan.Job) bool { return j.ID == m.was })
	if index < 0 {
		index = m.JobAt
	}
	m.Pick(index)
}

// KeyOf is the key that asks for an action that the session names.
func (m viewer) KeyOf(a workday.Action) string {
	return m.KeyFor(map[workday.Action]keys.Action{
		workday.ToSave: keys.SaveDay, workday.ToReread: keys.Reread, workday.ToCompare: keys.CompareOrders, workday.ToUndo: keys.Undo,
		workday.ToSetUp: keys.Setup, workday.ToHold: keys.Hold, workday.ToCorrect: keys.Correct, workday.ToRun: keys.Runs, workday.ToUndoEntry: keys.TakeBack, workday.ToStop: keys.Back,
	}[a])
}

// Offered shows an order that a search found to the person who waits for it.
func (m viewer) Offered() {
	if m.follow(); m.Over == nil && m.help == nil && !m.AsksToQuit && m.Prompt == nil {
		compare.Open(m.Shared)
	}
}

// Unfinished is what was typed and would be lost.
func (m viewer) Unfinished() string {
	if len(m.closed) > 0 {
		return "a form closed unfinished"
	}
	return ""
}

// Quiet reports whether nothing is open that a shop read anew would disturb.
func (m viewer) Quiet() bool {
	if g := m.Guided(); m.Over != nil && (g == nil || g.Typing()) {
		return false
	}
	return m.Prompt == nil && !m.AsksToQuit
}
