package ui

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/session/draft"
	"bide/plan/shop"
	"bide/plan/shop/knife"
	"bide/plan/words"
	"bide/ui/frame"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// The screens are kept as they were looked at and found good.
func TestGoldenScreens(t *testing.T) {
	for _, mode := range modes {
		s := plannedScreen(t, crowded(t), testLook(mode.colours, mode.light, mode.ascii), 80, 24).settle()
		for _, size := range sizes {
			if mode.colours == manyColours && size[0] != 120 { // one of each for its colours: what it says is the same
				continue
			}
			s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			golden(t, fmt.Sprintf("%dx%d_%s", size[0], size[1], mode.name), s.View())
		}
	}
}

func TestGoldenViews(t *testing.T) {
	for name, keys := range map[string][]string{
		"day_large":   {"enter"},
		"beam_near":   {"2", "enter", "l", "l", "l", "+", "+"},
		"moves_large": {"3", "enter", "j", "j"},
		"moved_job":   {"j", "j", "j", "j", "K", "K"},
		"question":    {"J", "q"},
		"help":        {"?"},
	} {
		day := crowded(t)
		if name == "moved_job" || name == "question" { // another order is to be planned
			day = smallDay(t, 6)
		}
		s := plannedScreen(t, day, testLook(noColours, false, false), 80, 24).settle()
		golden(t, "80x24_"+name, s.press(keys...).settle().View())
	}
	odd := plannedScreen(t, oddShop(t), testLook(noColours, false, true), 120, 36).settle()
	golden(t, "120x36_odd_ascii", odd.press("j", "j", "j").View())
	waiting := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	for range 3 {
		waiting.background()
	}
	golden(t, "80x24_waiting", waiting.press("j", "j", "j").View())
}

// Every frame fits, whatever the size, in every state.
func TestEverySizeFits(t *testing.T) {
	for _, s := range []*shop.Shop{crowded(t), oddShop(t), {Equipment: knife.Equipment{Beam: crowded(t).Beam}, Positions: crowded(t).Positions, Day: &plan.Day{Jobs: []plan.Job{{ID: "off", State: plan.OnHold}}}}} {
		for _, ascii := range []bool{false, true}[:fewer(2, 1)] {
			sc := newScreen(t, s, testLook(noColours, false, ascii), 80, 24)
			for _, keys := range [][]string{nil, {"j", "j", "j", "j"}, {"2", "+", "l"}, {"3", "enter"}, {"1"}, {"2"}, {"esc", "J", "q"}, {"n", "?"}} {
				sc.press(keys...)
				for w := 1; w <= 230; w += fewer(1, 4) + w/fewer(5, 2) {
					for h := 1; h <= 70; h += fewer(1, 4) + h/fewer(5, 2) {
						sc.send(tea.WindowSizeMsg{Width: w, Height: h})
						sc.fits()
					}
				}
				sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})
				sc.settle()
			}
		}
	}
}

// Random keys at random sizes, with answers that come late: every frame fits,
// nothing panics, in ASCII nothing else is shown, what is shown in the end is the
// plan of that order, and undoing all of it returns to the start.
func TestRandomKeys(t *testing.T) {
	const seed = 20261125
	keys := allKeys()
	for round, make := range []func(testing.TB) *shop.Shop{crowded, oddShop} {
		r := rand.New(rand.NewPCG(seed, uint64(round)))
		sc := newScreen(t, make(t), testLook(noColours, false, round == 1), 100, 30)
		var typed []string
		t.Cleanup(func() {
			if t.Failed() {
				t.Logf("seed %d, round %d, keys %q", seed, round, typed)
			}
		})
		for range fewer(1500, 120) {
			key := keys[r.IntN(len(keys))]
			switch {
			case r.IntN(4) == 0:
				key = []string{"K", "J"}[r.IntN(2)]
			case r.IntN(20) == 0:
				sc.send(tea.WindowSizeMsg{Width: 1 + r.IntN(230), Height: 1 + r.IntN(65)})
			case len(sc.commands) > 0 && r.IntN(2) == 0:
				sc.background()
			}
			typed = append(typed, key)
			sc.press(key)
			sc.ended = false // it would have left
			sc.fits()
			if round == 1 && strings.ContainsFunc(sc.View(), func(c rune) bool { return c > '~' || c < ' ' && c != '\n' }) {
				t.Fatalf("not ASCII:\n%s", sc.View())
			}
		}
		sc.settle()
		sc.later(sc.ask())
		sc.settle()
		sameAsPlanned(t, sc)
		sc.send(tea.WindowSizeMsg{Width: 100, Height: 30})
		sc.press("esc", "esc", "1")
		for sc.session.History.Undo() {
			sc.session.Show(draft.Draft{}, "", "")
		}
		sc.later(sc.ask())
		sc.settle()
		if diff := cmp.Diff(ids(sc.Filed.Jobs), ids(sc.Jobs())); diff != "" || sc.Changed() {
			t.Errorf("undoing all leaves another day:\n%s", diff)
		}
		sameAsPlanned(t, sc)
	}
}

// sameAsPlanned fails unless the screen's forecast is that of the day planned in
// the screen's order.
func sameAsPlanned(t *testing.T, sc *screen) {
	t.Helper()
	day := &plan.Day{Start: sc.Start.Clock.At}
	for _, j := range sc.Jobs() {
		day.Jobs = append(day.Jobs, *j)
	}
	want, err := sequence.PlanDay(sc.Beam, sc.Start.Positions, day)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want.Totals, sc.Present.Totals); diff != "" {
		t.Errorf("the screen's totals aren't those of its order (-plan +screen):\n%s", diff)
	}
	n := 0
	for _, o := range sc.Present.Known {
		if len(o.Faults) > 0 {
			continue
		}
		w := want.Steps()[n]
		if w.Job.ID != o.Step.Job.ID || w.Changeover.Travel != o.Step.Changeover.Travel || !w.RunEnd.Equal(o.Step.RunEnd) {
			t.Errorf("step %d is %s, want %s, or differs", n+1, o.Step.Job.ID, w.Job.ID)
		}
		n++
	}
	if n != len(want.Steps()) || len(sc.Present.Known) != len(sc.Jobs()) {
		t.Errorf("%d steps of %d jobs, want %d", n, len(sc.Present.Known), len(want.Steps()))
	}
}

// Several keys may come as one message, and pasted text is no key.
func TestKeysInOneMessage(t *testing.T) {
	sc := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	sc.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("jjj")})
	if sc.JobAt != 3 {
		t.Errorf("three keys in one message pick turn %d, want 3 (from 0)", sc.JobAt)
	}
	sc.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("kkq"), Paste: true})
	if sc.JobAt != 3 || sc.ended {
		t.Error("pasted text was taken for keys")
	}
	sc.session.Search.By = tries(300)
	order := ids(sc.Jobs())
	sc.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("sJ")})
	if order[3], order[4] = order[4], order[3]; !slices.Equal(ids(sc.Jobs()), order) {
		t.Errorf("of sJ in one message the J is lost: %v, want %v", ids(sc.Jobs()), order)
	}
	if sc.settle(); !sc.Present.Whole() || !slices.Equal(ids(sc.Jobs()), order) {
		t.Errorf("%d jobs are known in the order %v, want all in %v", len(sc.Present.Known), ids(sc.Jobs()), order)
	}
	sc.session.Offer = nil // leaving would ask
	sc.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("uqJ")})
	if !sc.ended || sc.Changed() {
		t.Error("a quit among several keys doesn't end")
	}
}

// What just happened is told until the next key.
func TestNews(t *testing.T) {
	sc := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	before := sc.Present.Totals
	sc.press("J")
	if !strings.Contains(sc.View(), "D-101 moved to number 2: …") {
		t.Errorf("no news while it is worked out:\n%s", sc.View())
	}
	sc.press("J").settle()
	want := "D-101 moved to number 3: " + words.Against(sc.Present.Totals, before)
	if !strings.Contains(sc.View(), want) {
		t.Errorf("want %q in\n%s", want, sc.View())
	}
	if sc.press("j"); strings.Contains(sc.View(), "moved to") {
		t.Error("the news outlive the next key")
	}
	if sc.press("u"); !strings.Contains(sc.View(), "D-101 undone: back to number 2") {
		t.Errorf("no news of an undo:\n%s", sc.View())
	}
	if sc.press("U"); !strings.Contains(sc.View(), "D-101 redone: moved to number 3") {
		t.Errorf("no news of a redo:\n%s", sc.View())
	}
	sc.press("u", "u")
	if sc.press("u"); !strings.Contains(sc.View(), "there is nothing to undo") {
		t.Errorf("no news that there is nothing to undo:\n%s", sc.View())
	}
}

// An order that breaks a rule is allowed and marked; a running job keeps its turn.
func TestRulesOfTheDay(t *testing.T) {
	s := crowded(t)
	s.Day.Jobs[0].State = plan.Running
	s.Day.Jobs[3].After = []string{s.Day.Jobs[2].ID}
	sc := newScreen(t, s, testLook(noColours, false, false), 120, 36).settle()
	start := ids(sc.Jobs())
	sc.press("J")
	if diff := cmp.Diff(start, ids(sc.Jobs())); diff != "" || !strings.Contains(sc.View(), "D-101 is running: it stays where it is") {
		t.Errorf("the running job moved, or it isn't said that it can't:\n%s", sc.View())
	}
	sc.press("j", "K")
	if diff := cmp.Diff(start, ids(sc.Jobs())); diff != "" || !strings.Contains(sc.View(), "nothing can come before it") {
		t.Errorf("a job came before the running one, or it isn't said that it can't:\n%s", sc.View())
	}
	before := sc.Present.Totals
	sc.press("j", "j", "K").settle()
	if why := sc.Broken[sc.Job()]; sc.Job().ID != "D-104" || why == "" || !strings.Contains(strings.Join(strings.Fields(sc.View()), " "), "rule broken: "+why+"; "+words.Against(sc.Present.Totals, before)+"; D-104") {
		t.Errorf("D-104 before D-103 isn't marked as broken:\n%s", sc.View())
	}
	if !strings.Contains(sc.View(), "this order !") {
		t.Errorf("no mark beside the totals of the order that breaks a rule:\n%s", sc.View())
	}
	if !strings.Contains(sc.View(), "3 ! D-104") {
		t.Errorf("no mark in the row of the broken rule:\n%s", sc.View())
	}
	if sc.press("u"); len(sc.Broken) != 0 {
		t.Error("undone, the rule is still broken")
	}
}

// An invented day is said to be one, and the day's end with it.
func TestDemoIsSaid(t *testing.T) {
	for _, w := range []int{80, 120} {
		sc := newScreen(t, crowded(t), testLook(noColours, false, false), w, 36).settle()
		if strings.Contains(sc.View(), "DEMO") {
			t.Error("a shop that was named is called an invented one")
		}
		sc.Demo = true
		bar := frame.Bar(sc.Shared).Text()
		if !strings.Contains(bar, "Beam 2  DEMO, an invented day") || !strings.Contains(bar, "ends ") {
			t.Errorf("%d wide, the bar is %q", w, bar)
		}
		sc.fits()
	}
}

// Leaving asks only where something would be lost, and another key than the one
// that opened the question confirms.
func TestLeaving(t *testing.T) {
	left := func(keys ...string) bool {
		return newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press(keys...).ended
	}
	for _, c := range []struct {
		keys []string
		want bool
	}{
		{[]string{"q"}, true},
		{[]string{"J", "q"}, false},
		{[]string{"J", "q", "q"}, false},
		{[]string{"J", "q", "esc"}, false},
		{[]string{"J", "q", "y"}, true},
		{[]string{"J", "u", "q"}, true},
		{[]string{"J", "ctrl+c"}, true},
		{[]string{"?", "q"}, false},
		{[]string{"?", "q", "q"}, true},
		{[]string{"esc"}, false},
	} {
		if left(c.keys...) != c.want {
			t.Errorf("keys %q: left is %v", c.keys, !c.want)
		}
	}
}
