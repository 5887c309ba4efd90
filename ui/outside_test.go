package ui

import (
	"fmt"
	"os"

	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// screenFromOutside is the program that tests start to see the screen as a person
// does. It writes its process id where BIDE_TEST_PID says.
func screenFromOutside(what string) int {
	if file := os.Getenv("BIDE_TEST_PID"); file != "" {
		if err := os.WriteFile(file, fmt.Append(nil, os.Getpid()), 0o600); err != nil {
			return 3
		}
	}
	s, problems := shop.Open(os.Getenv("BIDE_TEST_SHOP"))
	if len(problems) > 0 {
		fmt.Fprintln(os.Stderr, problems)
		return 3
	}
	o := Options{Shop: s}
	var err error
	if what == "demo" {
		err = Run(o)
	} else {
		o.complete()
		m, _ := newModel(s, testLook(noColours, false, false))
		err = run(&clumsy{m, what}, o.Input, o.Output)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "bide:", err)
		return 1
	}
	return 0
}

// clumsy is the screen with a mistake that shows when x is pressed.
type clumsy struct {
	*model
	where string
}

func (c *clumsy) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && k.String() == "x" {
		switch c.where {
		case "command":
			return c, func() tea.Msg { panic("clumsy command") }
		case "update":
			panic("clumsy update")
		default:
			c.where = "view now"
		}
	}
	_, cmd := c.model.Update(msg)
	return c, cmd
}

func (c *clumsy) View() string {
	if c.where == "view now" {
		panic("clumsy view")
	}
	return c.model.View()
}
