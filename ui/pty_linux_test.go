package ui

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"bide/plan/plantest"

	"golang.org/x/sys/unix"
)

// mute is a terminal that shows what it is sent and never answers a question.
type mute struct {
	master, slave *os.File
	mutex         sync.Mutex
	shown         bytes.Buffer
}

func newMute(t *testing.T) *mute {
	t.Helper()
	master, err := os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { master.Close() })
	if err := unix.IoctlSetPointerInt(int(master.Fd()), unix.TIOCSPTLCK, 0); err != nil {
		t.Fatal(err)
	}
	n, err := unix.IoctlGetInt(int(master.Fd()), unix.TIOCGPTN)
	if err != nil {
		t.Fatal(err)
	}
	slave, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { slave.Close() })
	if err := unix.IoctlSetWinsize(int(slave.Fd()), unix.TIOCSWINSZ, &unix.Winsize{Row: 30, Col: 100}); err != nil {
		t.Fatal(err)
	}
	m := &mute{master: master, slave: slave}
	go func() {
		buf := make([]byte, 1<<16)
		for {
			n, err := master.Read(buf)
			m.mutex.Lock()
			m.shown.Write(buf[:n])
			m.mutex.Unlock()
			if err != nil {
				return
			}
		}
	}()
	return m
}

// text is all that was sent so far.
func (m *mute) text() string {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	return m.shown.String()
}

// start starts a program on the terminal, as its own.
func (m *mute) start(t *testing.T, program string, args ...string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = m.slave, m.slave, m.slave
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	for _, pair := range os.Environ() {
		if name, _, _ := strings.Cut(pair, "="); name != "CI" && name != "COLORFGBG" && name != "NO_COLOR" {
			cmd.Env = append(cmd.Env, pair)
		}
	}
	own := t.TempDir()
	cmd.Env = append(cmd.Env, "TERM=xterm-256color", "LC_ALL=C.UTF-8", "XDG_CONFIG_HOME="+own, "XDG_STATE_HOME="+own)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	return cmd
}

// until waits until the terminal was sent the text.
func (m *mute) until(t *testing.T, text string) {
	t.Helper()
	for range giveUp {
		if strings.Contains(m.text(), text) {
			return
		}
		time.Sleep(pause)
	}
	t.Fatalf("never %q:\n%q", text, m.text())
}

// unasked fails if the terminal was asked for its background or its cursor: a program that
// asks waits for the answer, and a terminal that never answers takes it five seconds.
func (m *mute) unasked(t *testing.T) {
	t.Helper()
	if strings.Contains(m.text(), "\x1b]11;?") || strings.Contains(m.text(), "\x1b[6n") {
		t.Errorf("the terminal was asked for its background or its cursor:\n%q", m.text())
	}
}

// The screen doesn't wait for answers of the terminal, and keeps the bytes of a key
// together that come one after the other.
func TestScreenOnATerminalThatNeverAnswers(t *testing.T) {
	m := newMute(t)
	shop := filepath.Join(t.TempDir(), "shop")
	if err := os.CopyFS(shop, os.DirFS("../testdata/small")); err != nil {
		t.Fatal(err)
	}
	t.Setenv("BIDE_TEST_SCREEN", "demo")
	t.Setenv("BIDE_TEST_SHOP", shop)
	t.Setenv("BIDE_TEST_PID", filepath.Join(t.TempDir(), "pid"))
	cmd := m.start(t, os.Args[0])
	m.until(t, "D-098")
	m.until(t, "ends ")
	for _, part := range []string{"\x1b", "[", "B"} { // down
		io.WriteString(m.master, part)
		time.Sleep(10 * time.Millisecond)
	}
	m.until(t, "D-101 → D-102")
	io.WriteString(m.master, "q")
	if err := cmd.Wait(); err != nil {
		t.Error(err)
	}
	m.unasked(t)
}

// Commands that need no screen don't wait for the terminal either.
func TestCommandsOnATerminalThatNeverAnswers(t *testing.T) {
	plantest.Long(t) // it is built first
	program := filepath.Join(t.TempDir(), "bide")
	if out, err := exec.Command("go", "build", "-o", program, "bide").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	m := newMute(t)
	cmd := m.start(t, program, "help")
	if err := cmd.Wait(); err != nil {
		t.Fatalf("%v\n%s", err, m.text())
	}
	m.until(t, "bide [SHOP]")
	m.unasked(t)
}
