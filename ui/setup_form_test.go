package ui

import (
	"fmt"
	"testing"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/record"
)

// A holder that stands elsewhere is told where, in any unit; what can't be is
// refused with its reason; confirmed moves are kept and the rest is planned again.
func TestCorrectedPosition(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(4)
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
	at := sc.Actual.Positions.At
	sc.press("ctrl+u")
	typed(plan.Millimetres.Number(at[20])) // where holder 21 stands
	sc.tells("0 mm apart", "correct the other one too")
	sc.press("enter", "enter").tells("0 mm apart") // not alone
	typed("20")
	sc.press("enter")
	want := at[19] + plan.Millimetre
	typed(plan.Inches.Number(want) + "in")
	sc.tells("1 mm to the drive side of where it was shown")
	sc.press("enter").tells("measured: holder 20 at")
	sc.press("enter").settle().tells("position corrected: 20 at", "move 5 of")
	sc.sound(dir)
	if got := sc.Actual.Positions.At[19] - want; max(got, -got) > 2*plan.Inch/10000 {
		t.Errorf("holder 20 is %v nm off", got)
	}
	if kept := read(t, dir).Positions; len(kept.Begun.Made) != 4 {
		t.Errorf("%d moves are kept, want 4", len(kept.Begun.Made))
	}
	all := eventsIn(t, dir)
	if e := all[len(all)-1]; e.Kind != record.Corrected || e.Holder != 20 || e.From != at[19] {
		t.Errorf("the record ends with %+v", e)
	}
	sc.press("f", "esc").tells("nothing was changed")
	sc.press("u", "u").settle().sound(dir)
}

// A holder that jams on its way or loses its air is marked, with its reason, and the
// rest is planned again; one mended is good again.
func TestFaultOnTheWay(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("w", "enter").confirms(3)
	number := sc.setup().Move().Holder
	sc.press("c").tells(fmt.Sprint(number), "s stuck, n no cut")
	sc.press("enter", "enter", "enter").tells("type s, n, o or g")
	sc.press("n", "enter", "h", "i", "s", "s", "enter").settle().tells(fmt.Sprintf("holder %d is recorded as no cut", number), "move 4 of")
	sc.sound(dir)
	kept := read(t, dir)
	if m := kept.Marks[number]; m != (shop.Mark{Condition: plan.NoCut, Reason: "hiss"}) || len(kept.Positions.Begun.Made) != 3 {
		t.Errorf("kept: %+v, %v", m, kept.Positions.Begun)
	}
	if sc.setup().Plan.Step.Changeover.Holders[number-1].Use == plan.Cutting {
		t.Error("a holder without air is to cut")
	}
	// It jams where no cut may be near: between two cuts there is no place for it.
	stuck := sc.setup().Move()
	half := (stuck.From + stuck.To) / 2
	sc.press("c", "enter")
	for _, r := range plan.Millimetres.Number(half) {
		sc.press(string(r))
	}
	sc.press("enter", "s", "enter", "enter").settle()
	if at := read(t, dir).Positions.At[stuck.Holder-1]; at != half && sc.session.Journal.Fault() == "" {
		t.Errorf("it is kept at %s, it jammed at %s", at.MM(), half.MM())
	}
	if sc.setup().Refused() {
		sc.tells("can't be set up from the current positions", "c sets a holder's condition")
	} else {
		sc.sound(dir)
	}
	sc.press("c")
	for _, r := range fmt.Sprint(stuck.Holder) {
		sc.press(string(r))
	}
	sc.press("enter", "enter", "g", "enter", "enter").settle()
	sc.sound(dir)
	if m, marked := read(t, dir).Marks[stuck.Holder]; marked {
		t.Errorf("it is good again and still marked %v", m)
	}
}
