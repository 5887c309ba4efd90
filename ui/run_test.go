package ui

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"bide/plan/session"

	tea "github.com/charmbracelet/bubbletea"
)

// A real program, in virtual time: all is worked out, keys do what they say, q
// ends it without an error.
func TestProgram(t *testing.T) {
	s := smallDay(t, 6)
	synctest.Test(t, func(t *testing.T) {
		m, err := newModel(s, testLook(noColours, false, false))
		if err != nil {
			t.Fatal(err)
		}
		p := tea.NewProgram(m, tea.WithInput(nil), tea.WithOutput(io.Discard), tea.WithoutSignalHandler())
		ended := make(chan error)
		go func() {
			_, err := p.Run()
			ended <- err
		}()
		p.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
		for _, key := range []string{"j", "j", "J", "J", "K", "u", "u", "u", "tab", "tab"} {
			p.Send(keyNamed(t, key))
		}
		synctest.Wait()
		p.Send(keyNamed(t, "j"))
		synctest.Wait()
		if !m.Present.Whole() || !m.Listed.Whole() || m.Changed() || m.JobAt != 2 || m.focus != theMoves || m.MoveAt != 1 {
			t.Errorf("known %d and %d, changed %v, turn %d, pane %d, move %d",
				len(m.Present.Known), len(m.Listed.Known), m.Changed(), m.JobAt, m.focus, m.MoveAt)
		}
		p.Send(keyNamed(t, "q"))
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
}

// As a program, with all that works in the background at once: a search, a lifted job, the
// settling of the day, saves, and keys in between. What comes of it is in the files; the
// race detector sees whether anything is shared that mustn't be.
func TestProgramWorksSideBySide(t *testing.T) {
	first, dir, _ := morning(t)
	synctest.Test(t, func(t *testing.T) {
		m, err := newModel(read(t, dir), testLook(noColours, false, false))
		if err != nil {
			t.Fatal(err)
		}
		m.session.Search.By = tries(40)
		first.session.Journal.Close()
		m.session.Journal.Take(dir, false)
		defer m.session.Journal.Close()
		p := tea.NewProgram(m, tea.WithInput(nil), tea.WithOutput(io.Discard), tea.WithoutSignalHandler())
		ended := make(chan error)
		go func() {
			_, err := p.Run()
			ended <- err
		}()
		press := func(keys ...string) {
			for _, key := range keys {
				p.Send(keyNamed(t, key))
			}
		}
		p.Send(tea.WindowSizeMsg{Width: 120, Height: 36})
		press("s", "j", "J", "g", "down", "down", "b", "esc", "v", "esc", "4", "5", "1", "J") // stops the search
		synctest.Wait()
		offered := m.Offer != nil
		if press("esc"); offered {
			press("v", "x")
		}
		synctest.Wait()
		press("S", "g", "up", "enter", "ctrl+s", "K", "J", "u")
		synctest.Wait()
		press("esc", "esc", "ctrl+s", "w", "5", "c", "n")
		synctest.Wait()
		order := ids(m.Filed.All)
		press("esc", "esc", "1", "w", "enter")
		synctest.Wait()
		for range 2 {
			time.Sleep(2 * session.LeastPause)
			press("enter", "f", "left") // the form opens unless the move is still being saved
			synctest.Wait()
			press("esc")
			synctest.Wait()
			if m.Over == nil {
				press("w")
				synctest.Wait()
				press("enter")
				synctest.Wait()
			}
		}
		press("ctrl+c")
		if err := <-ended; err != nil {
			t.Error(err)
		}
		if m.session.Search.Run < 2 {
			t.Errorf("%d searches were begun, want 2 at least", m.session.Search.Run)
		}
		kept := read(t, dir)
		if kept.Positions.Begun == nil || len(kept.Positions.Begun.Made) != 2 || len(m.session.Reports) != 2 || m.session.Journal.Busy() || m.session.Journal.Fault() != "" {
			t.Errorf("kept %+v, %d claims, saving %v, %q", kept.Positions.Begun, len(m.session.Reports), m.session.Journal.Busy(), m.session.Journal.Fault())
		}
		var there []string
		for i := range kept.Day.Jobs {
			there = append(there, kept.Day.Jobs[i].ID)
		}
		if !slices.Equal(order, there) {
			t.Errorf("the file's order is %v, saved was %v", there, order)
		}
	})
}

// A mistake anywhere ends the program with its trace, and the trace names it.
func TestMistakesEndInOrder(t *testing.T) {
	for _, where := range []string{"command", "update", "view"} {
		m, err := newModel(crowded(t), testLook(noColours, false, false))
		if err != nil {
			t.Fatal(err)
		}
		in, keys := io.Pipe()
		ended := make(chan error)
		go func() { ended <- run(&clumsy{m, where}, in, io.Discard) }()
		if _, err := io.WriteString(keys, "x"); err != nil {
			t.Fatal(err)
		}
		select {
		case err := <-ended:
			if err == nil || !strings.Contains(err.Error(), "clumsy "+where) || !strings.Contains(err.Error(), "outside_test.go") {
				t.Errorf("mistake in the %s: %v", where, err)
			}
		case <-time.After(giveUp * pause):
			t.Fatalf("mistake in the %s: the program lives on", where)
		}
		keys.CloseWithError(errors.New("over"))
	}
}

func TestRunRefusesWhatItCantShow(t *testing.T) {
	s := crowded(t)
	s.Day.Jobs = nil
	if err := Run(Options{Shop: s, Output: io.Discard}); err == nil || !strings.Contains(err.Error(), "day.toml") {
		t.Errorf("no jobs: %v", err)
	}
	s = crowded(t)
	s.Beam.Holders = nil
	if err := Run(Options{Shop: s, Output: io.Discard}); err == nil || !strings.Contains(err.Error(), "beam.toml") {
		t.Errorf("no holders: %v", err)
	}
}
