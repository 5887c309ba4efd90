package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// types types a text key by key.
func (s *screen) types(text string) *screen {
	for _, r := range text {
		msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if r == ' ' {
			msg.Type = tea.KeySpace
		}
		s.send(msg)
	}
	return s
}

// to goes to a field of the open form.
func (s *screen) to(key string) *screen {
	f := s.over.(*jobForm)
	for f.key() != key {
		s.press("down")
	}
	return s
}

// A new job is typed in, checked as one types, and comes behind the picked one;
// undone, it is gone.
func TestAddJob(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	n := len(s.jobs())
	s.press("j", "a").types("q?1")
	s.to("material").types(s.jobs()[0].Material)
	s.to("web").types("1000")
	s.to("slits").types("10 x 0")
	golden(t, "80x24_form_wrong", s.View())
	s.fits()
	if s.press("enter"); s.over == nil || len(s.jobs()) != n {
		t.Fatal("a job with a wrong width is taken")
	}
	s.press("ctrl+u").types("10 x 96")
	s.to("length_m").types("800")
	f := s.over.(*jobForm)
	if len(f.problems) != 0 {
		t.Fatalf("problems: %+v", f.problems)
	}
	s.press("enter").settle()
	if s.over != nil || len(s.jobs()) != n+1 || s.jobs()[2].ID != "newbq?1" || s.turn != 2 {
		t.Fatalf("the job isn't there: %v\n%s", ids(s.jobs()), s.View())
	}
	if got := s.jobs()[2].Slits(); len(got) != 10 || got[0] < 96*plan.Millimetre {
		t.Errorf("its slits are %v", got)
	}
	if s.press("u"); len(s.jobs()) != n || s.changed() {
		t.Errorf("undone: %v", ids(s.jobs()))
	}
}

// An edit that renames a job is followed by those that come after it.
func TestEditRenames(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 120, 36).settle()
	a, b := s.jobs()[0], s.jobs()[1]
	s.orderAfter(b, a)
	s.pick(0)
	s.press("e").types("x").press("enter")
	if got := s.jobs()[0]; got.ID != a.ID+"x" || s.origin(got) != a.ID {
		t.Errorf("renamed: %s from %q", got.ID, s.origin(got))
	}
	if !slices.Equal(s.jobs()[1].After, []string{a.ID + "x"}) {
		t.Errorf("%s comes after %v", b.ID, s.jobs()[1].After)
	}
}

// Esc puts a form away without losing what was typed, and says so.
func TestFormIsPutAway(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("c").types("zz").press("esc")
	if s.over != nil || !strings.Contains(s.View(), "put away unfinished") {
		t.Fatalf("it isn't said:\n%s", s.View())
	}
	if s.press("q"); s.ended || !s.asks {
		t.Error("leaving with an unfinished form doesn't ask")
	}
	s.press("esc", "c")
	if got := s.over.(*jobForm).typed["id"]; !strings.HasSuffix(got, "zz") {
		t.Errorf("the form came back with %q", got)
	}
	if s.press("enter"); len(s.drawer) != 0 || s.over != nil {
		t.Error("taken, the form is still put away")
	}
	if s.press("e", "esc"); len(s.drawer) != 0 {
		t.Error("a form that nothing was typed into is kept")
	}
}

// Words of a few are chosen with the arrows; pasted text is one line.
func TestFormChoicesAndPaste(t *testing.T) {
	s := newScreen(t, demo(t), testLook(noColours, false, true), 80, 24).settle()
	s.press("e").to("arrange")
	f := s.over.(*jobForm)
	was := f.typed["arrange"]
	s.press("right")
	if f.typed["arrange"] == was {
		t.Error("the arrow changes nothing")
	}
	if s.press("left"); f.typed["arrange"] != was {
		t.Errorf("back it is %q, was %q", f.typed["arrange"], was)
	}
	s.to("slits").press("ctrl+u")
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("2 x 100\n3 x 50\n"), Paste: true})
	if got := f.typed["slits"]; got != "2 x 100; 3 x 50; " || len(f.read.Slits()) != 5 {
		t.Errorf("pasted: %q, read %v", got, f.read.Slits())
	}
	s.fits()
	golden(t, "80x24_form_ascii", s.View())
}
