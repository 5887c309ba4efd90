package ui

import (
	"strings"
	"testing"

	"bide/ui/draw"

	tea "github.com/charmbracelet/bubbletea"
)

// The parts of every screen fill it exactly, at every size and with each pane
// enlarged, and no pane is too small for what it must show.
func TestLayoutFillsTheScreen(t *testing.T) {
	for large := noPane; large <= lastPaneShown; large++ {
		for w := leastWidth; w <= 240; w++ {
			for h := leastHeight; h <= 80; h++ {
				l := arrange(w, h, h%2 == 0, large)
				cells := 3*w + l.beam.W*l.beam.H + l.day.W*l.day.H + l.moves.W*l.moves.H + l.between*l.moves.H + l.page.W*l.page.H
				if cells != w*h {
					t.Fatalf("%dx%d, enlarged %d: %d cells of %d: %+v", w, h, large, cells, w*h, l)
				}
				if large == noPane && (l.beam.H < 5 || l.day.W < 53 || l.moves.W < 26 || l.day.H < 16 || l.day.H != l.moves.H) {
					t.Fatalf("%dx%d: a pane is too small: %+v", w, h, l)
				}
			}
		}
	}
}

func TestLayoutIsSmallBelowTheLeastSize(t *testing.T) {
	for _, s := range []draw.Size{{W: 79, H: 24}, {W: 80, H: 23}, {W: 1, H: 1}, {W: 20, H: 5}, {W: 300, H: 10}} {
		if !arrange(s.W, s.H, true, noPane).small {
			t.Errorf("%dx%d isn't small", s.W, s.H)
		}
	}
}

// The window holds the picked row and is full where there are rows to fill it.
func TestWindow(t *testing.T) {
	for n := range 30 {
		for h := range 20 {
			for picked := range n {
				from := draw.Window(picked, n, h)
				if from < 0 || h > 0 && (picked < from || picked >= from+h) || n >= h && from+h > n {
					t.Fatalf("row %d of %d in %d lines: from %d", picked, n, h, from)
				}
			}
		}
	}
}

// A small screen keeps a caution where it has a line for it, a list tells which part
// of it is shown.
func TestSmallCautionAndParts(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	s.background()
	for w := 7; w < 100; w += fewer(1, 9) {
		for h := 5; h < 24; h += fewer(1, 6) {
			s.send(tea.WindowSizeMsg{Width: w, Height: h})
			if frame := s.View(); !strings.Contains(strings.ToLower(frame), "locked") {
				t.Fatalf("%dx%d: no caution in\n%s", w, h, frame)
			}
		}
	}
	s.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	s.settle()
	for _, part := range []string{"1-12 of 14", "1-8 of 58"} {
		if !strings.Contains(s.View(), part) {
			t.Errorf("no %q in\n%s", part, s.View())
		}
	}
}
