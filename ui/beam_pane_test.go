package ui

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The figures of the beam's title add up: those that move and those that stay are all
// holders; of those that stay, those that cut and those that are idle are all.
func TestBeamTitleAddsUp(t *testing.T) {
	figures := regexp.MustCompile(`(\d+) move  (\d+) stay(?:: \S+ (\d+) cut(?:ting)? \S+ (\d+) idle)?`)
	for _, w := range []int{80, 100, 120, 200} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), w, 36).settle()
		for turn := range s.Jobs() {
			s.Pick(turn)
			_, title, _ := strings.Cut(s.View(), s.Rule+" Beam ")
			title, _, _ = strings.Cut(title, "\n")
			title = strings.TrimRight(title, " "+s.Rule)
			found := figures.FindStringSubmatch(title)
			if found == nil {
				t.Fatalf("at %d: %q", w, title)
			}
			var n [5]int
			for i := range n {
				n[i], _ = strconv.Atoi(found[i])
			}
			if n[1]+n[2] != len(s.Shop.Beam.Holders) || found[3] != "" && n[3]+n[4] != n[2] {
				t.Errorf("at %d: %q doesn't add up to %d holders", w, title, len(s.Shop.Beam.Holders))
			}
			if moves := s.Shared.Moves(); len(moves) > 0 && !strings.HasSuffix(title, s.Shop.Unit.Number(moves[s.MoveAt].To)) {
				t.Errorf("at %d the picked move is cut: %q", w, title)
			}
		}
	}
}

// The totals of a day fit beside the moves at 80 columns, whatever they are.
func TestTotalsFit(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	for _, moves := range []int{7, 612, 1244} {
		s.Present.Totals.Repositions = moves
		if l := s.day.Total(s.Shared, "as listed, centred", &s.Present); l.Width > s.day.W {
			t.Errorf("%d moves: %d cells of %d: %q", moves, l.Width, s.day.W, l.Text())
		}
	}
}
