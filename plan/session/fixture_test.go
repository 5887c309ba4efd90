package session_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/shop/record"
)

const (
	beamFile = `
name  = "Eight"
units = "mm"
[beam]
holders      = 8
holder_width = 12.0
clearance    = 1.0
rail         = [0.0, 400.0]
web          = [50.0, 350.0]
[drive]
kind = "hand"
[setup]
[cylinder]
`
	// dayFile has two layouts by turns, which is the dearest order.
	dayFile = `
units = "mm"
start = 2026-11-25T06:00:00
[[job]]
id       = "A"
material = "paper tape"
web      = 260.0
slits    = ["5 x 50"]
shift    = "free"
length_m = 1000.0
[[job]]
id       = "B"
material = "paper tape"
web      = 260.0
slits    = ["3 x 80"]
shift    = "free"
length_m = 1000.0
[[job]]
id       = "C"
material = "paper tape"
web      = 260.0
slits    = ["5 x 50"]
shift    = "free"
length_m = 1000.0
[[job]]
id       = "D"
material = "paper tape"
web      = 260.0
slits    = ["3 x 80"]
shift    = "free"
length_m = 1000.0
`
	positionsFile = `
units = "mm"
recorded = 2026-11-25T05:40:00
holder = [
	{ number = 1, at = 0.0 }, { number = 2, at = 50.0 }, { number = 3, at = 100.0 }, { number = 4, at = 150.0 },
	{ number = 5, at = 200.0 }, { number = 6, at = 250.0 }, { number = 7, at = 300.0 }, { number = 8, at = 350.0 },
]
`
)

const mm = plan.Millimetre

// viewer is whoever shows a session, without a screen: it keeps what it was asked to show.
type viewer struct {
	t testing.TB
	*session.Session
	now     time.Time // on the wall
	looked  int
	typed   string
	busy    bool // something is open that files read anew would disturb
	offered int
	anew    int
}

var keyNames = [...]string{
	workday.ToSave: "<save>", workday.ToReread: "<reread>", workday.ToCompare: "<compare>", workday.ToUndo: "<undo>", workday.ToSetUp: "<set up>",
	workday.ToHold: "<hold>", workday.ToCorrect: "<correct>", workday.ToRun: "<run>", workday.ToUndoEntry: "<undo entry>", workday.ToStop: "<stop>",
}

func (v *viewer) KeyOf(a workday.Action) string { return keyNames[a] }
func (v *viewer) Look(turn int)                 { v.looked = turn }
func (v *viewer) Picked() int                   { return max(v.looked, 0) }
func (v *viewer) Offered()                      { v.offered++ }
func (v *viewer) Unfinished() string            { return v.typed }
func (v *viewer) ReadAnew()                     { v.anew++ }
func (v *viewer) Quiet() bool                   { return !v.busy }

// folder is a shop's, with files other than those above.
func folder(t testing.TB, other map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	files := map[string]string{"beam.toml": beamFile, "day.toml": dayFile, "positions.toml": positionsFile}
	for name, text := range other {
		files[name] = text
	}
	for name, text := range files {
		put(t, dir, name, text)
	}
	return dir
}

// put writes a file as someone else would.
func put(t testing.TB, dir, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// text is a file's; empty where there is none.
func text(t testing.TB, dir, name string) string {
	t.Helper()
	out, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return string(out)
}

// open opens a session of a folder, which has the right to write unless another has it.
func open(t testing.TB, dir string) *viewer {
	t.Helper()
	s := kept(t, dir)
	d, err := session.New(s)
	if err != nil {
		t.Fatal(err)
	}
	v := &viewer{t: t, Session: d, now: time.Date(2026, 11, 25, 6, 30, 0, 0, time.UTC)}
	v.Journal.Now = func() time.Time { return v.now }
	v.Journal.Take(dir, false)
	v.ShowOn(v)
	t.Cleanup(v.Journal.Close)
	return v.settle()
}

// settle does all that is to be done in the background.
func (v *viewer) settle() *viewer {
	for work := v.Work(); len(work) > 0; work = v.Work() {
		for _, w := range work {
			if result := w(); result != nil && !v.Take(result) {
				v.t.Fatalf("nobody takes %T", result)
			}
		}
	}
	return v
}

// says fails unless the notice holds the words.
func (v *viewer) says(words string) *viewer {
	v.t.Helper()
	if !strings.Contains(v.Notice.Text, words) {
		v.t.Errorf("%q, want %q", v.Notice.Text, words)
	}
	return v
}

// confirms makes so many moves of the setup that is under way, one by one.
func (v *viewer) confirms(n int) *viewer {
	v.t.Helper()
	for range n {
		v.now = v.now.Add(time.Minute)
		v.Setup.Confirm()
		v.settle()
	}
	return v
}

// setUp begins the setup of the job that comes next.
func (v *viewer) setUp() *viewer {
	v.t.Helper()
	v.SetUp()
	if v.settle(); v.Setup == nil || v.Setup.Plan == nil {
		v.t.Fatalf("no setup: %s", v.Notice.Text)
	}
	return v
}

// order is the day's present one.
func (v *viewer) order() string { return ids(v.Jobs()) }

func ids(jobs []*plan.Job) (out string) {
	for _, j := range jobs {
		out += j.ID
	}
	return out
}

// kept is the shop as its files have it.
func kept(t testing.TB, dir string) *shop.Shop {
	t.Helper()
	s, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return s
}

// events are those of the record.
func events(t testing.TB, dir string) (all []record.Event) {
	t.Helper()
	problems, err := record.Read(os.DirFS(dir), func(e record.Event) { all = append(all, e) })
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return all
}
