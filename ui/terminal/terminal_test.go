package terminal

import (
	"errors"
	"io"
	"os"
	"runtime"
	"testing"
)

func env(pairs ...string) func(string) string {
	m := map[string]string{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]] = pairs[i+1]
	}
	return func(name string) string { return m[name] }
}

func TestUnicode(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no locale in the environment")
	}
	for _, c := range []struct {
		env  func(string) string
		want bool
	}{
		{env(), false},
		{env("LANG", "C"), false},
		{env("LANG", "en_GB.UTF-8"), true},
		{env("LANG", "de_DE.utf8"), true},
		{env("LANG", "en_GB.UTF-8", "LC_ALL", "C"), false},
		{env("LANG", "C", "LC_CTYPE", "C.UTF-8"), true},
		{env("LANG", "de_DE.ISO-8859-1"), false},
	} {
		if got := Unicode(c.env); got != c.want {
			t.Errorf("LC_ALL %q, LC_CTYPE %q, LANG %q: %v", c.env("LC_ALL"), c.env("LC_CTYPE"), c.env("LANG"), got)
		}
	}
}

// COLORFGBG is what some terminals set: foreground;background, or with a third
// field between. 0 to 6 and 8 are dark.
func TestLight(t *testing.T) {
	for value, want := range map[string]bool{"": false, "15;0": false, "0;15": true, "0;default;15": true, "0;7": true, "15;8": false, "x": false, "0;": false, "12;8": false} {
		if got := Light(env("COLORFGBG", value)); got != want {
			t.Errorf("COLORFGBG=%q: light is %v", value, got)
		}
	}
}

func TestFullScreenNeedsATerminal(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	defer w.Close()
	if FullScreen(r, w, env("TERM", "xterm")) {
		t.Error("a pipe was taken for a terminal")
	}
}

func TestBroken(t *testing.T) {
	for text, want := range map[string]bool{
		"":              false,
		"j":             false,
		"\x1b":          true,
		"\x1b[":         true,
		"\x1b[1;2":      true,
		"\x1b[A":        false,
		"\x1b[1;2A":     false,
		"\x1b[5~":       false,
		"\x1bO":         true,
		"\x1bOP":        false,
		"\x1bx":         false,
		"\x1b\x1b":      true,
		"jj\x1b[":       true,
		"\x1b[Ajj":      false,
		"\x1b[[":        true,
		"\x1b[[A":       false,
		"\xc3":          true,
		"\xc3\xa9":      false,
		"\xe6\x9d":      true,
		"a\xe6\x9d\xb1": false,
		"\xff":          false,
	} {
		if got := broken([]byte(text)); got != want {
			t.Errorf("%q ends within a key: %v", text, got)
		}
	}
}

func TestGone(t *testing.T) {
	if Gone(nil) || Gone(io.ErrUnexpectedEOF) || !Gone(errors.Join(errors.New("program was killed"), errGone)) {
		t.Error("the end of a terminal is told wrongly")
	}
}
