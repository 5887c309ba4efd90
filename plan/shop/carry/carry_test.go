package carry

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/disk"
)

// week is a day file of two shifts, of whose jobs one is done, one runs, one waits for the one
// done and one has a number in the sequence.
const week = `# what the office sent
units = "mm"
zone  = "Europe/Berlin"

# early
[[shift]]
from = 2026-03-26T06:00:00
to   = 2026-03-26T14:00:00   # the buses go at ten past
[[shift]]
from = 2026-03-26T14:00:00
to   = 2026-03-26T22:00:00

[[job]]
id       = "A"
material = "paper tape"
web      = 400.0
slits    = ["15 x 25"]
length_m = 1000.0
speed    = 100.0
state    = "done"

# runs on
[[job]]
id       = "B"
material = "paper tape"
web      = 400.0
slits    = ["15 x 25"]
length_m = 4000.0
speed    = 100.0
state    = "running"
began    = 2026-03-26T21:45:00

[[job]]
id       = "C"        # the customer rings
material = "paper tape"
web      = 400.0
slits    = ["7 x 50"]
length_m = 1000.0
speed    = 100.0
due      = 2026-03-27T09:00:00
after    = ["A", "B"]
fixed    = 3

# the break of the late shift
[[pause]]
from = 2026-03-26T18:00:00
to   = 2026-03-26T18:30:00
`

// folder makes a shop of the small beam with a day.
func folder(t *testing.T, day string) string {
	dir := t.TempDir()
	for _, name := range []string{"beam.toml", "materials.toml", "positions.toml"} {
		text, err := os.ReadFile(filepath.Join("../../../testdata/small", name))
		if err != nil {
			t.Fatal(err)
		}
		put(t, dir, name, string(text))
	}
	put(t, dir, "day.toml", day)
	return dir
}

func put(t *testing.T, dir, name, text string) {
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func have(t *testing.T, dir, name string) string {
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var berlin = func() *time.Location {
	l, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		panic(err)
	}
	return l
}()

func at(month time.Month, day, hour, minute int) time.Time {
	return time.Date(2026, month, day, hour, minute, 0, 0, berlin)
}

// The next day has the jobs left with their text, the hours a day later, and what the done
// one stood for is gone. B began a quarter of an hour before the last shift ended, at
// 100 m/min: 1500 m. The old file is kept to the byte, and the holders are where they were.
func TestWhatIsLeftIsCarried(t *testing.T) {
	dir := folder(t, week)
	positions := have(t, dir, "positions.toml")
	said, err := Day(dir, "", at(3, 26, 22, 5))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"2 jobs carried to Fri 2026-03-27 06:00", "day-2026-03-26.toml", "B runs: 1500 of its 4000 m"} {
		if !strings.Contains(said, want) {
			t.Errorf("said %q, without %q", said, want)
		}
	}
	if have(t, dir, "day-2026-03-26.toml") != week || have(t, dir, "positions.toml") != positions {
		t.Error("the old day or the positions are not as they were")
	}
	a, b := strings.Index(week, "[[job]]"), strings.Index(week, "# runs on")
	want := strings.NewReplacer(
		"began    = 2026-03-26T21:45:00", "began    = 2026-03-27T06:00:00\nran_m    = 1500", "2026-03-26", "2026-03-27",
		`["A", "B"]`, `["B"]`, "fixed    = 3", "fixed    = 2").Replace(week[:a] + week[b:])
	got := have(t, dir, "day.toml")
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if record := have(t, dir, "record.jsonl"); !strings.Contains(record, `"order":["B","C"]`) {
		t.Errorf("the record has %s", record)
	}
	s, problems := shop.Open(dir)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	// 2500 m are left, 25 min.
	if j := s.Day.Jobs[0]; j.State != plan.Running || j.RunTime() != 25*time.Minute || !j.Began.Equal(at(3, 27, 6, 0)) {
		t.Errorf("%+v takes %v", j, j.RunTime())
	}
}

// A day of one date goes to the next at whose end there is still time, one of several dates
// to the same days of another week; hours stay what the clock shows over a clock change.
func TestDates(t *testing.T) {
	shift := func(day, from, to int) string {
		end := at(3, day, 0, 0).Add(time.Duration(to) * time.Hour)
		return "[[shift]]\nfrom = " + at(3, day, from, 0).Format("2006-01-02T15:04:05") + "\nto = " + end.Format("2006-01-02T15:04:05") + "\n"
	}
	jobs := week[strings.Index(week, "[[job]]"):strings.Index(week, "# the break")]
	const zone = "units = \"mm\"\nzone = \"Europe/Berlin\"\n"
	oneDay := zone + "start = 2026-03-26T06:00:00\nend = 2026-03-26T14:00:00\n" + jobs
	night := zone + "start = 2026-03-26T22:00:00\nend = 2026-03-27T06:00:00\n" + jobs
	for name, c := range map[string]struct {
		day, to string
		now     time.Time
		want    time.Time // when the next day starts
		refused string
	}{
		"the next day":          {oneDay, "", at(3, 26, 14, 0), at(3, 27, 6, 0), ""},
		"still that morning":    {oneDay, "", at(3, 27, 9, 0), at(3, 27, 6, 0), ""},
		"after a weekend":       {oneDay, "", at(3, 29, 20, 0), at(3, 30, 6, 0), ""},
		"a night":               {night, "", at(3, 27, 6, 0), at(3, 27, 22, 0), ""},
		"too early":             {oneDay, "", at(3, 26, 13, 59), time.Time{}, "2026-03-26 at 14:00"},
		"too early, but to":     {oneDay, "2026-03-27", at(3, 26, 13, 59), at(3, 27, 6, 0), ""},
		"over a clock change":   {oneDay, "2026-03-30", at(3, 26, 15, 0), at(3, 30, 6, 0), ""},
		"that very day":         {oneDay, "2026-03-26", at(3, 26, 15, 0), time.Time{}, "begins on 2026-03-26"},
		"another year":          {oneDay, "2062-03-30", at(3, 26, 15, 0), time.Time{}, "366 days"},
		"no date":               {oneDay, "Monday", at(3, 26, 15, 0), time.Time{}, "write it as 2026-03-27"},
		"two days":              {zone + shift(26, 6, 14) + shift(27, 6, 14) + jobs, "", at(3, 27, 15, 0), at(4, 2, 6, 0), ""},
		"a night after two":     {zone + shift(26, 6, 22) + shift(26, 22, 30) + jobs, "", at(3, 27, 6, 0), at(3, 27, 6, 0), ""},
		"without an end":        {zone + "start = 2026-03-26T06:00:00\n" + jobs, "", at(3, 27, 0, 0), at(3, 27, 6, 0), ""},
		"without an end, early": {zone + "start = 2026-03-26T06:00:00\n" + jobs, "", at(3, 26, 23, 59), time.Time{}, "2026-03-27 at 00:00"},
	} {
		dir := folder(t, c.day)
		_, err := Day(dir, c.to, c.now)
		if c.refused != "" {
			if err == nil || !strings.Contains(err.Error(), c.refused) || have(t, dir, "day.toml") != c.day {
				t.Errorf("%s: %v, or the day is another", name, err)
			}
			continue
		}
		s, problems := shop.Open(dir)
		if err != nil || len(problems) > 0 || !s.Day.Start.Equal(c.want) {
			t.Errorf("%s: %v %v %+v", name, err, problems, s.Day.Start)
		}
	}
}

// Nothing is written where another program has the shop, no job is left, or the files are wrong.
func TestNothingIsCarried(t *testing.T) {
	done := strings.NewReplacer("\"running\"", "\"done\"", "fixed    = 3", "state = \"done\"").Replace(week)
	for name, c := range map[string]struct{ day, want string }{
		"done":  {done, "all jobs of the day are done"},
		"wrong": {strings.Replace(week, "length_m", "lenght_m", 1), "lenght_m"},
		"held":  {week, "quit bide there"},
	} {
		dir := folder(t, c.day)
		if name == "held" {
			lock, err := disk.TakeLock(dir, at(3, 26, 6, 0))
			if err != nil {
				t.Fatal(err)
			}
			defer lock.Release()
		}
		if _, err := Day(dir, "", at(3, 26, 22, 0)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
		if files, _ := filepath.Glob(filepath.Join(dir, "*.*ml*")); have(t, dir, "day.toml") != c.day || len(files) != 4 {
			t.Errorf("%s: the folder has %v", name, files)
		}
	}
}

// Carried twice to one date from the same day, as after a power cut, the old day is kept once;
// another day of that date is kept beside it.
func TestTheOldDayIsKept(t *testing.T) {
	dir := folder(t, week)
	put(t, dir, "day-2026-03-26.toml", week)
	if said, err := Day(dir, "", at(3, 26, 22, 0)); err != nil || !strings.Contains(said, "day-2026-03-26.toml") {
		t.Errorf("%q %v", said, err)
	}
	dir = folder(t, week)
	put(t, dir, "day-2026-03-26.toml", "# notes")
	if said, err := Day(dir, "", at(3, 26, 22, 0)); err != nil || !strings.Contains(said, "day-2026-03-26-2.toml") || have(t, dir, "day-2026-03-26.toml") != "# notes" {
		t.Errorf("%q %v", said, err)
	}
}
