package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/keys"
	"bide/ui/setup"

	tea "github.com/charmbracelet/bubbletea"
)

// field is what is typed into the field with a label, of a form of the guided setup.
func (s *screen) field(label string) string {
	for _, row := range strings.Split(strings.ReplaceAll(s.View(), s.Caret, ""), "\n") {
		if typed, is := strings.CutPrefix(strings.TrimLeft(row, s.Cursor+" "), label+" "); is {
			return strings.Fields(typed)[0]
		}
	}
	return ""
}

// Both forms begin at the holder, with that of the move looked at; a digit begins another
// number, Enter goes on to the position.
func TestFormsBeginAtTheHolder(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(1)
	number := sc.setup().Move().Holder
	for _, key := range []string{"f", "c"} {
		sc.press(key)
		sc.tells(sc.Cursor+" holder", "Enter keeps it")
		if text := sc.field("holder"); text != fmt.Sprint(number) {
			t.Errorf("%s begins with holder %q, want %d", key, text, number)
		}
		sc.press("enter").tells(sc.Cursor + " is at")
		if text := sc.field("holder"); text != fmt.Sprint(number) {
			t.Errorf("%s: after Enter it is holder %q", key, text)
		}
		sc.press("esc", key, "1", "2")
		if text := sc.field("holder"); text != "12" {
			t.Errorf("%s: 1 and 2 make holder %q", key, text)
		}
		sc.press("esc", key, "backspace", "7")
		if text, want := sc.field("holder"), fmt.Sprint(number/10)+"7"; text != want {
			t.Errorf("%s: a digit taken away and 7 make holder %q, want %s", key, text, want)
		}
		sc.press("esc")
	}
}

// The keys of the guided setup pressed twice, or held, do nothing to the day: that a job runs doesn't
// make another run, or that one wait.
func TestSetupKeysPressedTwice(t *testing.T) {
	sc, _ := atSmall(t, 80, 24)
	sc.press("w", "enter").confirmsAll().press("r").settle()
	day := sc.Now.All
	sc.press("r", "r", "r").settle().tells("D-101 runs already, as confirmed in the guided setup")
	if !slices.Equal(day, sc.Now.All) {
		t.Error("the guided setup's key pressed again changes the day")
	}
	if sc.Job().ID != "D-102" {
		t.Errorf("%s is picked, the next to be set up is D-102", sc.Job().ID)
	}
	sc.press("u").settle().tells("D-101 is waiting again")
	for _, b := range keys.NewTable(false).All {
		if b.Where&keys.OnSetup != 0 && (b.Act == keys.Runs || b.Act == keys.Fault) {
			for _, key := range b.Keys {
				if a := sc.ActionOf(key, keys.OnDay); a == keys.MarkDone || a == keys.RemoveJob || a == keys.Hold {
					t.Errorf("%s in the guided setup is another thing in the panes, that can't be meant", key)
				}
			}
		}
	}
}

// Whatever is said, Enter confirms no move that isn't seen: at every size from 20x4 on holder
// and both positions stay, or the text has the screen and the next key puts it away.
func TestMessagesHideNoMove(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	sc.session.Journal.Take(sc.Shop.Dir, true)
	sc.session.Journal.Now = seconds()
	sc.settle().press("w", "enter").confirms(1)
	text := "holder 84 can't move yet: holder 85 is in its way and moves first; " + strings.Repeat("and more of it ", 9)
	move, u := sc.setup().Move(), sc.Shop.Unit
	aside := 0
	for w := 20; w <= 130; w += 3 {
		for h := 3; h <= 40; h += fewer(1, 3) {
			sc.send(tea.WindowSizeMsg{Width: w, Height: h})
			var figures []string // above the positions that it moves from and to
			rows := strings.Split(sc.saying("").View(), "\n")
			if at := slices.IndexFunc(rows, func(l string) bool { return strings.HasPrefix(l, " from ") }); at > 0 {
				figures = rows[1:at]
			}
			sc.saying(text).fits()
			if sc.whole("any key") {
				aside++
				if sc.press("enter"); sc.session.Journal.Busy() || sc.Notice.Text != "" {
					t.Fatalf("%dx%d: the key that puts a text away confirms a move", w, h)
				}
			}
			frame := sc.View()
			for _, l := range figures {
				if !strings.Contains(frame, l) {
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
	number := sc.setup().Move().Holder
	sc.press("c").enters("", "", "n", "")
	sc.press("u").settle()
	if want := fmt.Sprintf("%d is good again", number); !sc.whole(want) || sc.whole("marked") {
		t.Errorf("no %q in\n%s", want, sc.View())
	}
	if frame := sc.View(); !strings.Contains(frame, plan.Millimetres.Number(sc.setup().Move().To)) {
		t.Errorf("the move is hidden:\n%s", frame)
	}
}

// Blades are named before the first move: how many, which to which, in which holders, how
// long; and at the step of a holder that changes its own.
func TestBladesAreNamedBeforeTheFirstMove(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	sc.press("w")
	job, swaps := sc.setup().Job, sc.setup().Swaps()
	if len(swaps) == 0 {
		t.Fatal("no blade is swapped")
	}
	for n := range sc.Actual.Positions.At { // by hand: who is to cut, with another blade on
		now := sc.Actual.Positions.Blades[n]
		cuts := sc.Outcome(0).Positions.Blades[n] == job.Blade && sc.setup().Plan.Step.Changeover.Holders[n].Use == plan.Cutting
		if want := cuts && now != (plan.Blade{}) && now != job.Blade; want != slices.Contains(swaps, n+1) {
			t.Errorf("holder %d: swapped %v, want %v", n+1, !want, want)
		}
	}
	text := setup.Blades(sc.setup(), sc.Shared)
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
		for range sc.setup().Ahead() {
			m := sc.setup().Move()
			named := sc.whole(fmt.Sprintf("lade to %g", job.Blade.Bevel)) || sc.whole(" out, ") && sc.whole("Blade:")
			if named != slices.Contains(swaps, m.Holder) {
				t.Fatalf("%v, holder %d: a swap is named: %v\n%s", size, m.Holder, named, sc.View())
			}
			sc.session.Setup.Look++
			sc.follow()
		}
		sc.session.Setup.Look, sc.session.Setup.Warned = 0, false
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

// A guided setup that can't go on shows no progress.
func TestWhatASetupSaysOfProgress(t *testing.T) {
	sc, _ := atWork(t, 120, 36)
	sc.press("w", "enter")
	sc.confirms(1).press("esc").tells("has begun")
	sc.press("w").settle().press("enter").tells(sc.Theme.Trim + sc.Theme.Trim)
	sc.setup().Plan = &planning.Outcome{Turn: plan.Turn{Faults: []plan.Fault{plan.NewFault("x", "no way")}}}
	if sc.tells("can't be set up"); strings.Contains(strings.Split(sc.View(), "\n")[0], sc.Theme.Bar) {
		t.Errorf("a guided setup that can't go on shows how far it is:\n%s", sc.View())
	}
}

// Where it isn't known what the beam last ran, a guided setup tells only where it leads.
func TestSetupFromAnUnknownJob(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	stands := *sc.Actual.Positions
	stands.Job = ""
	sc.session.Actual.Positions = &stands
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
	if got := sc.field("is at"); got != "412.5" {
		t.Errorf("9412.5 without its first digit is %q", got)
	}
	sc.tells(sc.Caret + "412.5")
	if sc.press("end", "left", "backspace", ","); sc.field("is at") != "412,5" {
		t.Errorf("a comma for the point makes %q", sc.field("is at"))
	}
}
