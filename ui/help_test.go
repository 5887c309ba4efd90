package ui

import (
	"strings"
	"testing"

	"bide/plan/session/workday"
	"bide/ui/caution"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// The help opens at what has the keys; over the panes of the first page at its
// beginning. Esc goes back to where it was opened.
func TestHelpOpensAtItsChapter(t *testing.T) {
	for name, keys := range map[string][]string{
		"Before a hand goes near the beam": {"?"},
		"Guided setup":                     {"w", "enter", "?"},
		"Correcting a position":            {"w", "enter", "f", "f1"},
		"Moving a job":                     {"j", "g", "?"},
		"The job form":                     {"e", "f1"},
		"Two orders":                       {"J", "v", "?"},
		"Lists to choose from":             {"o", "?"},
		"Day map":                          {"4", "?"},
		"Holders":                          {"5", "?"},
		"Schedule":                         {"7", "?"},
		"Settings":                         {"6", "?"},
	} {
		for _, size := range [][2]int{{80, 24}, {120, 36}} {
			sc := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), size[0], size[1])
			sc.session.Journal.Take(sc.Shop.Dir, true)
			sc.settle().press(keys[:len(keys)-1]...).settle()
			over, before := sc.Over, sc.View()
			sc.press(keys[len(keys)-1])
			if first := strings.TrimSpace(strings.Split(sc.View(), "\n")[1]); first != name {
				t.Errorf("%q: the help begins with %q, want %q", keys, first, name)
			}
			if sc.press("home"); !strings.Contains(sc.View(), "Before a hand goes near the beam") {
				t.Errorf("%q: Home doesn't go to the beginning", keys)
			}
			sc.session.Notice = workday.Notice{}
			if sc.press("esc"); sc.help != nil || sc.Over != over || sc.View() != before {
				t.Errorf("%q: after the help it is another screen:\n%s", keys, sc.View())
			}
		}
	}
	cautions := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle().press("w", "?")
	cautions.tells("Guided setup")
}

// On narrow screens the help is broken to lines and can be read to its end: nothing of
// it is cut.
func TestHelpOnSmallScreens(t *testing.T) {
	sc := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	for i, size := range [][2]int{{79, 23}, {20, 5}, {49, 10}, {30, 8}, {40, 12}, {50, 10}} {
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		sc.press("?", "home")
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: 2000})
		rows := strings.Split(sc.View(), "\n")
		text := flat(strings.Join(rows[1:len(rows)-1], "\n"))
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for _, b := range keys.NewTable(false).All {
			if !strings.Contains(text, flat(b.Does)) {
				t.Errorf("%d wide: no %q", size[0], b.Does)
			}
		}
		for _, c := range caution.All {
			if !strings.Contains(text, c.Text) {
				t.Errorf("%d wide: no %q", size[0], c.Text)
			}
		}
		if sc.fits(); i >= fewer(6, 1) {
			sc.press("esc")
			continue
		}
		var read []string
		for was := ""; sc.View() != was; sc.press("down") {
			was = sc.View()
			read = append(read, strings.Split(was, "\n")[1])
		}
		sc.fits()
		last := strings.Split(sc.View(), "\n")
		read = append(read, last[2:len(last)-1]...)
		if !strings.HasPrefix(flat(strings.Join(read, "\n")), text[:len(text)/2]) || !strings.HasSuffix(flat(strings.Join(read, "\n")), text[len(text)-20:]) {
			t.Errorf("%dx%d can't be read to its end", size[0], size[1])
		}
		sc.press("esc")
	}
}

// A key that works on a larger screen alone says so, where the screen is too small; one
// that does nothing anywhere stays silent.
func TestKeysOfALargerScreen(t *testing.T) {
	sc := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	before := ids(sc.Jobs())
	for _, size := range [][2]int{{20, 5}, {40, 12}, {79, 24}, {80, 23}} {
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for _, key := range []string{"J", "s", "u", "5", "tab", "ctrl+s", "x", "/"} {
			sc.press(key)
			if sc.fits(); !sc.whole("from 80x24 on") || sc.session.Search.Running() {
				t.Errorf("%dx%d: %s says nothing:\n%s", size[0], size[1], key, sc.View())
			}
		}
		if sc.press("down"); sc.whole("80x24") {
			t.Error("it stays after the next key")
		}
		if sc.press("~"); sc.whole("80x24") {
			t.Error("a key without a use is said to have one")
		}
	}
	if strings.Join(before, " ") != strings.Join(ids(sc.Jobs()), " ") {
		t.Error("a key that is said not to work does")
	}
}
