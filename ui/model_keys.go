package ui

import (
	"slices"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// keys takes a key apart that stands for several: a terminal that is slower than
// the keyboard sends them as one. What is pasted is no key.
func (m *model) keys(msg tea.KeyMsg) tea.Cmd {
	if t := m.typist(); t != nil && !m.ended && t.Type(msg, m) {
		return nil
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
func (m *model) scope() scope {
	switch {
	case m.asks:
		return onQuestion
	case m.help != nil:
		return onHelp
	case m.prompt != nil:
		return onPrompt
	case m.covered():
		return m.over.Help()
	case m.layout().small:
		return onSmall
	}
	return m.panel(m.focus).Help()
}

// key does what a key asks for.
func (m *model) key(name string) tea.Cmd {
	in := m.scope()
	a := m.actionOf(name, in)
	if w, walks := m.over.(*walk); walks && in == onWalk && w.obscures(m) && !slices.Contains([]action{abort, suspend, quit, help}, a) {
		m.news = news{}
		return nil
	}
	if a != earlier && a != later {
		m.news = news{}
	}
	if a == markRunning && m.ran != "" { // the walk's key, held or pressed twice
		m.say("%s runs, as was told on the walk: u takes that back", m.ran)
		return nil
	}
	m.ran = ""
	switch {
	case m.ended:
		return nil
	case a == abort || a == yes || a == quit && !m.loses():
		m.ended = true
		return tea.Quit
	case a == suspend:
		return tea.Suspend
	case in == onQuestion:
		m.asks = false
		return nil
	case a != quit && m.holdsBack(a):
		m.tellsToWait()
		return nil
	case m.help == nil && m.covered() && a != help && a != quit:
		return m.over.HandleKey(a, m)
	case in == onSmall && a == nothing:
		return m.tooSmall(name)
	case in == onSmall && a == walkOn:
		m.putAway()
	}
	return m.do(a, in)
}

func (m *model) do(a action, in scope) tea.Cmd {
	if in&panes != 0 && m.hidden(a) {
		m.say("what is picked isn't shown: / changes the filter")
		return nil
	}
	switch a {
	case seek:
		return m.seek(plan.AimMinutes)
	case seekMoves:
		return m.seek(plan.AimMoves)
	case liftJob:
		return m.lift()
	case addJob, editJob, copyJob:
		m.openForm(a)
	case orderJob:
		m.openOrder()
	case leftOut:
		m.openLeftOut()
	case compareOrders:
		return m.openCompare()
	case saveDay:
		return m.saveDay()
	case readAgain:
		return m.readAgain()
	case quit:
		m.asks = true
	case walkOn:
		return m.setOut()
	case help:
		m.openHelp(in)
	case undo:
		return m.undo()
	case redo:
		m.redo()
	case filterRows:
		m.askFilter(m.focus)
	case toggleMouse:
		return m.switchMouse()
	default:
		m.lookAt(a, in)
	}
	return nil
}

// lookAt turns to another pane, or gives the action to the one that has the keys.
func (m *model) lookAt(a action, in scope) {
	switch a {
	case nextPane:
		m.turnTo(m.focus%lastPaneShown + 1)
	case lastPane:
		m.turnTo((m.focus+lastPaneShown-2)%lastPaneShown + 1)
	case pane1, pane2, pane3, pane4, pane5, pane6:
		m.turnTo(theDay + which(a-pane1))
	case enlarge:
		if m.focus.paged() {
			m.turnTo(theBeam)
			break
		}
		if m.large = m.focus - m.large; m.large != m.focus {
			m.large = all
		}
		m.resize(m.Size)
	case back:
		if m.help == nil && m.halt() || in == onSmall {
			break
		}
		if m.help == nil && m.focus.paged() {
			m.turnTo(theDay)
			break
		}
		m.help, m.large = nil, all
		m.resize(m.Size)
	default:
		if !m.edit(a) {
			m.pass(a, in)
		}
	}
}

// pass gives an action to what has the keys.
func (m *model) pass(a action, in scope) {
	switch in {
	case onHelp:
		m.help.HandleKey(a, m)
	case onSmall:
		m.moves.HandleKey(a, m.desk)
	default:
		m.panel(m.focus).HandleKey(a, m.desk)
	}
}

// turnTo gives the keys to a pane; an enlarged one gives its place up to it.
func (m *model) turnTo(which which) {
	if m.focus = which; m.large != all && !which.paged() {
		m.large = which
	}
	if which == theHolders {
		m.todo = m.readRecord()
	}
	m.resize(m.Size)
}
