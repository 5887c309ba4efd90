package ui

import "testing"

// BenchmarkSetup is the time from a key to the frame in a guided setup, at 200x60 with 140
// holders and 40 jobs.
func BenchmarkSetup(b *testing.B) {
	s := newScreen(b, large(), testLook(manyColours, false, false), 200, 60).settle()
	s.press("w", "enter")
	keys := []string{"right", "left"}
	n := 0
	for b.Loop() {
		s.press(keys[n%2])
		_ = s.View()
		n++
	}
}
