package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/ui/page/jobform"
	"bide/ui/setup"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// Every page over the panes fits at every size, and a screen too small for it takes no
// keys for it.
func TestPagesFitAtEverySize(t *testing.T) {
	for name, keys := range map[string][]string{
		"day map": {"4", "+", "]"}, "schedule": {"7"}, "schedule above": {"b"}, "move to": {"j", "g"}, "form": {"e", "down", "down", "!"},
		"compare": {"J", "v"}, "after": {"o"}, "left out": {"z", "z", "Z"},
	} {
		for _, s := range []*screen{
			newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle(),
			newScreen(t, oddShop(t), testLook(noColours, false, true), 80, 24).settle(),
		} {
			s.press(keys...).settle()
			for w := 1; w <= 230; w += fewer(1, 9) + w/fewer(8, 3) {
				for h := 1; h <= 70; h += fewer(1, 7) + h/fewer(8, 2) {
					s.send(tea.WindowSizeMsg{Width: w, Height: h})
					s.fits()
				}
			}
			if t.Failed() {
				t.Fatal(name)
			}
		}
	}
}

// A page that doesn't fit is kept, and is there again when there is room.
func TestPageIsKeptOnASmallScreen(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("e").types("abc")
	f := s.Over.(*jobform.Page)
	text := f.Open().Value()
	s.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	s.tells("window too small")
	s.press("x").tells("x: from 80x24 on")
	s.press("j", "esc").fits()
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	if s.Over != f || f.Open().Value() != text {
		t.Errorf("the form is gone or was typed into: %q", f.Open().Value())
	}
}

// A guided setup from a small screen puts what is open there away: nothing of it is lost.
func TestSetupPutsAPageAway(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("e").types("abc")
	text := s.Over.(*jobform.Page).Open().Value()
	s.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	s.press("w", "enter").tells("Enter confirm")
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	s.press("esc").settle().press("e")
	if f, open := s.Over.(*jobform.Page); !open || f.Open().Value() != text {
		t.Error("what was typed is gone")
	}
}

// That a job runs, taken back on a small screen, puts what is open there away as well.
func TestTakingBackPutsAPageAway(t *testing.T) {
	sc, _ := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	sc.press("1", "j", "a").types("abc")
	text := sc.Over.(*jobform.Page).Open().Value()
	sc.send(tea.WindowSizeMsg{Width: 30, Height: 10})
	sc.press("u").settle()
	if _, open := sc.Over.(*setup.Page); !open {
		t.Fatalf("%T is open", sc.Over)
	}
	sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	sc.press("esc").settle().press("a")
	if f, open := sc.Over.(*jobform.Page); !open || f.Open().Value() != text {
		t.Error("what was typed is gone")
	}
}

// The picture in the README is what the demo's day looks like.
func TestReadmeShowsTheScreen(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	s := plannedScreen(t, demo(t), testLook(noColours, false, true), 100, 30).settle()
	s.Demo = true
	s.press("down", "down", "down").settle()
	picture := strings.Split(s.View(), "\n")
	for i, line := range picture {
		picture[i] = strings.TrimRight(line, " ")
	}
	before, kept, _ := strings.Cut(string(text), "## The screen\n\n```\n")
	kept, behind, _ := strings.Cut(kept, "\n```")
	if *update {
		file := before + "## The screen\n\n```\n" + strings.Join(picture, "\n") + "\n```" + behind
		if err := os.WriteFile(filepath.Join("..", "README.md"), []byte(file), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(strings.Split(kept, "\n"), picture); diff != "" {
		t.Errorf("README.md shows another screen (-kept +now):\n%s", diff)
	}
}
