package ui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"bide/ui/pane"
	"bide/ui/pane/daymap"

	tea "github.com/charmbracelet/bubbletea"
)

// The day map is kept as they were looked at and found good.
func TestGoldenDayMap(t *testing.T) {
	for _, mode := range modes[:2] {
		s := plannedScreen(t, crowded(t), testLook(mode.colours, false, mode.ascii), 80, 24).settle()
		s.press("4", "j", "j", "j")
		for _, size := range sizes {
			s.send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			golden(t, sized(size, "day_map_"+mode.name), s.View())
		}
	}
	s := plannedScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	golden(t, "80x24_schedule", s.press("4", "j", "7").View())
	golden(t, "80x24_day_map_near", s.press("4", "+", "+", "M", "]").View())
	paused := plannedScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	golden(t, "120x36_schedule_pauses", paused.press("7").View())
	crowded := newScreen(t, crowd(140, 40), testLook(noColours, false, false), 120, 36).settle()
	golden(t, "120x36_day_map_40_jobs", crowded.press("4", "pgdown").View())
	odd := plannedScreen(t, oddShop(t), testLook(noColours, false, true), 120, 36).settle()
	golden(t, "120x36_day_map_odd_ascii", odd.press("4", "j", "j").View())
}

// The picked holder's line stands out in every row, and the picked changeover is
// that of the other panes.
func TestDayMapAreJoined(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, true), 120, 36).settle()
	s.press("4", "j", "j", "]", "]")
	if s.Holder != 2 || s.JobAt != 2 {
		t.Fatalf("holder %d at turn %d are picked, want 2 and 2", s.Holder, s.JobAt)
	}
	rows := 0
	for _, l := range strings.Split(s.View(), "\n") {
		if strings.Contains(l, "*") && strings.Contains(l, ":") {
			rows++
		}
	}
	if want := 2 * len(s.Jobs()); rows < want {
		t.Errorf("the line of holder 2 is in %d rows, want %d:\n%s", rows, want, s.View())
	}
	if s.press("1"); !strings.Contains(s.View(), ">  3   "+s.Jobs()[2].ID) {
		t.Errorf("the day has another job picked:\n%s", s.View())
	}
}

// Looking nearer and panning stay on the beam, and 0 shows all of it.
func TestDayMapZoom(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press("4")
	whole, all := pane.BeamSpan(s.Shop.Beam), s.View()
	for range 9 {
		s.press("+")
	}
	if s.dayMap.Zoom != daymap.Nearest {
		t.Errorf("nearest it is halved %d times", s.dayMap.Zoom)
	}
	half := whole.Length() >> daymap.Nearest / 2
	for _, side := range []string{"left", "right"} {
		for range 200 {
			s.press(side)
			if at := s.dayMap.At; at-half < whole.From || at+half > whole.To {
				t.Fatalf("around %v it is off the beam %v", at, whole)
			}
		}
	}
	if s.press("0").View() != all {
		t.Errorf("0 doesn't show all:\n%s", s.View())
	}
}

// The changeovers said to be the worst are those with the longest setup.
func TestWorstStandOut(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press("7")
	worst := map[int]int{}
	for turn, j := range s.Jobs() {
		_, row, _ := strings.Cut(s.View(), " "+j.ID+" ")
		row, _, _ = strings.Cut(row, "\n")
		if _, rank, ranked := strings.Cut(row, "#"); ranked {
			worst[turn] = int(rank[0] - '0')
		}
	}
	if len(worst) != 3 {
		t.Fatalf("%d are the worst, want 3", len(worst))
	}
	setup := func(turn int) float64 { return s.Present.Known[turn].Step.Setup.Total().Minutes() }
	for turn, rank := range worst {
		longer := 0
		for other := range s.Jobs() {
			if setup(other) > setup(turn) {
				longer++
			}
		}
		if longer != rank-1 {
			t.Errorf("turn %d is number %d, but %d are longer", turn+1, rank, longer)
		}
	}
}

// The clock may be looked at from nearer: around the picked job, which stays in sight
// when another is picked, never beyond the day.
func TestScheduleZoom(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, true), 80, 24).settle().press("7")
	all := s.View()
	first := func() string { return strings.Fields(strings.Split(s.View(), "\n")[2])[2] } // behind the heads setup and job
	begins := first()
	sees := func(what string) {
		t.Helper()
		_, row, _ := strings.Cut(s.View(), " "+s.Job().ID+" ")
		row, _, _ = strings.Cut(row, "\n")
		if row == "" || strings.ContainsAny(row, "<>") || first() < begins { // they point to what is out of sight
			t.Errorf("%s: turn %d isn't in sight, or more than the day is:\n%s", what, s.JobAt, s.View())
		}
		s.fits()
	}
	s.press("j", "j", "j", "+")
	sees("twice as large")
	s.press("+")
	golden(t, "80x24_schedule_near", s.View())
	for range len(s.Jobs()) {
		sees("going on")
		s.press("down")
	}
	for range len(s.Jobs()) {
		sees("going back")
		s.press("up")
	}
	for range 9 {
		s.press("left")
	}
	if first() != begins {
		t.Errorf("far left it begins at %s, want %s", first(), begins)
	}
	if s.press("right", "right"); first() == begins {
		t.Error("it doesn't go right")
	}
	if s.press("0", "home"); s.View() != all {
		t.Errorf("0 doesn't show all of it:\n%s", s.View())
	}
}

// A late job's line shows when it is set up and runs, and since when it is late.
func TestScheduleShowsLateRuns(t *testing.T) {
	of := crowded(t)
	of.Day.Jobs[9].Due = of.Day.Start.Add(time.Hour)
	s := newScreen(t, of, testLook(noColours, false, true), 120, 36).settle().press("7")
	for _, l := range strings.Split(s.View(), "\n") {
		if !strings.Contains(l, of.Day.Jobs[9].ID+" ") {
			continue
		}
		if bar := regexp.MustCompile(`D!{20,}:+#+ `); !bar.MatchString(l) {
			t.Errorf("no %v in %q", bar, l)
		}
		return
	}
	t.Error("the job isn't shown")
}

// sized is the name of a golden screen of that size.
func sized(size [2]int, name string) string { return fmt.Sprintf("%dx%d_%s", size[0], size[1], name) }
