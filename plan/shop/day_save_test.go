package shop

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/shop/dayfile"
)

// handMade is a day as a person writes one; handEdited is the same with A behind B,
// free and due, B's slits changed and no longer after A, and C set aside. B and C
// keep their order, so the afternoon still begins before B.
const (
	handMade = `# Wednesday

units = "in"   # the customer's
start = 2026-11-25T06:00:00

# A goes first: the roll is at the machine.
[[job]]
id       = "A"
material = "felt"        # 2 mm
web      = "10"
slits    = ["3 x 1-1/2"]
length_m = 1000

# ---- afternoon ----

# Wide ones.
[[job]]
  id = "B"
  material = "felt"
  web = 10
  slits = [
    "1-1/2",  # as last week
    2.25,
  ]
  length_m = 500
  after = ["A"]
  # due = 2026-11-25T12:00:00

[[job]]
id = "C"
material = "paper tape"
web = "254 mm"
slits = ["3 x 2"]
length_m = 100
state = "waiting" # or not?
`
	handEdited = `# Wednesday

units = "in"   # the customer's
start = 2026-11-25T06:00:00

# ---- afternoon ----

# Wide ones.
[[job]]
  id = "B"
  material = "felt"
  web = 10
  # as last week
  slits = ["1-1/2", "3/64 in", "2 x 0.3"]
  length_m = 500
  # due = 2026-11-25T12:00:00

# A goes first: the roll is at the machine.
[[job]]
id       = "A"
material = "felt"        # 2 mm
web      = "10"
slits    = ["3 x 1-1/2"]
shift    = "free"
length_m = 1000
due      = 2026-11-25T11:30:00

[[job]]
id = "C"
material = "paper tape"
web = "254 mm"
slits = ["3 x 2"]
length_m = 100
state = "hold" # or not?
`
)

// handEdits makes the edits of handEdited.
func handEdits(d *plan.Day) {
	a, b, c := &d.Jobs[0], &d.Jobs[1], &d.Jobs[2]
	a.Shift, a.Due = plan.Free, time.Date(2026, 11, 25, 11, 30, 0, 0, time.UTC)
	b.After, b.Entries = nil, []plan.Entry{{Count: 1, Finished: 38_100_000}, {Count: 1, Finished: 1_190_625}, {Count: 2, Finished: 7_620_000}}
	c.State = plan.OnHold
	d.Jobs[0], d.Jobs[1] = d.Jobs[1], d.Jobs[0]
}

func TestSaveDay(t *testing.T) {
	for _, ends := range []string{"\n", "\r\n"} {
		s := folder(t, map[string]string{dayFile: strings.ReplaceAll(handMade, "\n", ends)})
		path := filepath.Join(s.Dir, dayFile)
		w := dayOf(s)
		handEdits(w.day)
		out, err := s.SaveDay(w.day, nil)
		if err != nil || out != (Outcome{dayFile, false, "saved in day.toml"}) {
			t.Errorf("%+v, %v", out, err)
		}
		holds(t, path, strings.ReplaceAll(handEdited, "\n", ends))
		if out, err := s.SaveDay(w.day, nil); err != nil || out.File != "" {
			t.Errorf("the same again: %+v, %v", out, err)
		}
		if _, err := s.SaveDay(s.Day, nil); err != nil {
			t.Error(err)
		}
		holds(t, path, strings.ReplaceAll(handMade, "\n", ends))
	}
}

// TestSaveDayRenames: a job keeps its block under a new id, and two jobs may swap
// ids.
func TestSaveDayRenames(t *testing.T) {
	s := folder(t, map[string]string{dayFile: handMade})
	w := dayOf(s)
	w.day.Jobs[0].ID, w.day.Jobs[2].ID = "C", "A"
	w.day.Jobs[1].After = []string{"C"}
	if out, err := s.SaveDay(w.day, w.from); err != nil || out.Beside {
		t.Fatalf("%+v, %v", out, err)
	}
	want := strings.NewReplacer(`id       = "A"`, `id       = "C"`, `id = "C"`, `id = "A"`, `after = ["A"]`, `after = ["C"]`).Replace(handMade)
	holds(t, filepath.Join(s.Dir, dayFile), want)
}

// TestSaveDayBeside: a file that can't be changed line by line, that someone else
// changed or that is gone stays as it is, and the day is in a file beside it.
func TestSaveDayBeside(t *testing.T) {
	inline := `units = "mm"
start = 2026-11-25T06:00:00
job = [ # all of them
  { id = "A", material = "felt", web = 250, slits = ["3 x 80"], length_m = 1000 },
  { id = "B", material = "felt", web = 250, slits = ["2 x 80"], length_m = 900 },
]
`
	change := func(t *testing.T, s *Shop, words string) Outcome {
		t.Helper()
		w := dayOf(s)
		slices.Reverse(w.day.Jobs)
		w.day.Jobs[0].Trim = 4_500_001
		out, err := s.SaveDay(w.day, nil)
		if err != nil || !out.Beside || !strings.Contains(out.Said, words) {
			t.Fatalf("%+v, %v, want %q", out, err, words)
		}
		beside, err := os.ReadFile(filepath.Join(s.Dir, out.File))
		if err != nil {
			t.Fatal(err)
		}
		if back, problems := readDayText(&s.Equipment, string(beside)); !back.holds(w.day) {
			t.Errorf("beside is another day: %v\n%s", problems, beside)
		}
		return out
	}
	t.Run("inline", func(t *testing.T) {
		s := folder(t, map[string]string{dayFile: inline})
		if out := change(t, s, "can't be changed line by line"); out.File != "day.bide.toml" {
			t.Errorf("%+v", out)
		}
		holds(t, filepath.Join(s.Dir, dayFile), inline)
		change(t, s, "") // the same file again
		alone(t, s.Dir, beamFile, "day.bide.toml", dayFile)
		if out, err := s.SaveDay(s.Day, nil); err != nil || out.File != "" {
			t.Errorf("undone: %+v, %v", out, err)
		}
	})
	t.Run("changed", func(t *testing.T) {
		s := folder(t, map[string]string{dayFile: handMade})
		w := dayOf(s)
		w.day.Jobs[1].After = nil // or it can't be turned round
		s.Day = w.day
		theirs := handMade + "# I was here\n"
		write(t, filepath.Join(s.Dir, dayFile), theirs, 0o644)
		write(t, filepath.Join(s.Dir, "day.bide.toml"), "another's", 0o644)
		if out := change(t, s, "someone else has changed day.toml"); out.File != "day.bide-2.toml" {
			t.Errorf("%+v", out)
		}
		holds(t, filepath.Join(s.Dir, dayFile), theirs)
		holds(t, filepath.Join(s.Dir, "day.bide.toml"), "another's")
	})
	t.Run("gone", func(t *testing.T) {
		s := folder(t, map[string]string{dayFile: handMade})
		if err := os.Remove(filepath.Join(s.Dir, dayFile)); err != nil {
			t.Fatal(err)
		}
		change(t, s, "day.toml is gone")
	})
}

// TestChanged: what others do to the files is seen, what is saved here is not.
func TestChanged(t *testing.T) {
	s := folder(t, map[string]string{dayFile: handMade})
	want := func(names ...string) {
		t.Helper()
		if got := s.Changed(); !slices.Equal(got, names) {
			t.Errorf("changed: %q, want %q", got, names)
		}
	}
	want()
	w := dayOf(s)
	handEdits(w.day)
	st := *s.Positions
	st.Assumed = false
	_, err := s.SaveDay(w.day, nil)
	if _, e := s.SavePositions(&st, nil); err != nil || e != nil {
		t.Fatal(err, e)
	}
	want()
	write(t, filepath.Join(s.Dir, dayFile), handMade, 0o644)
	want(dayFile)
	if err := os.Remove(filepath.Join(s.Dir, positionsFile)); err != nil {
		t.Fatal(err)
	}
	want(dayFile, positionsFile)
	before := s.Stamp()
	if s.Stamp() != before {
		t.Error("the stamp changes though no file does")
	}
	write(t, filepath.Join(s.Dir, beamFile), "name = 'another'", 0o644)
	write(t, filepath.Join(s.Dir, materialsFile), "", 0o644)
	want(dayFile, positionsFile, beamFile)
	write(t, filepath.Join(s.Dir, materialsFile), "# one", 0o644)
	want(dayFile, positionsFile, beamFile, materialsFile)
	if s.Stamp() == before {
		t.Error("the stamp stays though files change")
	}
	if got := (&Shop{}).Changed(); got != nil {
		t.Errorf("without a folder: %q", got)
	}
}

// TestSaveDayRefuses: a day that no file may hold is refused with the reader's own
// problems, and nothing is written.
func TestSaveDayRefuses(t *testing.T) {
	for words, change := range map[string]func(*plan.Day){
		"has the same id":                     func(d *plan.Day) { d.Jobs[1].ID = "A" },
		"there is no job":                     func(d *plan.Day) { d.Jobs = d.Jobs[1:] },
		`add [[job]]`:                         func(d *plan.Day) { d.Jobs = nil },
		"the end is not after the start":      func(d *plan.Day) { d.End = d.Start },
		"start is missing":                    func(d *plan.Day) { d.Start = time.Time{} },
		"must be above 0":                     func(d *plan.Day) { d.Jobs[0].Web = -1 },
		"is no material of the table":         func(d *plan.Day) { d.Jobs[2].Material = "unobtainable" },
		"number 4 is outside a day of 3 jobs": func(d *plan.Day) { d.Jobs[2].Fixed = 4 },
		"would not be read back as it is":     func(d *plan.Day) { d.Jobs[2].ID = "C\x1b[2J" },
	} {
		s := folder(t, map[string]string{dayFile: handMade})
		w := dayOf(s)
		change(w.day)
		if out, err := s.SaveDay(w.day, nil); err == nil || !strings.Contains(err.Error(), words) || out != (Outcome{}) {
			t.Errorf("%+v, %v, want %q", out, err, words)
		}
		holds(t, filepath.Join(s.Dir, dayFile), handMade)
		alone(t, s.Dir, beamFile, dayFile)
	}
	if _, err := read(t, files(nil)).SaveDay(nil, nil); err == nil {
		t.Error("a shop without a folder was saved")
	}
}

// FuzzDayText: whatever the text, its pieces make it again to the byte; and a day
// that reads well, with jobs turned round, renamed and copied, is edited into just
// that or not at all.
func FuzzDayText(f *testing.F) {
	seeds, _ := filepath.Glob("../../testdata/*/" + dayFile)
	for _, seed := range seeds {
		text, err := os.ReadFile(seed)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add(handMade)
	f.Add("[[job\n[\n[job") // a job behind a table of another kind, in a wrong text
	f.Add("\ufeff#\r\n[[job]]#\r\n#\r\n\r\n[[job]]\r")
	f.Fuzz(func(t *testing.T, text string) {
		pieces, _ := dayfile.Split(text)
		if got := pieces.String(); got != text {
			t.Fatalf("the pieces make %q of %q", got, text)
		}
		s, problems := Read(files(map[string]string{dayFile: text}))
		if problems != nil {
			return
		}
		w := dayOf(s)
		slices.Reverse(w.day.Jobs)
		slices.Reverse(w.from)
		added := w.day.Jobs[0]
		added.ID, added.Fixed, added.State = "one more", 0, plan.Waiting
		w.day.Jobs, w.from = append(w.day.Jobs, added), append(w.from, w.from[0])
		w.day.Jobs[0].Trim, w.day.Jobs[0].Arrange, w.day.Jobs[0].Due = 1_000_001, plan.AnyArrange, time.Time{}
		w.day.Jobs[0].Chosen = &plan.Chosen{Slits: w.day.Jobs[0].Slits()}
		slices.Reverse(w.day.Jobs[0].Chosen.Slits)
		edited, ok := edited(&s.Equipment, text, w.day, w.from)
		if r, _ := readDayText(&s.Equipment, edited); ok && !r.holds(w.day) {
			t.Fatalf("edited into another day:\n%s\nfrom\n%s", edited, text)
		}
	})
}
