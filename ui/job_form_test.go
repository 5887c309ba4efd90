package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bide/plan"
	"bide/ui/keys"
	"bide/ui/page/jobform"

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
	f := s.Over.(*jobform.Page)
	for f.Open().Key != key {
		s.press("down")
	}
	return s
}

// A new job is typed in, checked as one types, and comes behind the picked one;
// undone, it is gone.
func TestAddJob(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	n := len(s.Jobs())
	s.press("j", "a").types("q?1")
	s.to("material").types(s.Jobs()[0].Material)
	s.to("web").types("1000")
	s.to("slits").types("10 x 0")
	golden(t, "80x24_form_wrong", s.View())
	s.fits()
	if s.press("enter"); s.Over == nil || len(s.Jobs()) != n {
		t.Fatal("a job with a wrong width is taken")
	}
	s.press("ctrl+u").types("10 x 96")
	s.to("length_m").types("800")
	if !strings.Contains(s.View(), "no errors") {
		t.Fatalf("there are problems:\n%s", s.View())
	}
	s.press("enter").settle()
	if s.Over != nil || len(s.Jobs()) != n+1 || s.Jobs()[2].ID != "q?1" || s.JobAt != 2 {
		t.Fatalf("the job isn't there: %v\n%s", ids(s.Jobs()), s.View())
	}
	if got := s.Jobs()[2].Slits(); len(got) != 10 || got[0] < 96*plan.Millimetre {
		t.Errorf("its slits are %v", got)
	}
	if s.press("u"); len(s.Jobs()) != n || s.Changed() {
		t.Errorf("undone: %v", ids(s.Jobs()))
	}
}

// The id proposed for a new job goes on with the day's numbers; typing takes its place,
// an arrow keeps it.
func TestIDProposed(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("a")
	f := s.Over.(*jobform.Page)
	highest := 0
	for _, j := range s.Now.All { // the demo's are all D- and a number
		n, err := strconv.Atoi(strings.TrimPrefix(j.ID, "D-"))
		if err != nil {
			t.Fatal(err)
		}
		highest = max(highest, n)
	}
	want := fmt.Sprintf("D-%d", highest+1)
	if f.Field("id").Value() != want || !strings.Contains(s.View(), "typing replaces it") {
		t.Errorf("proposed is %q, want %q, or it isn't said that typing replaces it:\n%s", f.Field("id").Value(), want, s.View())
	}
	if s.types("J-9"); f.Field("id").Value() != "J-9" {
		t.Errorf("typed over the proposal: %q", f.Field("id").Value())
	}
	s.press("esc", "esc")
	s.closed = nil
	s.press("a", "right").types("x")
	if got := s.Over.(*jobform.Page).Field("id").Value(); got != want+"x" {
		t.Errorf("kept with an arrow: %q", got)
	}
}

// A new job comes behind the picked one, but no rule is broken for that: neither its own
// nor one of another job.
func TestAddedWhereRulesLet(t *testing.T) {
	for _, c := range []struct {
		about      string
		rule, text string
		want       int // turn from 0, when it is added behind the first of 14
	}{
		{"none", "", "", 1},
		{"after the fifth", "after", "D-105", -1},
		{"the fourth", "fixed", "4", 3},
		{"the last", "fixed", "-1", 14},
	} {
		s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
		s.press("home", "c")
		if c.rule != "" {
			s.to(c.rule).press("ctrl+u").types(c.text)
		}
		s.press("enter").settle()
		turn, want := s.JobAt, c.want
		if want < 0 {
			want = slices.Index(ids(s.Jobs()), c.text) + 1
		}
		if len(s.Broken) > 0 || turn != want {
			t.Errorf("%s: at turn %d of %v, want %d; broken: %v", c.about, turn, ids(s.Jobs()), want, s.Broken)
		}
	}
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.Pick(1)
	s.press("t") // the second is fixed to its turn
	s.press("home", "c", "enter").settle()
	if len(s.Broken) > 0 || s.JobAt != 2 || !strings.Contains(s.View(), "the nearest position in the sequence that keeps the rules") {
		t.Errorf("before a fixed job: turn %d, broken %v\n%s", s.JobAt, s.Broken, s.View())
	}
}

// What is wrong is told in the words of the form, not in those of the file.
func TestFormSaysItsLabels(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("a")
	for range len(s.Over.(*jobform.Page).Fields) {
		s.press("down")
		if view := s.View(); strings.Contains(view, "length_m") || !strings.Contains(view, "length is missing") || !strings.Contains(view, "web width is missing") {
			t.Fatalf("the file's words:\n%s", view)
		}
	}
	s.press("enter")
	if view := s.View(); strings.Contains(view, "length_m") {
		t.Errorf("the file's words:\n%s", view)
	}
}

// An edit that renames a job is followed by those that come after it.
func TestEditRenames(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	a, b := s.Jobs()[0], s.Jobs()[1]
	s.session.OrderAfter(b, a)
	s.Pick(0)
	s.press("e").types("x").press("enter")
	if got := s.Jobs()[0]; got.ID != a.ID+"x" || s.Origin(got) != a.ID {
		t.Errorf("renamed: %s from %q", got.ID, s.Origin(got))
	}
	if !slices.Equal(s.Jobs()[1].After, []string{a.ID + "x"}) {
		t.Errorf("%s comes after %v", b.ID, s.Jobs()[1].After)
	}
}

// Esc puts a form away without losing what was typed, and says so.
func TestFormIsPutAway(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("c").types("zz").press("esc")
	if s.Over != nil || !strings.Contains(s.View(), "closed, not saved") {
		t.Fatalf("it isn't said:\n%s", s.View())
	}
	if s.press("q"); s.ended || !s.AsksToQuit {
		t.Error("leaving with an unfinished form doesn't ask")
	}
	s.press("esc", "c")
	if got := s.Over.(*jobform.Page).Field("id").Value(); !strings.HasSuffix(got, "zz") {
		t.Errorf("the form came back with %q", got)
	}
	if s.press("enter"); len(s.closed) != 0 || s.Over != nil {
		t.Error("taken, the form is still put away")
	}
	if s.press("e", "esc"); len(s.closed) != 0 {
		t.Error("a form that nothing was typed into is kept")
	}
}

// Words of a few are chosen with the arrows; pasted text is one line.
func TestFormChoicesAndPaste(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, true), 80, 24).settle()
	s.press("e").to("arrange")
	f := s.Over.(*jobform.Page)
	was := f.Field("arrange").Value()
	s.press("right")
	if f.Field("arrange").Value() == was {
		t.Error("the arrow changes nothing")
	}
	if s.press("left"); f.Field("arrange").Value() != was {
		t.Errorf("back it is %q, was %q", f.Field("arrange").Value(), was)
	}
	s.to("slits").press("ctrl+u")
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("2 x 100\n3 x 50\n"), Paste: true})
	if got := f.Field("slits").Value(); got != "2 x 100; 3 x 50; " || !strings.Contains(s.View(), "5 slits, ") {
		t.Errorf("pasted: %q, read:\n%s", got, s.View())
	}
	s.fits()
	golden(t, "80x24_form_ascii", s.View())
}

// In the material's field the names that match are listed as one types; the arrows
// pick one, Enter and Tab take it and go on, Esc leaves what was typed.
func TestFormListsMaterials(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, true), 80, 24).settle()
	all := len(s.Shop.Materials.Names())
	s.press("a").to("material")
	f := s.Over.(*jobform.Page)
	if !strings.Contains(s.View(), fmt.Sprintf("%d of %d materials", all, all)) || s.scope() != keys.OnJobForm {
		t.Fatalf("nothing typed, not all of %d names are listed, or one is picked:\n%s", all, s.View())
	}
	golden(t, "80x24_form_materials_ascii", s.types("tape").View())
	s.fits()
	if !strings.Contains(s.View(), "is no material") {
		t.Error("what is typed so far isn't checked")
	}
	_, second, _ := strings.Cut(s.press("down").View(), "    > ")
	s.press("enter")
	if took := f.Field("material").Value(); s.Over != f || !strings.HasPrefix(second, took+" ") || f.Open().Key != "web" {
		t.Fatalf("took %q, now at %s; want the next field and %.30q", took, f.Open().Key, second)
	}
	s.press("up", "down") // a known name is passed by
	if f.Open().Key != "web" {
		t.Errorf("passing by ends at %s", f.Open().Key)
	}
	s.press("up", "ctrl+u").types("CREPE pap")
	if s.press("esc"); s.Over != f || f.Open().Value() != "CREPE pap" || s.scope() != keys.OnJobForm {
		t.Errorf("Esc leaves %q, or a name picked", f.Open().Value())
	}
	s.press("down", "tab")
	if f.Field("material").Value() != "Crepe paper 140" || f.Open().Key != "web" {
		t.Errorf("took %q, now at %s", f.Field("material").Value(), f.Open().Key)
	}
	s.press("up", "ctrl+u").types("zzz")
	if s.press("enter"); s.Over == nil || !strings.Contains(s.View(), "no material matches") {
		t.Errorf("a name that is none:\n%s", s.View())
	}
	s.press("down")
	if f.Open().Key != "web" {
		t.Errorf("without names, down goes to %s", f.Open().Key)
	}
}

// A form opened on a large screen can be worked in at 40x12: the field, what is wrong
// and the list are all in sight.
func TestFormOnASmallScreen(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("e")
	f := s.Over.(*jobform.Page)
	s.send(tea.WindowSizeMsg{Width: 40, Height: 12})
	for range f.Fields {
		if s.fits(); !strings.Contains(s.View(), s.Cursor) {
			t.Errorf("the field %s isn't in sight:\n%s", f.Open().Key, s.View())
		}
		s.press("down")
	}
	s.to("material").press("ctrl+u").types("film")
	s.press("down")
	golden(t, "40x12_form_materials", s.View())
	s.fits()
	_, picked, _ := strings.Cut(s.View(), "    "+s.Cursor+" ")
	if took := s.press("enter").Over.(*jobform.Page).Field("material").Value(); took != "Splicing film, silicone" && took != "PP film 40" || !strings.HasPrefix(picked, took+" ") {
		t.Errorf("took %q, picked in sight %.40q", took, picked)
	}
	s.to("state")
	if !strings.Contains(s.View(), "(waiting)") {
		t.Errorf("the state isn't in sight:\n%s", s.View())
	}
}
