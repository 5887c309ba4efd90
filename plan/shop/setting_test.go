package shop

import (
	"strings"
	"testing"

	"bide/plan"

	"github.com/google/go-cmp/cmp"
)

// A changeover under way may be written by hand, and what is wrong with it is told.
func TestSettingIsRead(t *testing.T) {
	s := folder(t, nil)
	if _, err := s.SavePositions(&plan.Positions{At: s.Positions.At}, nil); err != nil {
		t.Fatal(err)
	}
	with := func(setting string) map[string]string {
		return map[string]string{positionsFile: positionsText(&plan.Positions{At: s.Positions.At}, nil, s.Unit) + setting}
	}
	got := folder(t, with("[changeover]\njob = \"D-1\"\nslits = [25, \"2 x 1/2\"]\nshift = -1.5\ncorrected = true\n[[changeover.moved]]\nnumber = 2\nfrom = 10\n[[changeover.moved]]\nnumber = 2\nfrom = \"12 mm\"\n"))
	mm := plan.Millimetre
	want := &plan.Begun{Job: "D-1", Slits: []plan.Length{25 * mm, plan.Inch / 2, plan.Inch / 2}, Shift: -3 * mm / 2, Found: true,
		Made: []plan.Made{{Holder: 2, From: 10 * mm}, {Holder: 2, From: 12 * mm}}}
	if diff := cmp.Diff(want, got.Positions.Begun); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	_, problems := Read(files(with("[changeover]\nslits = [0]\nshft = 1\n[[changeover.moved]]\nnumber = 99\n")))
	for _, said := range []string{"job is missing", "entry 1 is out of range", "did you mean shift?", "99 is out of range", "from is missing"} {
		if text := problems.Err().Error(); !strings.Contains(text, said) {
			t.Errorf("no %q in\n%s", said, text)
		}
	}
}

// Two changeovers under way are the same only where all is the same.
func TestSameSetting(t *testing.T) {
	one := func() *plan.Begun {
		return &plan.Begun{Job: "A", Slits: []plan.Length{10, 20}, Shift: 1, To: []plan.Length{3, 30}, Made: []plan.Made{{Holder: 2, From: 5}}}
	}
	if !sameSetting(one(), one()) || !sameSetting(nil, nil) || sameSetting(one(), nil) || sameSetting(nil, one()) {
		t.Error("one that is the same isn't, or one is the same as none")
	}
	for name, change := range map[string]func(*plan.Begun){
		"job": func(b *plan.Begun) { b.Job = "B" }, "slits": func(b *plan.Begun) { b.Slits[0]++ }, "shift": func(b *plan.Begun) { b.Shift++ },
		"to": func(b *plan.Begun) { b.To = nil }, "moves": func(b *plan.Begun) { b.Made[0].From++ }, "corrected": func(b *plan.Begun) { b.Found = true },
	} {
		other := one()
		if change(other); sameSetting(one(), other) {
			t.Errorf("another %s, and it is the same", name)
		}
	}
}
