package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/ui/setup"

	"github.com/google/go-cmp/cmp"
)

// atWork is a screen over a copy of the crowded day in a folder of its own, that may be
// written, and the folder.
func atWork(t testing.TB, w, h int) (*screen, string) {
	t.Helper()
	return over(t, "crowded", w, h)
}

// atSmall is such a screen over the small day: a changeover of few moves.
func atSmall(t testing.TB, w, h int) (*screen, string) {
	t.Helper()
	return over(t, "small", w, h)
}

func over(t testing.TB, day string, w, h int) (*screen, string) {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../testdata/"+day)); err != nil {
		t.Fatal(err)
	}
	return goOn(t, dir, w, h), dir
}

// goOn starts the screen over a folder, as after it was ended.
func goOn(t testing.TB, dir string, w, h int) *screen {
	t.Helper()
	return atBeam(newScreen(t, read(t, dir), testLook(noColours, false, false), w, h))
}

// atBeam is a screen that records what happens, by a clock of its own.
func atBeam(sc *screen) *screen {
	sc.session.Journal.Take(sc.Shop.Dir, false)
	sc.t.Cleanup(sc.session.Journal.Close)
	sc.session.Journal.Now = seconds()
	return sc.settle()
}

// seconds is a clock that goes on by a second each time it is asked.
func seconds() func() time.Time {
	now := time.Date(2026, 11, 25, 6, 30, 0, 0, time.UTC)
	return func() time.Time {
		now = now.Add(time.Second)
		return now
	}
}

func read(t testing.TB, dir string) *shop.Shop {
	t.Helper()
	s, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s
}

func (s *screen) setup() *setup.Page { return s.Over.(*setup.Page) }

// tells fails unless the screen shows all the texts.
func (s *screen) tells(texts ...string) {
	s.t.Helper()
	s.fits()
	for _, text := range texts {
		if !strings.Contains(s.View(), text) {
			s.t.Fatalf("no %q in\n%s", text, s.View())
		}
	}
}

// confirms makes n moves.
func (s *screen) confirms(n int) *screen {
	for range n {
		s.press("enter").settle()
	}
	return s
}

// confirmsAll makes all moves that are left.
func (s *screen) confirmsAll() *screen {
	for s.setup().Move() != nil {
		s.confirms(1)
	}
	return s
}

// sound fails unless what is left leads from what stands to the layout, by the
// verifier, and what stands is in the file.
func (s *screen) sound(dir string) {
	s.t.Helper()
	w := s.setup()
	kept := read(s.t, dir)
	if diff := cmp.Diff(s.Actual.Positions.At, kept.Positions.At); diff != "" {
		s.t.Fatalf("the file has other positions (-screen +file):\n%s", diff)
	}
	if w.Plan == nil || w.Refused() {
		s.t.Fatal("there is no plan")
	}
	c := w.Plan.Step.Changeover
	c.From, c.Moves, c.Repositions, c.Travel = s.Actual.Positions.At, w.Ahead(), 0, 0
	for i := range c.Moves {
		c.Moves[i].Why = plan.Why{}
	}
	at := slices.Clone(c.From)
	for _, m := range c.Moves {
		if n := changeover.Blocks(s.Beam, at, m); n != 0 {
			s.t.Fatalf("holder %d is blocked by %d in the order given", m.Holder, n)
		}
		at[m.Holder-1] = m.To
	}
	for i, h := range c.Holders {
		if at[i] != h.At {
			s.t.Fatalf("holder %d ends at %s, the plan has it at %s", i+1, at[i].MM(), h.At.MM())
		}
	}
	if faults := changeover.Misplaced(s.Beam, at); len(faults) > 0 {
		s.t.Fatal(faults[0].Why(plan.Millimetres))
	}
}

// events are those in the record, by kind.
func eventsIn(t testing.TB, dir string) (out []record.Event) {
	t.Helper()
	problems, err := record.Read(os.DirFS(dir), func(e record.Event) { out = append(out, e) })
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return out
}

// A whole changeover: cautions first, each confirmed move in the file, one undone, the program
// ended in the middle and started again, what stands where, and the job runs.
func TestSetupFromEndToEnd(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	moves := slices.Clone(sc.Shared.Moves())
	target := sc.Outcome(0).Positions.At
	sc.press("w").tells("Before the first move", "Site rules", "secure them against falling", "prove zero pressure", "Enter read, go on")
	sc.press("w", "u", "r", "c").settle() // none of these goes on
	if len(sc.setup().Made()) > 0 || sc.setup().Warned {
		t.Fatal("another key than Enter leaves the cautions")
	}
	sc.press("enter").tells("move 1 of 58", "to the OPERATOR SIDE")
	for n := range 5 {
		sc.confirms(1).sound(dir)
		kept := read(t, dir).Positions
		want := plan.Made{Holder: moves[n].Holder, From: moves[n].From}
		if kept.Job != "D-098" || kept.Begun.Job != "D-101" || len(kept.Begun.Made) != n+1 || kept.Begun.Made[n] != want {
			t.Fatalf("after move %d the file has %+v of job %s", n+1, kept.Begun, kept.Job)
		}
	}
	sc.tells(fmt.Sprintf("%d made: it is at %s mm", moves[4].Holder, plan.Millimetres.Number(moves[4].To)), "move 6 of 58")
	sc.press("u").settle().sound(dir)
	sc.tells(fmt.Sprintf("undone: %d is at %s mm again", moves[4].Holder, plan.Millimetres.Number(moves[4].From)), "move 5 of 58")
	if got := sc.setup().Move().Holder; got != moves[4].Holder {
		t.Errorf("after the undo holder %d is next, want %d", got, moves[4].Holder)
	}

	sc.session.Journal.Close() // as if the power had failed: nothing else is saved
	sc = goOn(t, dir, 80, 24)
	sc.press("w").tells("4 moves already made", "D-101")
	sc.press("enter").tells("move 5 of 58")
	sc.sound(dir)
	sc.confirms(54).tells("all 58 moves made", "60 cutting, 0 resting, 28 parked", "15-74", "cut 1-60")
	sc.sound(dir)
	sc.confirms(3) // nothing more to confirm, and Enter doesn't end it
	if diff := cmp.Diff(target, sc.Actual.Positions.At); diff != "" {
		t.Errorf("the restarted setup leads elsewhere (-begun +ended):\n%s", diff)
	}
	sc.press("r").settle().tells("D-101 is set up and runs")
	kept := read(t, dir)
	if kept.Positions.Job != "D-101" || kept.Positions.Begun != nil || kept.Day.Jobs[0].State != plan.Running {
		t.Errorf("kept: job %s, setting %v, state %d", kept.Positions.Job, kept.Positions.Begun, kept.Day.Jobs[0].State)
	}
	if text, _ := os.ReadFile(filepath.Join(dir, "day.toml")); !strings.Contains(string(text), "# Inch goods: the widths are those of the customer's drawing.") {
		t.Error("the comments of day.toml are gone")
	}
	moved, unmoved := 0, 0
	for _, e := range eventsIn(t, dir) {
		switch {
		case e.Kind == record.Moved && e.Back:
			unmoved++
		case e.Kind == record.Moved:
			moved++
		}
	}
	if moved != 59 || unmoved != 1 {
		t.Errorf("the record has %d moves made and %d taken back, want 59 and 1", moved, unmoved)
	}
	if at := kept.Positions.Recorded; at.Hour() != 6 || at.Minute() < 30 || at.Nanosecond() != 0 || sc.Start.Clock.At.Sub(at).Abs() > time.Minute {
		t.Errorf("recorded %v by a clock that shows half past six; the day goes on at %v", at, sc.Start.Clock)
	}
	if o := sc.Outcome(0); o == nil || o.Step.Changeover.Repositions != 0 || o.Step.Setup.Total() != 0 {
		t.Error("the job that runs is to be set up again")
	}
}

// The next changeover is the one to the first job that doesn't run; its first confirmed move
// tells that the running one has ended, and changes nothing of what was planned.
func TestSetupAfterARunningJob(t *testing.T) {
	sc, dir := atSmall(t, 120, 36)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	totals, turns := sc.Present.Totals, len(sc.Jobs())
	sc.press("w").tells("D-101 → D-102", "D-101 is running: the first confirmed move records that it has ended")
	n := sc.Outcome(1).Step.Changeover.Repositions
	sc.press("enter").confirms(1).tells("D-101 was to run until", "y it has")
	if s := read(t, dir).Positions; s.Begun != nil || sc.session.Journal.Busy() {
		t.Error("the move is said to be made before it is known what became of D-101")
	}
	sc.press("y").settle().sound(dir)
	sc.tells("D-101 is done")
	kept := read(t, dir)
	if kept.Day.Jobs[0].State != plan.Done || kept.Positions.Begun.Job != "D-102" || kept.Positions.Job != "D-101" {
		t.Errorf("D-101 is %d, set up is %v", kept.Day.Jobs[0].State, kept.Positions.Begun)
	}
	if len(sc.Jobs()) != turns-1 || sc.Present.Totals.Repositions != totals.Repositions || len(sc.Present.Known) != turns-1 {
		t.Errorf("%d of %d jobs known with %d moves; before it was %d with %d", len(sc.Present.Known), len(sc.Jobs()), sc.Present.Totals.Repositions, turns, totals.Repositions)
	}
	sc.session.Journal.Close()
	sc = goOn(t, dir, 120, 36)
	sc.press("w", "enter").tells("D-101 → D-102", fmt.Sprintf("move 2 of %d", n))
	sc.press("esc").settle().tells("the setup of D-102 has begun")
	sc.press("w", "enter").tells(fmt.Sprintf("move 2 of %d", n))
	sc.sound(dir)
	for sc.setup().Move() != nil {
		sc.confirms(1)
	}
	sc.press("r").settle()
	if kept := read(t, dir); kept.Positions.Job != "D-102" || kept.Day.Jobs[0].State != plan.Done || kept.Day.Jobs[1].State != plan.Running {
		t.Errorf("kept: job %s, states %d %d", kept.Positions.Job, kept.Day.Jobs[0].State, kept.Day.Jobs[1].State)
	}
}

// What became of the job before is asked whatever is told first, once, and only while by
// the clock it runs; when nothing is told, the form is there as it was.
func TestWhatBecameOfTheJobBefore(t *testing.T) {
	sc, dir := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	before := file(t, dir, "positions.toml")
	at := sc.Actual.Positions.At
	sc.press("w", "enter", "f").enters("20", plan.Millimetres.Number(at[19]+plan.Millimetre), "").tells("D-101 was to run until")
	sc.press("c", "enter", "esc").tells("nothing is recorded: D-101 still runs", "measured: holder 20 at")
	if file(t, dir, "positions.toml") != before || sc.Jobs()[0].State != plan.Running {
		t.Error("something is told all the same")
	}
	sc.press("enter").tells("Has it ended?")
	sc.press("z").settle().tells("position corrected: 20 at", "D-101 is on hold")
	sc.confirms(1).tells("made: it is at") // not asked again
	if kept := read(t, dir); kept.Day.Jobs[0].State != plan.OnHold || kept.Positions.Begun.Job != "D-102" {
		t.Errorf("kept: state %d, %+v", kept.Day.Jobs[0].State, kept.Positions.Begun)
	}

	sc, dir = atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	sc.session.Journal.Now = func() time.Time { return time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC) } // long after its end
	sc.press("w", "enter").confirms(1).tells("made: it is at", "D-101 is done")
	if kept := read(t, dir); kept.Day.Jobs[0].State != plan.Done {
		t.Errorf("kept: state %d", kept.Day.Jobs[0].State)
	}
}

// A job that the beam can't run is passed over; where it can run none, that is told.
func TestSetupPassesRefusedJobsOver(t *testing.T) {
	s := crowded(t)
	s.Day.Jobs[0].Web *= 100
	sc := newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	sc.press("w").tells("D-098 → D-102", "D-102 comes first: it is set up now, not D-101")
	for i := range s.Day.Jobs {
		s.Day.Jobs[i].Web = 100 * s.Beam.Web.Length()
	}
	sc = newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	sc.press("w", "enter").tells("D-101 can't be set up from the current positions", "wider than the web area")
	sc.press("enter", "r", "u").settle().tells("D-101 can't be set up")
	for i := range s.Day.Jobs {
		s.Day.Jobs[i].State = plan.Done
	}
	sc = newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	if sc.press("w"); sc.Over != nil {
		t.Error("there is a guided setup without a job")
	}
	sc.tells("there is nothing to set up")
}

// Without positions.toml the holders are only assumed to stand so: that is said before
// the first move, and from the first move on it is in the file.
func TestSetupFromAnAssumedStanding(t *testing.T) {
	first, dir := atWork(t, 80, 24)
	file := filepath.Join(dir, "positions.toml")
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	sc := newScreen(t, read(t, dir), testLook(noColours, false, false), 80, 24)
	first.session.Journal.Close()
	sc.session.Journal.Take(dir, false)
	sc.session.Journal.Now = seconds()
	t.Cleanup(sc.session.Journal.Close)
	sc.settle().tells("note: positions.toml is missing")
	sc.press("w").tells("only assumed: measure", "f corrects those that are not")
	if _, err := os.Stat(file); err == nil {
		t.Error("what is assumed is written as if it was measured")
	}
	sc.press("enter").confirms(1).sound(dir)
	if kept := read(t, dir).Positions; kept.Assumed || len(kept.Begun.Made) != 1 {
		t.Errorf("kept: assumed %v, %v", kept.Assumed, kept.Begun)
	}
	if notes := strings.Join(sc.notes(), "\n"); strings.Contains(notes, "missing") || !strings.Contains(notes, "set up for D-101: 1 move made so far") {
		t.Errorf("the notes are of what was read, not of what stands: %q", notes)
	}
}

// Where someone else has changed day.toml, it stays theirs, and that the job runs is
// written beside it; and said.
func TestFinishBesideAForeignDay(t *testing.T) {
	sc, dir := atSmall(t, 120, 36)
	file := filepath.Join(dir, "day.toml")
	theirs, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	theirs = append(theirs, "# theirs\n"...)
	sc.press("w", "enter").confirmsAll()
	if err := os.WriteFile(file, theirs, 0o644); err != nil {
		t.Fatal(err)
	}
	sc.press("r").settle().tells("D-101 is set up and runs (u undoes that); someone else has changed day.toml")
	if now, _ := os.ReadFile(file); string(now) != string(theirs) {
		t.Error("their day.toml is overwritten")
	}
	if text, err := os.ReadFile(filepath.Join(dir, "day.bide.toml")); err != nil || !strings.Contains(string(text), `state    = "running"`) && !strings.Contains(string(text), `state = "running"`) {
		t.Errorf("the day beside it: %v\n%s", err, text)
	}
}

// A move is said to be made when it is saved, not before, and a slip on the key confirms none.
func TestMoveIsSavedBeforeItIsSaid(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter", "enter").tells("being saved", "move 1 of 58")
	sc.press("enter", "enter")
	if strings.Contains(sc.View(), "made: it is at") {
		t.Errorf("it is told before it is saved:\n%s", sc.View())
	}
	sc.settle().tells("made: it is at", "move 2 of 58")
	now := sc.session.Journal.Now()
	sc.session.Journal.Now = func() time.Time { return now }
	sc.session.Setup.Confirmed = now.Add(-session.LeastPause / 2) // the key is held down
	sc.confirms(5).tells("too quick", "move 2 of 58")
	if n := len(read(t, dir).Positions.Begun.Made); n != 1 {
		t.Errorf("%d moves are saved, want 1", n)
	}
}

// What can't be saved is said not to be, as long as it isn't, and leaving asks.
func TestSavingFails(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {20, 5}} {
		sc, dir := atWork(t, size[0], size[1])
		file := filepath.Join(dir, "positions.toml")
		before, _ := os.ReadFile(file)
		if err := os.Chmod(file, 0o444); err != nil { // refused for an administrator too
			t.Fatal(err)
		}
		sc.press("w", "enter").confirms(2).tells("NOT SAVED")
		if now, _ := os.ReadFile(file); string(now) != string(before) {
			t.Error("a write-protected file was written")
		}
		if len(sc.setup().Made()) != 2 {
			t.Error("moves that can't be saved are lost")
		}
		if sc.press("q"); sc.ended || !sc.AsksToQuit {
			t.Error("leaving with unsaved moves doesn't ask")
		}
		sc.press("q")
		if sc.ended {
			t.Error("the key that opened the question confirms it")
		}
		os.Chmod(file, 0o644)
		sc.press("s").settle()
		if sc.session.Journal.Fault() != "" || len(read(t, dir).Positions.Begun.Made) != 2 || len(eventsIn(t, dir)) != 2 {
			t.Errorf("saved again: %q, %d events", sc.session.Journal.Fault(), len(eventsIn(t, dir)))
		}
		if sc.press("q"); !sc.ended {
			t.Error("leaving asks though all is saved")
		}
	}
}

// Of two screens over one folder the second only looks, and says who has it; an
// invented day isn't written.
func TestWhoMayWrite(t *testing.T) {
	first, dir := atWork(t, 80, 24)
	before, _ := os.ReadFile(filepath.Join(dir, "positions.toml"))
	second := goOn(t, dir, 80, 24)
	second.press("w").settle().tells("Confirmed moves are not saved here", "open for writing by", "since")
	second.press("enter").confirms(3).tells("move 4 of 58")
	if now, _ := os.ReadFile(filepath.Join(dir, "positions.toml")); string(now) != string(before) {
		t.Error("the second one writes")
	}
	second.press("q").tells("Not saved: 3 moves made", "open for writing by", "Quit anyway?")
	if second.press("q"); second.ended {
		t.Error("leaving loses moves without a question")
	}
	first.session.Journal.Close()
	if third := goOn(t, dir, 80, 24); third.session.Journal.Why() != "" {
		t.Errorf("after the first has left: %s", third.session.Journal.Why())
	}
	shown := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	shown.session.Journal.Take(shown.Shop.Dir, true)
	shown.settle().press("w").tells("an invented day, nothing is saved")
}

// Looking ahead, a move may be made before its turn unless a holder is in its way.
func TestLookingAhead(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter")
	ahead := sc.setup().Ahead()
	blocked := slices.IndexFunc(ahead, func(m plan.Move) bool { return changeover.Blocks(sc.Beam, sc.Actual.Positions.At, m) != 0 })
	for range blocked {
		sc.press("right")
	}
	sc.tells("looking ahead", "! waits for holder")
	sc.confirms(1).tells("moves first", "move 1 of 58")
	sc.press("home", "right").confirms(1).tells("move 2 of 58")
	if got := sc.setup().Made()[0].Holder; got != ahead[1].Holder {
		t.Errorf("holder %d was confirmed, want %d", got, ahead[1].Holder)
	}
	sc.sound(dir)
}
