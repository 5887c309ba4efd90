// Package ui is the full screen: the day, the beam, and the moves of a changeover.
// It lays out and routes: panes and pages get the session as a value and give back what they want
// of it, which is done here. It decides nothing itself.
package ui

import (
	"fmt"
	"io"
	"os"

	"bide/plan/shop"
	"bide/ui/draw"
	"bide/ui/personal"
	_ "bide/ui/quiet" // before Bubble Tea
	"bide/ui/terminal"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
)

// Background is whether the screen is dark or light.
type Background uint8

// The backgrounds.
const (
	FromTerminal Background = iota // by COLORFGBG, else dark
	Dark
	Light
)

// Options are what the screen is run with.
type Options struct {
	Shop       *shop.Shop
	ASCII      bool // nothing but ASCII, as when the locale isn't UTF-8
	Background Background
	Demo       bool                // the shop is an invented one, and said to be
	Input      io.Reader           // os.Stdin when nil
	Output     io.Writer           // os.Stdout when nil
	Env        func(string) string // os.Getenv when nil
	Config     *personal.Config    // what the person has set; may be nil
	State      string              // folder that views are kept in; none when empty
}

// Possible reports whether a full screen can be shown on the standard streams.
func Possible() bool { return terminal.FullScreen(os.Stdin, os.Stdout, os.Getenv) }

// Run shows the screen until the person leaves it, the program has to end, or
// the terminal is gone; all of these are no error. The terminal is then as it was.
// Signals that end a program are the screen's own from here on.
func Run(o Options) error {
	o.complete()
	k := draw.NewTheme(lipgloss.NewRenderer(o.Output), o.light(), o.ASCII || !o.unicode())
	m, err := newModel(o.Shop, k)
	if err != nil {
		return err
	}
	m.Demo = o.Demo
	m.session.Journal.Take(o.Shop.Dir, o.Demo)
	defer m.session.Journal.Close()
	m.session.Opened()
	if !m.session.Journal.Writes() && !o.Demo {
		m.session.Say("%s", m.session.Journal.Why())
	}
	m.personalise(o.Config)
	m.session.Files.Watched = o.Shop.Dir != ""
	if o.Demo {
		return run(m, o.Input, o.Output)
	}
	m.restore(personal.LoadView(o.State, o.Shop.Dir))
	err = run(m, o.Input, o.Output)
	viewNow(m).Save(o.State, o.Shop.Dir) // a lost view is no reason to complain
	return err
}

// complete fills in what isn't given.
func (o *Options) complete() {
	if o.Input == nil {
		o.Input = os.Stdin
	}
	if o.Output == nil {
		o.Output = os.Stdout
	}
	if o.Env == nil {
		o.Env = os.Getenv
	}
	o.ASCII = o.ASCII || o.Config != nil && o.Config.ASCII
}

// unicode reports whether the locale's characters are UTF-8.
func (o *Options) unicode() bool { return terminal.Unicode(o.Env) }

// light reports whether the palette for a light background is wanted: by flag, then by
// config, then by what the terminal says.
func (o *Options) light() bool {
	switch {
	case o.Background != FromTerminal:
		return o.Background == Light
	case o.Config != nil && o.Config.Background != "":
		return o.Config.Background == "light"
	}
	return terminal.Light(o.Env)
}

// framesASecond is how often the terminal may be written to. The clock behind it ticks
// while nothing happens too: at the usual 60 that alone takes a hundredth of a core.
const framesASecond = 40

// run runs a model as a program.
func run(m tea.Model, in io.Reader, out io.Writer) error {
	if f, ok := in.(*os.File); ok {
		in = terminal.Reader(f)
	}
	g := &guard{Model: m, ends: terminal.Ends()}
	p := tea.NewProgram(g, tea.WithInput(in), tea.WithOutput(out), tea.WithAltScreen(),
		tea.WithoutSignalHandler(), tea.WithFPS(framesASecond))
	g.kill = p.Kill
	defer g.ends.Stop()
	_, err := p.Run()
	if trace := g.trace(); trace != "" {
		return fmt.Errorf("a mistake in the program itself; please report this:\n%s", trace)
	}
	if terminal.Gone(err) {
		return nil
	}
	return err
}
