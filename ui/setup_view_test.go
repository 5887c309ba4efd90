package ui

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// Every frame of a guided setup fits, whatever the size and stage, and says what is next.
func TestSetupFitsEverySize(t *testing.T) {
	sc, _ := atWork(t, 80, 24)
	stages := [][]string{{"w"}, {"enter"}, {"f"}, {"2"}, {"enter"}, {"9"}, {"esc", "c"}, {"esc", "right", "right"}}
	look := func() {
		for w := 1; w <= 210; w += fewer(1, 5) + w/5 {
			for h := 1; h <= 70; h += fewer(1, 3) + h/5 {
				sc.send(tea.WindowSizeMsg{Width: w, Height: h})
				sc.fits()
			}
		}
	}
	for _, keys := range stages {
		sc.press(keys...)
		look()
	}
	for w := 20; w < 200; w += fewer(3, 20) {
		for h := 3; h < 60; h += fewer(2, 9) {
			sc.send(tea.WindowSizeMsg{Width: w, Height: h})
			m := sc.setup().Move()
			if frame := sc.View(); !strings.Contains(frame, plan.Millimetres.Number(m.To)) || h > 4 && !strings.Contains(frame, "Enter") {
				t.Fatalf("%dx%d doesn't tell where holder %d goes:\n%s", w, h, m.Holder, frame)
			}
		}
	}
	sc.confirms(58)
	look()
}

// Random keys in a guided setup: every frame fits, what stands can stand so and is in the
// file, and what is confirmed and undone is what stands.
func TestRandomKeysInASetup(t *testing.T) {
	const seed = 20261126
	r := rand.New(rand.NewPCG(seed, 1))
	sc, dir := atSmall(t, 80, 24)
	keys := []string{"enter", "enter", "enter", " ", "u", "u", "backspace", "right", "left", "home", "f", "c", "s", "n", "g", "o", "1", "5", "0", ".", "tab", "esc", "w", "w", "?", "r"}
	var typed []string
	for range fewer(1500, 250) {
		key := keys[r.IntN(len(keys))]
		if key == "esc" && r.IntN(3) > 0 {
			key = "enter"
		}
		typed = append(typed, key)
		sc.press(key)
		if r.IntN(3) > 0 {
			sc.settle()
		}
		if r.IntN(30) == 0 {
			sc.send(tea.WindowSizeMsg{Width: 1 + r.IntN(210), Height: 1 + r.IntN(65)})
		}
		sc.fits()
		if faults := changeover.Misplaced(sc.Beam, sc.Actual.Positions.At); len(faults) > 0 {
			t.Fatalf("seed %d, keys %q: %s", seed, typed, faults[0].Why(plan.Millimetres))
		}
	}
	sc.settle()
	if diff := cmp.Diff(sc.Actual.Positions.At, read(t, dir).Positions.At); diff != "" {
		t.Errorf("seed %d: the file has other positions (-screen +file):\n%s", seed, diff)
	}
}

// The guided setup is kept as it was looked at and found good.
func TestGoldenSetup(t *testing.T) {
	for _, mode := range modes[:2] {
		of := crowded(t)
		of.Day.Jobs = of.Day.Jobs[:4]
		sc := plannedScreen(t, of, testLook(mode.colours, false, mode.ascii), 80, 24)
		sc.session.Journal.Take(sc.Shop.Dir, true)
		sc.session.Journal.Now = seconds()
		sc.settle().press("w", "enter").confirms(12)
		for _, size := range sizes {
			sc.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			golden(t, fmt.Sprintf("%dx%d_setup_%s", size[0], size[1], mode.name), sc.View())
		}
		sc.send(tea.WindowSizeMsg{Width: 80, Height: 24})
		if mode.name != "plain" {
			continue
		}
		sc.press("f", "1", "7", "enter", "9")
		golden(t, "80x24_setup_correction", sc.View())
		golden(t, "80x24_setup_fault", sc.press("esc", "c").View())
		sc.press("esc").confirmsAll()
		golden(t, "80x24_setup_done", sc.View())
		golden(t, "80x24_setup_cautions", sc.press("esc", "w").settle().View())
	}
}
