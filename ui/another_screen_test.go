package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop/record"
)

// second is a screen over a folder that a first one has, with its clock.
func second(t testing.TB) (first, second *screen, dir string) {
	first, dir = atSmall(t, 80, 24)
	return first, goOn(t, dir, 80, 24), dir
}

// While the first screen has the shop, the second says who has it and keeps what is told
// in memory; when the first has left and nothing was changed, all of it is written with
// the next thing told, the record's events too.
func TestSecondScreenTakesOver(t *testing.T) {
	first, sc, dir := second(t)
	before := file(t, dir, "positions.toml")
	sc.press("w").settle().tells("Confirmed moves are not saved here", "open for writing by")
	sc.press("enter").confirms(2).tells("not saved: ", "open for writing by", "s save again")
	if sc.press("s").settle(); !strings.HasPrefix(sc.Notice.Text, "not saved: the shop is open for writing by") {
		t.Errorf("saving again: %q", sc.Notice.Text)
	}
	if file(t, dir, "positions.toml") != before {
		t.Fatal("the second one writes")
	}
	first.session.Journal.Close()
	sc.confirms(1).tells("the other screen has closed: this one saves now")
	sc.sound(dir)
	if n := len(read(t, dir).Positions.Begun.Made); n != 3 || len(eventsIn(t, dir)) != 3 {
		t.Errorf("%d moves and %d events are written, want 3 of each", n, len(eventsIn(t, dir)))
	}
	if sc.press("q"); !sc.ended {
		t.Error("leaving asks though all is saved")
	}
	if third := goOn(t, dir, 80, 24); third.session.Journal.Why() == "" {
		t.Error("a third one may write as well")
	}
}

// The states of jobs that were told meanwhile are written too.
func TestSecondScreenWritesTheDay(t *testing.T) {
	first, dir := atSmall(t, 80, 24)
	first.press("w", "enter").confirmsAll().press("r").settle()
	sc := goOn(t, dir, 80, 24)
	sc.press("w").settle().press("enter").confirms(1).press("z").settle().tells("not saved: ", "D-101 is on hold")
	if read(t, dir).Day.Jobs[0].State != plan.Running {
		t.Fatal("the second one writes")
	}
	first.session.Journal.Close()
	sc.confirms(1)
	if kept := read(t, dir); kept.Day.Jobs[0].State != plan.OnHold || kept.Positions.Begun.Job != "D-102" {
		t.Errorf("kept: state %d, %+v", kept.Day.Jobs[0].State, kept.Positions.Begun)
	}
	sc.press("u").settle().press("u").settle().tells("D-101 is running")
	if kept := read(t, dir); kept.Day.Jobs[0].State != plan.Running || kept.Positions.Begun != nil {
		t.Errorf("undone: state %d, %+v", kept.Day.Jobs[0].State, kept.Positions.Begun)
	}
}

// Where the first has changed what stands, it is read again before anything is written;
// what was told on the second isn't done over it, and its setup goes on from there.
func TestSecondScreenReadsAgain(t *testing.T) {
	first, sc, dir := second(t)
	sc.press("w").settle().press("enter").confirms(2)
	first.press("w", "enter").confirms(5)
	made := file(t, dir, "positions.toml")
	first.session.Journal.Close()
	sc.confirms(1).tells("the other screen has closed: this one saves now", "are read again")
	if file(t, dir, "positions.toml") != made || len(eventsIn(t, dir)) != 5 || len(sc.setup().Made()) != 5 {
		t.Error("the second one writes over what it hasn't shown")
	}
	sc.press("home").tells("move 6 of 15")
	sc.confirms(1).sound(dir)
	if n := len(read(t, dir).Positions.Begun.Made); n != 6 {
		t.Errorf("%d moves are kept, want 6", n)
	}
	sameAsPlanned(t, sc)
}

// At the beginning of a guided setup too the right is asked for again, and what the other has
// done is read: day and all.
func TestSecondScreenGoesOn(t *testing.T) {
	first, sc, dir := second(t)
	first.press("w", "enter").confirmsAll().press("r").settle()
	first.session.Journal.Close()
	sc.press("w").settle().tells("D-101 → D-102", "the files changed meanwhile")
	if sc.session.Journal.Why() != "" || sc.Jobs()[0].State != plan.Running || sc.Changed() {
		t.Errorf("barred %q, the first job is in state %d, changed %v", sc.session.Journal.Why(), sc.Jobs()[0].State, sc.Changed())
	}
	sc.press("enter").confirms(1).press("y").settle().sound(dir)
}

// Wishes for the day that aren't saved stay when the shop is read again; saving them
// then doesn't write over what the other has changed.
func TestSecondScreenKeepsItsWishes(t *testing.T) {
	first, sc, dir := second(t)
	sc.press("j", "J").settle()
	order := ids(sc.Jobs())
	sc.press("ctrl+s").settle().tells("not saved: the shop is open for writing by")
	first.press("w", "enter").confirmsAll().press("r").settle()
	first.session.Journal.Close()
	theirs := file(t, dir, "day.toml")
	sc.press("ctrl+s").settle()
	if got := ids(sc.Jobs()); strings.Join(got, " ") != strings.Join(order, " ") || sc.Jobs()[0].State != plan.Running {
		t.Errorf("the order is %v, was %v; the first is in state %d", got, order, sc.Jobs()[0].State)
	}
	if file(t, dir, "day.toml") != theirs || !strings.Contains(file(t, dir, "day.bide.toml"), `"running"`) {
		t.Errorf("the day isn't written beside theirs, with what became of D-101: %s\n%s", sc.Notice.Text, file(t, dir, "day.bide.toml"))
	}
	sc.tells("day.bide.toml")
}

// Marks told on a second screen are written like all else.
func TestSecondScreenMarks(t *testing.T) {
	first, sc, dir := second(t)
	sc.press("5", "c", "s").enters("bent").tells("is recorded as stuck (not saved)")
	sc.press("q").tells("Not saved: 1 condition", "Quit anyway?")
	sc.press("n")
	sc.press("u").settle().tells("undone: ")
	if sc.press("q"); !sc.ended {
		t.Error("leaving asks though the mark is taken back")
	}
	sc.ended = false
	first.session.Journal.Close()
	sc.press("U").settle().tells("recorded as stuck")
	marks := read(t, dir).Marks
	if len(marks) != 1 || sc.session.Journal.Why() != "" {
		t.Errorf("marks %v, barred %q", marks, sc.session.Journal.Why())
	}
	var backs []bool
	for _, e := range eventsIn(t, dir) {
		if e.Kind == record.Condition {
			backs = append(backs, e.Back)
		}
	}
	if !slices.Equal(backs, []bool{false, true, false}) {
		t.Errorf("the record takes conditions back: %v", backs)
	}
}

// says fails unless what just happened is told with all the texts.
func (s *screen) says(texts ...string) {
	s.t.Helper()
	for _, text := range texts {
		if !strings.Contains(s.Notice.Text, text) {
			s.t.Errorf("no %q in %q", text, s.Notice.Text)
		}
	}
}

// What was just being told when the shop is read again isn't done either, and is named
// like what was told before; a thing to be taken back stands.
func TestSecondScreenNamesWhatWasBeingTold(t *testing.T) {
	first, sc, dir := second(t)
	first.press("w", "enter").confirms(1)
	first.session.Journal.Close()
	sc.press("5", "c", "s").enters("bent").says("are read again", fmt.Sprintf("record it again: holder %d is stuck", sc.Holder))
	if marks := read(t, dir).Marks; len(marks) != 0 {
		t.Errorf("marked over what wasn't shown: %v", marks)
	}

	first, dir = atSmall(t, 80, 24)
	first.press("w", "enter").confirmsAll().press("r").settle()
	sc = goOn(t, dir, 80, 24)
	sc.press("w").settle().press("enter")
	first.press("5", "c", "s").enters("bent")
	first.session.Journal.Close()
	move := sc.setup().Move()
	sc.confirms(1).press("y").settle().says("are read again; not in the files, record it again: ", fmt.Sprintf("holder %d from", move.Holder), "D-101 is done")

	first, dir = atSmall(t, 80, 24)
	first.press("w", "enter").confirms(3)
	sc = goOn(t, dir, 80, 24)
	sc.press("w").settle().press("enter")
	first.confirms(1)
	first.session.Journal.Close()
	sc.press("u").settle().says("are read again; nothing is undone")
	if n := len(read(t, dir).Positions.Begun.Made); n != 4 || len(sc.setup().Made()) != 4 {
		t.Errorf("%d moves are in the file and %d here, want 4", n, len(sc.setup().Made()))
	}
}
