package shop

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/shop/toml"

	"github.com/google/go-cmp/cmp"
)

// TestTypedSurvives: a job shown in a form and read again is the same job.
func TestTypedSurvives(t *testing.T) {
	for seed := range uint64(plantest.Worlds(100, 300)) {
		r := rand.New(rand.NewPCG(seed, 5))
		s := read(t, files(map[string]string{dayFile: drawDay(r)}))
		for i := range s.Day.Jobs {
			j := s.Day.Jobs[i]
			if r.IntN(2) == 0 {
				j.Entries[0].Finished = plan.Length(1 + r.IntN(1e8))
				j.Entries[0].Width = j.Entries[0].Finished
				j.Due = time.Date(2026, 11, 25, 23, 59, r.IntN(2)*30, 0, time.UTC)
			}
			got, problems := s.ReadJob(s.Typed(&j), s.Day, i)
			for _, p := range problems {
				if !p.Refused {
					t.Errorf("seed %d: %+v", seed, p)
				}
			}
			if diff := cmp.Diff(j, got, nearly); diff != "" {
				t.Fatalf("seed %d (-want +got):\n%s", seed, diff)
			}
		}
	}
}

func threeJobs(t *testing.T) *Shop {
	return read(t, files(map[string]string{dayFile: handMade}))
}

// TestReadJob: what a person types, in its several forms, with what is left out
// filled in as in a file. The day is in inches: 60 is 1524 mm, 500 ft/min are
// 152.4 m/min.
func TestReadJob(t *testing.T) {
	s := threeJobs(t)
	fields := Typed{
		"id": " D ", "material": "felt", "web": "250 mm", "slits": "2 x 1-1/2, 2,25, 50 mm", "length_m": "1000", "speed": "500",
		"due": "05:30", "after": "A, C", "fixed": "-1", "state": "", "shift": "free",
	}
	got, problems := s.ReadJob(fields, s.Day, 3)
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	want := plan.Job{
		ID: "D", Material: "felt", Web: 250 * plan.Millimetre, Trim: defaultTrim, Shift: plan.Free, Metres: 1000, Speed: 152.4,
		Entries: []plan.Entry{{Count: 2, Finished: 38_100_000, Width: 38_100_000}, {Count: 1, Finished: 57_150_000, Width: 57_150_000}, {Count: 1, Finished: 50_000_000, Width: 50_000_000}},
		Due:     time.Date(2026, 11, 26, 5, 30, 0, 0, time.UTC), // the day starts at 6
		After:   []string{"A", "C"}, Fixed: -1,
		Run:   plan.Run{Web: 393_700_787 * time.Microsecond, Legs: 1}, // 1000 m at 152.4 m/min
		Blade: got.Blade, SetBar: got.SetBar,                          // of the material
	}
	if diff := cmp.Diff(want, got, nearly); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for text, want := range map[string]time.Time{
		"06:00": time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC), "23:15": time.Date(2026, 11, 25, 23, 15, 0, 0, time.UTC),
		"2026-11-27 04:05": time.Date(2026, 11, 27, 4, 5, 0, 0, time.UTC), "2026-11-27T04:05:06": time.Date(2026, 11, 27, 4, 5, 6, 0, time.UTC),
	} {
		fields["due"] = text
		if got, _ := s.ReadJob(fields, s.Day, 3); !got.Due.Equal(want) {
			t.Errorf("due %s is read as %v", text, got.Due)
		}
	}
}

// TestReadJobProblems: each field that is wrong is told by its key, in words that
// suit a form; the rules among the jobs are those of the file.
func TestReadJobProblems(t *testing.T) {
	s := threeJobs(t)
	for _, c := range []struct {
		key, text string
		i         int
		words     string
	}{
		{"id", "B", 0, "job 2 (B) has the same id; give"},
		{"id", "C", 1, "job 3 (C) has the same id"},
		{"id", "", 0, "id is missing; write it like D-101"},
		{"material", "feltt", 0, `did you mean "felt"`},
		{"web", "wide", 0, `"wide" is no length; write it like 1450.0`},
		{"web", "-1", 0, "must be above 0"},
		{"slits", "3 x", 0, "entry 1"},
		{"slits", "2; 0 x 3", 0, "entry 2"},
		{"slits", ";", 0, "the list is empty; write it like 24 x 25.4, 12 x 50.8"},
		{"trim", "-2", 0, "must not be below 0"},
		{"shift", "left", 0, `write "centred" or "free"`},
		{"arrange", "x", 0, `"listed" or "entries" or "any"`},
		{"length_m", "3,200", 0, `"3,200" is no number; write it like 3200.0`},
		{"length_m", "Inf", 0, "is no number"},
		{"speed", "0", 0, "out of range"},
		{"due", "tomorrow", 0, `"tomorrow" is no date and time; write it like 2026-11-25T11:00:00`},
		{"due", "2062-11-25 11:00", 0, "look at the year"},
		{"after", "B", 0, "waits for itself"}, // B comes after A
		{"after", "A", 0, "after itself"},
		{"after", "Q", 0, "there is no job"},
		{"fixed", "4", 0, "outside a day of 3 jobs"},
		{"fixed", "4", 3, ""},
		{"fixed", "first", 0, `"first" is no whole number; write it like 1`},
		{"state", "paused", 0, `"waiting" or "running" or "done" or "hold"`},
	} {
		f := s.Typed(&s.Day.Jobs[min(c.i, 2)])
		if c.i == 3 {
			f["id"] = "D"
		}
		f[c.key] = c.text
		_, problems := s.ReadJob(f, s.Day, c.i)
		told := ""
		for _, p := range problems {
			told += p.Key + ": " + p.What + "; " + p.Remedy + "\n"
			if p.Key != c.key || p.Refused || p.Remedy == "" {
				t.Errorf("%s %q: %+v", c.key, c.text, p)
			}
		}
		if !strings.Contains(told, c.words) || (told == "") != (c.words == "") {
			t.Errorf("%s %q: told %q, want %q", c.key, c.text, told, c.words)
		}
	}
}

// TestReadJobRefused: a job that the beam can't run is right, and told as refused.
func TestReadJobRefused(t *testing.T) {
	s := threeJobs(t)
	f := s.Typed(&s.Day.Jobs[0])
	f["web"], f["state"] = "20", "running"
	j, problems := s.ReadJob(f, s.Day, 0)
	if len(problems) != 1 || problems[0].Key != "web" || !problems[0].Refused || !strings.Contains(problems[0].What, "wider than the web area") {
		t.Errorf("%+v", problems)
	}
	if j.Web != 20*plan.Inch || j.State != plan.Running {
		t.Errorf("%+v", j)
	}
}

// TestReadJobRefusedBesideWrong: that the beam can't run a job is told as long as its
// layout can be read, whatever else is wrong; a layout that can't be read is only wrong.
func TestReadJobRefusedBesideWrong(t *testing.T) {
	s := threeJobs(t)
	for _, c := range []struct {
		key, text string
		refused   int
	}{{"length_m", "", 1}, {"material", "no such", 1}, {"speed", "0", 1}, {"due", "soon", 1}, {"id", "", 1}, {"slits", "3 x", 0}, {"shift", "left", 0}} {
		f := s.Typed(&s.Day.Jobs[0])
		f["web"], f[c.key] = "20", c.text
		_, problems := s.ReadJob(f, s.Day, 0)
		refused, wrong := 0, 0
		for _, p := range problems {
			switch {
			case p.Refused && p.Key == "web":
				refused++
			case p.Key == c.key:
				wrong++
			default:
				t.Errorf("%s %q: %+v", c.key, c.text, p)
			}
		}
		if refused != c.refused || wrong == 0 {
			t.Errorf("%s %q: %d refused, want %d, and %d wrong: %+v", c.key, c.text, refused, c.refused, wrong, problems)
		}
	}
}

// TestReadJobRenamed: a job that others wait for may get a new id.
func TestReadJobRenamed(t *testing.T) {
	s := threeJobs(t)
	f := s.Typed(&s.Day.Jobs[0])
	f["id"] = "A2"
	if _, problems := s.ReadJob(f, s.Day, 0); len(problems) > 0 {
		t.Errorf("%+v", problems)
	}
	f["after"] = "B"
	if _, problems := s.ReadJob(f, s.Day, 0); len(problems) != 1 || !strings.Contains(problems[0].What, "waits for itself") {
		t.Errorf("%+v", problems)
	}
	jobs := Renamed(s.Day.Jobs, "A", "A2")
	if jobs[1].After[0] != "A2" || s.Day.Jobs[1].After[0] != "A" {
		t.Errorf("%v, %v", jobs[1].After, s.Day.Jobs[1].After)
	}
}

// FuzzReadJob: whatever is typed, a form ends with a job that a file can hold, or
// with problems that are safe to show.
func FuzzReadJob(f *testing.F) {
	for i := range JobKeys() {
		f.Add(uint(i), "2 x 1-1/2")
		f.Add(uint(i), "2026-11-25 11:00")
	}
	f.Fuzz(func(t *testing.T, i uint, text string) {
		keys := JobKeys()
		key := keys[i%uint(len(keys))]
		s := threeJobs(t)
		fields := s.Typed(&s.Day.Jobs[1])
		fields[key] = text
		j, problems := s.ReadJob(fields, s.Day, 1)
		right := true
		for _, p := range problems {
			checkProblem(t, toml.Problem{File: p.Key, What: p.What, Remedy: p.Remedy})
			right = right && p.Refused
		}
		if !right {
			return
		}
		day := *s.Day
		day.Jobs = Renamed(day.Jobs, day.Jobs[1].ID, j.ID)
		day.Jobs[1] = j
		if edited, ok := edited(&s.Equipment, handMade, &day, []string{"A", "B", "C"}); !ok {
			t.Fatalf("%s %q is right, but no file can hold it:\n%s", key, text, edited)
		}
	})
}
