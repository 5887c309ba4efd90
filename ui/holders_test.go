package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
	"bide/ui/keys"
	"bide/ui/pane/holders"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/google/go-cmp/cmp"
)

// listed are the numbers of the rows that the pane of holders lists, on a screen that has room
// for all.
func (s *screen) listed() (out []int) {
	s.send(tea.WindowSizeMsg{Width: 80, Height: 160})
	for _, l := range strings.Split(s.View(), "\n")[3:] {
		var n int
		if _, err := fmt.Sscan(strings.TrimLeft(l, s.Cursor+" "), &n); err != nil {
			break
		}
		out = append(out, n)
	}
	return out
}

// Each order is by what it says; holders alike stay by number, and turned round it
// is the other way about.
func TestHoldersInOrder(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("5", "right", "right")
	use := s.Use()
	for _, order := range []struct {
		name string
		by   func(n int) float64
	}{
		{"number", func(n int) float64 { return float64(n) }},
		{"idle time", func(n int) float64 { _, d := use.Holders[n-1].Spell(2); return -float64(d) }},
		{"next job", func(n int) float64 {
			if next := use.Holders[n-1].Next(2); next >= 0 {
				return float64(next)
			}
			return 1e9
		}},
		{"moves", func(n int) float64 { return -float64(use.Holders[n-1].Moves) }},
		{"metres", func(n int) float64 { return -use.Holders[n-1].Metres }},
		{"blade metres", func(n int) float64 { return -s.Shop.Positions.Metres[n-1] }},
		{"condition", func(n int) float64 { return -float64(s.Shop.Beam.Holders[n-1]) }},
	} {
		got := s.listed()
		if !strings.Contains(s.View(), "by "+order.name+", ") {
			t.Fatalf("it isn't sorted by %s:\n%s", order.name, s.View())
		}
		if !slices.IsSortedFunc(got, func(a, b int) int {
			switch d := order.by(a) - order.by(b); {
			case d < 0:
				return -1
			case d > 0:
				return 1
			}
			return a - b
		}) || len(got) != len(s.Shop.Beam.Holders) {
			t.Errorf("by %s: %v", order.name, got)
		}
		turned := s.press("O").listed()
		if slices.Reverse(turned); !slices.Equal(got, turned) {
			t.Errorf("by %s, turned round: %v", order.name, turned)
		}
		s.press("O", "o")
	}
}

// The strip tells what each holder does in each job, as the plan has it.
func TestStripIsThePlan(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 200, 60).settle().press("5")
	lines := strings.Split(s.View(), "\n")
	for _, l := range lines {
		f := strings.Fields(strings.TrimLeft(l, "▸ "))
		var n int
		if len(f) < 5 || !(strings.Contains(l, "good") || strings.Contains(l, "no cut")) || strings.Contains(l, "Holder") {
			continue
		}
		if _, err := fmt.Sscan(f[0], &n); err != nil {
			continue
		}
		want := ""
		for _, o := range s.Present.Known {
			h, c := o.Step.Changeover.Holders[n-1], &o.Step.Changeover
			marks := map[plan.Use][2]string{plan.Cutting: {"|", "X"}, plan.Resting: {".", "+"}, plan.Parked: {"_", "="}}[h.Use]
			if h.At != c.From[n-1] {
				want += marks[1]
			} else {
				want += marks[0]
			}
		}
		if !strings.Contains(strings.ReplaceAll(l, " ", ""), want) {
			t.Errorf("holder %d: no %s in %q", n, want, l)
		}
	}
}

// A mark plans the day anew on the beam as it is now, tells what that costs, and can
// be undone and done again.
func TestMarkingAHolder(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle()
	before, able := s.Present.Totals, ids(s.Able())
	s.press("5", "down", "down")
	number := s.Holder
	s.press("c", "s", "j", "a", "m", "enter").settle()
	if m := s.Actual.Marks[number]; m != (shop.Mark{Condition: plan.Stuck, Reason: "jam"}) {
		t.Fatalf("holder %d is marked %+v", number, m)
	}
	sameAsPlanned(t, s)
	after := s.Present.Totals
	cost := words.Against(after, before)
	if want := fmt.Sprintf("holder %d is recorded as stuck (not saved): ", number); !strings.HasPrefix(s.Told(s.Pending), want) || !strings.HasSuffix(s.Told(s.Pending), cost) {
		t.Errorf("told %q, want %q and %q", s.Told(s.Pending), want, cost)
	}
	for _, id := range able {
		if lost := !slices.Contains(ids(s.Able()), id); lost != strings.Contains(s.Told(s.Pending), id) {
			t.Errorf("%s can no longer be run: %v; told %q", id, lost, s.Told(s.Pending))
		}
	}
	for _, o := range s.Present.Known {
		if len(o.Faults) > 0 {
			continue
		}
		if c := &o.Step.Changeover; c.Holders[number-1].At != c.From[number-1] {
			t.Errorf("the stuck holder moves to %s", o.Step.Job.ID)
		}
	}
	s.press("u").settle()
	if diff := cmp.Diff(before, s.Present.Totals); diff != "" || len(s.Actual.Marks) != 0 {
		t.Errorf("undone, the day costs something else, marks %v:\n%s", s.Actual.Marks, diff)
	}
	s.press("U").settle()
	if diff := cmp.Diff(after, s.Present.Totals); diff != "" || s.Actual.Marks[number].Reason != "jam" {
		t.Errorf("done again, the day costs something else, marks %v:\n%s", s.Actual.Marks, diff)
	}
}

// Nothing is marked by leaving the question or the reason.
func TestMarkingIsLeft(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("5")
	for _, names := range [][]string{{"c", "esc"}, {"c", "q"}, {"c", "s", "x", "esc"}, {"c", "b"}, {"c", "down", "esc"}} {
		s.press(names...).settle()
		if len(s.Actual.Marks) != 0 || s.Prompt != nil || s.hold.Help() == keys.OnMark || s.ended || len(s.session.History.Past) != 0 {
			t.Fatalf("%v: marks %v, prompt %v", names, s.Actual.Marks, s.Prompt)
		}
	}
	if s.press("6", "1"); s.focus != theDay {
		t.Error("the keys don't go back to the day")
	}
}

// What the record has of a holder is shown.
func TestRecordIsShown(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join("..", "testdata", "crowded"))); err != nil {
		t.Fatal(err)
	}
	r, err := record.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	at := time.Date(2026, 11, 24, 13, 5, 0, 0, time.UTC)
	for _, e := range []record.Event{
		{Time: at, Kind: record.Moved, Holder: 17, From: 0, To: 1500 * plan.Millimetre},
		{Time: at, Kind: record.Condition, Holder: 17, Condition: plan.Stuck},
	} {
		if err := r.Append(e); err != nil {
			t.Fatal(err)
		}
	}
	r.Close()
	sh, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	s := newScreen(t, sh, testLook(noColours, false, false), 120, 36).settle()
	s.Holder = 17
	s.press("5").settle()
	if want := "record: 1 move over 1.5 m; stuck 1 time, no cut or out never, position corrected never; last moved 24 Nov 2026, 13:05"; !strings.Contains(s.View(), want) {
		t.Errorf("no %q in\n%s", want, s.View())
	}
}

// The pairs are the day's changeovers, the one with most moves first, and picking
// one picks its job.
func TestPairsPickTheirJob(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("5", "p", "home")
	most := 0
	for turn, o := range s.Present.Known {
		if o.Step.Changeover.Repositions > s.Present.Known[most].Step.Changeover.Repositions {
			most = turn
		}
	}
	if s.JobAt != most {
		t.Errorf("the first pair picks turn %d, want %d", s.JobAt, most)
	}
	s.press("end")
	for _, o := range s.Present.Known {
		if o.Step.Changeover.Repositions < s.Present.Known[s.JobAt].Step.Changeover.Repositions {
			t.Errorf("the last pair is turn %d, but %s moves fewer", s.JobAt, o.Step.Job.ID)
		}
	}
}

// An idle holder is told until when nothing is done to it: by the plan's own moves and
// cuts.
func TestIdleHoldersAreLeftAloneUntil(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 120, 36).settle().press("5", "right", "right")
	idle := 0
	for n := 1; n <= len(s.Shop.Beam.Holders); n++ {
		var text string
		for _, sp := range holders.AboutHolder(s.Shared, n) {
			text += sp.Text + "\n"
		}
		want := "it is not moved again"
		for turn := len(s.Jobs()) - 1; turn > s.JobAt; turn-- {
			c := &s.Outcome(turn).Step.Changeover
			if h := c.Holders[n-1]; h.Use == plan.Cutting || h.At != c.From[n-1] {
				want = fmt.Sprintf("it stays until %s at %s", s.Jobs()[turn].ID, s.Clock(s.Outcome(turn).Step.SetupStart))
			}
		}
		cuts := s.Outcome(s.JobAt).Step.Changeover.Holders[n-1].Use == plan.Cutting
		if strings.Contains(text, want) == cuts {
			t.Errorf("holder %d, cutting %v, want %q in\n%s", n, cuts, want, text)
		}
		if !cuts {
			idle++
		}
	}
	if idle == 0 {
		t.Error("no holder is idle")
	}
}

// Where the columns of blades, edges and jams have no room, the picked holder's lines
// tell of them, and the strip's marks are told below however much there is to tell.
func TestNarrowHoldersTellAll(t *testing.T) {
	s := newScreen(t, crowded(t), testLook(noColours, false, false), 80, 24).settle().press("5")
	s.session.Files.Wear = &record.Summary{Holders: make([]record.Wear, len(s.Shop.Beam.Holders))}
	for range 8 {
		s.press("down")
		n := holders.Picked(s.Shared)
		s.session.Files.Wear.Holders[n-1].Jams = 7
		b := s.Start.Positions.Blades[n-1]
		for _, want := range []string{
			fmt.Sprintf("blade of %g degrees, tip %g mm", b.Bevel, b.Tip), fmt.Sprintf("%.0f m cut with this blade", s.Start.Positions.Metres[n-1]),
			"stuck 7 times before", "| cutting . resting _ parked",
		} {
			if view := strings.Join(strings.Fields(s.View()), " "); !strings.Contains(view, want) {
				t.Errorf("holder %d: no %q in\n%s", n, want, s.View())
			}
		}
	}
}
