package ui

import (
	"math"
	"strings"
	"testing"

	"bide/material"
	"bide/plan"
	"bide/ui/draw"
	"bide/ui/pane"
	"bide/ui/pane/settings"

	tea "github.com/charmbracelet/bubbletea"
)

// settingsWords is all of the pane's text for the picked job, on one line, on a screen that has
// room for all.
func settingsWords(s *screen) string {
	s.send(tea.WindowSizeMsg{Width: s.W, Height: 400})
	return strings.Join(strings.Fields(s.View()), " ")
}

// The pane tells of each job every setting with its reason, every change, warning and
// caution, and how the anvil bends: all that is known of it.
func TestSettingsTellAll(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("6")
	for turn := range s.Jobs() {
		k, text := s.KnifeFor(turn), settingsWords(s)
		want := append([]string{}, k.Settings.Warnings...)
		for _, l := range k.Settings.Lines {
			want = append(want, l.Value, l.Why, l.Source)
		}
		for _, c := range k.Changes {
			want = append(want, c.From, c.To, c.Do)
		}
		for _, c := range k.Settings.Cautions {
			want = append(want, c.Text, "["+c.Source+"]")
		}
		want = append(want, settings.BendWords(s.Shared, k.Bending)...)
		for _, w := range want {
			if !strings.Contains(text, strings.Join(strings.Fields(w), " ")) {
				t.Errorf("turn %d: no %q", turn+1, w)
			}
		}
		s.press("right")
	}
}

// A job that no pressure parts, one that the beam can't run and one whose material is
// in no table have settings as far as they go, and the reason.
func TestSettingsOfRefusedJobs(t *testing.T) {
	shop := crowded(t)
	for i := range shop.Materials {
		if shop.Materials[i].Name == "PP film 40" {
			shop.Materials[i].CutThroughBar = 60
		}
	}
	jobs := shop.Day.Jobs
	jobs[1].Uncut = shop.Settings(&jobs[1]).Refused
	jobs[2].Web = 10 * shop.Beam.Web.Length()
	jobs[3].Material = "unheard of"
	s := newScreen(t, shop, testLook(noColours, false, false), 80, 24).settle().press("6", "right")
	for _, want := range []string{"60.8 bar", "no pressure is high enough", "not calculated: the job is refused"} {
		if text := settingsWords(s); !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	if text := settingsWords(s.press("right")); !strings.Contains(text, "Refused: the web of") || !strings.Contains(text, "set 3.30 bar") {
		t.Errorf("the wide one: %s", text)
	}
	if text := settingsWords(s.press("right")); !strings.Contains(text, "in no table") {
		t.Errorf("the unknown one: %s", text)
	}
}

// Scrolling ends at the last line and at the first, and another job begins at its first.
func TestSettingsScroll(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("6")
	top := s.View()
	if s.press("up").View() != top {
		t.Error("up from the first line moves")
	}
	end := s.press("end").View()
	if end == top || s.press("down", "pgdown").View() != end {
		t.Error("down from the last line moves, or end doesn't")
	}
	if s.press("right", "left").View() != top {
		t.Error("another job doesn't begin at its first line")
	}
	if s.press("down", "down", "up", "up").View() != top {
		t.Error("as many lines up as down isn't where it was")
	}
	s.press("end", "1", "down", "up", "6")
	if s.View() != end {
		t.Error("the lines of the job are forgotten on another page")
	}
}

// A damaged band of the anvil is told with what is cut beside it, in the job and over the
// day, and drawn where it lies on both pictures. A job refused for it tells its place.
func TestDamageIsShown(t *testing.T) {
	shop := crowded(t)
	mm := plan.Millimetre
	shop.Beam.Bad = []plan.Span{{From: 610 * mm, To: 618 * mm}}
	s := newScreen(t, shop, testLook(noColours, false, false), 120, 36).settle().press("6")
	k, day := s.KnifeFor(0), s.AtKnife().Damaged
	text := settingsWords(s)
	if len(k.Damaged) != 1 || len(day) != 1 || !strings.Contains(text, "Damaged "+k.Damaged[0].Where+". ") || !strings.Contains(text, day[0].Where+"; "+day[0].Worn) {
		t.Errorf("%+v isn't told: %s", day, text)
	}
	a, web := k.Bending.Anvil, shop.Beam.Web
	bearings := plan.Span{From: plan.Length(a.FromMM * 1e6), To: plan.Length((a.FromMM + a.SpanMM) * 1e6)}
	sc := draw.NewScale(plan.Span{From: min(web.From, bearings.From), To: max(web.To, bearings.To)}, 118, plan.Millimetres) // a cell on each side is free
	from, drawn := sc.Column(610*mm), 0
	for _, l := range strings.Split(s.View(), "\n") {
		if before, _, ok := strings.Cut(l, "╳"); ok {
			drawn++
			if at, n := len([]rune(before)), strings.Count(l, "╳"); at != from+1 || n != sc.Column(618*mm)-from+1 {
				t.Errorf("%d cells from %d, want from %d: %q", n, at, from+1, l)
			}
		}
	}
	if drawn != 2 {
		t.Errorf("drawn %d times", drawn)
	}
	for o := s.Outcome(s.JobAt); o != nil && len(o.Faults) == 0 && s.JobAt < len(s.Jobs())-1; o = s.Outcome(s.JobAt) {
		s.press("right")
	}
	if text := settingsWords(s); !strings.Contains(text, "not calculated: the job is refused") || !strings.Contains(text, "Damaged from 610 to 618 mm: no cut is laid in it.") {
		t.Errorf("refused: %s", text)
	}
}

// Bars by hand: half of a cell with eight levels is the fourth, a trace the first; over
// two rows three quarters are a whole cell and half of one. In ASCII a cell has three.
func TestBars(t *testing.T) {
	k := testLook(noColours, false, false)
	if got := draw.Bars(k, []float64{0, 0.5, 1, 0.001}, 1)[0].Text(); got != " ▄█▁" {
		t.Errorf("one row: %q", got)
	}
	two := draw.Bars(k, []float64{0.75, 0.5, 0.25}, 2)
	if two[0].Text() != "▄  " || two[1].Text() != "██▄" {
		t.Errorf("two rows: %q over %q", two[0].Text(), two[1].Text())
	}
	if got := draw.Bars(testLook(noColours, false, true), []float64{0, 0.34, 0.67, 1}, 1)[0].Text(); got != " .:#" {
		t.Errorf("ASCII: %q", got)
	}
}

// A curve by hand: depths 0, 1/2 and 1 in two rows of ASCII are the first of six
// heights, the fourth (2.5 rounded up) and the last; what isn't there is left blank.
func TestCurve(t *testing.T) {
	k := testLook(noColours, false, true)
	depths := []float64{0, 0.5, 1, -1}
	got := draw.Curve(k, 4, 2, func(x float64) float64 { return depths[int(math.Floor(x))] })
	if got[0].Text() != "'   " || got[1].Text() != " '. " {
		t.Errorf("%q over %q", got[0].Text(), got[1].Text())
	}
}

// The linear text has the settings of every job, and each caution once.
func TestPlainTellsSettings(t *testing.T) {
	s := smallDay(t, 5)
	text := plainText(t, s, false)
	for i := range s.Day.Jobs {
		k := s.Settings(&s.Day.Jobs[i])
		for _, l := range k.Lines {
			if !strings.Contains(text, string(l.ID)+": "+l.Value) {
				t.Errorf("%s: no %q", s.Day.Jobs[i].ID, l.Value)
			}
		}
	}
	all, _ := material.Cautions(s.Materials[0])
	for _, c := range all {
		if n := strings.Count(text, c.About+": "+c.Text); n != 1 {
			t.Errorf("%q stands %d times", c.Text, n)
		}
	}
}

// A roll with less than ten diameters between its bearings bends more than shown, and that is
// told; a job too thick for a guess has no pressure to set.
func TestDoubtsAreTold(t *testing.T) {
	shop := crowded(t)
	shop.Anvil.Diameter, shop.Anvil.Bore = 400*plan.Millimetre, 0
	s := newScreen(t, shop, testLook(noColours, false, false), 80, 24).settle().press("6")
	if text := settingsWords(s); !strings.Contains(text, "The real deflection is larger: shear isn't counted, and the span is only 5.2 diameters.") { // 2100/400
		t.Errorf("no doubt in %s", text)
	}
	j := &shop.Day.Jobs[5]
	for i := range shop.Materials {
		if shop.Materials[i].Name == j.Material {
			shop.Materials[i].ThicknessMM = 20
		}
	}
	if got := pane.ToSet(s.Shared, j); !strings.HasPrefix(got, "no pressure known, find it by trial; ") {
		t.Errorf("too thick: %q", got)
	}
}

// What is set for a job in one line: by hand 2.1 bar of a trial and the margin of 0.8; a
// guess of 92.4 N, which are 1.777 bar on 520 mm2, other pistons, silicone and what isn't known are told.
func TestToSet(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24)
	jobs := s.Shop.Day.Jobs
	for i, want := range map[int]string{
		0: "set 2.90 bar (42 psi); blade 45 degrees, tip 0.15 mm; a wick on each holder",
		4: "set 2.70 bar (39 psi); blade 45 degrees, tip 0.15 mm; no wick; free of silicone",
		5: "set 2.58 bar (37 psi), a guess; blade 35 degrees, tip 0.08 mm; a wicking bar over all",
	} {
		if got := pane.ToSet(s.Shared, &jobs[i]); got != want {
			t.Errorf("%s: %q, want %q", jobs[i].ID, got, want)
		}
	}
	for i := range s.Shop.Materials {
		s.Shop.Materials[i].CutThroughBar = map[int]float64{0: 6, 2: 60}[i]
	}
	if got := pane.ToSet(s.Shared, &jobs[0]); !strings.Contains(got, "set 4.80 bar (70 psi) on 3 pistons of 260 mm2; ") { // 6 * 2/3 + 0.8
		t.Errorf("beyond its own piston: %q", got)
	}
	if got := pane.ToSet(s.Shared, &jobs[1]); !strings.HasPrefix(got, "no pressure is high enough; ") {
		t.Errorf("beyond all: %q", got)
	}
	if got := pane.ToSet(s.Shared, &plan.Job{Material: "unheard of"}); !strings.Contains(got, "in no table") {
		t.Errorf("unknown: %q", got)
	}
}
