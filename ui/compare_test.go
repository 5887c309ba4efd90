package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/keys"
	"bide/ui/page/compare"
	"bide/ui/plain"
)

// Two orders stand side by side: the file's and this one, with the figures of both.
func TestCompareWithTheFile(t *testing.T) {
	s := plannedScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("v")
	view := s.View()
	for _, part := range []string{"as listed, centred", "this order", words.Minutes(s.Listed.Totals.Setup), words.Minutes(s.Present.Totals.Setup)} {
		if !strings.Contains(view, part) {
			t.Errorf("no %q in\n%s", part, view)
		}
	}
	golden(t, "80x24_compare", view)
	if s.press("down", "down", "enter"); s.Over != nil || s.JobAt != 2 {
		t.Errorf("Enter goes to turn %d", s.JobAt+1)
	}
}

// An order found waits until it is accepted or discarded; Esc does neither.
func TestOfferWaits(t *testing.T) {
	s := plannedScreen(t, smallDay(t, 6), testLook(noColours, false, true), 120, 36).settle()
	s.session.Search.By = tries(300)
	order := ids(s.Jobs())
	s.press("s").settle()
	if s.Offer == nil {
		t.Fatal("nothing is offered")
	}
	golden(t, "120x36_compare_found_ascii", s.View())
	s.press("esc")
	if s.Offer == nil || s.Over != nil || !slices.Equal(ids(s.Jobs()), order) {
		t.Fatal("Esc accepts or discards")
	}
	golden(t, "120x36_offer_waits_ascii", s.View())
	s.press("v", "tab", "tab", "x").fits()
	if s.Offer != nil || !slices.Equal(ids(s.Jobs()), order) || s.Changed() {
		t.Errorf("discarded: %v, was %v", ids(s.Jobs()), order)
	}
	if s.press("u"); s.Offer == nil || s.Changed() || !strings.Contains(s.View(), "the order found is back") {
		t.Errorf("undo doesn't bring the order found back:\n%s", s.View())
	}
	if s.press("U"); s.Offer != nil {
		t.Error("discarded again, it waits")
	}
	if s.press("u", "q"); s.ended || !strings.Contains(s.View(), "Not saved: the order that a search found (v shows it)") {
		t.Errorf("leaving doesn't ask:\n%s", s.View())
	}
	s.press("n", "v", "enter")
	if slices.Equal(ids(s.Jobs()), order) {
		t.Error("brought back, it can't be accepted")
	}
}

// An order found for other jobs than those of now is fitted to them before it is shown.
func TestOfferOfAnotherDay(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s").settle().press("esc", "x").settle()
	before := s.Present.Totals
	s.press("v")
	if s.Over != nil || !strings.Contains(s.View(), "fitted") {
		t.Errorf("shown as it was found:\n%s", s.View())
	}
	if s.settle(); s.Offer == nil || s.Over == nil {
		t.Fatalf("it isn't shown:\n%s", s.View())
	}
	s.press("enter").settle()
	if !s.Present.Totals.Better(before, plan.AimMinutes) || s.Now.Find("D-101") != nil {
		t.Errorf("accepted %+v, before %+v", s.Present.Totals, before)
	}
}

// The page opened while a search runs shows what that finds, and says so meanwhile; until then
// Enter and x do nothing, so that no key changes its meaning. The header says the same.
func TestPageOpenedDuringASearch(t *testing.T) {
	s, _, _ := morning(t)
	order := ids(s.Jobs())
	s.press("s", "v")
	if s.scope() != keys.OnSearching || !strings.Contains(s.View(), "what the search finds is shown here") {
		t.Fatalf("while it runs the page doesn't wait:\n%s", s.View())
	}
	if s.press("enter", "x"); s.Over == nil || !slices.Equal(ids(s.Jobs()), order) {
		t.Fatal("while it runs something is accepted or the page is left")
	}
	s.settle().fits()
	if s.Offer == nil || s.scope() != keys.OnOffer || !strings.Contains(s.View(), "the order found") {
		t.Fatalf("what was found isn't shown:\n%s", s.View())
	}
	if strings.Contains(s.View(), "an order was found: v") {
		t.Error("the header says that v shows it, which it is")
	}
	s.press("enter").settle()
	if slices.Equal(ids(s.Jobs()), order) || s.Offer != nil || s.Over != nil {
		t.Error("it can't be accepted")
	}
}

// With an order found on the page, what a later search finds waits until it is opened again.
func TestOfferLeavesAnOpenPageAlone(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s").settle()
	first := s.Offer
	if s.press("esc"); first == nil {
		t.Fatal("nothing is offered")
	}
	s.press("v")
	later := *first
	s.session.Offer = &later
	if s.follow(); s.scope() != keys.OnCompare || !strings.Contains(s.View(), "an order was found: v") {
		t.Errorf("the keys are those of an offer that isn't shown:\n%s", s.View())
	}
	if s.press("x"); s.Offer == nil {
		t.Fatal("it is discarded unseen")
	}
	if s.press("esc", "v"); s.scope() != keys.OnOffer {
		t.Error("opened again, the page doesn't show the order found")
	}
}

// An order found that waits no more is no longer to be accepted on its page.
func TestPageOfAnOfferThatIsGone(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s").settle()
	if s.scope() != keys.OnOffer {
		t.Fatal("nothing is offered")
	}
	s.session.Offer = nil // fitted to the day as it is now, it is no better
	s.follow()
	s.fits()
	if s.scope() != keys.OnCompare {
		t.Error("it is still to be accepted")
	}
	if s.press("x", "enter"); s.Over != nil || s.Changed() {
		t.Error("something was accepted")
	}
}

// Turns are counted alike among two orders, in the day's list, and in plain text: with the
// jobs that are done, and without those that the beam can't run.
func TestComparedTurnsAreTheDays(t *testing.T) {
	shop := crowded(t)
	shop.Day.Jobs[3].Web *= 100
	s := newScreen(t, shop, testLook(noColours, false, false), 120, 36).settle()
	s.press("1", "d", "enter").settle()
	_, now := compare.Sides(s.Shared, nil)
	refused := 0
	for turn := range s.Jobs() {
		if got, want := now.Number(turn), s.NumberText(turn); got != want {
			t.Errorf("turn %d is shown as %q, in the day's list as %q", turn, got, want)
		} else if want == "" {
			refused++
		}
	}
	if now.Number(0) != "2" || refused != 1 || now.Number(-1) != "-" {
		t.Errorf("the first is turn %s, %d are refused", now.Number(0), refused)
	}
	left, _ := compare.Sides(s.Shared, nil)
	for turn, j := range left[0].Jobs { // in the file's order too, of the jobs still to be run
		if got, want := left[0].Number(turn), now.Number(turn); j != now.Jobs[turn] || got != want {
			t.Errorf("%s is turn %q in the file's order, want %q", j.ID, got, want)
		}
	}
	text := plain.Text(s.Shared, nil, nil, func(index, _ int) planning.MoveCosts { return planning.MoveCosts{Job: s.Jobs()[index]} })
	if !strings.Contains(text, "\nD-105: number 4 in the file's order, number 4 in this;") {
		t.Errorf("in words it is another:\n%s", text)
	}
}

// Discarding an earlier order again leaves a later one that waits alone.
func TestDiscardedAgainALaterOfferStays(t *testing.T) {
	s, _, _ := morning(t)
	s.press("s").settle().press("x")
	s.press("S").settle()
	second := s.Offer
	if second == nil {
		t.Fatal("no second order is offered")
	}
	s.press("esc", "u").tells("the earlier order stays discarded")
	if s.press("U"); s.Offer != second {
		t.Fatal("the later order is gone")
	}
	s.tells("discarded again", "a newer one waits (v shows it)")
	if s.press("v"); s.scope() != keys.OnOffer {
		t.Error("the later order isn't shown")
	}
}

// What the day is compared with is the file's order of the same jobs: those done or taken
// out since are in neither, those added in both.
func TestComparedDaysHaveTheSameJobs(t *testing.T) {
	s := newScreen(t, smallDay(t, 5), testLook(noColours, false, false), 120, 36).settle()
	same := func(when string, order ...string) {
		t.Helper()
		if s.settle(); !slices.Equal(ids(s.Listed.Jobs), order) || s.Listed.Totals.Jobs != s.Present.Totals.Jobs {
			t.Errorf("%s the file's order is %v with %+v, this one %v with %+v", when, ids(s.Listed.Jobs), s.Listed.Totals, ids(s.Jobs()), s.Present.Totals)
		}
	}
	before := s.Listed.Totals
	s.press("J", "J")
	same("moved", "D-101", "D-102", "D-103", "D-104", "D-105")
	s.press("c", "enter")
	same("one copied", "D-101", "D-101b", "D-102", "D-103", "D-104", "D-105")
	s.press("d", "enter")
	same("the copy done", "D-101", "D-102", "D-103", "D-104", "D-105")
	s.Pick(0)
	s.press("x")
	same("one taken out", "D-101", "D-103", "D-104", "D-105")
	for range 5 {
		s.press("u")
	}
	if same("all undone", "D-101", "D-102", "D-103", "D-104", "D-105"); s.Listed.Totals != before {
		t.Errorf("undone the file's order comes to %+v, was %+v", s.Listed.Totals, before)
	}
}
