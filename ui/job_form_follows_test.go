package ui

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/ui/page/jobform"

	tea "github.com/charmbracelet/bubbletea"
)

// on goes to a field of the open form.
func (s *screen) on(key string) *jobform.Page {
	f := s.Over.(*jobform.Page)
	for range f.Fields {
		if f.Open().Key != key {
			s.press("tab")
		}
	}
	return f
}

// A form that was put away, opened again, changes what was typed and nothing that was
// changed or happened since: a job that was set up meanwhile runs still.
func TestFormPutAwayTakesNothingBack(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	metres := sc.Jobs()[0].Metres
	if sc.Jobs()[0].Shift != plan.Free {
		t.Fatal("the demo's first job is centred")
	}
	sc.press("1", "e").on("length_m")
	sc.types("0").press("esc").settle()
	sc.press("f", "t").settle()
	for sc.press("w", "enter"); sc.setup().Move() != nil; {
		sc.confirms(1)
	}
	sc.press("r").settle()
	sc.press("1", "up", "e").settle().says("here it is, with what was typed")
	if f := sc.Over.(*jobform.Page); f.Field("state").Value() != "running" || f.Field("fixed").Value() != "1" || f.Field("shift").Value() != "centred" {
		t.Errorf("the form is not as the job is now:\n%s", sc.View())
	}
	sc.press("enter").settle()
	j := sc.Now.Find("D-101")
	if j.State != plan.Running || j.Fixed != 1 || j.Shift != plan.Centred || j.Metres != 10*metres {
		t.Errorf("taken: state %d, turn %d, shift %d, %v m of %v", j.State, j.Fixed, j.Shift, j.Metres, metres)
	}
	if kept := read(t, dir).Day.Jobs[0]; kept.State != plan.Running || sc.Filed.Find("D-101").State != plan.Running {
		t.Errorf("the file has state %d", kept.State)
	}
}

// A key that was both typed and changed since stays as typed; one that is as it is now in
// the day is no change.
func TestFormPutAwayKeepsWhatWasTyped(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("1", "j", "e").on("fixed")
	s.types("3").press("esc", "t").settle()
	if s.Jobs()[1].Fixed != 2 {
		t.Fatal("it isn't fixed to its turn")
	}
	s.press("e")
	if got := s.on("fixed").Open().Value(); got != "3" {
		t.Errorf("the form has turn %q, 3 was typed", got)
	}
	s.press("ctrl+u").types("2").press("enter").says("is unchanged")
}

// While a form is open the shop may be read again: the form is then about the job as it
// is there.
func TestFormFollowsTheFiles(t *testing.T) {
	sc, dir := atWork(t, 80, 24)
	sc.press("1", "j", "e").on("length_m")
	sc.types("0")
	fresh := read(t, dir)
	fresh.Day.Jobs[1].Fixed = 2
	id, metres, n := fresh.Day.Jobs[1].ID, fresh.Day.Jobs[1].Metres, len(fresh.Day.Jobs)
	sc.session.Files.Reread(fresh, nil, "read again")
	sc.settle().press("enter").settle()
	if j := sc.Now.Find(id); j.Fixed != 2 || j.Metres != 10*metres || len(sc.Now.All) != n {
		t.Errorf("%d jobs, %s with turn %d and %v m of %v", len(sc.Now.All), id, j.Fixed, j.Metres, metres)
	}
}

// A field takes as much as there is room for, and says so; the end of it is in sight, and
// what a file has is never cut.
func TestFieldsAreBounded(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("1", "e")
	for _, key := range []string{"slits", "id", "material"} {
		f := s.on(key)
		for _, text := range []string{strings.Repeat("1x25.4; ", 900), strings.Repeat("東", 3000) + "1"} {
			s.press("ctrl+u")
			s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
			s.says("a field has room for 1000 characters")
			if got := len([]rune(f.Open().Value())); got != 1000 {
				t.Errorf("%s: %d characters", key, got)
			}
			s.fits()
			s.press("backspace", "7").fits()
			if !strings.Contains(s.View(), "7"+s.Caret) {
				t.Errorf("%s: the end that is typed at isn't in sight:\n%s", key, s.View())
			}
		}
	}
	s.press("ctrl+u").types("short enough")
	if s.Notice.Text != "" {
		t.Errorf("it is said %q", s.Notice.Text)
	}
	f := s.on("slits")
	f.Open().Set(strings.Repeat("25.4; ", 300) + "25.4")
	was := len(f.Open().Value())
	s.press("backspace", "4", "4")
	if got := len(f.Open().Value()); got != was-1 {
		t.Errorf("of %d characters of a file %d are left", was, got)
	}
}
