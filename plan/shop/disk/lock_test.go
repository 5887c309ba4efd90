package disk

import (
	"bufio"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"bide/plan/shop/toml"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

func TestLock(t *testing.T) {
	dir := t.TempDir()
	for range 2 { // the second time the file is there already
		l, err := TakeLock(dir, noon)
		if err != nil {
			t.Fatal(err)
		}
		runtime.GC() // the lock must not hang on a file that can be collected
		_, err = TakeLock(dir, noon)
		var taken *TakenError
		if !errors.As(err, &taken) || taken.By.PID != os.Getpid() || !taken.By.Since.Equal(noon) || taken.By.User == "" || taken.By.Host == "" {
			t.Fatalf("a second lock: %v", err)
		}
		if want := "process " + strconv.Itoa(os.Getpid()) + "), since 25 Nov 12:00"; !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
		if err := l.Release(); err != nil {
			t.Error(err)
		}
		alone(t, dir, lockFile)
		holds(t, filepath.Join(dir, lockFile), "")
	}
}

// TestLockOfAProgramThatDied: whatever ends a program, its lock ends with it.
func TestLockOfAProgramThatDied(t *testing.T) {
	if dir := os.Getenv("BIDE_TEST_LOCK"); dir != "" {
		l, err := TakeLock(dir, noon)
		if err != nil {
			t.Fatal(err)
		}
		defer l.Release()
		os.Stdout.WriteString("taken\n")
		io.Copy(io.Discard, os.Stdin) // lives until it is killed, or its parent is gone
		return
	}
	dir := t.TempDir()
	other := exec.Command(os.Args[0], "-test.run=^TestLockOfAProgramThatDied$")
	other.Env = append(os.Environ(), "BIDE_TEST_LOCK="+dir)
	out, err := other.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	in, err := other.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	if err := other.Start(); err != nil {
		t.Fatal(err)
	}
	if line, err := bufio.NewReader(out).ReadString('\n'); line != "taken\n" {
		t.Fatalf("%q, %v", line, err)
	}
	_, err = TakeLock(dir, noon)
	var taken *TakenError
	if !errors.As(err, &taken) || taken.By.PID != other.Process.Pid {
		t.Errorf("while it lives: %v", err)
	}
	other.Process.Kill()
	other.Wait()
	l, err := TakeLock(dir, noon)
	if err != nil {
		t.Fatalf("when it is dead: %v", err)
	}
	l.Release()
}

func TestLockRefused(t *testing.T) {
	dir := t.TempDir()
	var told toml.Problems
	if _, err := TakeLock(filepath.Join(dir, "gone"), noon); !errors.As(err, &told) || !strings.Contains(err.Error(), "is gone") {
		t.Error(err)
	}
	write(t, filepath.Join(dir, lockFile), "\x1b[2Jno JSON", 0o644)
	l, err := TakeLock(dir, noon)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Release()
	l.file.Truncate(0) // as for a moment before it is signed
	if _, err := TakeLock(dir, noon); err == nil || !strings.Contains(err.Error(), "by someone else") {
		t.Error(err)
	}
}

// TestLockLeavesOtherFilesAlone: a lock that is a link to a file made by hand doesn't empty
// that; the shop can only be looked at.
func TestLockLeavesOtherFilesAlone(t *testing.T) {
	dir := t.TempDir()
	day := filepath.Join(dir, "day.toml")
	write(t, day, "# a day made by hand\n", 0o644)
	if err := os.Symlink("day.toml", filepath.Join(dir, lockFile)); err != nil {
		t.Skip("no symbolic links here: ", err)
	}
	if l, err := TakeLock(dir, noon); err == nil || !strings.Contains(err.Error(), "no regular file") {
		t.Errorf("%v, %v", l, err)
	}
	holds(t, day, "# a day made by hand\n")
}
