package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/session/workday"
	"bide/plan/words"
	"bide/ui/keys"
	"bide/ui/setup"

	tea "github.com/charmbracelet/bubbletea"
)

// Both forms begin at the holder, with that of the move looked at; a digit begins another
// number, Enter goes on to the place.
func TestFormsBeginAtTheHolder(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w", "enter").ticks(1)
	number := sc.walk().Move().Holder
	for _, key := range []string{"f", "c"} {
		sc.press(key)
		form := sc.walk().Form
		if form.At != setup.FieldHolder || form.Fields[setup.FieldHolder].Value() != fmt.Sprint(number) {
			t.Errorf("%s begins at field %d with holder %q, want %d", key, form.At, form.Fields[setup.FieldHolder].Value(), number)
		}
		sc.tells("Enter keeps it")
		sc.press("enter")
		if form.At != setup.FieldPlace || form.Fields[setup.FieldHolder].Value() != fmt.Sprint(number) {
			t.Errorf("%s: Enter leads to field %d, holder %q", key, form.At, form.Fields[setup.FieldHolder].Value())
		}
		sc.press("esc", key, "1", "2")
		if text := sc.walk().Form.Fields[setup.FieldHolder].Value(); text != "12" {
			t.Errorf("%s: 1 and 2 make holder %q", key, text)
		}
		sc.press("esc", key, "backspace", "7")
		if text, want := sc.walk().Form.Fields[setup.FieldHolder].Value(), fmt.Sprint(number/10)+"7"; text != want {
			t.Errorf("%s: a digit taken away and 7 make holder %q, want %s", key, text, want)
		}
		sc.press("esc")
	}
}

// The walk's keys pressed twice, or held, do nothing to the day: that a job runs doesn't
// make another run, or that one wait.
func TestWalkKeysPressedTwice(t *testing.T) {
	sc, _ := atSmall(t, 80, 24)
	sc.press("w", "enter").allTicks().press("r").settle()
	day := sc.History.Now.All
	sc.press("r", "r", "r").settle().tells("D-101 runs already, as confirmed in the guided setup")
	if !slices.Equal(day, sc.History.Now.All) {
		t.Error("the walk's key pressed again changes the day")
	}
	if sc.Job().ID != "D-102" {
		t.Errorf("%s is picked, the next to be set up is D-102", sc.Job().ID)
	}
	sc.press("u").settle().tells("D-101 is waiting again")
	for _, b := range keys.Bindings {
		if b.Where&keys.OnSetup != 0 && (b.Act == keys.Runs || b.Act == keys.Fault) {
			for _, key := range b.Keys {
				if a := sc.ActionOf(key, keys.OnDay); a == keys.MarkDone || a == keys.RemoveJob || a == keys.Hold {
					t.Errorf("%s on the walk is another thing in the panes, that can't be meant", key)
				}
			}
		}
	}
}

// Whatever is said, Enter ticks no move that isn't seen: at every size from 20x4 on holder
// and both places stay, or the text has the screen and the next key puts it away.
func TestMessagesHideNoMove(t *testing.T) {
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24)
	sc.Journal.Take(sc.Shop.Dir, true)
	sc.Journal.Now = seconds()
	sc.settle().press("w", "enter").ticks(1)
	text := "holder 84 can't move yet: holder 85 is in its way and moves first; " + strings.Repeat("and more of it ", 9)
	move, u := sc.walk().Move(), sc.Shop.Unit
	aside := 0
	for w := 20; w <= 130; w += 3 {
		for h := 3; h <= 40; h += fewer(1, 3) {
			sc.send(tea.WindowSizeMsg{Width: w, Height: h})
			sc.Notice = workday.Notice{Text: text}
			sc.fits()
			if sc.whole("any key") {
				aside++
				if sc.press("enter"); sc.Journal.Busy() || sc.Notice.Text != "" {
					t.Fatalf("%dx%d: the key that puts a text away ticks a move", w, h)
				}
			}
			frame := sc.View()
			_, room := setup.Rooms(sc.Size)
			figures := setup.Figures(sc.walk(), sc.Shared, move, room)
			if w < 36 {
				figures = nil
			}
			for _, l := range figures {
				if !strings.Contains(frame, textOf(l)) {
					t.Fatalf("%dx%d: the large figures are covered:\n%s", w, h, frame)
				}
			}
			if len(figures) == 0 && !strings.Contains(frame, fmt.Sprint(move.Holder)) {
				t.Fatalf("%dx%d: no holder in\n%s", w, h, frame)
			}
			for _, part := range []string{u.Number(move.From), u.Number(move.To)} {
				if !strings.Contains(frame, part) {
					t.Fatalf("%dx%d: no %s in\n%s", w, h, part, frame)
				}
			}
		}
	}
	if aside < fewer(20, 7) {
		t.Errorf("a long text had the screen %d times", aside)
	}
}

// What is taken back is told in few words as it is again, and not as it was.
func TestTakenBackInFewWords(t *testing.T) {
	sc, _ := atWork(t, 20, 5)
	sc.press("w", "enter")
	number := sc.walk().Move().Holder
	sc.press("c").enters("", "", "n", "")
	sc.press("u").settle()
	if want := fmt.Sprintf("%d is good again", number); !sc.whole(want) || sc.whole("marked") {
		t.Errorf("no %q in\n%s", want, sc.View())
	}
	if frame := sc.View(); !strings.Contains(frame, plan.Millimetres.Number(sc.walk().Move().To)) {
		t.Errorf("the move is hidden:\n%s", frame)
	}
}

// Blades are named before the first move: how many, which to which, in which holders, how
// long; and at the step of a holder that changes its own.
func TestBladesAreNamedBeforeTheFirstMove(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w")
	job, swaps := sc.walk().Job, sc.walk().Swaps()
	if len(swaps) == 0 {
		t.Fatal("no blade is swapped")
	}
	for n := range sc.Actual.Positions.At { // by hand: who is to cut, with another blade on
		now := sc.Actual.Positions.Blades[n]
		cuts := sc.Outcome(0).Positions.Blades[n] == job.Blade && sc.walk().Plan.Step.Changeover.Holders[n].Use == plan.Cutting
		if want := cuts && now != (plan.Blade{}) && now != job.Blade; want != slices.Contains(swaps, n+1) {
			t.Errorf("holder %d: swapped %v, want %v", n+1, !want, want)
		}
	}
	text := setup.Blades(sc.walk(), sc.Shared)
	for _, want := range []string{words.Count(len(swaps), "blade"), words.Ranges(swaps), "min", fmt.Sprint(job.Blade.Bevel)} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
	sc.send(tea.WindowSizeMsg{Width: 80, Height: 30})
	sc.tells(words.Count(len(swaps), "blade") + " to swap")
	for _, size := range [][2]int{{20, 5}, {40, 12}, {80, 24}, {120, 36}} {
		sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		sc.press("enter", "home")
		for range sc.walk().Ahead() {
			m := sc.walk().Move()
			named := sc.whole(fmt.Sprintf("lade to %g", job.Blade.Bevel)) || sc.whole(" out, ") && sc.whole("Blade:")
			if named != slices.Contains(swaps, m.Holder) {
				t.Fatalf("%v, holder %d: a swap is named: %v\n%s", size, m.Holder, named, sc.View())
			}
			sc.walk().Look++
		}
		sc.walk().Look, sc.walk().Warned = 0, false
	}
}

// What doesn't fit on the page of cautions can be turned to.
func TestAllCautionsCanBeRead(t *testing.T) {
	for _, size := range [][2]int{{40, 12}, {80, 14}, {80, 24}} {
		sc, _ := atWork(t, size[0], size[1])
		sc.press("w")
		var read strings.Builder
		for range 60 {
			read.WriteString(sc.View())
			sc.press("down")
		}
		flatRead := strings.Join(strings.Fields(read.String()), " ")
		for _, last := range []string{"tip", "min:"} {
			if !strings.Contains(flatRead, last) {
				t.Errorf("%v: never %q", size, last)
			}
		}
	}
}

// A walk that can't go on shows no progress; and where the day's clock begins to go by the
// real time, that is said.
func TestWhatAWalkSaysOfTimeAndProgress(t *testing.T) {
	sc, _ := atWork(t, 120, 36)
	sc.press("w", "enter")
	if sc.ticks(1); strings.Contains(sc.Notice.Text, "real time") {
		t.Error("it is said before the day's clock changes")
	}
	sc.press("esc").tells("has begun", "the day follows the real time now")
	sc.press("w").settle().press("enter").tells(sc.Theme.Trim + sc.Theme.Trim)
	sc.walk().Plan = &planning.Outcome{Turn: plan.Turn{Faults: []plan.Fault{plan.NewFault("x", "no way")}}}
	if sc.tells("can't be set up"); strings.Contains(strings.Split(sc.View(), "\n")[0], sc.Theme.Bar) {
		t.Errorf("a walk that can't go on shows how far it is:\n%s", sc.View())
	}
}

// Where it isn't known what the beam last ran, a walk tells only where it leads.
func TestWalkFromAnUnknownJob(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	stands := *sc.Actual.Positions
	stands.Job = ""
	sc.Actual.Positions = &stands
	sc.press("w").tells(" setup  to D-101 ")
	sc.send(tea.WindowSizeMsg{Width: 40, Height: 12})
	if sc.fits(); strings.Contains(sc.View(), "as it stands") {
		t.Errorf("unclear words:\n%s", sc.View())
	}
}

// A slip of the finger is mended where it is, in a correction too: the rest of the number
// stays.
func TestCorrectionHasACaret(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w", "enter", "f", "1", "2", "enter").types("9412.5").press("home", "delete")
	f := sc.walk().Form
	if got := f.Fields[setup.FieldPlace].Value(); got != "412.5" {
		t.Errorf("9412.5 without its first digit is %q", got)
	}
	sc.tells(sc.Caret + "412.5")
	if sc.press("end", "left", "backspace", ","); f.Fields[setup.FieldPlace].Value() != "412,5" {
		t.Errorf("a comma for the point makes %q", f.Fields[setup.FieldPlace].Value())
	}
}
