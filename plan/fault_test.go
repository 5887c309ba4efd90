package plan_test

import (
	"testing"

	"bide/plan"
)

// TestFaultInBothUnits: lengths are shown in the reader's unit, bare where asked for,
// and in full where rounding would make two look alike; phrases in phrases too.
func TestFaultInBothUnits(t *testing.T) {
	near := plan.Inch + 1
	f := plan.NewFault("web", "%d of %s: %s, from %s to %s, %s against %s", 2, plan.Say("slit %s", "A"), plan.Say("at %s", plan.Inch),
		plan.Bare(0), plan.Inch, plan.Unlike(near, plan.Inch), plan.Unlike(plan.Inch, near))
	for u, want := range map[plan.Unit]string{
		plan.Millimetres: "2 of slit A: at 25.4 mm, from 0 to 25.4 mm, 25.400001 mm against 25.4 mm",
		plan.Inches:      "2 of slit A: at 1 in, from 0 to 1 in, 25.400001 mm against 25.4 mm",
	} {
		if got := f.Why(u); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	if got := plan.Say("100 % bare").Why(plan.Inches); got != "100 % bare" {
		t.Errorf("a phrase without numbers reads %q", got)
	}
}

// TestFaultsAreCompared by key, words and numbers, whatever they look like.
func TestFaultsAreCompared(t *testing.T) {
	f := plan.NewFault("web", "%s is %s", plan.Say("slit %d", 1), plan.Inch)
	if !f.Equal(plan.NewFault("web", "%s is %s", plan.Say("slit %d", 1), plan.Inch)) {
		t.Error("the same fault twice differs")
	}
	for what, other := range map[string]plan.Fault{
		"key":    plan.NewFault("trim", "%s is %s", plan.Say("slit %d", 1), plan.Inch),
		"words":  plan.NewFault("web", "%s was %s", plan.Say("slit %d", 1), plan.Inch),
		"length": plan.NewFault("web", "%s is %s", plan.Say("slit %d", 1), plan.Inch+1),
		"phrase": plan.NewFault("web", "%s is %s", plan.Say("slit %d", 2), plan.Inch),
		"kind":   plan.NewFault("web", "%s is %s", plan.Say("slit %d", 1), plan.Bare(plan.Inch)),
	} {
		if f.Equal(other) {
			t.Errorf("a fault of another %s is the same", what)
		}
	}
}
