package ui

import (
	"fmt"
	"strings"
	"testing"

	"bide/plan/shop"
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
	s := demo(t)
	text := plainText(t, s, false)
	sc := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	for _, o := range sc.present.known {
		c := &o.step.Changeover
		if want := fmt.Sprintf("%s: %s, %s min of setup", o.step.Job.ID, count(c.Repositions, "move"), minutes(o.step.Setup.Total())); !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
		for i := range c.Moves {
			if want := fmt.Sprintf("%d. %s.", i+1, sentence(&c.Moves[i], s.Unit)); !strings.Contains(text, want) {
				t.Errorf("no %q", want)
			}
		}
	}
	for n := range s.Beam.Holders {
		if want := fmt.Sprintf("\nHolder %d stands at ", n+1); !strings.Contains(text, want) {
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
	for _, want := range []string{"refused: ", "left out: ", "is running"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}
