package ui

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// glance is the time to look at the files having come.
func (s *screen) glance() *screen {
	s.send(glance{})
	return s.settle()
}

// A second screen on which nothing is told follows the first: the day, the guided setup, what is
// made, and that the job runs.
func TestSecondScreenFollows(t *testing.T) {
	first, sc, _ := second(t)
	sc.glance()
	old := sc.Shop
	if sc.glance(); sc.Shop != old {
		t.Error("the files are read again though they are the same")
	}
	first.press("w", "enter").confirms(2)
	sc.glance().tells("positions.toml changed meanwhile: read again")
	if got, want := sc.Actual.Positions.At[first.Actual.Positions.Begun.Made[0].Holder-1], first.Actual.Positions.At[first.Actual.Positions.Begun.Made[0].Holder-1]; got != want {
		t.Errorf("the first moved holder stands at %s, want %s", got.MM(), want.MM())
	}
	sc.press("w").settle().tells("2 moves already made")
	sc.press("enter").tells("move 3 of 15")
	first.confirms(2)
	sc.glance().tells("move 5 of 15", "read again")
	if got, want := sc.setup().Move().Holder, first.setup().Move().Holder; got != want {
		t.Errorf("the next holder is %d, on the first screen %d", got, want)
	}
	first.confirmsAll().press("r").settle()
	sc.glance().says("meanwhile: read again; the setup of D-101 is over")
	if sc.Over != nil || sc.Jobs()[0].State != plan.Running {
		t.Error("it isn't seen that D-101 runs")
	}
}

// A screen on which something was told that isn't saved, or a job was moved, doesn't
// read the files by itself, but says that they have changed, until they are read.
func TestOutdatedIsSaid(t *testing.T) {
	first, sc, _ := second(t)
	sc.press("j", "J").settle()
	order := ids(sc.Jobs())
	first.press("w", "enter").confirms(1)
	sc.glance().press("k").tells("positions.toml has changed since", "reads it again")
	if len(sc.Actual.Positions.At) == 0 || sc.Actual.Positions.Begun != nil {
		t.Error("it is read though a job was moved")
	}
	for _, s := range [][2]int{{20, 5}, {40, 12}} {
		sc.send(tea.WindowSizeMsg{Width: s[0], Height: s[1]})
		sc.fits()
		if !strings.Contains(sc.View(), "changed") {
			t.Errorf("%v: it isn't said:\n%s", s, sc.View())
		}
	}
	sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	sc.press("R").settle().tells("positions.toml changed meanwhile: the positions are read again")
	if strings.Join(ids(sc.Jobs()), " ") != strings.Join(order, " ") || sc.Actual.Positions.Begun == nil {
		t.Errorf("read again: %v, %v", ids(sc.Jobs()), sc.Actual.Positions.Begun)
	}
	if sc.press("k"); strings.Contains(sc.View(), "has changed") {
		t.Error("it is still said to be outdated")
	}
	sc.press("R").settle().tells("the files have not changed")

	sc.press("w").settle().press("enter").confirms(1).tells("not saved: ")
	first.confirms(1)
	sc.glance().press("right").tells("positions.toml has changed since")
}

// Who may write is told too that someone else has changed a file; its text is kept. A
// file that can't be read again is named, and all stays as it was.
func TestWriterIsToldOfChanges(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	text := file(t, dir, "beam.toml")
	put := func(text string) {
		if err := os.WriteFile(filepath.Join(dir, "beam.toml"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	put(text + "\n[[holder]]\nnumber = 9\ncondition = \"stuck\"\n")
	sc.glance().tells("beam.toml has changed since")
	sc.press("R").settle().tells("beam.toml changed meanwhile: read again")
	if sc.Beam.Holders[8] != plan.Stuck {
		t.Error("the beam isn't as the file has it")
	}
	put("name = ")
	sc.glance().press("R").settle().tells("not read again: beam.toml")
	put(text)
	sc.glance().press("j", "J").settle().press("R").settle().tells("not read again: beam.toml or materials.toml has changed")
	sc.press("u").settle().press("R").settle().tells("read again")
	if sc.Beam.Holders[8] != plan.Good {
		t.Error("the beam isn't as the file has it")
	}
}

// A move confirmed on a second screen that is out of date is not recorded: the files are read
// first, though the time to look hasn't come.
func TestMoveOnAnOutdatedScreen(t *testing.T) {
	first, sc, _ := second(t)
	sc.press("w").settle().press("enter")
	first.press("w", "enter").confirms(3)
	sc.confirms(1).tells("read again: nothing was recorded", "move 4 of 15")
	if sc.session.Journal.Owes() {
		t.Errorf("owing %v", sc.session.Journal.Owing())
	}
}

// What was told here and is in the file already isn't asked for again; what isn't there
// is named, with positions.
func TestOnlyWhatIsMissingIsNamed(t *testing.T) {
	first, sc, dir := second(t)
	sc.press("w").settle().press("enter").confirms(1)
	first.press("w", "enter").confirms(1)
	first.session.Journal.Close()
	sc.press("s").settle().tells("the other screen has closed: this one saves now", "move 2 of 15")
	sc.says("the files changed meanwhile, and are read again")
	if strings.Contains(sc.Notice.Text, "record it again") {
		t.Errorf("it is to be told again though the file has it: %s", sc.Notice.Text)
	}

	sc.session.Journal.Close()
	first = goOn(t, dir, 80, 24)
	sc = goOn(t, dir, 80, 24)
	sc.press("w").settle().press("enter").confirms(2)
	first.press("w", "enter").confirms(1)
	first.session.Journal.Close()
	move := sc.setup().Made()[2]
	at := sc.Actual.Positions.At[move.Holder-1]
	sc.press("s").settle()
	u := sc.Shop.Unit
	if want := "record it again: holder " + strconv.Itoa(move.Holder) + " from " + u.Show(move.From) + " to " + u.Show(at); !strings.HasSuffix(sc.Notice.Text, want) {
		t.Errorf("said %q, want at its end %q", sc.Notice.Text, want)
	}
}

// Read again with a change of the day that isn't saved, the screen says that the day isn't
// read.
func TestReadAgainLeavesAnUnsavedDay(t *testing.T) {
	s, dir := atSmall(t, 120, 36)
	s.press("J").settle()
	order := ids(s.Jobs())
	day := filepath.Join(dir, "day.toml")
	if err := os.WriteFile(day, []byte(strings.Replace(file(t, dir, "day.toml"), "length_m = 3200", "length_m = 3300", 1)+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	s.press("R").settle().tells("day.toml changed meanwhile: the positions are read again", "unsaved changes here are kept")
	s.says("earlier ones can no longer be undone")
	if !s.Changed() || strings.Join(ids(s.Jobs()), " ") != strings.Join(order, " ") {
		t.Errorf("the order is %v, was %v", ids(s.Jobs()), order)
	}
}

// Before the first move a guided setup asks for a look at blades that nobody has told, and at
// those of a setup that was broken off.
func TestSetupAsksForALookAtBlades(t *testing.T) {
	s, _ := atSmall(t, 120, 36)
	if s.press("w").settle(); strings.Contains(s.View(), "unknown, look first") || strings.Contains(s.View(), "may have been swapped") {
		t.Errorf("blades that are known are to be looked at:\n%s", s.View())
	}
	s.press("esc")
	stands := *s.Actual.Positions
	stands.Blades, stands.Begun = nil, &plan.Begun{Job: "D-109"}
	s.session.Actual.Positions = &stands
	s.press("w").settle().tells("blades to swap to ", "(now unknown, look first)", "setup of D-109 has begun", "Blades may already be swapped for D-109")
}
