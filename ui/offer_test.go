package ui

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/sequence"
	"bide/ui/draw"
	"bide/ui/pane"
)

// morning is the small day, in a folder that may be written: it is searched soon.
func morning(t *testing.T) (s *screen, dir, day string) {
	t.Helper()
	s, dir = atSmall(t, 120, 36)
	s.session.Search.By = tries(200)
	return s, dir, file(t, dir, "day.toml")
}

// accepted is such a screen with an order accepted that a search found.
func accepted(t *testing.T) (s *screen, dir, day string) {
	t.Helper()
	s, dir, day = morning(t)
	s.press("s").settle().press("enter").settle()
	if !s.Changed() {
		t.Fatalf("nothing was found:\n%s", s.View())
	}
	return s, dir, day
}

// layouts are those that the present order is planned with, by job.
func layouts(s *screen) map[string]plan.Chosen {
	out := map[string]plan.Chosen{}
	for t, j := range s.Jobs() {
		l := s.Outcome(t).Step.Layout
		out[j.ID] = plan.Chosen{Slits: l.Slits, Shift: l.Shift}
	}
	return out
}

// laidOut fails for each job that isn't laid out as wanted, but for those excepted.
func (s *screen) laidOut(want map[string]plan.Chosen, but ...string) {
	s.t.Helper()
	for id, is := range layouts(s) {
		if was, there := want[id]; there && !slices.Contains(but, id) && !is.Same(&was) {
			s.t.Errorf("%s is laid out as %v, was as %v", id, is, was)
		}
	}
}

// What is accepted stays through edits of other jobs, setups and undo; a job that is to
// be laid out otherwise, or afresh, loses it.
func TestAcceptedLayoutsStay(t *testing.T) {
	s, _, _ := accepted(t)
	found, jobs := layouts(s), s.Jobs()
	chosen := 0
	for _, j := range jobs {
		if was := found[j.ID]; !j.Chosen.Lays(was.Slits, was.Shift) {
			t.Errorf("%s doesn't keep what was found for it: %+v, %+v", j.ID, j.Chosen, was)
		} else if j.Chosen != nil {
			chosen++
		}
	}
	if chosen < 4 || !slices.ContainsFunc(pane.AboutJob(s.Shared, 0), func(l draw.Span) bool { return strings.HasPrefix(l.Text, "layout from an accepted search; ") }) {
		t.Fatalf("%d jobs keep what was found: %v", chosen, pane.AboutJob(s.Shared, 0))
	}
	first := jobs[0].ID
	s.press("t").settle().laidOut(found) // each answered anew behind a job that is another
	s.press("J").settle().laidOut(found)
	s.press("e", "down", "down", "down", "down").settle().press("esc")
	s.press("x").settle().laidOut(found)
	s.press("u", "u", "u").settle().laidOut(found)

	s.press("f").settle()
	if j := s.Now.Find(first); j.Shift == jobs[0].Shift || j.Chosen != nil {
		t.Errorf("%s may shift otherwise and keeps what was chosen: %+v", first, j)
	}
	s.laidOut(found, first)
	s.press("u").settle().laidOut(found)
	if s.press("n").settle(); s.Now.Find(first).Chosen != nil || !strings.Contains(s.View(), first+" is replanned") {
		t.Errorf("it isn't planned afresh:\n%s", s.View())
	}
	s.laidOut(found, first)
	if s.press("n"); !strings.Contains(s.View(), "there is nothing to replan") {
		t.Errorf("twice:\n%s", s.View())
	}
	s.press("N").settle()
	if slices.ContainsFunc(s.Jobs(), func(j *plan.Job) bool { return j.Chosen != nil }) || !strings.Contains(s.View(), "jobs replanned") {
		t.Errorf("some are not planned afresh:\n%s", s.View())
	}
	s.press("u", "u").settle().laidOut(found)
	s.press("u").settle()
	if s.Changed() || slices.ContainsFunc(s.Jobs(), func(j *plan.Job) bool { return j.Chosen != nil }) {
		t.Error("the acceptance isn't undone")
	}
	s.press("U").settle().laidOut(found)
}

// A setup confirmed to its end leaves the jobs behind it as they were found.
func TestAcceptedLayoutsStayInASetup(t *testing.T) {
	s, dir, _ := accepted(t)
	found := layouts(s)
	s.press("ctrl+s").settle().setUpNext()
	if s.Now.All[0].State != plan.Running || len(s.Outcome(0).Step.Changeover.Moves) > 0 {
		t.Errorf("the first job doesn't stand as it was set up:\n%s", s.View())
	}
	s.laidOut(found)
	s.session.Journal.Close()
	goOn(t, dir, 120, 36).laidOut(found)
}

// Accepted, saved, left and opened again: the same layouts. Undone and saved, the file
// is as it was, to the byte.
func TestAcceptedLayoutsAreSaved(t *testing.T) {
	s, dir, _ := accepted(t)
	order, found, day := ids(s.Jobs()), layouts(s), s.Present
	s.press("ctrl+s").settle()
	if s.Changed() || !strings.Contains(s.View(), "saved in day.toml, with what a search chose for ") {
		t.Errorf("it isn't said to be saved:\n%s", s.View())
	}
	text, _ := os.ReadFile(filepath.Join(dir, "day.toml"))
	if !strings.Contains(string(text), "\nchosen_slits = [") || !strings.Contains(string(text), "# Inch goods: the widths are those of the customer's drawing.") {
		t.Errorf("the file holds\n%s", text)
	}
	s.session.Journal.Close()
	again := goOn(t, dir, 120, 36)
	if !slices.Equal(ids(again.Jobs()), order) {
		t.Errorf("the order is %v, was %v", ids(again.Jobs()), order)
	}
	again.laidOut(found)
	if again.Changed() {
		t.Error("opened again, something is changed")
	}
	if want := day.Totals; again.Present.Totals != want {
		t.Errorf("opened again the day comes to %+v, was %+v", again.Present.Totals, want)
	}
	for i, o := range again.Present.Known {
		if !slices.Equal(o.Step.Changeover.Holders, day.Known[i].Step.Changeover.Holders) {
			t.Errorf("opened again, holders of %s stand elsewhere", o.Step.Job.ID)
		}
	}
	sheets, err := sequence.PlanDay(again.Shop.Beam, again.Shop.Positions, again.Shop.Day)
	if err != nil {
		t.Fatal(err)
	}
	if sheets = sequence.Jointly(context.Background(), sheets, plan.AimMinutes); sheets.Totals != day.Totals {
		t.Errorf("the sheet comes to %+v, the screen to %+v", sheets.Totals, day.Totals)
	}

	undone, dir, was := accepted(t)
	undone.press("ctrl+s").settle().press("u", "ctrl+s").settle()
	if text, _ := os.ReadFile(filepath.Join(dir, "day.toml")); string(text) != was {
		t.Errorf("undone and saved, the file differs:\n%s", text)
	}
}

// A form that was put away is found again though the job carries another layout now.
func TestFormOutlivesAcceptance(t *testing.T) {
	s, _, _ := morning(t)
	s.press("e").types("x").press("esc", "s").settle().press("enter").settle()
	turn := slices.IndexFunc(s.Jobs(), func(j *plan.Job) bool { return j.ID == "D-101" })
	s.Pick(turn)
	s.press("e", "enter").settle()
	if s.Now.Find("D-101x") == nil || s.Now.Find("D-101") != nil || len(s.Now.All) != 6 {
		t.Errorf("the jobs are %v", ids(s.Jobs()))
	}
}

// A search that runs, or an order that waits, would be lost: leaving asks.
func TestLeavingASearch(t *testing.T) {
	s, _, _ := morning(t)
	if s.press("s", "q"); s.ended || !strings.Contains(s.View(), "Not saved: what the search has found so far") {
		t.Errorf("it isn't asked:\n%s", s.View())
	}
	s.press("n").settle()
	if s.Over != nil {
		s.press("esc")
	}
	if s.press("q"); s.ended || !strings.Contains(s.View(), "Not saved: the order that a search found (v shows it)") {
		t.Errorf("it isn't asked:\n%s", s.View())
	}
}

// What an accepted search was for is what the day is planned for from then on, the next
// time too, and that is told; a search that is discarded leaves no trace.
func TestAimOfTheAcceptedSearchStays(t *testing.T) {
	s, dir, _ := morning(t)
	if s.press("S").settle().press("x"); s.Result.Aim != plan.AimMinutes || s.Changed() {
		t.Error("discarded, it is planned for")
	}
	s.press("u", "v", "enter").settle()
	if s.Result.Aim != plan.AimMoves {
		t.Error("accepted, it is planned for minutes")
	}
	if s.press("u").settle(); s.Result.Aim != plan.AimMinutes || s.Changed() {
		t.Error("the acceptance undone, it is planned for moves")
	}
	if s.press("U").settle().press("ctrl+s").settle(); s.Result.Aim != plan.AimMoves || !strings.Contains(file(t, dir, "day.toml"), "\naim   = \"moves\"\n") {
		t.Errorf("done again and saved, the file holds\n%s", file(t, dir, "day.toml"))
	}
	s.session.Journal.Close()
	again := newScreen(t, read(t, dir), testLook(noColours, false, false), 120, 36).settle()
	if again.Result.Aim != plan.AimMoves || !slices.ContainsFunc(again.notes(), func(n string) bool { return strings.Contains(n, "planned for the fewest moves") }) {
		t.Errorf("opened again it is planned for %v: %q", again.Result.Aim, again.notes())
	}
}
