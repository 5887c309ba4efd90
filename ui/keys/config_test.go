package keys

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/plan/plantest"
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
	named := map[Action]string{}
	for name, a := range ActionNames {
		if named[a] != "" || slices.Contains(unnamed, a) || strings.ContainsAny(name, " .\"'=") {
			t.Errorf("%q names what %q names, or what stays, or is no bare key", name, named[a])
		}
		named[a] = name
	}
	for _, b := range bindings {
		if named[b.Act] == "" && !slices.Contains(unnamed, b.Act) {
			t.Errorf("%q has no name", b.Does)
		}
	}
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
		table, problems := WithOwn(bindings, wish(c.pairs...))
		if len(problems) != 1 || !strings.HasPrefix(problems[0], c.want) {
			t.Errorf("%q: %q, want %q", c.pairs, problems, c.want)
		}
		k := NewTable(false)
		if k.All = table; k.ActionOf("u", OnDay) != Undo && c.pairs[1] != "f5" {
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
	for name := range ActionNames {
		names = append(names, name)
	}
	slices.Sort(names)
	chars := []string{"a", "b", "q", "u", "up", "down", "esc", "enter", "tab", "K", "?", "1", "f1", "space", "/"}
	for range plantest.Worlds(50, 500) {
		c := &personal.Config{File: "config.toml"}
		for i := range 1 + r.IntN(12) {
			k := personal.Keys{Action: names[r.IntN(len(names))], Line: r.IntN(2) * (i + 1)}
			for range 1 + r.IntN(3) {
				k.Keys = append(k.Keys, chars[r.IntN(len(chars))])
			}
			c.Keys = append(c.Keys, k)
		}
		table, _ := WithOwn(bindings, c)
		if _, _, key := clashes(table); key != "" {
			t.Fatalf("seed %d: %v: %s does two things", seed, c.Keys, key)
		}
	}
}

// clashes finds a key that does two things in one place.
func clashes(table []Binding) (a, b Action, key string) {
	for in := Scope(1); in < Scopes; in <<= 1 {
		does := map[string]Action{}
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
	return None, None, ""
}

// The example in the README is taken without a complaint.
func TestExampleConfig(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
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
	_, problems := WithOwn(bindings, &c)
	if len(c.Keys) == 0 || len(c.Problems)+len(problems) > 0 {
		t.Errorf("%d keys, problems %q %q", len(c.Keys), c.Problems, problems)
	}
}
