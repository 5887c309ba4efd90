package material

import (
	"strings"
	"testing"
)

// TestOwnLimits: each rule of thumb is the usual one and named as common practice until the shop
// has its own, which then counts and is named as the shop's.
func TestOwnLimits(t *testing.T) {
	paper := of(t, "paper tape", 0.15, RubberResin)
	paper.SpeedMax = 2000
	thick := of(t, "felt", 8, NoAdhesive)
	thick.CutThroughBar = 3
	spun := spun(t, 25) // 3 % narrower
	roll := Run{Speed: 100, Metres: 10_000, Roll: Roll{Metres: 10_000}}
	for _, c := range []struct {
		m        Material
		margin   float64
		run      Run
		own      Limits
		usually  string // in the warnings or lines of the usual limits; empty for none
		by, what string // in those of its own; what where it has no warning
	}{
		{paper, 0.8, Run{Speed: 310}, Limits{HolderSpeed: 250, FastHolderSpeed: 300}, "above the 304.8 m/min (1000 ft/min) that standard holders are good for (common practice, no source)", "above the 300 m/min (984 ft/min) of any usual holder (the shop's own limit)", ""},
		{paper, 0.8, Run{Speed: 310}, Limits{HolderSpeed: 350}, "above the 304.8", "", "above the"},
		{thick, 0.8, Run{Speed: 30}, Limits{ThicknessMM: 6}, "", "8 mm is beyond the 6 mm that holders and blades can cut (the shop's own limit)", ""},
		{paper, 0.5, Run{Speed: 30}, Limits{MarginLeastBar: 0.3}, "A margin of 0.5 bar is below the usual 0.7 to 1 bar (common practice, no source)", "", "A margin"},
		{paper, 0.8, Run{Speed: 30}, Limits{MarginMostBar: 0.75}, "", "A margin of 0.8 bar is above the usual 0.7 to 0.75 bar (the shop's own limit)", ""},
		{spun, 0.8, Run{Speed: 30, WebMM: 1000}, Limits{NeckInPct: 2}, "", "only a guess beyond 2 % (the shop's own limit)", ""},
		{paper, 0.8, roll, Limits{RollMM: 1000}, "", "larger than the usual 1000 mm (39.4 in) (the shop's own limit)", ""},
		{paper, 0.8, roll, Limits{CoreMM: 82}, "core of 89 mm (3.5 in), assumed", "core of 82 mm (3.23 in), assumed", ""},
	} {
		on := shop
		on.Cylinder.MarginBar = c.margin
		said := func(l Limits) string {
			on.Limits = l
			s := ran(t, c.m, on, c.run)
			all := strings.Join(s.Warnings, "\n")
			for _, l := range s.Lines {
				if l.ID == IDNeckIn || l.ID == IDRoll {
					all += "\n" + l.Value + l.Why
				}
			}
			return all
		}
		if got := said(Limits{}); c.usually != "" && !strings.Contains(got, c.usually) {
			t.Errorf("%+v: usually %q", c, got)
		} else if c.usually == "" && c.by != "" && strings.Contains(got, c.by) {
			t.Errorf("%+v: without its own limit %q", c, got)
		}
		if got := said(c.own); !strings.Contains(got, c.by) || c.what != "" && strings.Contains(got, c.what) {
			t.Errorf("%+v: %q", c, got)
		}
	}
}

// TestOwnThickness: what a material is usually scored up to is its group's, or its own: paper
// tape of 0.6 mm is thicker than the 0.5 of its group, and not than 0.7.
func TestOwnThickness(t *testing.T) {
	for mm, warned := range map[float64]bool{0.5: true, 0.7: false} {
		m := of(t, "paper tape", 0.6, Acrylic)
		m.ScoreMM = mm
		a, err := Advise(m, Limits{})
		if err != nil || (len(a.Warnings) > 0) != warned {
			t.Errorf("scored up to %v mm: %q, %v", mm, a.Warnings, err)
		}
	}
}

// TestOwnPistons: a holder that takes two pistons at most isn't given three, and of one that may
// have 900 mm2 each, 500 N take 500/0.55/2 = 454.5 mm2 of each of two.
func TestOwnPistons(t *testing.T) {
	for _, c := range []struct {
		most int
		area float64
		want string
	}{{0, 0, "3 pistons of 310 mm2"}, {2, 0, "2 pistons of 460 mm2"}, {2, 450, ""}, {2, 900, "2 pistons of 460 mm2"}, {4, 260, "4 pistons of 260 mm2"}} {
		a, err := ChooseAir(500, Cylinder{AreaMM2: 260, Pistons: 1, SupplyBar: 6.3, MarginBar: 0.8, MostPistons: c.most, MostAreaMM2: c.area})
		if c.want == "" {
			refused(t, err, "2 pistons of 450 mm2")
		} else if err != nil || a.Fitted() != c.want {
			t.Errorf("%+v: %+v, %v", c, a, err)
		}
	}
}
