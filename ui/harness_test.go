package ui

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/shop/knife"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden screens anew")

// TestMain runs the tests, or the screen itself where a test started this binary
// again to see it from outside.
func TestMain(m *testing.M) {
	if what := os.Getenv("BIDE_TEST_SCREEN"); what != "" {
		os.Exit(screenFromOutside(what))
	}
	flag.Parse()
	os.Exit(m.Run())
}

// The colour profiles, as lipgloss counts them.
const (
	manyColours = 1
	noColours   = 3
)

// testLook is a look that doesn't depend on what the tests run in.
func testLook(colours int, light, ascii bool) *draw.Theme {
	r := lipgloss.NewRenderer(io.Discard)
	switch colours {
	case manyColours:
		r.SetColorProfile(manyColours)
	default:
		r.SetColorProfile(noColours)
	}
	return draw.NewTheme(r, light, ascii)
}

func crowded(t testing.TB) *shop.Shop { return kept(t, "crowded") }

// demo is the built-in day.
func demo(t testing.TB) *shop.Shop { return kept(t, "demo") }

// kept is a shop of testdata, which is not to be written to.
func kept(t testing.TB, name string) *shop.Shop {
	t.Helper()
	s, problems := shop.Open("../testdata/" + name)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	s.Dir = ""
	return s
}

// smallDay is the first jobs of a day on a small beam, whose jobs have the demo's names: it is
// planned and searched in a moment, for tests of what doesn't depend on how large a day is.
func smallDay(t testing.TB, jobs int) *shop.Shop {
	t.Helper()
	s, problems := shop.Open("../testdata/small")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	s.Dir = ""
	s.Day.Jobs = s.Day.Jobs[:jobs]
	return s
}

// screen is a model driven by hand.
type screen struct {
	t testing.TB
	*model
	commands []tea.Cmd // not yet run
}

// newScreen is a screen whose days stay as their jobs come one by one: planning one together
// takes a while, and what most tests are about doesn't depend on it.
func newScreen(t testing.TB, s *shop.Shop, k *draw.Theme, w, h int) *screen {
	t.Helper()
	return screenWith(t, s, k, w, h, oneByOne)
}

func oneByOne(_ context.Context, day *plan.DayPlan, _ plan.Aim) *plan.DayPlan { return day }

// plannedScreen is a screen as a person has it: its days are planned together.
func plannedScreen(t testing.TB, s *shop.Shop, k *draw.Theme, w, h int) *screen {
	t.Helper()
	return screenWith(t, s, k, w, h, plannedOnce)
}

func screenWith(t testing.TB, s *shop.Shop, k *draw.Theme, w, h int, improve planning.Improver) *screen {
	t.Helper()
	m, err := newModel(s, k)
	if err != nil {
		t.Fatal(err)
	}
	m.session.Forecast.Plan, m.session.Forecast.Improve = jobPlannedOnce, improve
	sc := &screen{t: t, model: m}
	sc.later(m.Init())
	sc.send(tea.WindowSizeMsg{Width: w, Height: h})
	return sc
}

func (s *screen) later(cmd tea.Cmd) {
	if cmd != nil {
		s.commands = append(s.commands, cmd)
	}
}

// send gives the model a message; what it asks for waits.
func (s *screen) send(msg tea.Msg) {
	_, cmd := s.Update(msg)
	s.later(cmd)
}

// What a test waits for comes at once, or on a busy machine late: it is looked for after
// each pause, and given up after some minutes alone, as nothing that will come.
const (
	pause  = 50 * time.Millisecond
	giveUp = 5000
)

// fewer is how much of a sweep is done: all of it, or what there is time for.
func fewer(all, short int) int {
	if !plantest.IsLong() {
		return short
	}
	return all
}

// saying is the screen while something is said.
func (s *screen) saying(text string) *screen {
	s.session.Say("%s", text)
	s.follow()
	return s
}

// lineOf is the number of the first line of the screen that has a text.
func (s *screen) lineOf(text string) int {
	before, _, found := strings.Cut(s.View(), text)
	if !found {
		s.t.Fatalf("no %q in\n%s", text, s.View())
	}
	return strings.Count(before, "\n")
}

// settle does all that is asked for in the background.
func (s *screen) settle() *screen {
	s.follow() // whatever the test did to the session
	for len(s.commands) > 0 {
		s.background()
	}
	return s
}

// background does the first thing asked for.
func (s *screen) background() {
	cmd := s.commands[0]
	s.commands = s.commands[1:]
	msg := cmd()
	if batch, ok := msg.(tea.BatchMsg); ok {
		for _, cmd := range batch {
			s.later(cmd)
		}
		return
	}
	s.send(msg)
}

// press presses keys, by their names.
func (s *screen) press(names ...string) *screen {
	for _, name := range names {
		s.send(keyNamed(s.t, name))
	}
	return s
}

// keyNamed is the key that Bubble Tea calls so.
func keyNamed(t testing.TB, name string) tea.KeyMsg {
	if r := []rune(name); len(r) == 1 && name != " " {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: r}
	}
	for k := tea.KeyType(-100); k < 200; k++ {
		if m := (tea.KeyMsg{Type: k}); k != tea.KeyRunes && m.String() == name {
			return m
		}
	}
	t.Fatalf("there is no key %q", name)
	return tea.KeyMsg{}
}

// fits fails unless the frame has exactly the screen's lines, each as wide.
func (s *screen) fits() {
	s.t.Helper()
	frame := s.View()
	lines := strings.Split(frame, "\n")
	if strings.Contains(frame, "\x1b") && s.Open[draw.Strong] == "" {
		s.t.Fatalf("%dx%d: a sequence where there are no colours:\n%q", s.W, s.H, frame)
	}
	if len(lines) != s.H {
		s.t.Fatalf("%dx%d: %d lines:\n%s", s.W, s.H, len(lines), frame)
	}
	for i, l := range lines {
		if got := lipgloss.Width(l); got != s.W {
			s.t.Fatalf("%dx%d: line %d is %d wide:\n%q\n%s", s.W, s.H, i+1, got, l, frame)
		}
	}
}

// golden compares a frame with the one kept.
func golden(t *testing.T, name, frame string) {
	t.Helper()
	file := filepath.Join("..", "testdata", "golden", "ui_"+name+".txt")
	if *update {
		if err := os.WriteFile(file, []byte(frame+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	got := strings.Split(frame+"\n", "\n")
	if diff := cmp.Diff(strings.Split(string(want), "\n"), got); diff != "" {
		t.Errorf("%s differs (-kept +got):\n%s", file, diff)
	}
}

// oddShop is a day that has everything that can be odd: a job that the beam can't
// run, jobs running, done and aside, rules between jobs, names that are hard to
// draw, inches.
func oddShop(t testing.TB) *shop.Shop {
	s := crowded(t)
	s.Unit = plan.Inches
	s.Beam.Name = "Bahn \x1b[31m\u202e 東京 2 \U0001F469\u200d\U0001F4BB e\u0301"
	s.Day.Jobs = s.Day.Jobs[:9]
	jobs := s.Day.Jobs
	jobs[0].State = plan.Done
	jobs[1].State = plan.Running
	jobs[2].State = plan.OnHold
	jobs[4].ID = "東京-キログラム-\u0301\u0302-long"
	jobs[4].Material = "Größe \x07\u2028\u200f und so weiter und so fort"
	jobs[5].Web = 10 * s.Beam.Web.Length()
	jobs[6].After = []string{jobs[5].ID, jobs[3].ID}
	jobs[7].Fixed = 3
	jobs[8].Fixed = -1
	s.Beam.Holders[20] = plan.Out
	s.Notes = []string{"one thing was taken for granted\x1b[2J", "another \t was too"}
	return s
}

// crowd is a day of that many jobs on a beam of that many holders.
func crowd(holders, jobs int) *shop.Shop {
	mm := plan.Millimetre
	b := &plan.Beam{
		Name: "crowd", HolderWidth: 12 * mm, Clearance: 300_000,
		Rail: plan.Span{From: -420 * mm, To: 1920 * mm}, Web: plan.Span{To: 1500 * mm},
		RestOverWeb: true, Holders: make([]plan.Condition, holders),
	}
	b.Drive = plan.Drive{Speed: 400 * mm, Acceleration: 800 * mm, Pick: time.Second, Set: time.Second, Home: b.Rail.From}
	b.Setup = plan.Setup{Every: 6 * time.Minute, Rethread: 5 * time.Minute}
	start := &plan.Positions{}
	for i := range holders {
		start.At = append(start.At, b.Rail.From+plan.Length(i)*b.Rail.Length()/plan.Length(holders-1))
	}
	d := &plan.Day{Start: time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)}
	for i := range jobs {
		w := plan.Length(15 + i*37%60)
		n := min(int(1400/w), 100)
		d.Jobs = append(d.Jobs, plan.Job{
			ID: fmt.Sprintf("J-%03d", i), Material: "paper", Web: 1450 * mm, Trim: 3 * mm, Shift: plan.Free,
			Metres: 1000, Speed: 100, Entries: []plan.Entry{{Count: n, Finished: w * mm, Width: w * mm}},
		})
	}
	return &shop.Shop{Equipment: knife.Equipment{Beam: b}, Day: d, Positions: start}
}

// ids are the jobs' ids in their order.
func ids(jobs []*plan.Job) (out []string) {
	for _, j := range jobs {
		out = append(out, j.ID)
	}
	return out
}

// allKeys are the names of all keys that do something, and some that don't. The
// search and the guided setup have tests of their own: one takes its time, the other changes
// what stands.
func allKeys() []string {
	out := []string{"x", "f1", "ctrl+a", " ", "n", "insert"}
	for _, b := range keys.NewTable(false).All {
		if b.Act == keys.Search || b.Act == keys.SearchMoves || b.Act == keys.Setup {
			continue
		}
		for _, k := range b.Keys {
			if k != "ctrl+z" && k != "s" && k != "S" && !slices.Contains(out, k) {
				out = append(out, k)
			}
		}
	}
	slices.Sort(out)
	return out
}
