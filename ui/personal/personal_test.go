package personal

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// written is a config file of that text, read.
func written(t *testing.T, text string) Config {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, ConfigFile), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	c := Read(dir)
	if c.File != filepath.Join(dir, ConfigFile) {
		t.Errorf("file %q", c.File)
	}
	c.File = ""
	for i := range c.Problems {
		c.Problems[i] = strings.ReplaceAll(c.Problems[i], dir+string(filepath.Separator), "")
	}
	return c
}

func TestConfigIsRead(t *testing.T) {
	got := written(t, `# mine
background = "light"
ascii = true
mouse = true

[keys]
undo = "z"
"quit" = ["Q", "ctrl+q"]
`)
	want := Config{Background: "light", ASCII: true, Mouse: true, Keys: []Keys{{"undo", []string{"z"}, 7}, {"quit", []string{"Q", "ctrl+q"}, 8}}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// All that is wrong is told, with its line; what is right beside it is taken.
func TestConfigProblems(t *testing.T) {
	got := written(t, "backgroud = 1\nbackground = \"blue\"\nascii = 3\nmouse = true\n[keys]\nundo = 7\nredo = [\"y\", 2]\nquit = \"Q\"\n")
	wants := []string{
		"config.toml, line 1: there is no setting backgroud; did you mean background?",
		`config.toml, line 2: background is "dark" or "light"`,
		"config.toml, line 3: ascii is true or false",
		"config.toml, line 6: undo: a key is a text",
		"config.toml, line 7: redo: a key is a text",
	}
	if len(got.Problems) != len(wants) {
		t.Fatalf("%d problems, want %d: %q", len(got.Problems), len(wants), got.Problems)
	}
	for i, want := range wants {
		if !strings.HasPrefix(got.Problems[i], want) {
			t.Errorf("problem %q, want %q", got.Problems[i], want)
		}
	}
	if !got.Mouse || len(got.Keys) != 1 || got.Keys[0].Action != "quit" {
		t.Errorf("what is right isn't taken: %+v", got)
	}
}

// Whatever a file holds, reading it ends with a config and words that are safe to
// show.
func TestConfigHostile(t *testing.T) {
	for _, text := range []string{"=", "[keys", "keys = 1", "\x1b[2J = 1", "a = \"\x1b\"", "undo = [[[[[[", "\xc3(", "[keys]\nundo", "a.b.c = 1", "[[keys]]\nundo = 1", strings.Repeat("[", 30000), strings.Repeat("x", largest+1)} {
		c := written(t, text)
		if len(c.Problems) == 0 {
			t.Errorf("%.20q: no problem told", text)
		}
		for _, p := range c.Problems {
			if strings.ContainsAny(p, "\x1b\n\r") || !strings.Contains(p, ConfigFile) {
				t.Errorf("%.20q: problem %q", text, p)
			}
		}
	}
	if c := Read(""); len(c.Problems) != 0 {
		t.Errorf("no folder: %q", c.Problems)
	}
	if c := Read(filepath.Join(t.TempDir(), "none")); len(c.Problems) != 0 {
		t.Errorf("no file: %q", c.Problems)
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, ConfigFile), 0o755); err != nil {
		t.Fatal(err)
	}
	if c := Read(dir); len(c.Problems) != 1 {
		t.Errorf("a folder in the file's place: %q", c.Problems)
	}
}

// A view comes back for its own shop alone; a spoilt one is none.
func TestViewComesBack(t *testing.T) {
	dir, shopDir := t.TempDir(), t.TempDir()
	v := View{Pane: 5, Large: true, Job: "D-103", Holder: 17, Zoom: 2}
	if err := v.Save(dir, shopDir); err != nil {
		t.Fatal(err)
	}
	v.Shop = shopDir
	if diff := cmp.Diff(v, LoadView(dir, shopDir)); diff != "" {
		t.Errorf("(-saved +loaded):\n%s", diff)
	}
	if got := LoadView(dir, t.TempDir()); got != (View{}) {
		t.Errorf("another shop's view is %+v", got)
	}
	file, _ := viewFile(dir, shopDir)
	for _, text := range []string{"", "{", "[]", `{"Pane":"x"}`, `{"Shop":"elsewhere","Pane":3}`} {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if got := LoadView(dir, shopDir); got != (View{}) {
			t.Errorf("%q gives %+v", text, got)
		}
	}
	if got := LoadView("", shopDir); got != (View{}) || v.Save("", shopDir) != nil || v.Save(dir, "") != nil {
		t.Error("a view without a place or a shop")
	}
}
