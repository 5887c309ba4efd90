package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
	"bide/ui/pane/holders"

	tea "github.com/charmbracelet/bubbletea"
)

// typed presses the keys of a text.
func (s *screen) typed(text string) *screen {
	for _, r := range text {
		s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	return s
}

func TestFilterLets(t *testing.T) {
	for _, c := range []struct {
		filter string
		want   bool
	}{{"", true}, {"  ", true}, {"CREPE", true}, {"140 crepe", true}, {"crepe film", false}, {"d-1", true}} {
		f := list.Filter{Text: c.filter}
		if got := f.Lets("D-101", "Crepe paper 140"); got != c.want {
			t.Errorf("%q lets it through: %v", c.filter, got)
		}
	}
}

// The next row among those that are left, whether the picked one is among them or not.
func TestPickRow(t *testing.T) {
	rows := []int{2, 5, 9}
	for _, c := range []struct {
		picked int
		key    keys.Action
		page   int
		want   int
	}{
		{2, keys.Down, 1, 5}, {5, keys.Down, 1, 9}, {9, keys.Down, 1, 9}, {9, keys.Up, 1, 5}, {2, keys.Up, 1, 2}, {3, keys.Down, 1, 5}, {3, keys.Up, 1, 2},
		{0, keys.Down, 1, 2}, {0, keys.Up, 1, 2}, {12, keys.Up, 1, 9}, {12, keys.Down, 1, 9}, {6, keys.PageDown, 2, 9}, {6, keys.PageUp, 5, 2},
		{5, keys.Top, 1, 2}, {5, keys.Bottom, 1, 9}, {3, keys.Left, 1, 3},
	} {
		if got := pane.PickRow(rows, c.picked, c.key, c.page); got != c.want {
			t.Errorf("key %d leads from %d to %d, want %d", c.key, c.picked, got, c.want)
		}
	}
	if got := pane.PickRow(nil, 4, keys.Down, 1); got != 4 {
		t.Errorf("without rows: %d", got)
	}
}

// In each list the filter follows as one types, tells how many are left, stays after
// Enter and is gone after Esc. Meanwhile letters are no keys.
func TestFiltersOfTheLists(t *testing.T) {
	for _, c := range []struct{ pane, text, count string }{
		{"1", "crepe", "/crepe 4 of 14"},
		{"3", "operator", "/operator"},
		{"4", "crepe", "/crepe 4 of 14"},
		{"5", "never", "/never 7 of 88"},
	} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press(c.pane)
		all := s.View()
		s.press("/").typed(c.text)
		if s.ended || s.help != nil || !strings.Contains(s.View(), c.count) {
			t.Errorf("no %q in\n%s", c.count, s.View())
		}
		s.fits()
		if s.press("enter"); !strings.Contains(s.View(), c.count) {
			t.Errorf("after Enter no %q in\n%s", c.count, s.View())
		}
		if s.press("/", "esc"); strings.Contains(s.View(), c.count) {
			t.Errorf("after Esc the filter is still there:\n%s", s.View())
		}
		again := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press(c.pane, "/").typed(c.text)
		if again.press("esc"); again.View() != all {
			t.Errorf("after Esc it isn't as it was:\n%s", again.View())
		}
	}
}

// Jobs that the filter hides are passed over, and none of them is lost.
func TestFilteredDay(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press("/").typed("crepe").press("enter", "home")
	var picked []string
	for range len(s.Jobs()) {
		if id := s.Job().ID; len(picked) == 0 || picked[len(picked)-1] != id {
			picked = append(picked, id)
		}
		s.press("down")
	}
	var want []string
	for _, j := range s.Jobs() {
		if strings.Contains(strings.ToLower(j.Material), "crepe") {
			want = append(want, j.ID)
		}
	}
	if len(want) == 0 || strings.Join(picked, " ") != strings.Join(want, " ") {
		t.Errorf("down goes through %v, want %v", picked, want)
	}
}

// What is typed can be mended; what is pasted goes in as one line, safe to show.
func TestPromptIsTyped(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("5", "/")
	s.typed("ab cd").press("backspace")
	s.send(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
	if s.Prompt.Value() != "ab c " {
		t.Errorf("typed %q", s.Prompt.Value())
	}
	if s.press("ctrl+w"); s.Prompt.Value() != "ab " {
		t.Errorf("after Ctrl-W %q", s.Prompt.Value())
	}
	if s.press("ctrl+u"); s.Prompt.Value() != "" {
		t.Errorf("after Ctrl-U %q", s.Prompt.Value())
	}
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("one\ntwo\x1b[2J" + strings.Repeat("long", 200)), Paste: true})
	if !strings.HasPrefix(s.Prompt.Value(), "one two") || strings.ContainsAny(s.Prompt.Value(), "\n\x1b") || len(s.Prompt.Value()) > 200 {
		t.Errorf("pasted %q", s.Prompt.Value())
	}
	for w := 1; w < 130; w += 3 {
		for _, h := range []int{1, 3, 5, 24, 40} {
			s.send(tea.WindowSizeMsg{Width: w, Height: h})
			s.fits()
		}
	}
	if s.press("ctrl+c"); !s.ended {
		t.Error("Ctrl-C doesn't leave while something is typed")
	}
}

// Where there is nothing to filter, / says so and no text is asked for.
func TestNothingToFilter(t *testing.T) {
	const want = "there is no list here to filter; / does it in the day and in the moves"
	for _, pane := range []string{"2", "6"} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press(pane, "/")
		if s.Prompt != nil || !strings.Contains(s.View(), want) {
			t.Errorf("pane %s: no %q in\n%s", pane, want, s.View())
		}
	}
}

// A holder's moves are found by its number alone, whatever figures the positions have.
func TestFilterByHolder(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press("3")
	number := s.Shared.Moves()[4].Holder
	s.press("/").typed(fmt.Sprintf("h%d", number)).press("enter")
	want := 0
	for _, m := range s.Shared.Moves() {
		if strings.HasPrefix(fmt.Sprint(m.Holder), fmt.Sprint(number)) {
			want++
		}
	}
	if text := fmt.Sprintf("%d of %d", want, len(s.Shared.Moves())); !strings.Contains(s.View(), text) {
		t.Errorf("h%d doesn't find %s:\n%s", number, text, s.View())
	}
}

// The day map and the schedule show the jobs that the filter leaves, and keys and the
// mouse go through these alone.
func TestFilteredDayMap(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, true), 80, 24).settle().press("4", "/").typed("crepe").press("enter")
	var want []int
	for turn, j := range s.Jobs() {
		if strings.Contains(strings.ToLower(j.Material), "crepe") {
			want = append(want, turn)
		}
	}
	for _, view := range []string{"day map", "schedule"} {
		for turn, j := range s.Jobs() {
			if shown := strings.Contains(s.View(), j.ID); shown != slices.Contains(want, turn) {
				t.Errorf("%s: %s is shown: %v\n%s", view, j.ID, shown, s.View())
			}
		}
		s.press("home")
		for _, turn := range want {
			if s.JobAt != turn {
				t.Errorf("%s: turn %d is picked, want %d", view, s.JobAt, turn)
			}
			s.press("down")
		}
		s.panel(s.focus).(clickable).Click(s.Shared, 10, s.lineOf(s.Jobs()[want[len(want)-2]].ID)-1) // below the bar
		if s.JobAt != want[len(want)-2] {
			t.Errorf("%s: a click picks turn %d, want %d", view, s.JobAt, want[len(want)-2])
		}
		if view == "day map" {
			s.press("7", "/").typed("crepe").press("enter")
		}
	}
	s.press("/").typed(" zzz")
	if s.fits(); !strings.Contains(s.View(), "no job matches the filter") {
		t.Errorf("nothing is left:\n%s", s.View())
	}
}

// What is picked is among the rows that are shown, and where none is, keys that would
// change it say so.
func TestHiddenRowsAreNotChanged(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	for _, pane := range []string{"1", "4"} {
		s.press(pane, "home", "/").typed("film").press("enter")
		if m := s.Job().Material; !strings.Contains(strings.ToLower(m), "film") {
			t.Errorf("pane %s: %s is picked, of %s", pane, s.Job().ID, m)
		}
		s.press("/").typed("zzz").press("enter")
		before := ids(s.Jobs())
		for _, key := range []string{"x", "t", "z", "d", "f", "y", "e", "c", "g", "o", "J"} {
			if pane == "4" && key == "J" {
				continue
			}
			s.press(key)
			if s.Over != nil || strings.Join(ids(s.Jobs()), " ") != strings.Join(before, " ") || s.Changed() || !strings.Contains(s.View(), "the filter hides what is picked") {
				t.Fatalf("pane %s: %s changes a job that isn't shown:\n%s", pane, key, s.View())
			}
		}
		s.press("/", "esc")
	}
	s.press("5", "/").typed("never").press("enter")
	if picked := holders.Picked(s.Shared); !s.Use().Holders[picked-1].Never() {
		t.Errorf("holder %d is picked, which isn't shown", picked)
	}
	s.press("/").typed("zzz").press("enter", "c")
	if s.hold.Help() == keys.OnMark {
		t.Error("a holder that isn't shown is marked")
	}
}

// Whatever the keys of the jobs do, they do it to no job that the filter hides; what is
// about all jobs, or none that is picked, works on.
func TestHiddenJobsStayAsTheyAre(t *testing.T) {
	s, _, _ := accepted(t)
	s.Pick(slices.IndexFunc(s.Jobs(), func(j *plan.Job) bool { return j.Chosen != nil }))
	if s.Job() == nil || s.Job().Chosen == nil {
		t.Fatal("no job has a layout that the search chose")
	}
	for _, b := range keys.NewTable(false).All {
		if b.Where&(keys.OnDay|keys.OnDayMap|keys.OnSchedule) == 0 || slices.Contains(looking, b.Act) || len(b.Keys) == 0 {
			continue
		}
		switch b.Act {
		case keys.AddJob, keys.ReplanAll, keys.LeftOut, keys.Undo, keys.Redo, keys.Quit, keys.Abort, keys.Suspend, keys.Back, keys.Search, keys.SearchMoves, keys.CompareOrders, keys.SaveDay, keys.FilterRows, keys.Setup, keys.Reread:
			continue
		}
		for _, pane := range []string{"1", "4"} {
			s.day.Filtered().Text, s.dayMap.Filtered().Text = "zzz", "zzz"
			all := slices.Clone(s.Now.All)
			s.press(pane, b.Keys[0])
			if s.Over != nil || s.Prompt != nil || !slices.Equal(all, s.Now.All) {
				t.Fatalf("%s in pane %s changes a job that isn't shown: %q", b.Keys[0], pane, s.Notice.Text)
			}
		}
	}
}

// The schedule over the jobs has its filter where the beam would be too, so that one that is set
// there can be changed there.
func TestFilterOfTheScheduleOverTheJobs(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 60).settle()
	s.press("7", "/").enters("zzz").press("b").settle()
	if s.press("/"); s.Prompt == nil {
		t.Fatalf("the filter can't be changed:\n%s", s.View())
	}
}

// Esc on a filtered list shows all of its rows again.
func TestEscShowsAllRows(t *testing.T) {
	s := newScreen(t, smallDay(t, 6), testLook(noColours, false, false), 120, 36).settle()
	if s.press("/").enters("film"); !s.day.Filtered().On() {
		t.Fatal("no filter is set")
	}
	if s.press("esc"); s.day.Filtered().On() || !strings.Contains(s.View(), "all rows are shown") {
		t.Errorf("Esc leaves the filter on:\n%s", s.View())
	}
}
