package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/page/moveto"
	"bide/ui/pane"
	"bide/ui/plain"
)

// plainText is a shop in words.
func plainText(t *testing.T, s *shop.Shop, ascii bool) string {
	t.Helper()
	var b strings.Builder
	o := Options{Shop: s, ASCII: ascii, Output: &b, Env: func(name string) string { return map[string]string{"LANG": "C.UTF-8"}[name] }}
	if err := Plain(o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The linear text tells each job, each move and each holder, with no box, sequence
// or anything that a screen reader would stumble over.
func TestPlainTellsAll(t *testing.T) {
	s := smallDay(t, 6)
	text := plainText(t, s, false)
	sc := plannedScreen(t, smallDay(t, 6), testLook(noColours, false, false), 80, 24).settle()
	for _, o := range sc.Present.Known {
		c := &o.Step.Changeover
		if want := fmt.Sprintf("%s: %s, %s min of setup", o.Step.Job.ID, words.Count(c.Repositions, "move"), words.Minutes(o.Step.Setup.Total())); !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
		for i := range c.Moves {
			if want := fmt.Sprintf("%d. %s.", i+1, pane.MoveSentence(&c.Moves[i], s.Unit)); !strings.Contains(text, want) {
				t.Errorf("no %q", want)
			}
		}
	}
	for n := range s.Beam.Holders {
		if want := fmt.Sprintf("\nHolder %d is at ", n+1); !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if strings.ContainsAny(text, "\x1b\t\r─━│╷▸═") {
		t.Error("there are characters for drawing in it")
	}
	if strings.Contains(text, "…") {
		t.Error("something isn't worked out")
	}
}

// In ASCII it is ASCII, also for names that are hard to draw.
func TestPlainInASCII(t *testing.T) {
	text := plainText(t, oddShop(t), true)
	if strings.ContainsFunc(text, func(r rune) bool { return r > '~' || r < ' ' && r != '\n' }) {
		t.Error("not ASCII")
	}
	for _, want := range []string{"refused: ", "done or on hold: ", "is running"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}

// The linear text tells the next move of the guided setup, what is in its way and what is left; both
// orders; and of each job what its gaps cost, as the pages of the screen have it.
func TestPlainTellsSetupOrdersAndMoves(t *testing.T) {
	text := plainText(t, smallDay(t, 6), false)
	sc := plannedScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 36).settle()
	moves := sc.Present.Known[0].Step.Changeover.Moves
	for _, want := range []string{
		fmt.Sprintf("To %s: 0 moves made, %d left", sc.Jobs()[0].ID, len(moves)),
		"Next: " + pane.MoveSentence(&moves[0], sc.Shop.Unit) + ".",
		fmt.Sprintf("Setup: %s min in the file's order, %s in this.", words.Minutes(sc.Listed.Totals.Setup), words.Minutes(sc.Present.Totals.Setup)),
		fmt.Sprintf("Moves: %d and %d.", sc.Listed.Totals.Repositions, sc.Present.Totals.Repositions),
		"knives may drop at once", "At its end: ", "First the cautions above",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	for turn, j := range sc.Jobs() {
		_, part, found := strings.Cut(text, fmt.Sprintf("\n%s, now ", j.ID))
		if !found {
			t.Fatalf("it isn't told what it costs to move %s", j.ID)
		}
		if part, _, _ = strings.Cut(part, ", now "); strings.Count(part, "\n  Moved ") != len(sc.Jobs())-1 {
			t.Errorf("%s: not all numbers are told:\n%s", j.ID, part)
		}
		if turn != 3 && turn != len(sc.Jobs())-1 {
			continue
		}
		sc.JobAt = turn
		sc.press("g")
		at := sc.session.Mover
		for !at.Estimated {
			sc.background()
		}
		for index := range sc.Jobs() {
			c, _ := at.Cost(index)
			if want := fmt.Sprintf("\n  Moved %s: %s", moveto.Where(&at.MoveCosts, index), words.Cost(c.Difference)); index != turn && !strings.Contains(part, want) {
				t.Errorf("%s: no %q in\n%s", j.ID, want, part)
			}
		}
		sc.press("esc")
	}
}

// A guided setup that is under way is told as it is: what was made, and what can't be.
func TestPlainTellsASetupUnderWay(t *testing.T) {
	of := smallDay(t, 3)
	sc := newScreen(t, of, testLook(noColours, false, false), 120, 36).settle()
	step := sc.Present.Known[0].Step
	stands := *of.Positions
	stands.At = slices.Clone(stands.At)
	var made []plan.Made
	for _, m := range step.Changeover.Moves[:3] {
		stands.At[m.Holder-1] = m.To
		made = append(made, plan.Made{Holder: m.Holder, From: m.From})
	}
	var to []plan.Length
	for _, h := range step.Changeover.Holders {
		to = append(to, h.At)
	}
	stands.Begun = &plan.Begun{Job: step.Job.ID, Slits: step.Layout.Slits, Shift: step.Layout.Shift, To: to, Made: made}
	of.Positions = &stands
	text := plainText(t, of, false)
	if want := fmt.Sprintf("To %s: 3 moves made, %d left", step.Job.ID, len(step.Changeover.Moves)-3); !strings.Contains(text, want) {
		t.Errorf("no %q", want)
	}
}

// For a day too large to move every job of, it says so and what to do instead.
func TestPlainOfALargeDay(t *testing.T) {
	m, err := newModel(crowd(140, 40), testLook(noColours, false, true))
	if err != nil {
		t.Fatal(err)
	}
	if text := plain.Text(m.Shared, nil, nil, nil); !strings.Contains(text, "takes too long to calculate for 40 jobs") || strings.Contains(text, "Moved") {
		t.Errorf("told:\n%s", text)
	}
}
