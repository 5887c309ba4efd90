package ui

import (
	"fmt"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
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
}

// modes are the ways in which a screen is drawn.
var modes = []struct {
	name    string
	colours int
	light   bool
	ascii   bool
}{{"plain", noColours, false, false}, {"ascii", noColours, false, true}, {"dark", manyColours, false, false}, {"light", manyColours, true, false}}

// The pages are kept as they were looked at and found good. Below the least size
// every page gives way to the next step, or to what is being typed.
func TestGoldenPanes(t *testing.T) {
	for _, p := range goldenPanes {
		for _, mode := range modes {
			k := testLook(mode.colours, mode.light, mode.ascii)
			s := newScreen(t, demo(t), k, 80, 24).settle().press(p.keys...).settle()
			for _, size := range [][2]int{{20, 5}, {40, 12}, {80, 24}, {120, 36}, {200, 60}} {
				s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				s.fits()
				switch {
				case size[0] < leastWidth && s.prompt == nil:
					sameAsSmall(t, s, size)
				case size[0] < leastWidth && mode.colours == manyColours, mode.light && size[0] > 80, mode.colours == manyColours && size[0] > 120:
				default:
					golden(t, fmt.Sprintf("%dx%d_%s_%s", size[0], size[1], p.name, mode.name), s.View())
				}
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
