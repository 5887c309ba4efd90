package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan/shop"
)

// shopIn is a copy of the demo in a folder of its own, that may be written.
func shopIn(t *testing.T) (*screen, string) {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"beam.toml", "day.toml", "positions.toml", "materials.toml"} {
		text, err := os.ReadFile(filepath.Join("../testdata/demo", name))
		if err != nil {
			continue
		}
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	s, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	sc := newScreen(t, s, testLook(noColours, false, false), 120, 36).settle()
	sc.session.Journal.Take(sc.Shop.Dir, false)
	t.Cleanup(sc.session.Journal.Close)
	return sc, dir
}

// The day is saved as it is on the screen, with the file's comments, and the bar
// tells as long as it isn't.
func TestSaveDay(t *testing.T) {
	s, dir := shopIn(t)
	s.press("J").settle().press("e").types("x").press("enter").settle()
	if !strings.Contains(s.View(), "not saved") {
		t.Errorf("the bar doesn't tell:\n%s", s.View())
	}
	want := ids(s.Jobs())
	s.press("ctrl+s").settle()
	if s.Changed() || strings.Contains(s.View(), "* not saved") || !strings.Contains(s.View(), "saved in day.toml") {
		t.Errorf("it isn't said to be saved:\n%s", s.View())
	}
	again, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for i, j := range again.Day.Jobs {
		if j.ID != want[i] {
			t.Errorf("turn %d is %s, want %s", i+1, j.ID, want[i])
		}
	}
	if s.press("q"); !s.ended {
		t.Error("leaving asks though all is saved")
	}
}

// Undone behind a save, the day is another than the file's again; saved once more,
// the file is as it was, to the byte.
func TestSaveDayUndone(t *testing.T) {
	s, dir := shopIn(t)
	was, _ := os.ReadFile(filepath.Join(dir, "day.toml"))
	s.press("J", "ctrl+s").settle().press("u")
	if !s.Changed() {
		t.Error("undone behind a save, nothing is told to be unsaved")
	}
	s.press("W").settle()
	now, _ := os.ReadFile(filepath.Join(dir, "day.toml"))
	if string(now) != string(was) {
		t.Errorf("saved again, the file differs:\n%s", now)
	}
}

// A day that someone else changed meanwhile isn't written over, and that is said.
func TestSaveDayBeside(t *testing.T) {
	s, dir := shopIn(t)
	file := filepath.Join(dir, "day.toml")
	text, _ := os.ReadFile(file)
	theirs := string(text) + "\n# a word from someone else\n"
	if err := os.WriteFile(file, []byte(theirs), 0o644); err != nil {
		t.Fatal(err)
	}
	s.press("J", "ctrl+s").settle()
	if now, _ := os.ReadFile(file); string(now) != theirs {
		t.Error("their text is lost")
	}
	if !strings.Contains(s.View(), "day.bide.toml") {
		t.Errorf("it isn't said where the day is:\n%s", s.View())
	}
	s.press("down")
	if view := s.View(); strings.Count(view, "day.bide.toml") < 2 || !strings.Contains(view, "saved in day.bide.toml") {
		t.Errorf("after the next key the bar or the notes don't tell of it:\n%s", view)
	}
	again, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if view := newScreen(t, again, testLook(noColours, false, false), 120, 36).settle().View(); !strings.Contains(view, "note: day.bide.toml") {
		t.Errorf("opened again, the screen doesn't tell of it:\n%s", view)
	}
}

// A shop that may not be written says so, and nothing is lost.
func TestSaveDayBarred(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("J", "ctrl+s")
	if !s.Changed() || !strings.Contains(s.View(), "not saved: ") {
		t.Errorf("it isn't said:\n%s", s.View())
	}
}
