package jobform

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/shop"
)

// naming is a form of the demo's shop with its field of the material open and so much typed.
func naming(t *testing.T, text string) *jobForm {
	t.Helper()
	s, problems := shop.Open("../../../testdata/demo")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	f := newForm(s, shop.Typed{}, func(shop.Typed) (plan.Job, []shop.FieldProblem) { return plan.Job{}, nil })
	for f.Open().Key != "material" {
		f.to(f.At + 1)
	}
	f.Open().Set(text)
	return f
}

// Listed are the names that have all words typed, in any case; all while nothing is typed.
func TestMatches(t *testing.T) {
	if f := naming(t, ""); len(f.matches()) != len(f.shop.Materials.Names()) {
		t.Errorf("nothing typed: %v", f.matches())
	}
	if got := naming(t, "CREPE pap").matches(); len(got) != 1 || got[0] != "Crepe paper 140" {
		t.Errorf("CREPE pap matches %v", got)
	}
	tapes := naming(t, "tape").matches()
	for _, name := range tapes {
		if !strings.Contains(name, "tape") {
			t.Errorf("%q is listed for tape", name)
		}
	}
	if len(tapes) < 2 {
		t.Errorf("tape matches %v", tapes)
	}
}

// Names that begin with what is typed come first, the shop's own before the built-in.
func TestMatchesInOrder(t *testing.T) {
	f := naming(t, "p")
	names, order, own := f.matches(), f.shop.Materials.Names(), len(f.shop.Materials)
	place := func(name string) int {
		n := slices.Index(order, name)
		if !strings.HasPrefix(strings.ToLower(name), "p") {
			n += len(order)
		}
		return n
	}
	if !slices.IsSortedFunc(names, func(a, b string) int { return place(a) - place(b) }) {
		t.Errorf("listed as %v", names)
	}
	if !slices.Contains(order[:own], names[0]) {
		t.Errorf("%q comes first, and isn't the shop's own", names[0])
	}
}

// A problem is told in the words of the form.
func TestInForm(t *testing.T) {
	for text, want := range map[string]string{
		"length_m is missing; write it like 3200":   "length is missing; write it like 3200",
		"correct length_m, roll_m or roll_diameter": "correct length, roll or roll outside",
		"web is missing; write it like 1450.0":      "web width is missing; write it like 1450.0",
		"the web is wider than the web area":        "the web is wider than the web area",
	} {
		if got := inForm(text); got != want {
			t.Errorf("%q is told as %q, want %q", text, got, want)
		}
	}
}
