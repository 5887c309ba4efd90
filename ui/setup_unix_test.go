//go:build unix

package ui

import (
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"bide/plan/plantest"
	"bide/plan/session"
	"bide/plan/shop"
)

// A changeover at the machine, seen from outside: moves confirmed, the program killed in the
// middle, a second one that may only look, a small screen, a holder found elsewhere.
func TestOperatorAtTheScreen(t *testing.T) {
	plantest.Long(t)
	t.Parallel()
	x := newTmux(t, "crowded", 80, 24)
	x.start("demo")
	x.press("w")
	x.until("Before the first move", "Lock out")
	x.press("Enter")
	x.until("move 1 of 88")
	for _, next := range []string{"move 2 of 88", "move 3 of 88", "move 4 of 88"} {
		time.Sleep(session.LeastPause) // as a move takes
		x.press("Enter")
		x.until(next, "made: it is at")
	}
	stands := x.kept().Positions
	if len(stands.Begun.Made) != 3 {
		t.Errorf("three moves are told, %d are in the file", len(stands.Begun.Made))
	}
	syscall.Kill(x.pid(), syscall.SIGKILL)
	x.until("Killed")
	x.run("send-keys", "-l", "stty $(cat "+x.file("before")+"); tput rmcup; tput cnorm; clear; echo me''nded")
	x.press("C-j") // the dead one left the terminal raw
	x.until("mended\nready$")
	if again := x.kept().Positions; !slices.Equal(again.At, stands.At) {
		t.Error("killing it changed what stands")
	}

	x.start("demo")
	x.press("w")
	x.until("3 moves already made")
	x.press("Enter")
	x.until("move 4 of ")
	x.press("u")
	x.until("move 3 of ", "undone: ")
	x.press("f")
	x.until("Correct a position")
	x.press("8", "8", "Enter", "1", "9", "4", "9", "Enter")
	x.until("measured: holder 88 at 1949 mm")
	x.press("Enter")
	x.until("position corrected: 88 at 1949 mm", "move 3 of")
	x.run("resize-window", "-x", "20", "-y", "5")
	x.until("88 corrected", "Enter confirm")
	x.press("Space")
	x.until(" made\n", " mm to ") // in few words, and the next move
	x.run("resize-window", "-x", "80", "-y", "24")
	x.until("move 4 of")
	syscall.Kill(x.pid(), syscall.SIGHUP)
	x.restored("0")
	if made := x.kept().Positions.Begun.Made; len(made) != 3 {
		t.Errorf("%d moves are kept, want 3", len(made))
	}
}

// kept is the shop as its files have it now.
func (x *tmux) kept() *shop.Shop {
	x.t.Helper()
	s, problems := shop.Open(x.file("shop"))
	if len(problems) > 0 {
		x.t.Fatal(strings.TrimSpace(problems.Error()))
	}
	return s
}
