package ui

import (
	"testing"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/knife"

	tea "github.com/charmbracelet/bubbletea"
)

// large is the day that keys are measured on; with -short it is to be seen only that they run.
func large() *shop.Shop {
	if testing.Short() {
		return crowd(30, 8)
	}
	return crowd(140, 40)
}

// A key press shows its frame in 16 ms or less on a screen of 200x60, with 140
// holders and 40 jobs.
func BenchmarkKeyToFrame(b *testing.B) {
	for _, c := range []struct {
		name string
		keys []string
	}{
		{"pick", []string{"j", "k"}},
		{"move job", []string{"J", "K"}},
		{"zoom", []string{"2", "+", "-"}},
		{"day map", []string{"4", "j", "]", "+", "right", "-", "M"}},
		{"time line", []string{"4", "b", "b", "k"}},
		{"form", []string{"e", "x", "backspace", "down"}},
		{"compare", []string{"v", "down", "up"}},
		{"move to", []string{"down", "down", "up", "b"}},
		{"holders", []string{"5", "down", "right", "o", "up"}},
		{"settings", []string{"6", "down", "right", "pgdown", "left"}},
		{"holders filtered", []string{"5", "/", "c", "u", "t", "enter", "down"}},
	} {
		b.Run(c.name, func(b *testing.B) {
			of := large()
			known(of)
			s := newScreen(b, of, testLook(manyColours, false, false), 200, 60).settle()
			s.press("j", "j", "j", "j", "j")
			if c.name == "move to" {
				s.press("g").settle()
			}
			var keys []tea.KeyMsg
			for _, name := range c.keys {
				keys = append(keys, keyNamed(b, name))
			}
			for n := 0; b.Loop(); n++ {
				s.Update(keys[n%len(keys)])
				s.View()
			}
		})
	}
}

// known gives a drawn shop what settings depend on.
func known(s *shop.Shop) {
	mm := plan.Millimetre
	s.Beam.Supply = plan.Air{Area: 260, Pistons: 2, SupplyBar: 6.3, MarginBar: 0.8}
	s.Anvil = &knife.Anvil{Diameter: 150 * mm, Bore: 110 * mm, Span: 2400 * mm, HardnessHRC: 64}
	for i := range s.Day.Jobs {
		s.Day.Jobs[i].Material = "paper tape"
	}
}

// All costs of a day of 40 jobs with 140 holders are known within a second.
func BenchmarkForecast(b *testing.B) {
	for b.Loop() {
		newScreen(b, large(), testLook(manyColours, false, false), 200, 60).settle()
	}
}
