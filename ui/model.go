package ui

import (
	"strings"

	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/frame"
	"bide/ui/keys"
	"bide/ui/page/compare"
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
	HandleKey(keys.Action, *pane.Shared)
	View(d *pane.Shared, focused bool) []draw.Line
	Help() keys.Scope
}

func newModel(s *shop.Shop, k *draw.Theme) (*model, error) {
	d, err := pane.New(s, k)
	if err != nil {
		return nil, err
	}
	m := &model{Shared: d, focus: theDay, closed: jobform.Closed{}}
	d.Frame = m.frameOf
	d.ShowOn(m)
	return m, nil
}

func (m *model) Init() tea.Cmd { return tea.Batch(m.ask(), mouseAtStart(m), nextGlance(m)) }

func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	cmd := m.update(msg)
	m.followSetup()
	m.PickMove(m.MoveAt) // there may be fewer now
	if m.Was = ""; m.Job() != nil {
		m.Was = m.Job().ID
	}
	return m, tea.Batch(cmd, m.ask())
}

// update deals with what comes.
func (m *model) update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(draw.Size{W: msg.Width, H: msg.Height})
	case redraw:
		m.beating = false
	case planning.Estimated, planning.Moved:
		moveto.Take(m.Shared, msg)
	case glance:
		m.Files.Peek()
		return nextGlance(m)
	case tea.MouseMsg:
		m.mouse(tea.MouseEvent(msg))
	case leave:
		return tea.Quit
	case tea.KeyMsg:
		return m.keys(msg)
	default:
		m.Take(msg)
	}
	return nil
}

// Offered shows an order that a search found to the person who waits for it.
func (m *model) Offered() {
	if m.Over == nil && m.help == nil && !m.AsksToQuit && m.Prompt == nil {
		compare.Open(m.Shared)
	}
}

// Unfinished is what was typed and would be lost.
func (m *model) Unfinished() string {
	if len(m.closed) > 0 {
		return "a form closed unfinished"
	}
	return ""
}

// followSetup shows the guided setup that is under way, or none.
func (m *model) followSetup() {
	w, shown := m.Over.(*setup.Page)
	switch {
	case m.Setup == nil && shown:
		m.Over = nil
	case m.Setup != nil && (!shown || w.Setup != m.Setup):
		m.Over = &setup.Page{Setup: m.Setup}
	}
}

// leave comes when the program is ended from outside.
type leave struct{}

// resize gives every pane its size.
func (m *model) resize(s draw.Size) {
	m.Size = s
	if m.Over != nil && !m.covered() {
		m.Say("the open page needs a larger window")
		m.Notice.Brief = "window too small"
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
		return small.Question(m.Theme, m.Question(), m.Size)
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
