package ui

import (
	"path/filepath"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/shop/disk"
	"bide/ui/keys"
	"bide/ui/pane"
	"bide/ui/pane/beamview"
	"bide/ui/pane/daymap"
	"bide/ui/personal"

	tea "github.com/charmbracelet/bubbletea"
)

// settleFor takes what a person has set: keys and the mouse. What is wrong with it is
// shown among the notes.
func (m *model) personalise(c *personal.Config) {
	if c == nil {
		return
	}
	keys, problems := keys.WithOwn(m.Table.All, c)
	m.Table.All, m.config = keys, c.File
	m.wrong = slices.Concat(c.Problems, problems)
	m.mousing = c.Mouse
}

// notes are what a person should know of before anything else happens.
func (m *model) notes() []string {
	out := slices.Concat(m.wrong, besideNotes(m), m.Shop.NotesOn(m.Actual.Positions, m.Actual.Marks))
	if m.Result.Aim == plan.AimMoves {
		out = append(out, "the day is planned for the fewest moves, as in the search accepted last; a search for the least setup time ("+m.KeyFor(keys.Search)+") changes that")
	}
	return out
}

// shortNotes are the same for one line: the help has the whole path of the person's file, which
// would hide here what is wrong with it.
func shortNotes(m *model) []string {
	notes := m.notes()
	if m.config != "" && len(notes) > 0 {
		notes = slices.Clone(notes)
		notes[0] = strings.Replace(notes[0], m.config, filepath.Base(m.config), 1)
	}
	return notes
}

// besideNotes tell of the files beside the shop's: those that were there, and the one that
// the day was saved to since.
func besideNotes(m *model) []string {
	note := disk.BesideNote(m.SavedTo)
	if note == "" || slices.Contains(m.Shop.Beside, note) {
		return m.Shop.Beside
	}
	return append([]string{note}, m.Shop.Beside...)
}

// mouseAtStart is the command that turns the mouse on for who wants it so.
func mouseAtStart(m *model) tea.Cmd {
	if m.mousing {
		return tea.EnableMouseCellMotion
	}
	return nil
}

// viewNow is how the screen is, to be restored the next time.
func viewNow(m *model) personal.View {
	v := personal.View{Pane: int(m.focus), Large: m.large != noPane, Holder: m.Holder, Zoom: m.beam.Zoom, Near: m.dayMap.Zoom, At: int64(m.dayMap.At), Clock: m.clock}
	if j := m.Job(); j != nil {
		v.Job = j.ID
	}
	return v
}

// restore brings a view back, as far as it still means something.
func (m *model) restore(v personal.View) {
	if index := slices.IndexFunc(m.Jobs(), func(j *plan.Job) bool { return j.ID == v.Job }); index >= 0 {
		m.Pick(index)
	}
	if v.Holder >= 1 && v.Holder <= len(m.Shop.Beam.Holders) {
		m.Holder = v.Holder
	}
	m.beam.Zoom = max(0, min(v.Zoom, beamview.Nearest))
	m.clock = v.Clock
	if rail := pane.BeamSpan(m.Shop.Beam); v.Near > 0 && v.Near <= daymap.Nearest && v.At >= int64(rail.From) && v.At <= int64(rail.To) {
		m.dayMap.Zoom, m.dayMap.At = v.Near, plan.Length(v.At)
	}
	if v.Pane < int(theDay) || v.Pane > int(lastPaneShown) {
		return
	}
	if v.Large && !paneID(v.Pane).paged() {
		m.large = paneID(v.Pane)
	}
	m.turnTo(paneID(v.Pane))
}
