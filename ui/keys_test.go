package ui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/personal"
)

// wish is a config with keys, each on a line of its own.
func wish(pairs ...string) *personal.Config {
	c := &personal.Config{File: "config.toml"}
	for i := 0; i < len(pairs); i += 2 {
		c.Keys = append(c.Keys, personal.Keys{Action: pairs[i], Keys: strings.Fields(pairs[i+1]), Line: i/2 + 1})
	}
	return c
}

// Every action that has keys has a name of its own, or is one whose keys stay.
func TestActionsAreNamed(t *testing.T) {
	named := map[keys.Action]string{}
	for name, a := range keys.ActionNames {
		if named[a] != "" || slices.Contains(keys.Unnamed, a) || strings.ContainsAny(name, " .\"'=") {
			t.Errorf("%q names what %q names, or what stays, or is no bare key", name, named[a])
		}
		named[a] = name
	}
	for _, b := range keys.Bindings {
		if named[b.Act] == "" && !slices.Contains(keys.Unnamed, b.Act) {
			t.Errorf("%q (%s) has no name", b.Show, b.Does)
		}
	}
}

// Keys can be changed and swapped; footer and help show them, and the old ones do
// nothing any more.
func TestKeysAreChanged(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	s.personalise(wish("undo", "f5 ctrl+u", "search", "S", "search-moves", "s", "earlier", "down", "down", "K"))
	if len(s.wrong) > 0 {
		t.Fatal(s.wrong)
	}
	for key, want := range map[string]keys.Action{"f5": keys.Undo, "ctrl+u": keys.Undo, "u": keys.None, "S": keys.Search, "s": keys.SearchMoves, "down": keys.Earlier, "K": keys.Down, "j": keys.None, "U": keys.Redo} {
		if got := s.ActionOf(key, keys.OnDay); got != want {
			t.Errorf("%s does %d, want %d", key, got, want)
		}
	}
	if foot := textOf(keys.Footer(s.Theme, s.Table, keys.OnDay, 120)); !strings.Contains(foot, "↑ K pick") || !strings.Contains(foot, "S search") {
		t.Errorf("the footer is %q", foot)
	}
	if text := s.press("?").View(); !strings.Contains(text, "f5 Ctrl-U") && !strings.Contains(textOfAll(s.help.Lines(s.W)), "f5 Ctrl-U") {
		t.Error("the help doesn't show the new keys")
	}
}

// textOfAll are lines without their sequences.
func textOfAll(lines []draw.Line) string {
	var b strings.Builder
	for _, l := range lines {
		b.WriteString(textOf(l) + "\n")
	}
	return b.String()
}

// What is wrong is told with file and line, and its keys stay as they were.
func TestWrongKeysAreTold(t *testing.T) {
	for _, c := range []struct {
		pairs []string
		want  string
	}{
		{[]string{"undo", "x1"}, `config.toml, line 1: undo: "x1" is no key`},
		{[]string{"undo", ""}, "config.toml, line 1: undo: no key is named"},
		{[]string{"und", "z"}, "config.toml, line 1: und: there is no such action; did you mean undo?"},
		{[]string{"undo", "q"}, "config.toml, line 1: undo: q is taken by quit"},
		{[]string{"quit", "Q", "undo", "tab"}, "config.toml, line 2: undo: Tab is taken by next-pane"},
		{[]string{"undo", "f5", "redo", "f5"}, "config.toml, line 2: redo: f5 is taken by undo"},
		{[]string{"quit", "y"}, "config.toml, line 1: quit: y answers the question"},
		{[]string{"undo", "ctrl+c"}, "config.toml, line 1: undo: ctrl+c can't have another use"},
	} {
		table, problems := keys.WithOwn(keys.Bindings, wish(c.pairs...))
		if len(problems) != 1 || !strings.HasPrefix(problems[0], c.want) {
			t.Errorf("%q: %q, want %q", c.pairs, problems, c.want)
		}
		k := keys.NewTable(false)
		if k.All = table; k.ActionOf("u", keys.OnDay) != keys.Undo && c.pairs[1] != "f5" {
			t.Errorf("%q: u doesn't undo any more", c.pairs)
		}
	}
}

// Whatever is wished for, no key does two things in one place, and nothing runs for
// ever.
func TestAnyKeysAreClear(t *testing.T) {
	const seed = 4
	r := rand.New(rand.NewPCG(seed, 0))
	var names []string
	for name := range keys.ActionNames {
		names = append(names, name)
	}
	slices.Sort(names)
	chars := []string{"a", "b", "q", "u", "up", "down", "esc", "enter", "tab", "K", "?", "1", "f1", "space", "/"}
	for range fewer(500, 50) {
		c := &personal.Config{File: "config.toml"}
		for i := range 1 + r.IntN(12) {
			k := personal.Keys{Action: names[r.IntN(len(names))], Line: r.IntN(2) * (i + 1)}
			for range 1 + r.IntN(3) {
				k.Keys = append(k.Keys, chars[r.IntN(len(chars))])
			}
			c.Keys = append(c.Keys, k)
		}
		table, _ := keys.WithOwn(keys.Bindings, c)
		if _, _, key := clashes(table); key != "" {
			t.Fatalf("seed %d: %v: %s does two things", seed, c.Keys, key)
		}
	}
}

// clashes finds a key that does two things in one place.
func clashes(table []keys.Binding) (a, b keys.Action, key string) {
	for in := keys.Scope(1); in < keys.Scopes; in <<= 1 {
		does := map[string]keys.Action{}
		for _, b := range table {
			for _, k := range b.Keys {
				if a, twice := does[k]; b.Where&in != 0 && twice && a != b.Act {
					return a, b.Act, k
				}
				if b.Where&in != 0 {
					does[k] = b.Act
				}
			}
		}
	}
	return keys.None, keys.None, ""
}

// Problems of the config are told on the screen, beside what was taken for granted.
func TestConfigProblemsAreShown(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	s.personalise(wish("undo", "q"))
	if !strings.Contains(s.View(), "note: config.toml, line 1: undo: q is taken by quit") {
		t.Errorf("not told:\n%s", s.View())
	}
	c := wish("undo", "q")
	c.File = "/a/folder/with/a/long/way/to/it/and/more/of/that/than/a/line/of/the/screen/has/room/for/bide/config.toml"
	s.personalise(c)
	if !strings.Contains(s.View(), "note: config.toml, line 1: undo: q is taken by quit") {
		t.Errorf("the way to the file hides what is wrong in it:\n%s", s.View())
	}
}

// The example in the README is taken without a complaint.
func TestExampleConfig(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, example, _ := strings.Cut(string(text), "```toml\nbackground")
	example, _, _ = strings.Cut(example, "```")
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, personal.ConfigFile), []byte("background"+example), 0o644); err != nil {
		t.Fatal(err)
	}
	c := personal.Read(dir)
	_, problems := keys.WithOwn(keys.Bindings, &c)
	if len(c.Keys) == 0 || len(c.Problems)+len(problems) > 0 {
		t.Errorf("%d keys, problems %q %q", len(c.Keys), c.Problems, problems)
	}
}
