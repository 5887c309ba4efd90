package ui

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/google/go-cmp/cmp"
)

// goldenPanes are the pages that are kept at every size and in every mode: a name,
// and the keys that lead there. Who adds a page adds it here.
var goldenPanes = []struct {
	name string
	keys []string
}{
	{"holders", []string{"5", "down", "down"}},
	{"holders_idle", []string{"5", "o", "/", "n", "e", "v", "e", "r", "enter", "down"}},
	{"holders_pairs", []string{"5", "p", "down"}},
	{"holders_mark", []string{"5", "c", "s", "j", "a", "m"}},
	{"settings", []string{"6", "right", "right"}},
	{"settings_anvil", []string{"6", "right", "right", "pgdown", "pgdown"}},
	{"settings_end", []string{"6", "end"}},
}

// modes are the ways in which a screen is drawn, sizes those at which pictures are kept.
var modes = []struct {
	name    string
	colours int
	light   bool
	ascii   bool
}{{"plain", noColours, false, false}, {"ascii", noColours, false, true}, {"dark", manyColours, false, false}, {"light", manyColours, true, false}}

var sizes = [][2]int{{20, 5}, {40, 12}, {80, 24}, {120, 36}, {200, 60}}

// The pages are kept as they were looked at and found good. Below the least size
// every page gives way to the next step, or to what is being typed. What is drawn in
// colours has the same characters, so only the day is kept in them.
func TestGoldenPanes(t *testing.T) {
	for _, p := range goldenPanes {
		t.Run(p.name, func(t *testing.T) { goldenPane(t, p.name, p.keys) })
	}
}

func goldenPane(t *testing.T, name string, keys []string) {
	for _, mode := range modes[:2] {
		k := testLook(mode.colours, mode.light, mode.ascii)
		s := plannedScreen(t, crowded(t), k, 80, 24).settle().press(keys...).settle()
		for _, size := range sizes {
			s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			s.fits()
			if size[0] < leastWidth && s.Prompt == nil {
				sameAsSmall(t, s, size)
			} else {
				golden(t, fmt.Sprintf("%dx%d_%s_%s", size[0], size[1], name, mode.name), s.View())
			}
		}
	}
}

// sameAsSmall fails unless the frame is the one that the day's pane has there.
func sameAsSmall(t *testing.T, s *screen, size [2]int) {
	t.Helper()
	frame := s.View()
	was := s.focus
	s.turnTo(theDay)
	if diff := cmp.Diff(s.View(), frame); diff != "" {
		t.Errorf("%v: the small screen isn't the same for every pane (-day +this):\n%s", size, diff)
	}
	s.turnTo(was)
}

// Every page fits every size, in Unicode and ASCII, of a day with everything that can
// be odd, of a full beam, and while nothing is worked out yet.
func TestPanesFitEverySize(t *testing.T) {
	for n, make := range []func() *screen{
		func() *screen { return newScreen(t, oddShop(t), testLook(noColours, false, true), 80, 24).settle() },
		func() *screen {
			return newScreen(t, crowd(140, 40), testLook(noColours, false, false), 80, 24).settle()
		},
		func() *screen { return newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24) },
	}[:fewer(3, 2)] {
		for _, p := range goldenPanes {
			s := make().press(p.keys...)
			for w := 1; w <= 230; w += fewer(1, 7) + w/fewer(8, 2) {
				for h := 1; h <= 70; h += fewer(1, 5) + h/fewer(8, 2) {
					s.send(tea.WindowSizeMsg{Width: w, Height: h})
					s.fits()
				}
			}
			if t.Failed() {
				t.Fatalf("shop %d, %s", n, p.name)
			}
		}
	}
}

// Without colours nothing is lost: what is drawn in colours has the same characters.
func TestColoursTellNothingAlone(t *testing.T) {
	for _, p := range append(goldenPanes, struct {
		name string
		keys []string
	}{"day", []string{"j"}}) {
		for _, ascii := range []bool{false, true} {
			bare := newScreen(t, oddShop(t), testLook(noColours, false, ascii), 120, 36).settle().press(p.keys...).settle()
			dark := newScreen(t, oddShop(t), testLook(manyColours, false, ascii), 120, 36).settle().press(p.keys...).settle()
			if diff := cmp.Diff(bare.View(), ansi.Strip(dark.View())); diff != "" {
				t.Errorf("%s (-bare +coloured):\n%s", p.name, diff)
			}
		}
	}
}

// Any keys on the pages of the holders, with marks, filters and answers that come
// late: every frame fits, and undoing all of it brings back the day and the marks as
// they were.
func TestRandomKeysOnHolders(t *testing.T) {
	const seed = 5
	r := rand.New(rand.NewPCG(seed, 0))
	shop := oddShop(t)
	shop.Conditions = shop.Beam.Holders // as if beam.toml had them
	s := newScreen(t, shop, testLook(noColours, false, false), 120, 36).settle()
	before, marks := s.Present.Totals, len(s.Actual.Marks)
	names := []string{"5", "up", "down", "left", "right", "pgdown", "pgup", "home", "end", "o", "O", "p", "c", "n", "s", "g", "b", "esc", "enter", "/", "1", "2", "backspace", "u", "U", "m", "x", "4", "tab"}
	var typed []string
	for range fewer(3000, 300) {
		key := names[r.IntN(len(names))]
		if key == "x" && s.Prompt == nil { // a letter to be typed; it removes jobs elsewhere
			continue
		}
		if key == "s" && s.hold.Help() != keys.OnMark && s.Prompt == nil { // the search has tests of its own
			continue
		}
		typed = append(typed, key)
		s.press(key)
		s.fits()
		if len(s.commands) > 0 && r.IntN(2) == 0 {
			s.background()
		}
		if s.Over != nil || s.AsksToQuit {
			s.press("esc")
		}
	}
	s.press("esc", "esc").settle()
	s.turnTo(theHolders)
	for i := 0; len(s.session.History.Past) > 0; i++ {
		if s.press("esc", "5", "u").settle(); i > len(typed) {
			t.Fatalf("seed %d: undoing doesn't end after %q", seed, typed)
		}
	}
	s.later(s.ask())
	s.settle()
	if diff := cmp.Diff(before, s.Present.Totals); diff != "" || len(s.Actual.Marks) != marks || s.Changed() {
		t.Errorf("seed %d: all undone, marks are %v, and the day differs after %q:\n%s", seed, s.Actual.Marks, typed, diff)
	}
}
