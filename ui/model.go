package ui

import (
	"strings"

	"bide/plan/session"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/frame"
	"bide/ui/keys"
	"bide/ui/page/help"
	"bide/ui/page/jobform"
	"bide/ui/page/moveto"
	"bide/ui/pane"
	"bide/ui/pane/beamview"
	"bide/ui/pane/daylist"
	"bide/ui/pane/daymap"
	"bide/ui/pane/holders"
	"bide/ui/pane/movelist"
	"bide/ui/pane/schedule"
	"bide/ui/pane/settings"
	"bide/ui/setup"
	"bide/ui/small"

	tea "github.com/charmbracelet/bubbletea"
)

// model is the whole screen. Update only passes on what comes: sizes, answers from
// the background, keys to the focused pane.
type model struct {
	*pane.Shared
	session *session.Session
	guided  *session.Setup // whose page was shown last; nil when none was
	was     string         // id of the job that was picked last
	day     daylist.Pane
	beam    beamview.Pane
	moves   movelist.Pane
	dayMap  daymap.Pane
	sched   schedule.Pane
	hold    holders.Pane
	sets    settings.Pane
	clock   bool // the schedule is where the beam would be
	focus   paneID
	large   paneID // the pane of the first page that has the whole screen
	help    *help.Page
	closed  jobform.Closed
	config  string   // the person's config file; empty where there can be none
	wrong   []string // with it
	mousing bool     // the mouse is on
	ended   bool
	beating bool // how far a search is will be drawn again soon
}

// panel is what the panes have in common.
type panel interface {
	SetSize(draw.Size)
	HandleKey(keys.Action, *pane.Shared) pane.Want
	View(d *pane.Shared, focused bool) []draw.Line
	Help() keys.Scope
}

func newModel(s *shop.Shop, k *draw.Theme) (*model, error) {
	d, err := session.New(s)
	if err != nil {
		return nil, err
	}
	m := &model{Shared: &pane.Shared{Theme: k, Table: keys.NewTable(k.ASCII)}, session: d, focus: theDay, closed: jobform.Closed{}}
	m.Frame = m.frameOf
	m.session.ShowOn(viewer{m})
	m.follow()
	return m, nil
}

func (m *model) Init() tea.Cmd { return tea.Batch(m.ask(), mouseAtStart(m), nextGlance(m)) }

func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := tea.Batch(m.update(msg), m.ask())
	m.follow()
	m.PickMove(m.MoveAt) // there may be fewer now
	if m.was = ""; m.Job() != nil {
		m.was = m.Job().ID
	}
	return m, cmd
}

// grant does what a pane or page wants.
func (m *model) grant(w pane.Want) {
	if w != nil {
		w(m.session)
		m.follow()
	}
}

// follow shows the session as it is now, with the page of what is under way in it.
func (m *model) follow() {
	m.Shared.View = m.session.Shown()
	switch _, shown := m.Over.(moveto.Page); {
	case m.Moving == nil && shown:
		m.Over = nil
	case m.Moving != nil && !shown:
		m.Over = moveto.Page{}
	}
	w, shown := m.Over.(*setup.Page)
	switch {
	case m.Setup == nil && shown:
		m.Over = nil
	case m.Setup != nil && (!shown || m.guided != m.session.Setup):
		w = &setup.Page{}
		m.Over = w
	}
	if m.guided = m.session.Setup; m.guided != nil {
		w.Guide = m.Setup
	}
}

// update deals with what comes.
func (m *model) update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(draw.Size{W: msg.Width, H: msg.Height})
	case redraw:
		m.beating = false
	case glance:
		m.session.FollowClock()
		m.session.Files.Peek()
		return nextGlance(m)
	case tea.MouseMsg:
		m.mouse(tea.MouseEvent(msg))
	case leave:
		return tea.Quit
	case tea.KeyMsg:
		return m.keys(msg)
	default:
		m.session.Take(msg)
	}
	return nil
}

// leave comes when the program is ended from outside.
type leave struct{}

// resize gives every pane its size.
func (m *model) resize(s draw.Size) {
	m.Size = s
	if m.Over != nil && !m.covered() {
		m.session.Say("the open page needs a larger window")
		m.session.Notice.Brief = "window too small"
	}
	l := m.layout()
	m.beam.SetSize(l.beam)
	m.day.SetSize(l.day)
	m.moves.SetSize(l.moves)
	m.dayMap.SetSize(l.page)
	m.hold.SetSize(l.page)
	m.sets.SetSize(l.page)
	if m.sched.SetSize(l.beam); m.focus == theSchedule {
		m.sched.SetSize(l.page)
	}
}

func (m *model) layout() layout {
	if m.focus.paged() {
		return arrange(m.W, m.H, false, m.focus)
	}
	tall := !m.clock && len(m.Shop.Beam.Holders) <= m.W // with more holders, ways look alike
	return arrange(m.W, m.H, tall, m.large)
}

func (m *model) panel(which paneID) panel {
	switch which {
	case theBeam:
		if m.clock {
			return &m.sched
		}
		return &m.beam
	case theSchedule:
		return &m.sched
	case theMoves:
		return &m.moves
	case theDayMap:
		return &m.dayMap
	case theHolders:
		return &m.hold
	case theSettings:
		return &m.sets
	}
	return &m.day
}

// View is the frame: exactly as many lines as the screen has, each as wide.
func (m *model) View() string {
	if m.W <= 0 || m.H <= 0 {
		return ""
	}
	var b strings.Builder
	b.Grow(4 * m.W * m.H)
	for i, l := range m.lines() {
		if i > 0 {
			b.WriteByte('\n')
		}
		l.Paint(&b)
	}
	return b.String()
}

// lines are the screen's.
func (m *model) lines() []draw.Line {
	switch {
	case m.layout().small && m.AsksToQuit:
		return small.Question(m.Theme, m.Question, m.Size)
	case m.layout().small && m.Prompt != nil && m.help == nil:
		return small.Prompt(m.Shared, m.Size)
	case m.help != nil:
		return m.help.View(m.Size)
	case m.covered():
		return m.Over.View(m.Shared)
	case m.layout().small:
		return small.View(m.Shared, m.Size)
	}
	out := []draw.Line{frame.Bar(m.Shared).Fit(m.W)}
	if m.focus.paged() {
		out = append(out, m.panel(m.focus).View(m.Shared, true)...)
		return frame.Foot(m.Shared, out, m.scope(), shortNotes(m))
	}
	out = append(out, m.panel(theBeam).View(m.Shared, m.focus == theBeam)...)
	out = append(out, beside(m, m.day.View(m.Shared, m.focus == theDay), m.moves.View(m.Shared, m.focus == theMoves))...)
	return frame.Foot(m.Shared, out, m.scope(), shortNotes(m))
}

// beside joins two panes line by line.
func beside(m *model, a, b []draw.Line) []draw.Line {
	if len(a) == 0 {
		return b
	}
	for i := range b {
		if i == 0 {
			a[i].Add(draw.Faint, m.Rule)
		} else {
			a[i].Add(draw.Faint, m.Between)
		}
		a[i].Join(b[i])
	}
	return a
}
