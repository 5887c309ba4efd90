package ui

import (
	"bide/plan"
	"bide/plan/session"
	"bide/ui/keys"
	"bide/ui/page/compare"
	"bide/ui/page/help"
	"bide/ui/page/joblist"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// handler does what an action asks for, in the scope in which its key was pressed.
type handler func(m *model, a keys.Action, in keys.Scope) tea.Cmd

// handlers are what is done for each action wherever it is asked for; one that isn't here is
// given to what has the keys. What opens a page or changes the day has its line here.
var handlers = map[keys.Action]handler{
	keys.Search:      always(func(m *model) { m.session.Seek(plan.AimMinutes) }),
	keys.SearchMoves: always(func(m *model) { m.session.Seek(plan.AimMoves) }),
	keys.SaveDay:     always(func(m *model) { m.session.Files.SaveDay() }),
	keys.Reread:      always(func(m *model) { m.session.Files.ReadAgain() }),
	keys.Setup:       always(func(m *model) { m.session.SetUp() }),
	keys.Undo:        always(func(m *model) { m.session.Undo() }),
	keys.Redo:        always(func(m *model) { m.session.Redo() }),

	keys.Fix:         toJob((*session.Session).Fix),
	keys.ShiftRule:   toJob((*session.Session).SetShift),
	keys.ArrangeRule: toJob((*session.Session).SetArrange),
	keys.MarkRunning: toJob((*session.Session).MarkRunning),
	keys.MarkDone:    always(askEnded),
	keys.Hold:        toJob((*session.Session).Hold),
	keys.RemoveJob:   toJob((*session.Session).Remove),
	keys.Replan:      toJob((*session.Session).Replan),
	keys.ReplanAll:   toJob((*session.Session).ReplanAll),

	keys.MoveTo:        toJob((*session.Session).MoveTo),
	keys.AddJob:        openForm,
	keys.EditJob:       openForm,
	keys.CopyJob:       openForm,
	keys.OrderJob:      always(func(m *model) { m.grant(joblist.OpenOrder(m.Shared)) }),
	keys.LeftOut:       always(func(m *model) { m.grant(joblist.OpenLeftOut(m.Shared)) }),
	keys.CompareOrders: always(compareOrders),
	keys.Help:          openHelp,
	keys.FilterRows:    always(func(m *model) { m.grant(askFilter(m.panel(m.focus), m.Shared)) }),
	keys.Quit:          always(func(m *model) { m.AsksToQuit = true }),

	keys.NextPane:    always(func(m *model) { m.turnTo(m.focus%lastPaneShown + 1) }),
	keys.LastPane:    always(func(m *model) { m.turnTo((m.focus+lastPaneShown-2)%lastPaneShown + 1) }),
	keys.Pane1:       show(theDay),
	keys.Pane2:       show(theBeam),
	keys.Pane3:       show(theMoves),
	keys.Pane4:       show(theDayMap),
	keys.Pane5:       show(theHolders),
	keys.Pane6:       show(theSettings),
	keys.Pane7:       show(theSchedule),
	keys.Schedule:    always(beamOrSchedule),
	keys.Enlarge:     always(enlarge),
	keys.Back:        back,
	keys.ToggleMouse: func(m *model, _ keys.Action, _ keys.Scope) tea.Cmd { return switchMouse(m) },
}

// always is the handler of an action that asks for the same everywhere.
func always(does func(*model)) handler {
	return func(m *model, _ keys.Action, _ keys.Scope) tea.Cmd {
		does(m)
		return nil
	}
}

// toJob is the handler of an action that changes the picked job.
func toJob(does func(*session.Session, *plan.Job)) handler {
	return always(func(m *model) {
		if j := m.Job(); j != nil {
			does(m.session, j)
			return
		}
		m.session.Say("no job is picked")
	})
}

// show is the handler of a pane's own key.
func show(pane paneID) handler {
	return always(func(m *model) {
		m.clock = m.clock && pane != theBeam
		m.turnTo(pane)
	})
}

func openForm(m *model, a keys.Action, _ keys.Scope) tea.Cmd {
	m.grant(m.closed.Open(m.Shared, a))
	return nil
}

// compareOrders shows two orders side by side, once what was found is fitted to the day.
func compareOrders(m *model) {
	if m.session.Fitted() {
		compare.Open(m.Shared)
	}
}

// openHelp opens the help at what has the keys.
func openHelp(m *model, _ keys.Action, in keys.Scope) tea.Cmd {
	m.help = &help.Page{Theme: m.Theme, Table: m.Table, Config: m.config, Notes: m.notes}
	m.help.Open(in, m.Size)
	return nil
}

// beamOrSchedule puts the other of the two above the day.
func beamOrSchedule(m *model) {
	if m.focus == theSchedule {
		m.turnTo(theBeam)
		m.clock = true
	} else {
		m.clock = !m.clock
	}
	m.resize(m.Size)
}

// enlarge gives the pane with the keys the whole screen, or takes it back; a page leads to
// the beam.
func enlarge(m *model) {
	if m.focus.paged() {
		m.turnTo(theBeam)
		return
	}
	if m.large == m.focus {
		m.large = noPane
	} else {
		m.large = m.focus
	}
	m.resize(m.Size)
}

// back closes the help; else it stops a search, shows all rows of a filtered list, leaves a page
// or takes the whole screen back, the first of these that there is.
func back(m *model, _ keys.Action, in keys.Scope) tea.Cmd {
	switch {
	case m.help == nil && m.session.Search.Stop() || in == keys.OnSmall:
		return nil
	case m.help == nil && filtered(m.panel(m.focus)):
		m.panel(m.focus).(lister).Filtered().Text = ""
		m.session.Say("all rows are shown")
		return nil
	case m.help == nil && m.focus.paged():
		m.turnTo(theDay)
		return nil
	}
	m.help, m.large = nil, noPane
	m.resize(m.Size)
	return nil
}

// askEnded asks when the picked job ended and how many metres it ran, before it is marked
// as done.
func askEnded(m *model) {
	j := m.Job()
	if j == nil {
		m.session.Say("no job is picked")
		return
	}
	if proposal, ok := m.session.Ended(j); ok {
		m.askEnded(j, j.ID+" ended at, after m", proposal)
	}
}

func (m *model) askEnded(j *plan.Job, label, typed string) {
	m.Prompt = pane.NewPrompt(label, typed, func(typed string) pane.Want {
		return func(s *session.Session) {
			if err := s.MarkDone(j, typed); err != nil {
				m.askEnded(j, err.Error(), typed)
			}
		}
	})
}
