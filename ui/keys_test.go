package ui

import (
	"strings"
	"testing"

	"bide/ui/keys"
	"bide/ui/personal"

	tea "github.com/charmbracelet/bubbletea"
)

// Keys can be changed and swapped; footer and help show them, and the old ones do
// nothing any more.
func TestKeysAreChanged(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.personalise(&personal.Config{Keys: []personal.Keys{
		{Action: "undo", Keys: []string{"f5", "ctrl+u"}}, {Action: "search", Keys: []string{"S"}}, {Action: "search-moves", Keys: []string{"s"}},
		{Action: "earlier", Keys: []string{"down"}}, {Action: "down", Keys: []string{"K"}},
	}})
	if len(s.wrong) > 0 {
		t.Fatal(s.wrong)
	}
	for key, want := range map[string]keys.Action{"f5": keys.Undo, "ctrl+u": keys.Undo, "u": keys.None, "S": keys.Search, "s": keys.SearchMoves, "down": keys.Earlier, "K": keys.Down, "j": keys.None, "U": keys.Redo} {
		if got := s.ActionOf(key, keys.OnDay); got != want {
			t.Errorf("%s does %d, want %d", key, got, want)
		}
	}
	if foot := keys.Footer(s.Theme, s.Table, keys.OnDay, 120).Text(); !strings.Contains(foot, "↑ K pick") || !strings.Contains(foot, "S search") {
		t.Errorf("the footer is %q", foot)
	}
	s.send(tea.WindowSizeMsg{Width: 120, Height: 400})
	if text := s.press("?").View(); !strings.Contains(text, "f5 Ctrl-U") {
		t.Errorf("the help doesn't show the new keys:\n%s", text)
	}
}

// Problems of the config are told on the screen, beside what was taken for granted.
func TestConfigProblemsAreShown(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	c := personal.Config{File: "config.toml", Keys: []personal.Keys{{Action: "undo", Keys: []string{"q"}, Line: 1}}}
	s.personalise(&c)
	if !strings.Contains(s.View(), "note: config.toml, line 1: undo: q is taken by quit") {
		t.Errorf("not told:\n%s", s.View())
	}
	c.File = "/a/folder/with/a/long/way/to/it/and/more/of/that/than/a/line/of/the/screen/has/room/for/bide/config.toml"
	s.personalise(&c)
	if !strings.Contains(s.View(), "note: config.toml, line 1: undo: q is taken by quit") {
		t.Errorf("the way to the file hides what is wrong in it:\n%s", s.View())
	}
}
