package ui

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// atWork is a screen over a copy of the demo in a folder of its own, that may be
// written, and the folder.
func atWork(t testing.TB, w, h int) (*screen, string) {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../testdata/demo")); err != nil {
		t.Fatal(err)
	}
	return goOn(t, dir, w, h), dir
}

// goOn starts the screen over a folder, as after it was ended.
func goOn(t testing.TB, dir string, w, h int) *screen {
	t.Helper()
	sc := newScreen(t, read(t, dir), testLook(noColours, false, false), w, h)
	sc.keep.take(false)
	t.Cleanup(sc.keep.close)
	sc.keep.now = seconds()
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

func (s *screen) walk() *walk { return s.over.(*walk) }

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

// ticks makes n moves.
func (s *screen) ticks(n int) *screen {
	for range n {
		s.press("enter").settle()
	}
	return s
}

// sound fails unless what is left leads from what stands to the layout, by the
// verifier, and what stands is in the file.
func (s *screen) sound(dir string) {
	s.t.Helper()
	w := s.walk()
	kept := read(s.t, dir)
	if diff := cmp.Diff(s.truth.stands.At, kept.Standing.At); diff != "" {
		s.t.Fatalf("the file has other places (-screen +file):\n%s", diff)
	}
	if w.o == nil || w.refused() {
		s.t.Fatal("there is no plan")
	}
	c := w.o.step.Changeover
	c.From, c.Moves, c.Repositions, c.Travel = s.truth.stands.At, w.ahead(s.desk), 0, 0
	for i := range c.Moves {
		c.Moves[i].Why = plan.Why{}
	}
	at := slices.Clone(c.From)
	for _, m := range c.Moves {
		if n := s.forecast.beam.Blocks(at, m); n != 0 {
			s.t.Fatalf("holder %d is blocked by %d in the order given", m.Holder, n)
		}
		at[m.Holder-1] = m.To
	}
	for i, h := range c.Holders {
		if at[i] != h.At {
			s.t.Fatalf("holder %d ends at %s, the plan has it at %s", i+1, at[i].MM(), h.At.MM())
		}
	}
	if faults := s.forecast.beam.Misplaced(at); len(faults) > 0 {
		s.t.Fatal(faults[0].Why(plan.Millimetres))
	}
}

// events are those in the record, by kind.
func eventsIn(t testing.TB, dir string) (out []shop.Event) {
	t.Helper()
	problems, err := shop.ReadRecord(os.DirFS(dir), func(e shop.Event) { out = append(out, e) })
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return out
}

// A whole changeover: cautions first, each tick in the file, an untick, the program
// ended in the middle and started again, what stands where, and the job runs.
func TestWalkFromEndToEnd(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	moves := slices.Clone(sc.desk.moves())
	target := sc.outcome(0).stands.At
	sc.press("w").tells("Before the first move", "zero pressure", "Enter read, go on")
	sc.press("w", "u", "d", "x").settle() // none of these goes on
	if len(sc.walk().made(sc.desk)) > 0 || sc.walk().warned {
		t.Fatal("another key than Enter leaves the cautions")
	}
	sc.press("enter").tells("move 1 of 58", "to the OPERATOR SIDE")
	for n := range 5 {
		sc.ticks(1).sound(dir)
		kept := read(t, dir).Standing
		want := plan.Made{Holder: moves[n].Holder, From: moves[n].From}
		if kept.Job != "D-098" || kept.Setting.Job != "D-101" || len(kept.Setting.Made) != n+1 || kept.Setting.Made[n] != want {
			t.Fatalf("after tick %d the file has %+v of job %s", n+1, kept.Setting, kept.Job)
		}
	}
	sc.tells(fmt.Sprintf("%d made: it stands at %s mm", moves[4].Holder, plan.Millimetres.Number(moves[4].To)), "move 6 of 58")
	sc.press("u").settle().sound(dir)
	sc.tells("that move is not made", "move 5 of 58")
	if got := sc.walk().move(sc.desk).Holder; got != moves[4].Holder {
		t.Errorf("after the untick holder %d is next, want %d", got, moves[4].Holder)
	}

	sc.keep.close() // as if the power had failed: nothing else is saved
	sc = goOn(t, dir, 80, 24)
	sc.press("w").tells("4 moves made before", "D-101")
	sc.press("enter").tells("move 5 of 58")
	sc.sound(dir)
	sc.ticks(54).tells("all 58 moves made", "60 cutting, 0 resting, 28 parked", "15-74", "cut 1-60")
	sc.sound(dir)
	sc.ticks(3) // nothing more to tick, and Enter doesn't end it
	if diff := cmp.Diff(target, sc.truth.stands.At); diff != "" {
		t.Errorf("the restarted walk leads elsewhere (-begun +ended):\n%s", diff)
	}
	sc.press("d").settle().tells("D-101 is set up and runs")
	kept := read(t, dir)
	if kept.Standing.Job != "D-101" || kept.Standing.Setting != nil || kept.Day.Jobs[0].State != plan.Running {
		t.Errorf("kept: job %s, setting %v, state %d", kept.Standing.Job, kept.Standing.Setting, kept.Day.Jobs[0].State)
	}
	if text, _ := os.ReadFile(filepath.Join(dir, "day.toml")); !strings.Contains(string(text), "# Inch goods: the widths are those of the customer's drawing.") {
		t.Error("the comments of day.toml are gone")
	}
	moved, unmoved := 0, 0
	for _, e := range eventsIn(t, dir) {
		switch e.Kind {
		case shop.EventMoved:
			moved++
		case shop.EventUnmoved:
			unmoved++
		}
	}
	if moved != 59 || unmoved != 1 {
		t.Errorf("the record has %d moves made and %d taken back, want 59 and 1", moved, unmoved)
	}
	if o := sc.outcome(0); o == nil || o.step.Changeover.Repositions != 0 || o.step.Setup.Total() != 0 {
		t.Error("the job that runs is to be set up again")
	}
}

// The next changeover is the one to the first job that doesn't run; its first tick
// tells that the running one has ended, and changes nothing of what was planned.
func TestWalkAfterARunningJob(t *testing.T) {
	sc, dir := atWork(t, 120, 36)
	sc.press("w", "enter").ticks(58).press("d").settle()
	totals, turns := sc.present.totals, len(sc.jobs())
	sc.press("w").tells("D-101 → D-102", "D-101 runs: the first tick tells that it has ended")
	n := sc.outcome(1).step.Changeover.Repositions
	sc.press("enter").ticks(1).sound(dir)
	kept := read(t, dir)
	if kept.Day.Jobs[0].State != plan.Done || kept.Standing.Setting.Job != "D-102" || kept.Standing.Job != "D-101" {
		t.Errorf("D-101 is %d, set up is %v", kept.Day.Jobs[0].State, kept.Standing.Setting)
	}
	if len(sc.jobs()) != turns-1 || sc.present.totals.Repositions != totals.Repositions || len(sc.present.known) != turns-1 {
		t.Errorf("%d of %d jobs known with %d moves; before it was %d with %d", len(sc.present.known), len(sc.jobs()), sc.present.totals.Repositions, turns, totals.Repositions)
	}
	sc.keep.close()
	sc = goOn(t, dir, 120, 36)
	sc.press("w", "enter").tells("D-101 → D-102", fmt.Sprintf("move 2 of %d", n))
	sc.press("esc").settle().tells("D-102 is half set up")
	sc.press("w", "enter").tells(fmt.Sprintf("move 2 of %d", n))
	sc.sound(dir)
	for sc.walk().move(sc.desk) != nil {
		sc.ticks(1)
	}
	sc.press("d").settle()
	if kept := read(t, dir); kept.Standing.Job != "D-102" || kept.Day.Jobs[0].State != plan.Done || kept.Day.Jobs[1].State != plan.Running {
		t.Errorf("kept: job %s, states %d %d", kept.Standing.Job, kept.Day.Jobs[0].State, kept.Day.Jobs[1].State)
	}
}

// A job that the beam can't run is passed over; where it can run none, that is told.
func TestWalkPassesRefusedJobsOver(t *testing.T) {
	s := demo(t)
	s.Day.Jobs[0].Web *= 100
	sc := newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	sc.press("w").tells("D-098 → D-102", "D-102 comes first: the walk is to that, not to D-101")
	for i := range s.Day.Jobs {
		s.Day.Jobs[i].Web = 100 * s.Beam.Web.Length()
	}
	sc = newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	sc.press("w", "enter").tells("D-101 can't be set up from what stands", "wider than the web area")
	sc.press("enter", "d", "u").settle().tells("D-101 can't be set up")
	for i := range s.Day.Jobs {
		s.Day.Jobs[i].State = plan.Done
	}
	sc = newScreen(t, s, testLook(noColours, false, false), 80, 24).settle()
	if sc.press("w"); sc.over != nil {
		t.Error("there is a walk without a job")
	}
	sc.tells("there is nothing to set up")
}

// Without standing.toml the holders are only assumed to stand so: that is said before
// the first move, and from the first tick on it is in the file.
func TestWalkFromAnAssumedStanding(t *testing.T) {
	_, dir := atWork(t, 80, 24)
	file := filepath.Join(dir, "standing.toml")
	if err := os.Remove(file); err != nil {
		t.Fatal(err)
	}
	sc := newScreen(t, read(t, dir), testLook(noColours, false, false), 80, 24)
	k := newKeeper(sc.shop)
	k.barred, k.now = "", seconds() // the first screen has the lock
	sc.keep = k
	t.Cleanup(k.close)
	sc.settle().press("w").tells("only assumed: measure", "f tells of those that don't")
	if _, err := os.Stat(file); err == nil {
		t.Error("what is assumed is written as if it was measured")
	}
	sc.press("enter").ticks(1).sound(dir)
	if kept := read(t, dir).Standing; kept.Assumed || len(kept.Setting.Made) != 1 {
		t.Errorf("kept: assumed %v, %v", kept.Assumed, kept.Setting)
	}
}

// Where someone else has changed day.toml, it stays theirs, and that the job runs is
// written beside it; and said.
func TestFinishBesideAForeignDay(t *testing.T) {
	sc, dir := atWork(t, 120, 36)
	file := filepath.Join(dir, "day.toml")
	theirs, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	theirs = append(theirs, "# theirs\n"...)
	sc.press("w", "enter").ticks(58)
	if err := os.WriteFile(file, theirs, 0o644); err != nil {
		t.Fatal(err)
	}
	sc.press("d").settle().tells("D-101 is set up and runs; someone else has changed day.toml")
	if now, _ := os.ReadFile(file); string(now) != string(theirs) {
		t.Error("their day.toml is overwritten")
	}
	if text, err := os.ReadFile(filepath.Join(dir, "day.bide.toml")); err != nil || !strings.Contains(string(text), `state    = "running"`) && !strings.Contains(string(text), `state = "running"`) {
		t.Errorf("the day beside it: %v\n%s", err, text)
	}
}

// A tick is told when it is saved, not before, and a slip on the key isn't a tick.
func TestTickIsSavedBeforeItIsTold(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter", "enter").tells("being saved", "move 1 of 58")
	sc.press("enter", "enter")
	if strings.Contains(sc.View(), "made: it stands") {
		t.Errorf("it is told before it is saved:\n%s", sc.View())
	}
	sc.settle().tells("made: it stands", "move 2 of 58")
	now := sc.keep.now()
	sc.keep.now = func() time.Time { return now }
	sc.walk().ticked = now.Add(-leastPause / 2) // the key is held down
	sc.ticks(5).tells("that was quick", "move 2 of 58")
	if n := len(read(t, dir).Standing.Setting.Made); n != 1 {
		t.Errorf("%d ticks are saved, want 1", n)
	}
}

// What can't be saved is said not to be, as long as it isn't, and leaving asks.
func TestSavingFails(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {20, 5}} {
		sc, dir := atWork(t, size[0], size[1])
		file := filepath.Join(dir, "standing.toml")
		before, _ := os.ReadFile(file)
		if err := os.Chmod(file, 0o444); err != nil { // refused for an administrator too
			t.Fatal(err)
		}
		sc.press("w", "enter").ticks(2).tells("NOT SAVED")
		if now, _ := os.ReadFile(file); string(now) != string(before) {
			t.Error("a write-protected file was written")
		}
		if len(sc.walk().made(sc.desk)) != 2 {
			t.Error("ticks that can't be saved are lost")
		}
		if sc.press("q"); sc.ended || !sc.asks {
			t.Error("leaving with unsaved ticks doesn't ask")
		}
		sc.press("q")
		if sc.ended {
			t.Error("the key that opened the question confirms it")
		}
		os.Chmod(file, 0o644)
		sc.press("s").settle()
		if sc.unsaved != "" || len(read(t, dir).Standing.Setting.Made) != 2 || len(eventsIn(t, dir)) != 2 {
			t.Errorf("saved again: %q, %d events", sc.unsaved, len(eventsIn(t, dir)))
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
	before, _ := os.ReadFile(filepath.Join(dir, "standing.toml"))
	second := goOn(t, dir, 80, 24)
	second.press("w").tells("Ticks are not saved here", "open for writing by", "since")
	second.press("enter").ticks(3).tells("move 4 of 58")
	if now, _ := os.ReadFile(filepath.Join(dir, "standing.toml")); string(now) != string(before) {
		t.Error("the second one writes")
	}
	if second.press("q"); !second.ended {
		t.Error("leaving asks though nothing was to be kept")
	}
	first.keep.close()
	if third := goOn(t, dir, 80, 24); third.keep.barred != "" {
		t.Errorf("after the first has left: %s", third.keep.barred)
	}
	shown := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24)
	shown.keep.take(true)
	shown.settle().press("w").tells("an invented day, nothing is written")
}

// A holder that stands elsewhere is told where, in any unit; what can't be is
// refused with its reason; ticks are kept and the rest is planned again.
func TestFoundElsewhere(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").ticks(4)
	typed := func(text string) {
		for _, r := range text {
			sc.press(string(r))
		}
	}
	sc.press("f")
	typed("89")
	sc.press("enter").tells("there is no holder 89: they are numbered 1 to 88")
	sc.press("ctrl+u")
	typed("20")
	sc.press("enter")
	typed("x")
	sc.press("enter").tells("is no length")
	sc.press("ctrl+u")
	typed("5000")
	sc.press("enter").tells("off the rail, which runs from -400 mm to 1950 mm")
	at := sc.truth.stands.At
	sc.press("ctrl+u")
	typed(plan.Millimetres.Number(at[20])) // where holder 21 stands
	sc.tells("0 mm apart", "tell the other one too")
	sc.press("enter", "enter").tells("0 mm apart") // not alone
	typed("20")
	sc.press("enter")
	want := at[19] + plan.Millimetre
	typed(plan.Inches.Number(want) + "in")
	sc.tells("1 mm to the drive side of where it was thought")
	sc.press("enter").tells("found: holder 20 at")
	sc.press("enter").settle().tells("found: 20 at", "move 5 of")
	sc.sound(dir)
	if got := sc.truth.stands.At[19] - want; max(got, -got) > 2*plan.Inch/10000 {
		t.Errorf("holder 20 is %v nm off", got)
	}
	if kept := read(t, dir).Standing; len(kept.Setting.Made) != 4 {
		t.Errorf("%d ticks are kept, want 4", len(kept.Setting.Made))
	}
	all := eventsIn(t, dir)
	if e := all[len(all)-1]; e.Kind != shop.EventFound || e.Holder != 20 || e.From != at[19] {
		t.Errorf("the record ends with %+v", e)
	}
	sc.press("f", "esc").tells("nothing was changed")
	sc.press("u", "u").settle().sound(dir)
}

// A holder that jams on its way or loses its air is marked, with its reason, and the
// rest is planned again; one mended is good again.
func TestTroubleOnTheWay(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").ticks(3)
	number := sc.walk().move(sc.desk).Holder
	sc.press("x").tells(fmt.Sprint(number), "s stuck, a no air")
	sc.press("enter", "enter").tells("type s, a, o or g")
	sc.press("a", "enter", "h", "i", "s", "s", "enter").settle().tells(fmt.Sprintf("holder %d is marked no cut", number), "move 4 of")
	sc.sound(dir)
	kept := read(t, dir)
	if m := kept.Marks[number]; m != (shop.Mark{Condition: plan.NoCut, Reason: "hiss"}) || len(kept.Standing.Setting.Made) != 3 {
		t.Errorf("kept: %+v, %v", m, kept.Standing.Setting)
	}
	if sc.walk().o.step.Changeover.Holders[number-1].Use == plan.Cutting {
		t.Error("a holder without air is to cut")
	}
	// It jams where no cut may be near: between two cuts there is no place for it.
	stuck := sc.walk().move(sc.desk)
	half := (stuck.From + stuck.To) / 2
	sc.press("x")
	for _, r := range plan.Millimetres.Number(half) {
		sc.press(string(r))
	}
	sc.press("enter", "s", "enter", "enter").settle()
	if at := read(t, dir).Standing.At[stuck.Holder-1]; at != half && sc.unsaved == "" {
		t.Errorf("it is kept at %s, it jammed at %s", at.MM(), half.MM())
	}
	if sc.walk().refused() {
		sc.tells("can't be set up from what stands", "x trouble")
	} else {
		sc.sound(dir)
	}
	sc.press("x")
	sc.walk().form.at = fieldHolder
	sc.press("ctrl+u")
	for _, r := range fmt.Sprint(stuck.Holder) {
		sc.press(string(r))
	}
	sc.press("enter", "enter", "g", "enter", "enter").settle()
	sc.sound(dir)
	if m, marked := read(t, dir).Marks[stuck.Holder]; marked {
		t.Errorf("it is good again and still marked %v", m)
	}
}

// Looking ahead, a move may be made before its turn unless a holder is in its way.
func TestLookingAhead(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter")
	ahead := sc.walk().ahead(sc.desk)
	blocked := slices.IndexFunc(ahead, func(m plan.Move) bool { return sc.forecast.beam.Blocks(sc.truth.stands.At, m) != 0 })
	for range blocked {
		sc.press("right")
	}
	sc.tells("looking ahead", "! waits for holder")
	sc.ticks(1).tells("goes first", "move 1 of 58")
	sc.press("home", "right").ticks(1).tells("move 2 of 58")
	if got := sc.walk().made(sc.desk)[0].Holder; got != ahead[1].Holder {
		t.Errorf("holder %d was ticked, want %d", got, ahead[1].Holder)
	}
	sc.sound(dir)
}

// Every frame of a walk fits, whatever the size and stage, and says what is next.
func TestWalkFitsEverySize(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	stages := [][]string{{"w"}, {"enter"}, {"f"}, {"2"}, {"enter"}, {"9"}, {"esc", "x"}, {"esc", "right", "right"}}
	look := func() {
		for w := 1; w <= 210; w += fewer(1, 5) + w/5 {
			for h := 1; h <= 70; h += fewer(1, 3) + h/5 {
				sc.send(tea.WindowSizeMsg{Width: w, Height: h})
				sc.fits()
			}
		}
	}
	for _, keys := range stages {
		sc.press(keys...)
		look()
	}
	for w := 20; w < 200; w += fewer(3, 20) {
		for h := 3; h < 60; h += fewer(2, 9) {
			sc.send(tea.WindowSizeMsg{Width: w, Height: h})
			m := sc.walk().move(sc.desk)
			if frame := sc.View(); !strings.Contains(frame, plan.Millimetres.Number(m.To)) || h > 4 && !strings.Contains(frame, "Enter") {
				t.Fatalf("%dx%d doesn't tell where holder %d goes:\n%s", w, h, m.Holder, frame)
			}
		}
	}
	sc.ticks(58)
	look()
}

// Random keys on a walk: every frame fits, what stands can stand so and is in the
// file, and what is ticked and unticked is what stands.
func TestRandomKeysOnAWalk(t *testing.T) {
	const seed = 20261126
	r := rand.New(rand.NewPCG(seed, 1))
	sc, dir := atWork(t, 80, 24)
	keys := []string{"enter", "enter", "enter", " ", "u", "u", "backspace", "right", "left", "home", "f", "x", "s", "a", "g", "o", "1", "5", "0", ".", "tab", "esc", "w", "w", "?", "d"}
	var typed []string
	for range fewer(1500, 250) {
		key := keys[r.IntN(len(keys))]
		if key == "esc" && r.IntN(3) > 0 {
			key = "enter"
		}
		typed = append(typed, key)
		sc.press(key)
		if r.IntN(3) > 0 {
			sc.settle()
		}
		if r.IntN(30) == 0 {
			sc.send(tea.WindowSizeMsg{Width: 1 + r.IntN(210), Height: 1 + r.IntN(65)})
		}
		sc.fits()
		if faults := sc.forecast.beam.Misplaced(sc.truth.stands.At); len(faults) > 0 {
			t.Fatalf("seed %d, keys %q: %s", seed, typed, faults[0].Why(plan.Millimetres))
		}
	}
	sc.settle()
	if diff := cmp.Diff(sc.truth.stands.At, read(t, dir).Standing.At); diff != "" {
		t.Errorf("seed %d: the file has other places (-screen +file):\n%s", seed, diff)
	}
}

// The walk is kept as it was looked at and found good.
func TestGoldenWalk(t *testing.T) {
	for _, mode := range []struct {
		name    string
		colours int
		ascii   bool
	}{{"plain", noColours, false}, {"ascii", noColours, true}, {"dark", manyColours, false}} {
		sc := newScreen(t, demo(t), testLook(mode.colours, false, mode.ascii), 80, 24)
		sc.keep.take(true)
		sc.keep.now = seconds()
		sc.settle().press("w", "enter").ticks(12)
		for _, size := range [][2]int{{20, 5}, {40, 12}, {80, 24}, {120, 36}, {200, 60}} {
			if mode.colours == manyColours && size[0] != 80 {
				continue
			}
			sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			golden(t, fmt.Sprintf("%dx%d_walk_%s", size[0], size[1], mode.name), sc.View())
		}
		sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})
		if mode.name != "plain" {
			continue
		}
		sc.press("f", "1", "7", "enter", "9")
		golden(t, "80x24_walk_found", sc.View())
		golden(t, "80x24_walk_trouble", sc.press("esc", "x").View())
		sc.press("esc").ticks(46)
		golden(t, "80x24_walk_done", sc.View())
		golden(t, "80x24_walk_cautions", sc.press("esc", "w").settle().View())
	}
}
