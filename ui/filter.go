package ui

import (
	"fmt"
	"slices"

	"bide/plan/words"
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
	pickShown(*desk)    // picks a row that is shown, where the picked one isn't and any is
	hides(d *desk) bool // whether what its keys change isn't shown
	filtered() *list.Filter
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
	f := pane.filtered()
	turn, move, holder := m.turn, m.move, m.holder
	set := func(text string) {
		f.Text = text
		pane.pickShown(m.desk)
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
	return is && slices.Contains(changesPicked, a) && l.hides(m.desk)
}

func (p *dayPane) filtered() *list.Filter      { return &p.filter }
func (p *schedulePane) filtered() *list.Filter { return &p.filter }
func (p *dayMapPane) filtered() *list.Filter   { return &p.filter }
func (p *movesPane) filtered() *list.Filter    { return &p.filter }
func (p *holdersPane) filtered() *list.Filter  { return &p.filter }

func (p *dayPane) pickShown(d *desk)  { p.along(d, 0) }
func (p *dayPane) hides(d *desk) bool { return d.job() != nil && !slices.Contains(p.shown(d), d.turn) }

func (p *schedulePane) pickShown(d *desk) { p.along(d, 0) }
func (p *schedulePane) hides(d *desk) bool {
	return d.job() != nil && !slices.Contains(p.rows(d), d.turn)
}
func (p *dayMapPane) pickShown(d *desk) { p.along(d, 0) }
func (p *dayMapPane) hides(d *desk) bool {
	return d.job() != nil && !slices.Contains(p.rows(d), d.turn)
}

func (p *movesPane) pickShown(d *desk) { p.along(d, 0) }
func (p *movesPane) hides(*desk) bool  { return false } // moves are changed by nothing

func (p *holdersPane) pickShown(d *desk) {
	if rows, at := p.picks(d); at < 0 && len(rows) > 0 {
		p.choose(d, rows[0])
	}
}

func (p *holdersPane) hides(d *desk) bool { _, at := p.picks(d); return at < 0 }

// shown are the turns that the filter of the day leaves.
func (p *dayPane) shown(d *desk) []int {
	return p.filter.Rows(len(d.Jobs()), d.wordsOfJob)
}

// rows are the moves that the filter of the moves leaves.
func (p *movesPane) rows(d *desk) []int {
	moves, u := d.moves(), d.Shop.Unit
	return p.filter.Rows(len(moves), func(n int) []string {
		m := &moves[n]
		return []string{fmt.Sprintf("%d h%d", m.Holder, m.Holder), u.Number(m.From), u.Number(m.To), words.Towards(m.To - m.From), m.Why.Text(u)}
	})
}
