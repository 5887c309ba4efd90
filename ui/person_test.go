package ui

import (
	"testing"

	"bide/ui/personal"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// The last view comes back: pane, whether it had the screen, job, holder, zoom.
func TestViewIsRestored(t *testing.T) {
	for _, keys := range [][]string{nil, {"j", "j"}, {"2", "enter", "+", "+"}, {"5", "down"}, {"4", "+", "right"}, {"7", "j"}, {"b", "j"}, {"3", "enter", "right"}} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press(keys...).settle()
		next := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
		next.restore(viewNow(s.model))
		if diff := cmp.Diff(viewNow(s.model), viewNow(next.model)); diff != "" {
			t.Errorf("%v (-left +restored):\n%s", keys, diff)
		}
		next.fits()
	}
}

// A view that means nothing here harms nothing.
func TestOddViewsAreHarmless(t *testing.T) {
	for _, v := range []personal.View{{}, {Pane: -1, Holder: -5, Zoom: -3, Job: "none"}, {Pane: 99, Holder: 99999, Zoom: 99, Large: true, Near: 77, At: -1 << 62}, {Pane: int(theDayMap), Near: 3, At: 1 << 62}, {Pane: int(theHolders), Large: true, Holder: 88}} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
		s.restore(v)
		s.fits()
		s.press("1", "2", "3", "4", "5").settle()
		s.fits()
	}
}

// The flag goes before the config, the config before what the terminal says.
func TestPaletteIsChosen(t *testing.T) {
	env := func(colours string) func(string) string {
		return func(name string) string { return map[string]string{"COLORFGBG": colours}[name] }
	}
	for _, c := range []struct {
		flag   Background
		config string
		env    string
		want   bool
	}{
		{FromTerminal, "", "15;0", false}, {FromTerminal, "", "0;15", true}, {FromTerminal, "", "", false},
		{FromTerminal, "dark", "0;15", false}, {FromTerminal, "light", "15;0", true},
		{Light, "dark", "15;0", true}, {Dark, "light", "0;15", false},
	} {
		o := Options{Background: c.flag, Config: &personal.Config{Background: c.config}, Env: env(c.env)}
		if got := o.light(); got != c.want {
			t.Errorf("%+v: light is %v", c, got)
		}
	}
}

// The mouse does nothing until it is switched on; then a click picks pane and row,
// and the wheel goes through the rows of what it is over.
func TestMouse(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	click := func(x, y int, b tea.MouseButton) {
		s.send(tea.MouseMsg{X: x, Y: y, Button: b, Action: tea.MouseActionPress})
	}
	const firstRow = 1 + 5 + 2 // bar, beam, rule and heads
	click(5, firstRow+2, tea.MouseButtonLeft)
	if s.JobAt != 0 {
		t.Error("the mouse is on at first")
	}
	s.press("m")
	click(5, firstRow+2, tea.MouseButtonLeft)
	if s.JobAt != 2 || s.focus != theDay {
		t.Errorf("a click on the third row picks turn %d in pane %d", s.JobAt, s.focus)
	}
	click(60, firstRow+1, tea.MouseButtonLeft)
	if s.focus != theMoves || s.MoveAt != 1 {
		t.Errorf("a click on the second move picks move %d in pane %d", s.MoveAt, s.focus)
	}
	click(5, firstRow, tea.MouseButtonWheelDown)
	if s.JobAt != 3 || s.focus != theMoves {
		t.Errorf("the wheel over the day picks turn %d, with the keys in pane %d", s.JobAt, s.focus)
	}
	click(30, 4, tea.MouseButtonLeft)
	if s.focus != theBeam {
		t.Errorf("a click on the beam leaves the keys in pane %d", s.focus)
	}
	s.press("5", "home")
	click(5, 1+2+4, tea.MouseButtonLeft)
	if s.Holder != 5 {
		t.Errorf("a click on the fifth holder picks %d", s.Holder)
	}
	s.press("4", "home")
	click(5, s.lineOf(s.Jobs()[2].ID), tea.MouseButtonLeft)
	if s.JobAt != 2 {
		t.Errorf("a click on the third job picks turn %d", s.JobAt)
	}
	if s.press("m"); s.mousing {
		t.Error("m doesn't switch the mouse off")
	}
	for x := -1; x < 90; x += 7 {
		for y := -1; y < 30; y++ {
			s.mousing = true
			click(x, y, tea.MouseButtonLeft)
			s.fits()
			s.press("1")
			click(x, y, tea.MouseButtonLeft)
			click(x, y, tea.MouseButtonWheelUp)
			s.fits()
		}
	}
}
