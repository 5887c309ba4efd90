package ui

import (
	"fmt"
	"slices"

	"bide/plan/session/workday"
	"bide/ui/keys"
	"bide/ui/pane/holders"

	tea "github.com/charmbracelet/bubbletea"
)

// keys takes a key apart that stands for several: a terminal that is slower than
// the keyboard sends them as one. What is pasted is no key.
func (m *model) keys(msg tea.KeyMsg) tea.Cmd {
	if t := m.typist(); t != nil && !m.ended {
		taken, want := t.Type(msg, m.Shared)
		if m.grant(want); taken {
			return nil
		}
	}
	if msg.Paste {
		return nil
	}
	if msg.Type != tea.KeyRunes || msg.Alt {
		return m.key(msg.String())
	}
	var all []tea.Cmd
	for _, r := range msg.Runes {
		cmd := m.key(string(r))
		if m.ended {
			return cmd
		}
		all = append(all, cmd)
	}
	return tea.Batch(all...)
}

// scope is where a key works now.
func (m *model) scope() keys.Scope {
	switch {
	case m.AsksToQuit:
		return keys.OnQuestion
	case m.help != nil:
		return keys.OnHelp
	case m.Prompt != nil:
		return m.Prompt.In
	case m.covered():
		return m.Over.Help()
	case m.layout().small:
		return keys.OnSmall
	}
	return m.panel(m.focus).Help()
}

// key does what a key asks for.
func (m *model) key(name string) tea.Cmd {
	defer m.follow()
	in := m.scope()
	a := m.ActionOf(name, in)
	if g := m.Guided(); g != nil && in == keys.OnSetup && g.Obscures(m.Shared) && !slices.Contains([]keys.Action{keys.Abort, keys.Suspend, keys.Quit, keys.Help}, a) {
		m.session.Notice = workday.Notice{}
		return nil
	}
	if a != keys.Earlier && a != keys.Later {
		m.session.Notice = workday.Notice{}
	}
	if a == keys.MarkRunning && m.session.Began != "" { // the guided setup's key, held or pressed twice
		m.session.Say("%s runs already, as confirmed in the guided setup; %s undoes that", m.session.Began, m.KeyFor(keys.Undo))
		return nil
	}
	m.session.Began = ""
	switch {
	case m.ended:
		return nil
	case a == keys.Abort || a == keys.Yes || a == keys.Quit && !m.session.Loses():
		m.ended = true
		return tea.Quit
	case a == keys.Suspend:
		return tea.Suspend
	case in == keys.OnQuestion:
		m.AsksToQuit = false
		return nil
	case a != keys.Quit && holdsBack(m, a):
		m.session.Waits()
		return nil
	case m.help == nil && m.covered() && a != keys.Help && a != keys.Quit:
		m.grant(m.Over.HandleKey(a, m.Shared))
		return nil
	case in == keys.OnSmall && a == keys.None:
		return tooSmall(m, name)
	case in == keys.OnSmall && a == keys.Setup:
		m.putAway()
	}
	return m.do(a, in)
}

// do does what an action asks for, or gives it to what has the keys.
func (m *model) do(a keys.Action, in keys.Scope) tea.Cmd {
	if in&keys.OnPanes != 0 && hidden(m.panel(m.focus), m.Shared, a) {
		m.session.Say("the filter hides what is picked; %s changes the filter", m.KeyFor(keys.FilterRows))
		return nil
	}
	if does := handlers[a]; does != nil {
		return does(m, a, in)
	}
	switch in {
	case keys.OnHelp:
		m.help.HandleKey(a, m.Size)
	case keys.OnSmall:
		m.grant(m.moves.HandleKey(a, m.Shared))
	default:
		m.grant(m.panel(m.focus).HandleKey(a, m.Shared))
	}
	return nil
}

// turnTo gives the keys to a pane; an enlarged one gives its place up to it.
func (m *model) turnTo(to paneID) {
	if m.focus = to; m.large != noPane && !to.paged() {
		m.large = to
	}
	if to == theHolders {
		m.session.Files.ReadRecord()
		m.Holder = holders.Picked(m.Shared) // another job's first move is not to change it
	}
	m.resize(m.Size)
}

// tooSmall says that a key works on a larger screen alone, if there it does. That a job
// runs can be recorded on a small one, and so be undone there.
func tooSmall(m *model, key string) tea.Cmd {
	for in := keys.Scope(1); in < keys.Scopes; in <<= 1 {
		a := m.ActionOf(key, in)
		if a == keys.Undo && m.session.JustRan() {
			m.putAway()
			m.session.Undo()
			return nil
		}
		if in&keys.OnPanes != 0 && a != keys.None {
			m.session.Say("%s works from %dx%d on: make the window larger", keys.ShownKey(key, m.ASCII), leastWidth, leastHeight)
			m.session.Notice.Brief = fmt.Sprintf("%s: from %dx%d on", keys.ShownKey(key, m.ASCII), leastWidth, leastHeight)
			return nil
		}
	}
	return nil
}

// While something is being saved, all that it rests on stays as it is: nothing is
// opened, changed or left until the save has ended, which is seldom longer than a
// blink. Looking around goes on, and leaving the program asks.

// looking are the actions that change nothing but what is looked at.
var looking = []keys.Action{
	keys.None, keys.Help, keys.NextPane, keys.LastPane, keys.Pane1, keys.Pane2, keys.Pane3, keys.Pane4, keys.Pane5, keys.Pane6, keys.Pane7, keys.Enlarge, keys.ToggleMouse,
	keys.Up, keys.Down, keys.Left, keys.Right, keys.PageUp, keys.PageDown, keys.Top, keys.Bottom,
	keys.ZoomIn, keys.ZoomOut, keys.WholeBeam, keys.OnlyMoved, keys.Schedule, keys.HolderBefore, keys.HolderNext, keys.Sort, keys.Reverse, keys.Pairs,
}

// holdsBack reports whether an action has to wait for what is being saved.
func holdsBack(m *model, a keys.Action) bool {
	if a == keys.Back && (m.Guided() == nil || m.help != nil) {
		return false
	}
	return m.session.Journal.Busy() && !slices.Contains(looking, a)
}
