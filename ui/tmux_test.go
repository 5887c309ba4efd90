//go:build unix

package ui

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// tmux is a terminal of its own in which a shell runs.
type tmux struct {
	t      *testing.T
	socket string
	dir    string
}

// newTmux starts a terminal of that size, beside a copy of the day. Without tmux the test is left out, except
// where the tests count.
func newTmux(t *testing.T, day string, w, h int) *tmux {
	t.Helper()
	if _, err := exec.LookPath("tmux"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("tmux is missing")
		}
		t.Skip("tmux is missing: install it to test the screen from outside")
	}
	x := &tmux{t, fmt.Sprintf("bide-test-%d-%s", os.Getpid(), strings.ReplaceAll(t.Name(), "/", "-")), t.TempDir()}
	t.Cleanup(func() { exec.Command("tmux", "-L", x.socket, "kill-server").Run() })
	shop := x.file("shop")
	if err := os.CopyFS(shop, os.DirFS("../testdata/"+day)); err != nil {
		t.Fatal(err)
	}
	env := append(os.Environ(), "TERM=xterm-256color", "LC_ALL=C.UTF-8", "ENV=", "COLORFGBG=15;0",
		"XDG_CONFIG_HOME="+x.file("config"), "XDG_STATE_HOME="+x.file("state"),
		"SCREEN="+os.Args[0], "BIDE_TEST_SHOP="+shop, "BIDE_TEST_PID="+x.file("pid"))
	cmd := exec.Command("tmux", "-L", x.socket, "-f", "/dev/null", "new-session", "-d", "-x", strconv.Itoa(w), "-y", strconv.Itoa(h), "env -u CI -u TMUX sh")
	cmd.Env = env
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("tmux: %v\n%s", err, out)
	}
	x.run("set", "-g", "status", "off")
	x.run("set", "-g", "escape-time", "0")
	x.typed("PS1='rea''dy$ '")
	x.until("ready$")
	x.typed("stty -g > " + x.file("before"))
	return x
}

func (x *tmux) file(name string) string { return filepath.Join(x.dir, name) }

func (x *tmux) run(args ...string) string {
	x.t.Helper()
	out, err := exec.Command("tmux", append([]string{"-L", x.socket}, args...)...).CombinedOutput()
	if err != nil {
		x.t.Fatalf("tmux %q: %v\n%s", args, err, out)
	}
	return string(out)
}

// typed types a line at the shell.
func (x *tmux) typed(text string) {
	x.run("send-keys", "-l", text)
	x.run("send-keys", "Enter")
}

func (x *tmux) press(keys ...string) { x.run(append([]string{"send-keys"}, keys...)...) }

func (x *tmux) screen() string { return x.run("capture-pane", "-p") }

// until waits until the screen holds all the texts.
func (x *tmux) until(texts ...string) string {
	x.t.Helper()
	return x.waits(fmt.Sprintf("%q", texts), func(screen string) bool {
		return !slices.ContainsFunc(texts, func(text string) bool { return !strings.Contains(screen, text) })
	})
}

// untilLike waits until the screen holds what the pattern describes.
func (x *tmux) untilLike(pattern string) string {
	x.t.Helper()
	return x.waits(pattern, regexp.MustCompile(pattern).MatchString)
}

// waits waits until the screen is as wanted.
func (x *tmux) waits(what string, wanted func(string) bool) string {
	x.t.Helper()
	var screen string
	for range giveUp {
		if screen = x.screen(); wanted(screen) {
			return screen
		}
		time.Sleep(pause)
	}
	x.t.Fatalf("the screen never showed %s:\n%s", what, screen)
	return ""
}

// ended waits until the screen has left and the shell prompts again: what is typed
// before that, the terminal shows in front of the prompt.
func (x *tmux) ended() string {
	x.t.Helper()
	for range giveUp {
		screen := x.screen()
		if _, after, left := strings.Cut(screen, "status="); left && strings.Contains(after, "\nready$") {
			return screen
		}
		time.Sleep(pause)
	}
	x.t.Fatalf("the shell never prompted again:\n%s", x.screen())
	return ""
}

// start starts the screen and waits until all is worked out.
func (x *tmux) start(what string) {
	x.t.Helper()
	x.typed("BIDE_TEST_SCREEN=" + what + ` "$SCREEN"; echo "stat""us=$?"; stty -g > ` + x.file("after"))
	x.until("bide  Beam 2", "ends ", "? help  q quit")
}

// pid is the screen's process.
func (x *tmux) pid() int {
	x.t.Helper()
	text, err := os.ReadFile(x.file("pid"))
	if err != nil {
		x.t.Fatal(err)
	}
	pid, err := strconv.Atoi(string(text))
	if err != nil {
		x.t.Fatal(err)
	}
	return pid
}

// restored fails unless the screen ended with that status and left the terminal as
// it was: its modes, the shell's own screen, the cursor, no reports of the mouse.
func (x *tmux) restored(status string) string {
	x.t.Helper()
	screen := x.ended()
	if !strings.Contains(screen, "status="+status) {
		x.t.Errorf("want status %s:\n%s", status, screen)
	}
	x.typed("echo still here")
	x.until("\nstill here")
	before, _ := os.ReadFile(x.file("before"))
	after, err := os.ReadFile(x.file("after"))
	if err != nil || string(before) != string(after) {
		x.t.Errorf("the terminal's modes were %q and are %q (%v)", before, after, err)
	}
	flags := strings.TrimSpace(x.run("display", "-p", "#{alternate_on} #{cursor_flag} #{mouse_any_flag} #{keypad_cursor_flag}"))
	if flags != "0 1 0 0" {
		x.t.Errorf("other screen, cursor, mouse, keypad: %s, want 0 1 0 0", flags)
	}
	return screen
}

// However the screen ends, the terminal is as it was.
func TestTerminalIsRestored(t *testing.T) {
	for _, c := range []struct {
		name, what, status string
		end                func(*tmux)
		says               string
	}{
		{"q", "demo", "0", func(x *tmux) { x.press("q") }, ""},
		{"Ctrl-C", "demo", "0", func(x *tmux) { x.press("C-c") }, ""},
		{"SIGINT", "demo", "0", func(x *tmux) { syscall.Kill(x.pid(), syscall.SIGINT) }, ""},
		{"SIGTERM", "demo", "0", func(x *tmux) { syscall.Kill(x.pid(), syscall.SIGTERM) }, ""},
		{"SIGHUP", "demo", "0", func(x *tmux) { syscall.Kill(x.pid(), syscall.SIGHUP) }, ""},
		{"panic in a command", "command", "1", func(x *tmux) { x.press("x") }, "clumsy command"},
		{"panic in Update", "update", "1", func(x *tmux) { x.press("x") }, "clumsy update"},
		{"panic in View", "view", "1", func(x *tmux) { x.press("x") }, "clumsy view"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			x := newTmux(t, "small", 120, 50)
			x.start(c.what)
			c.end(x)
			screen := x.restored(c.status)
			if !strings.Contains(screen, c.says) || c.says != "" && !strings.Contains(screen, "outside_test.go") {
				t.Errorf("the trace isn't there:\n%s", screen)
			}
		})
	}
}

// A terminal that is gone takes the screen with it, even where hang-ups are ignored.
func TestTerminalGone(t *testing.T) {
	for _, ignored := range []bool{false, true} {
		t.Run(fmt.Sprintf("hang-ups ignored %v", ignored), func(t *testing.T) {
			t.Parallel()
			x := newTmux(t, "small", 100, 30)
			if ignored {
				x.typed("trap '' HUP")
			}
			x.start("demo")
			pid := x.pid()
			x.run("kill-pane")
			for range giveUp {
				if syscall.Kill(pid, 0) != nil {
					return
				}
				time.Sleep(pause)
			}
			syscall.Kill(pid, syscall.SIGKILL)
			t.Error("the screen lives on without a terminal")
		})
	}
}

// One day at the screen: look, move a job, undo, go through the panes, make the
// terminal small and large, leave for the shell and come back.
func TestStoryAtTheScreen(t *testing.T) {
	t.Parallel()
	x := newTmux(t, "small", 120, 36)
	x.start("demo")
	x.press("Down", "Down", "S-Down")
	x.until("D-103 moved to number 4: ", "Day ")
	x.press("u")
	x.until("D-103 undone: back to number 3")
	x.press("Tab", "Right", "Right", "+")
	x.until("▸Beam D-102 → D-103", "zoom 2 times")
	x.press("Tab", "Down")
	x.until("▸Moves")
	x.press("C-z")
	x.until("Stopped", "\nready$")
	x.typed("fg")
	x.until("▸Moves")
	x.run("resize-window", "-x", "20", "-y", "5")
	x.until("D-102→D-103", " mm to ", "q quit")
	x.run("resize-window", "-x", "220", "-y", "60")
	x.until("▸Moves", "material", "to, in")
	x.press("?")
	x.until("Before a hand goes near the beam", "Esc back")
	x.press("Escape")
	x.until("▸Moves")
	x.press("q")
	x.until("fg\n\"${SCREEN}\"\nready$")
	x.typed(`echo "la""st=$?"`)
	x.until("last=0")
}
