package ui

import (
	"fmt"
	"runtime/debug"
	"sync"

	"bide/ui/terminal"

	tea "github.com/charmbracelet/bubbletea"
)

// guard stands around a model and keeps the terminal safe from it: whatever panics,
// also in a command in the background, ends the program in order, with the trace
// kept until the terminal is as it was. And it hears the signals to end.
type guard struct {
	tea.Model
	ends *terminal.Signals
	kill func()

	mutex sync.Mutex
	first string
}

func (g *guard) Init() tea.Cmd {
	defer g.catch()
	return tea.Batch(g.safe(g.Model.Init()), g.safe(g.listen))
}

// listen waits for a signal to end.
func (g *guard) listen() tea.Msg {
	if g.ends.Wait() {
		return leave{}
	}
	return nil
}

func (g *guard) Update(msg tea.Msg) (m tea.Model, cmd tea.Cmd) {
	m = g
	defer g.catch()
	g.Model, cmd = g.Model.Update(msg)
	return g, g.safe(cmd)
}

func (g *guard) View() string {
	defer g.catch()
	return g.Model.View()
}

// safe is the command, guarded, with all that it stands for.
func (g *guard) safe(cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	return func() tea.Msg {
		defer g.catch()
		msg := cmd()
		if batch, ok := msg.(tea.BatchMsg); ok {
			for i := range batch {
				batch[i] = g.safe(batch[i])
			}
		}
		return msg
	}
}

// catch keeps the trace of a panic, the first one's, and ends the program. It is
// to be deferred.
func (g *guard) catch() {
	r := recover()
	if r == nil {
		return
	}
	g.mutex.Lock()
	defer g.mutex.Unlock()
	if g.first == "" {
		g.first = fmt.Sprintf("panic: %v\n\n%s", r, debug.Stack())
	}
	g.kill()
}

// trace is what was caught; empty when nothing was.
func (g *guard) trace() string {
	g.mutex.Lock()
	defer g.mutex.Unlock()
	return g.first
}
