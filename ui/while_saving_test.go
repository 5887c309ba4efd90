package ui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/session/journal"
	"bide/ui/keys"
	"bide/ui/page/jobform"
	"bide/ui/setup"

	tea "github.com/charmbracelet/bubbletea"
)

const stillSaving = "wait: the last entry is still being saved"

// holdsSaves does what is asked for in the background, but keeps what tells that a save
// has ended: the moment between telling a thing and its being written down.
func (s *screen) holdsSaves() (ends []tea.Msg) {
	for len(s.commands) > 0 {
		cmd := s.commands[0]
		s.commands = s.commands[1:]
		switch msg := cmd().(type) {
		case tea.BatchMsg:
			for _, cmd := range msg {
				s.later(cmd)
			}
		case journal.Written, journal.DaySaved, session.Asked:
			ends = append(ends, msg)
		case session.Looked:
			if !msg.Asked {
				s.send(msg)
				continue
			}
			ends = append(ends, msg)
		default:
			s.send(msg)
		}
	}
	return ends
}

// gets sends what was held.
func (s *screen) gets(held []tea.Msg) *screen {
	for _, msg := range held {
		s.send(msg)
	}
	return s.settle()
}

// Whatever is being saved, nothing is opened, changed or left meanwhile; one may look
// around, and what was told is there when the save has ended.
func TestNothingIsOpenedWhileSaving(t *testing.T) {
	marks := []string{"5", "c", "s", "enter"}
	for _, told := range []struct {
		does   string
		before []string
		keys   []string
	}{
		{"a mark", nil, marks},
		{"the day", []string{"j", "J"}, []string{"ctrl+s"}},
		{"a mark taken back", marks, []string{"u"}},
	} {
		t.Run(told.does, func(t *testing.T) {
			sc, _ := atWork(t, 120, 36)
			sc.press(told.before...).settle().press(told.keys...)
			held := sc.holdsSaves()
			if len(held) != 1 || !sc.session.Journal.Busy() {
				t.Fatalf("%d saves are under way, want 1", len(held))
			}
			order, past := slices.Clone(sc.Jobs()), len(sc.session.History.Past)
			for _, pane := range []string{"1", "2", "3", "4", "5", "6"} {
				for _, key := range allKeys() {
					if key == "ctrl+c" || key == "q" || key == "?" || key == "f1" {
						continue
					}
					sc.press(pane, key)
					sc.holdsSaves()
					if sc.Over != nil || sc.Prompt != nil || !slices.Equal(order, sc.Jobs()) || len(sc.session.History.Past) != past {
						t.Fatalf("%s in pane %s opens or changes something while it is saved: %T, %q", key, pane, sc.Over, sc.Notice.Text)
					}
				}
				for _, key := range []string{"w", "s", "S", "g", "e"} {
					if sc.press(pane, key); sc.Over != nil || sc.session.Search.Busy() {
						t.Fatalf("%s in pane %s is done while it is saved", key, pane)
					}
					if in := sc.scope(); sc.ActionOf(key, in) != keys.None && sc.Notice.Text != stillSaving {
						t.Errorf("%s in pane %s isn't told to wait: %q", key, pane, sc.Notice.Text)
					}
				}
			}
			sc.gets(held)
			sc.press("1", "end", "e")
			if _, open := sc.Over.(*jobform.Page); !open {
				t.Error("saved, a form doesn't open")
			}
		})
	}
}

// A guided setup is begun from the beam as it is marked, also when w follows the mark at once.
func TestSetupIsFromTheMarkedBeam(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	first := sc.Shared.Moves()[0]
	sc.press("5")
	sc.Holder = first.Holder
	sc.press("c", "s", "enter")
	held := sc.holdsSaves()
	sc.press("w").tells(stillSaving)
	sc.gets(held).press("w", "enter").settle()
	for _, m := range sc.setup().Ahead() {
		if m.Holder == first.Holder {
			t.Fatalf("holder %d is recorded as stuck, and the guided setup tells to move it", m.Holder)
		}
	}
	sameAsPlanned(t, sc)
}

// While a move is saved the guided setup isn't left and nothing is opened on it; then the panes
// plan from what stands.
func TestSetupStaysWhileAMoveIsSaved(t *testing.T) {
	sc, dir := atWork(t, 120, 36)
	sc.press("w", "enter", "enter")
	held := sc.holdsSaves()
	for _, key := range []string{"esc", "f", "c", "r", "u", "enter"} {
		sc.press(key).tells("being saved")
		if w, open := sc.Over.(*setup.Page); !open || w.Typing() {
			t.Fatalf("%s leaves the guided setup, or opens something, while a move is saved", key)
		}
	}
	sc.gets(held).sound(dir)
	made := sc.setup().Made()
	sc.press("esc").settle()
	if len(made) != 1 || sc.Start.Positions != sc.Actual.Positions {
		t.Fatalf("%d moves made; the day doesn't begin with what stands", len(made))
	}
	if slices.ContainsFunc(sc.Shared.Moves(), func(m plan.Move) bool { return m.Holder == made[0].Holder }) {
		t.Errorf("holder %d, moved already, is to move", made[0].Holder)
	}
}

// The same where the first confirmed move ends the job before, and where its end tells that
// its job runs: the states on the screen are those in the file.
func TestStatesAreKeptWhateverIsPressedMeanwhile(t *testing.T) {
	sc, dir := atSmall(t, 120, 36)
	agree := func(when string) {
		t.Helper()
		for _, j := range read(t, dir).Day.Jobs {
			if here := sc.Now.Find(j.ID).State; here != j.State {
				t.Errorf("%s, %s is in state %d in the file and in %d here", when, j.ID, j.State, here)
			}
		}
	}
	meanwhile := func() {
		held := sc.holdsSaves()
		sc.press("esc", "1", "j", "t", "J", "e").types("xyz")
		sc.gets(held)
	}
	sc.press("w", "enter").confirmsAll().press("r")
	meanwhile()
	agree("set up")
	if sc.Over != nil {
		t.Fatalf("the job runs, and %T is open", sc.Over)
	}
	sc.press("w", "enter", "enter", "y")
	meanwhile()
	agree("at the first move of the next")
	sc.press("esc").settle()
	if sc.Changed() {
		t.Error("the day is said to be changed")
	}
}

// Taking back that a job runs takes out that change, and no edit.
func TestTakingBackKeepsEdits(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(58).press("r").settle().press("u")
	held := sc.holdsSaves()
	sc.press("1", "j", "J").tells(stillSaving)
	sc.gets(held)
	if sc.session.JustRan() || len(sc.session.Reports) != 58 || sc.Changed() {
		t.Errorf("undone: %d claims are left, the day is changed: %v", len(sc.session.Reports), sc.Changed())
	}
	sc.tells("undone: D-101 is waiting again")
	if strings.Contains(sc.Notice.Text, "moved") {
		t.Errorf("it is said %q", sc.Notice.Text)
	}
}

// While the files are read again because a person wants it nothing is told either: what
// is read is older than that, and would take it back.
func TestNothingIsToldWhileFilesAreReadAgain(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter")
	file := filepath.Join(dir, "materials.toml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, append(text, "# theirs\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	sc.press("R")
	held := sc.holdsSaves()
	if len(held) != 1 {
		t.Fatalf("%d readings are under way, want 1", len(held))
	}
	sc.press("enter")
	held = append(held, sc.holdsSaves()...)
	sc.gets(held).says("materials.toml changed meanwhile: read again")
	if kept := read(t, dir).Positions; kept.Begun != nil || sc.Actual.Positions.Begun != nil || sc.session.Journal.Busy() {
		t.Errorf("in the file %v, here %v, saving %v", kept.Begun, sc.Actual.Positions.Begun, sc.session.Journal.Busy())
	}
	sc.confirms(1).sound(dir)
}
