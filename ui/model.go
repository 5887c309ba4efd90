package ui

import (
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// model is the whole screen. Update only passes on what comes: sizes, answers from
// the background, keys to the focused pane.
type model struct {
	*desk
	size
	day     dayPane
	beam    beamPane
	moves   movesPane
	track   tracksPane
	hold    holdersPane
	sets    settingsPane
	focus   which
	large   which // the pane of the first page that has the whole screen
	help    *helpPage
	over    overlay  // nil when none is open
	config  string   // the person's config file; empty where there can be none
	wrong   []string // with it
	mousing bool     // the mouse is on
	ran     string   // id of the job that a walk told to run just now; empty after another key
	asks    bool     // whether to leave with the order changed
	ended   bool
}

// panel is what the panes have in common.
type panel interface {
	SetSize(size)
	HandleKey(action, *desk)
	View(d *desk, focused bool) []line
	Help() scope
}

func newModel(s *shop.Shop, k *look) (*model, error) {
	d, err := newDesk(s, k)
	if err != nil {
		return nil, err
	}
	return &model{desk: d, focus: theDay}, nil
}

func (m *model) Init() tea.Cmd { return tea.Batch(m.ask(), m.wanted(), m.mouseAtStart(), m.glances()) }

func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(size{msg.Width, msg.Height})
	case answer:
		m.take(msg)
		return m, tea.Batch(m.planned(), m.ask())
	case together:
		m.join(msg)
		return m, tea.Batch(m.planned(), m.ask())
	case tick:
		if msg.run == m.search.run && m.search.cancel != nil {
			return m, again(msg.run)
		}
	case found:
		return m, tea.Batch(m.finds(msg), m.ask())
	case daySaved:
		m.saved(msg)
	case seenGap:
		return m, tea.Batch(m.seen(msg), m.ask())
	case settledGap:
		m.refined(msg)
	case kept:
		m.performed(msg)
		m.follow()
	case freed:
		return m, tea.Batch(m.given(msg), m.ask())
	case recorded:
		m.heard(msg)
	case glance:
		return m, tea.Batch(m.peek(), m.glances())
	case looked:
		m.sees(msg)
		m.follow()
	case tea.MouseMsg:
		m.mouse(tea.MouseEvent(msg))
	case leave:
		return m, tea.Quit
	case tea.KeyMsg:
		cmd := tea.Batch(m.keys(msg), m.wanted())
		if m.ended {
			return m, cmd
		}
		return m, tea.Batch(cmd, m.ask())
	}
	return m, m.ask()
}

// ask is the command for what is to be worked out next in the background; nil when
// nothing is.
func (m *model) ask() tea.Cmd { return tea.Batch(m.desk.ask(), m.refine()) }

// leave comes when the program was told to end from outside.
type leave struct{}

// resize gives every pane its size.
func (m *model) resize(s size) {
	m.size = s
	if m.over != nil && !m.covered() {
		m.say("what is open waits for a larger window")
		m.news.brief = "open page waits"
	}
	l := m.layout()
	m.beam.SetSize(l.beam)
	m.day.SetSize(l.day)
	m.moves.SetSize(l.moves)
	m.track.SetSize(l.page)
	m.hold.SetSize(l.page)
	m.sets.SetSize(l.page)
}

func (m *model) layout() layout {
	if m.focus.paged() {
		return arrange(m.w, m.h, m.focus)
	}
	return arrange(m.w, m.h, m.large)
}

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

func (m *model) panel(which which) panel {
	switch which {
	case theBeam:
		return &m.beam
	case theMoves:
		return &m.moves
	case theTracks:
		return &m.track
	case theHolders:
		return &m.hold
	case theSettings:
		return &m.sets
	}
	return &m.day
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
		m.resize(m.size)
	case back:
		if m.help == nil && m.halt() || in == onSmall {
			break
		}
		if m.help == nil && m.focus.paged() {
			m.turnTo(theDay)
			break
		}
		m.help, m.large = nil, all
		m.resize(m.size)
	default:
		if !m.edit(a) {
			m.pass(a, in)
		}
	}
	return nil
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
	m.resize(m.size)
}

// View is the frame: exactly as many lines as the screen has, each as wide.
func (m *model) View() string {
	if m.w <= 0 || m.h <= 0 {
		return ""
	}
	var b strings.Builder
	b.Grow(4 * m.w * m.h)
	for i, l := range m.frame() {
		if i > 0 {
			b.WriteByte('\n')
		}
		l.paint(&b)
	}
	return b.String()
}

// frame is the screen's lines.
func (m *model) frame() []line {
	switch {
	case m.layout().small && m.asks:
		return smallQuestion(m.look, m.question(), m.size)
	case m.layout().small && m.prompt != nil && m.help == nil:
		return smallPrompt(m.desk, m.size)
	case m.help != nil:
		return m.help.View(m)
	case m.covered():
		return m.over.View(m)
	case m.layout().small:
		return small(m.desk, m.size)
	}
	out := []line{m.bar().fit(m.w)}
	if m.focus.paged() {
		out = append(out, m.panel(m.focus).View(m.desk, true)...)
		return m.foot(out, m.scope())
	}
	out = append(out, m.beam.View(m.desk, m.focus == theBeam)...)
	out = append(out, m.beside(m.day.View(m.desk, m.focus == theDay), m.moves.View(m.desk, m.focus == theMoves))...)
	return m.foot(out, m.scope())
}

// beside joins two panes line by line.
func (m *model) beside(a, b []line) []line {
	if len(a) == 0 {
		return b
	}
	for i := range b {
		if i == 0 {
			a[i].add(faint, m.rule)
		} else {
			a[i].add(faint, m.between)
		}
		a[i].join(b[i])
	}
	return a
}
