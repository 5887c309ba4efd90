package ui

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop/record"
	"bide/ui/setup"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// enters types texts, each ended with Enter.
func (s *screen) enters(texts ...string) *screen {
	for _, text := range texts {
		for _, r := range text {
			s.press(string(r))
		}
		s.press("enter").settle()
	}
	return s
}

// file is what a file of the folder holds.
func file(t testing.TB, dir, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// balanced fails unless the record takes back, newest first, all that it tells.
func balanced(t testing.TB, all []record.Event) {
	t.Helper()
	var open []record.Event
	for _, e := range all {
		if !e.Back {
			open = append(open, e)
			continue
		}
		if len(open) == 0 {
			t.Fatalf("%+v takes back what was never told", e)
		}
		last := open[len(open)-1].TakenBack(e.Time)
		if diff := cmp.Diff(last, e); diff != "" {
			t.Fatalf("not the last told is taken back (-last +taken back):\n%s", diff)
		}
		open = open[:len(open)-1]
	}
	if len(open) > 0 {
		t.Fatalf("not taken back: %+v", open)
	}
}

// All that was told in a guided setup is taken back with u, one thing after the other: moves,
// positions, conditions, two corrections in a row. The files then hold what they held before it,
// but for the time of the record, and the record takes back what it told.
func TestAllIsTakenBack(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	standing, marks := *sc.Actual.Positions, maps.Clone(sc.Actual.Marks)
	day := file(t, dir, "day.toml")
	sc.press("w", "enter").confirms(3)
	at := sc.Actual.Positions.At
	sc.press("f").enters("20", plan.Millimetres.Number(at[19]+plan.Millimetre), "").tells("position corrected: 20 at")
	sc.press("f").enters("40", plan.Millimetres.Number(at[39]+plan.Millimetre), "41", plan.Millimetres.Number(at[40]+plan.Millimetre), "").tells("position corrected: 40 at", "41 at")
	sc.sound(dir)
	sc.confirms(2).sound(dir)
	number := sc.setup().Move().Holder
	sc.press("c").enters("", "", "n", "hiss").tells("is recorded as no cut")
	if m := read(t, dir).Marks[number]; m.Condition != plan.NoCut || m.Reason != "hiss" {
		t.Errorf("marked %+v", m)
	}
	sc.confirms(1).sound(dir)
	var said []string
	for range 8 { // 6 moves, 2 corrections
		sc.press("u").settle().tells("undone: ")
		said = append(said, sc.Notice.Text)
		sc.sound(dir)
	}
	sc.press("u").settle().tells("undone: ")
	if !strings.Contains(strings.Join(said, "\n"), "40 is at "+plan.Millimetres.Show(at[39])+" again, 41 is at") {
		t.Errorf("of two holders found elsewhere it isn't said where they are again: %q", said)
	}
	sc.press("u").settle().tells("there is nothing left to undo in this setup")
	kept := read(t, dir)
	if diff := cmp.Diff(&standing, kept.Positions); diff != "" {
		t.Errorf("(-before +taken back):\n%s", diff)
	}
	if !maps.Equal(marks, kept.Marks) {
		t.Errorf("marks %v, before %v", kept.Marks, marks)
	}
	if now := file(t, dir, "day.toml"); now != day {
		t.Error("day.toml is another one")
	}
	balanced(t, eventsIn(t, dir))
	sc.tells("move 1 of 58")
}

// That a job runs is taken back in the panes: its setup goes on at its end, the job
// before it runs again when all is taken back, and the files are as they were.
func TestTakingBackThatAJobRuns(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle().tells("D-101 is set up and runs (u undoes that)")
	runs, day, told := *read(t, dir).Positions, file(t, dir, "day.toml"), len(eventsIn(t, dir))
	sc.press("w", "enter").confirms(1).press("y").settle().tells("D-101 is done")
	sc.confirms(1).press("esc").settle()
	sc.press("u").tells("has begun: undo that first, with w and then u")
	sc.press("w", "enter", "u").settle().tells("undone: ", "is at")
	sc.press("u").settle().tells("undone: ", "D-101 is running")
	if diff := cmp.Diff(&runs, read(t, dir).Positions); diff != "" {
		t.Errorf("(-while it ran +taken back):\n%s", diff)
	}
	if now := file(t, dir, "day.toml"); now != day {
		t.Errorf("day.toml (-while it ran +taken back):\n%s", cmp.Diff(day, now))
	}
	balanced(t, eventsIn(t, dir)[told:])
	sc.press("esc").settle().press("u").settle().tells("undone: D-101 is waiting again", "all 15 moves made", "r runs")
	kept := read(t, dir)
	if kept.Positions.Begun == nil || len(kept.Positions.Begun.Made) != 15 || kept.Day.Jobs[0].State != plan.Waiting {
		t.Errorf("kept: %+v, state %d", kept.Positions.Begun, kept.Day.Jobs[0].State)
	}
	sc.press("u").settle().tells("move 15 of 15")
	sc.sound(dir)
	sc.confirms(1).press("r").settle().tells("D-101 is set up and runs")
	if read(t, dir).Positions.Job != "D-101" {
		t.Error("it can't be told again that it runs")
	}
}

// That a job runs may be taken back in its next guided setup too, where it was let wait again by
// hand: its first setup goes on at its end, it is taken back once, and edits stay to be
// undone.
func TestTakingBackThatAJobRanInItsNextSetup(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	at := slices.Clone(sc.Actual.Positions.At)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	sc.press("up", "r").settle().tells("D-101 waits again")
	sc.press("w", "enter", "u").settle().tells("undone: D-101 is waiting again", "all 15 moves made", "r runs")
	for range 15 {
		sc.press("u").settle().tells("undone: ")
	}
	balanced(t, eventsIn(t, dir))
	told := len(eventsIn(t, dir))
	sc.press("esc").settle().press("u").settle().tells("undone: D-101 waits again")
	sc.press("u").settle().tells("there is nothing to undo")
	kept := read(t, dir)
	if diff := cmp.Diff(at, kept.Positions.At); diff != "" || kept.Positions.Begun != nil && len(kept.Positions.Begun.Made) > 0 {
		t.Errorf("%+v, positions (-before +taken back):\n%s", kept.Positions.Begun, diff)
	}
	if n := len(eventsIn(t, dir)); n != told {
		t.Errorf("the record has %d events more, though nothing was left to take back", n-told)
	}
}

// What was edited after a job was set up is taken back before that; and while the next
// is half set up, it can't be taken back that the one before it ran.
func TestTakingBackInOrder(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	sc.press("j", "J").settle()
	moved := slices.Clone(ids(sc.Jobs()))
	sc.press("w", "enter").confirms(1).press("y").settle().press("esc").settle()
	sc.press("u").tells("undone: back to number")
	sc.press("u").tells("has begun: undo that first, with w and then u")
	if sc.Over != nil || read(t, dir).Positions.Begun == nil {
		t.Error("it is taken back while the next is half set up")
	}
	if slices.Equal(moved, ids(sc.Jobs())) {
		t.Error("the edit isn't undone")
	}
}

// After a restart the moves that positions.toml has can still be taken back.
func TestTakingBackAfterARestart(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter").confirms(3)
	sc.session.Journal.Close()
	sc = goOn(t, dir, 80, 24)
	sc.press("w", "enter", "u").settle().tells("undone: holder")
	sc.confirms(1)
	for range 3 {
		sc.press("u").settle()
	}
	if kept := read(t, dir).Positions.Begun; len(kept.Made) != 0 {
		t.Errorf("left of three moves: %v", kept.Made)
	}
	sc.sound(dir)
	balanced(t, eventsIn(t, dir))
}

// A mark taken back, and made again, is said to be; the record takes it back too.
func TestAMarkIsTakenBack(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("5", "c", "s").enters("bent").tells("is recorded as stuck")
	sc.press("u").settle().tells("undone: holder", "is good again")
	sc.press("U").settle().tells("redone: holder", "is recorded as stuck")
	sc.press("u").settle()
	balanced(t, eventsIn(t, dir))
	if len(read(t, dir).Marks) != 0 {
		t.Error("the mark is still there")
	}
}

// On a small screen too that a job runs is told, and taken back.
func TestTakingBackOnASmallScreen(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll()
	sc.send(tea.WindowSizeMsg{Width: 20, Height: 5})
	sc.press("r").settle()
	if !sc.whole("D-101 runs (u undo)") {
		t.Errorf("it isn't said how that is taken back:\n%s", sc.View())
	}
	if sc.press("r", "r"); !sc.whole("r: from 80x24 on") {
		t.Errorf("the guided setup's key pressed again:\n%s", sc.View())
	}
	if sc.press("left"); !sc.whole("No holder moves.") {
		t.Errorf("it is cut that nothing moves:\n%s", sc.View())
	}
	sc.press("u").settle()
	if _, open := sc.Over.(*setup.Page); !open || read(t, dir).Day.Jobs[0].State != plan.Waiting {
		t.Errorf("it isn't taken back:\n%s", sc.View())
	}
	if sc.press("esc", "u"); !sc.whole("u: from 80x24 on") {
		t.Errorf("another change is undone unseen:\n%s", sc.View())
	}
}

// A mark told in a guided setup, and told otherwise in the list of holders since, can't be taken
// back in the guided setup: nothing is written.
func TestTakingBackLeavesALaterMark(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter")
	number := sc.setup().Move().Holder
	sc.press("c").enters("", "", "n", "hiss").press("esc").settle().press("5")
	sc.Holder = number
	sc.press("c", "o").enters("dead")
	before, events := file(t, dir, "positions.toml"), len(eventsIn(t, dir))
	sc.press("w").settle().press("enter", "u").settle().says(fmt.Sprintf("can't be undone: the condition of holder %d has changed since", number))
	if file(t, dir, "positions.toml") != before || len(eventsIn(t, dir)) != events {
		t.Error("something is written all the same")
	}
}
