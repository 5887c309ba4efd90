package ui

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// ending asks what became of the job that ran before a walk, when the first thing is
// told and by the clock its run isn't over: it may be done, or stopped for another.
type ending struct {
	job  *plan.Job
	till time.Time // its run's end as planned
	now  time.Time
	then func(*model) tea.Cmd // what was about to be told
}

// asks reports whether that has to be asked first.
func (w *walk) asks(m *model, then func(*model) tea.Cmd) bool {
	turn := w.turnOf(m.desk)
	if w.ending = nil; turn < 1 || w.o == nil || w.sure || m.keep.demo {
		return false
	}
	now, before := m.keep.clock(), m.outcome(turn-1)
	j := w.running(m.desk)
	if j == nil || before == nil || !now.Before(before.Clock) || !m.shop.Day.Begins(&plan.Standing{Recorded: now}).Equal(now) {
		return false
	}
	w.ending = &ending{j, before.Clock, now, then}
	return true
}

// answered takes what became of it, and goes on.
func (w *walk) answered(a keys.Action, m *model) tea.Cmd {
	e := w.ending
	switch a {
	case keys.RunEnded:
		w.became = plan.Done
	case keys.RunOnHold:
		w.became = plan.Aside
	case keys.Back:
		w.ending = nil
		m.say("nothing is told: %s runs", e.job.ID)
		return nil
	default:
		return nil
	}
	w.ending, w.sure = nil, true
	return e.then(m)
}

// view asks.
func (e *ending) view(w *walk, d *desk, width int) []draw.Line {
	return w.texts(d, width,
		draw.Span{Style: draw.Strong, Text: fmt.Sprintf("%s was to run until %s, and it is %s. Has it ended?", e.job.ID, d.at(e.till), d.at(e.now))},
		draw.Span{Style: draw.Plain, Text: "y: it has, and is done."},
		draw.Span{Style: draw.Plain, Text: "z: it was stopped before its end. It is set aside; Z among the jobs brings it back."},
		draw.Span{Style: draw.Plain, Text: "Esc: it still runs. Nothing is told."})
}
