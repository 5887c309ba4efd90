package ui

import (
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/draft"
)

// Each edit changes what it is to change, and undoing all of them returns to the
// day of the file.
func TestEditsAndUndo(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	start := ids(s.Jobs())
	now := func(id string) *plan.Job { return s.Now.Find(id) }
	s.press("j", "j")
	id := s.Job().ID
	for _, c := range []struct {
		key  string
		want func(*plan.Job) bool
	}{
		{"t", func(j *plan.Job) bool { return j.Fixed == 3 }},
		{"t", func(j *plan.Job) bool { return j.Fixed == 0 }},
		{"y", func(j *plan.Job) bool { return j.Arrange == plan.ByEntries }},
		{"y", func(j *plan.Job) bool { return j.Arrange == plan.AnyArrange }},
		{"r", func(j *plan.Job) bool { return j.State == plan.Running && s.Jobs()[0] == j }},
		{"r", func(j *plan.Job) bool { return j.State == plan.Waiting }},
		{"d enter", func(j *plan.Job) bool { return j.State == plan.Done && !slices.Contains(s.Jobs(), j) }},
		{"u", func(j *plan.Job) bool { return j.State == plan.Waiting && slices.Contains(s.Jobs(), j) }},
		{"z", func(j *plan.Job) bool { return j.State == plan.OnHold }},
		{"u", func(j *plan.Job) bool { return j.State == plan.Waiting }},
		{"x", func(j *plan.Job) bool { return j == nil }},
		{"u", func(j *plan.Job) bool { return j != nil }},
	} {
		if s.press(strings.Fields(c.key)...).settle(); !c.want(now(id)) {
			t.Errorf("%s: %s is %+v:\n%s", c.key, id, now(id), s.View())
		}
		s.fits()
	}
	before := now(id).Shift
	if s.press("f"); now(id).Shift == before {
		t.Error("f leaves the shift as it was")
	}
	for s.session.History.Undo() {
		s.session.Show(draft.Draft{}, "", "")
	}
	s.follow()
	if !slices.Equal(ids(s.Jobs()), start) || s.Changed() {
		t.Errorf("all undone, the day is %v, was %v", ids(s.Jobs()), start)
	}
}

// What the file's checks forbid is refused and said: two jobs of one turn, two that
// run, jobs that wait for each other.
func TestEditsRefused(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	s.press("r").settle().press("j", "r")
	if s.Job().State == plan.Running || !strings.Contains(s.View(), "only one job can run") {
		t.Errorf("two jobs run:\n%s", s.View())
	}
	a, b := s.Jobs()[2], s.Jobs()[3]
	s.session.OrderAfter(a, b)
	s.session.OrderAfter(s.Now.Find(b.ID), s.Now.Find(a.ID))
	if len(s.Now.Find(b.ID).After) > 0 {
		t.Errorf("%s and %s wait for each other", a.ID, b.ID)
	}
}

// A job that is taken out is taken out of what others wait for; undone, both are as
// they were.
func TestRemovedJobIsWaitedForNoMore(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	a, b := s.Jobs()[0], s.Jobs()[1]
	s.session.OrderAfter(b, a)
	s.Pick(0)
	if s.press("x"); len(s.Now.Find(b.ID).After) != 0 {
		t.Errorf("%s still comes after a job that isn't there", b.ID)
	}
	if s.press("u"); !slices.Equal(s.Now.Find(b.ID).After, []string{a.ID}) {
		t.Errorf("undone, %s comes after %v", b.ID, s.Now.Find(b.ID).After)
	}
}

// What was set aside is listed, and comes back from there; all of the day may go.
func TestLeftOutComesBack(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	n := len(s.Jobs())
	for range n {
		s.press("z").fits()
	}
	if len(s.Jobs()) != 0 || s.Job() != nil {
		t.Fatalf("%d jobs are left", len(s.Jobs()))
	}
	s.press("z", "g", "e", "c", "t", "v", "esc", "4", "b", "b", "1").fits()
	for range n {
		s.press("Z").fits()
		s.press("enter").fits()
	}
	if len(s.Jobs()) != n {
		t.Errorf("%d of %d came back", len(s.Jobs()), n)
	}
}

// A job comes after another by a choice from a list, and no more by the same.
func TestOrderAfterFromTheList(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle()
	s.press("j", "j")
	id, first := s.Job().ID, s.Jobs()[0].ID
	s.press("o", "enter").fits()
	if !slices.Equal(s.Now.Find(id).After, []string{first}) {
		t.Errorf("%s comes after %v, want %s", id, s.Now.Find(id).After, first)
	}
	if s.press("enter", "esc"); len(s.Now.Find(id).After) > 0 || s.Over != nil {
		t.Errorf("%s comes after %v, want none", id, s.Now.Find(id).After)
	}
}

// A job that the beam is half set up for hasn't run, and so isn't done.
func TestHalfSetUpIsNotDone(t *testing.T) {
	s, _ := atWork(t, 120, 36)
	s.press("w", "enter").confirms(1).press("esc").settle()
	j := s.Job()
	s.press("d").tells(j.ID + " has begun and it has not run: w continues it, z puts it on hold")
	if s.Now.Find(j.ID).State != plan.Waiting {
		t.Errorf("%s is %v", j.ID, s.Now.Find(j.ID).State)
	}
	if s.press("z").settle(); s.Now.Find(j.ID).State != plan.OnHold {
		t.Errorf("it can't be set aside: %v", s.Now.Find(j.ID).State)
	}
}
