package shop

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"

	"github.com/google/go-cmp/cmp"
)

// stretchy is a material of which the strips are cut 0.4 % wider than they are sold.
const stretchy = `
[[material]]
name = "stretchy"
group = "felt"
thickness_mm = 2
adhesive = "none"
width_allowance_pct = 0.4
`

// chosenDay is a day of one job, as a search laid it out: 40 mm are cut 40.16 mm wide,
// 30 mm 30.12 mm. The trim is 250 - 3 x 40.16 - 2 x 30.12 = 69.28 mm, so that with the
// least trim of 3 mm the layout may shift 31.64 mm to each side.
const chosenDay = `units = "mm"
start = 2026-11-25T06:00:00
[[job]]
id       = "A"
material = "stretchy" # from the south
web      = 250
slits    = ["3 x 40", "2 x 30"]
shift    = "free"
arrange  = "any"
length_m = 1000
`

func withLayout(lines ...string) map[string]string {
	six := strings.Replace(smallBeam, "holders      = 5", "holders      = 6", 1)
	return map[string]string{beamFile: six, dayFile: chosenDay + strings.Join(lines, "\n") + "\n", materialsFile: stretchy}
}

// TestChosenIsRead: finished widths in the file, cut widths in the job; each of the two
// keys may stand alone.
func TestChosenIsRead(t *testing.T) {
	const forty, thirty = 40_160_000, 30_120_000
	listed := []plan.Length{forty, forty, forty, thirty, thirty}
	for _, c := range []struct {
		lines []string
		want  *plan.Chosen
	}{
		{nil, nil},
		{[]string{`chosen_slits = [40, "2 x 30", "2 x 40"]`, `chosen_shift = -31.64`}, &plan.Chosen{Slits: []plan.Length{forty, thirty, thirty, forty, forty}, Shift: -31_640_000}},
		{[]string{`chosen_slits = [30, 40, 30, 40, 40]`}, &plan.Chosen{Slits: []plan.Length{thirty, forty, thirty, forty, forty}}},
		{[]string{`chosen_shift = "1/64"`}, &plan.Chosen{Slits: listed, Shift: 396_875}},
		{[]string{`chosen_shift = "-0.000001 mm"`}, &plan.Chosen{Slits: listed, Shift: -1}},
		{[]string{`chosen_idle = ["1-3", "5 at -3.5", "7 on its cut", "11"]`, `chosen_moves = 4`, `chosen_s = 391.3`}, &plan.Chosen{Slits: listed, Idle: &plan.Idle{
			Holders: []plan.Rest{{Number: 1}, {Number: 2}, {Number: 3}, {Number: 5, Moved: true, To: -3_500_000}, {Number: 7, Cuts: true}, {Number: 11}},
			Moves:   4, Setup: 391300 * time.Millisecond}}},
		{[]string{`chosen_moves = 4`, `chosen_s = 3`}, nil},
	} {
		of := withLayout(c.lines...)
		of[beamFile] = strings.Replace(smallBeam, "holders      = 5", "holders      = 11", 1)
		s := read(t, files(of))
		if diff := cmp.Diff(c.want, s.Day.Jobs[0].Chosen); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.lines, diff)
		}
		if notes := strings.Join(s.Notes, "\n"); strings.Contains(notes, "is ignored") {
			t.Errorf("%q: %s", c.lines, notes)
		}
	}
}

// TestChosenIsIgnored: a layout that the job doesn't allow any more is no problem; it
// is told, and the file stays as it is until another is saved.
func TestChosenIsIgnored(t *testing.T) {
	bad := strings.Replace(smallBeam, "[cylinder]", "[anvil]\ndiameter = 150\nbore = 110\nspan = 500\nhardness_hrc = 64\n[[anvil.bad]]\nfrom = 110\nto = 120\n[cylinder]", 1)
	for _, c := range []struct{ beam, line, words string }{
		{smallBeam, `chosen_slits = ["3 x 40", 30]`, "chosen_slits is no order"},
		{smallBeam, `chosen_slits = ["3 x 40.16", "2 x 30.12"]`, "chosen_slits is no order"}, // as cut, not as sold
		{smallBeam, `chosen_shift = 31.640001`, "chosen_shift = 31.64 mm is none that trim and shift allow"},
		{bad, `chosen_shift = 0`, "and the damaged bands allow"}, // the web runs from 25; a cut at 25 + 34.64 + 2 x 30.12 = 119.88 mm
	} {
		day := withLayout(c.line)
		day[beamFile] = c.beam
		day[dayFile] = strings.Replace(day[dayFile], `["3 x 40", "2 x 30"]`, `["2 x 30", "3 x 40"]`, 1)
		s := read(t, files(day))
		i := slices.IndexFunc(s.Notes, func(note string) bool { return strings.Contains(note, "is ignored") })
		if s.Day.Jobs[0].Chosen != nil || i < 0 || !strings.Contains(s.Notes[i], c.words) || !strings.Contains(s.Notes[i], "job 1 (A)") {
			t.Errorf("%s: %+v, notes:\n%s", c.line, s.Day.Jobs[0].Chosen, strings.Join(s.Notes, "\n"))
		}
		day[dayFile] += "state = \"done\"\n"
		if notes := strings.Join(read(t, files(day)).Notes, "\n"); strings.Contains(notes, "is ignored") {
			t.Errorf("told of a job that is done:\n%s", notes)
		}
	}
}

// TestIdleIsRefused: what bide would never write is a mistake with its entry, as is one
// holder told twice.
func TestIdleIsRefused(t *testing.T) {
	for _, c := range []struct{ list, words string }{
		{`"1-3"`, "list of holders"},
		{`[7]`, "entry 1: 7 is no text in quotes"},
		{`["1-3", "x"]`, `entry 2: "x" is no holder's number`},
		{`["0"]`, `"0" is no holder's number`},
		{`["3-3"]`, "the numbers don't rise"},
		{`["1-3 at 5"]`, "two holders can't be at one position"},
		{`["1-3", "3"]`, "entry 2: holder 3 comes after holder 3"},
		{`["1 at here"]`, "entry 1"},
		{`["1 at 1e9"]`, "entry 1"},
		{`["501"]`, `"501" is no holder's number`},
	} {
		_, problems := Read(files(withLayout("chosen_idle = " + c.list)))
		if text := problems.Error(); len(problems) != 1 || !strings.Contains(text, c.words) || !strings.Contains(text, "chosen_idle") {
			t.Errorf("%s: %v, want %q", c.list, problems, c.words)
		}
	}
}

// TestChosenIsSaved: where the keys go, how they are written, and that they go with the
// layout; the rest of the text stays.
func TestChosenIsSaved(t *testing.T) {
	of := withLayout("due      = 2026-11-25T11:00:00 # or else")
	of[beamFile] = strings.Replace(smallBeam, "holders      = 5", "holders      = 10", 1)
	s := folder(t, of)
	path := filepath.Join(s.Dir, dayFile)
	first, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	w := dayOf(s)
	save := func(c *plan.Chosen, lines string) {
		t.Helper()
		w.day.Jobs[0].Chosen = c
		if out, err := s.SaveDay(w.day, w.from); err != nil || out.Beside {
			t.Fatalf("%+v, %v", out, err)
		}
		holds(t, path, strings.Replace(string(first), "arrange  = \"any\"\n", "arrange  = \"any\"\n"+lines, 1))
	}
	save(&plan.Chosen{Slits: []plan.Length{30_120_000, 40_160_000, 40_160_000, 40_160_000, 30_120_000}, Shift: 396_875},
		"chosen_slits = [30, \"3 x 40\", 30]\nchosen_shift = \"1/64 in\"\n")
	save(&plan.Chosen{Slits: w.day.Jobs[0].Slits(), Shift: -1}, "chosen_slits = [\"3 x 40\", \"2 x 30\"]\nchosen_shift = \"-0.000001 mm\"\n")
	save(&plan.Chosen{Slits: w.day.Jobs[0].Slits()}, "chosen_slits = [\"3 x 40\", \"2 x 30\"]\nchosen_shift = 0\n")
	idle := &plan.Idle{Holders: []plan.Rest{{Number: 1}, {Number: 2}, {Number: 4, Moved: true, To: 396_875}, {Number: 5}, {Number: 6, Cuts: true}}, Moves: 3, Setup: 391300 * time.Millisecond}
	lines := "chosen_slits = [\"3 x 40\", \"2 x 30\"]\nchosen_shift = 0\nchosen_idle = [\"1-2\", \"4 at 1/64 in\", \"5\", \"6 on its cut\"]\nchosen_moves = 3\nchosen_s = 391.3\n"
	save(&plan.Chosen{Slits: w.day.Jobs[0].Slits(), Idle: idle}, lines)
	fewer := *idle
	fewer.Moves, fewer.Setup = 2, time.Minute
	save(&plan.Chosen{Slits: w.day.Jobs[0].Slits(), Idle: &fewer}, strings.NewReplacer("moves = 3", "moves = 2", "391.3", "60").Replace(lines))
	save(&plan.Chosen{Slits: []plan.Length{1}}, "") // none of the job's
	save(nil, "")
}

// TestChosenSurvives: whatever is chosen, it is read as it was saved: odd nanometres,
// files in inches, widths with an allowance; and without it the file is as it was.
func TestChosenSurvives(t *testing.T) {
	kept := 0
	seeds := uint64(plantest.Worlds(30, 300))
	for seed := range seeds {
		r := rand.New(rand.NewPCG(seed, 11))
		unit := []string{"mm", "in"}[r.IntN(2)]
		text := "units = \"" + unit + "\"\nstart = 2026-11-25T06:00:00\n"
		for n := range 1 + r.IntN(3) {
			a, b := 1+r.IntN(3), 1+r.IntN(3)
			text += fmt.Sprintf("[[job]]\nid = \"J%d\"\nmaterial = %q\nweb = \"290 mm\"\nslits = [\"%d x 1-1/8\", \"%d x 25.00000%d mm\"]\nlength_m = 100\ntrim = \"1 mm\"\nshift = %q\narrange = %q\n",
				n, []string{"stretchy", "felt"}[r.IntN(2)], a, b, r.IntN(10), shiftWords[r.IntN(2)], arrangeWords[r.IntN(3)])
		}
		thirty := strings.Replace(smallBeam, "holders      = 5", "holders      = 30", 1)
		s := folder(t, map[string]string{beamFile: thirty, dayFile: text, materialsFile: stretchy})
		w := dayOf(s)
		for i := range w.day.Jobs {
			if w.day.Jobs[i].Chosen = drawChosen(r, &w.day.Jobs[i], 30); w.day.Jobs[i].Chosen != nil {
				kept++
			}
		}
		if out, err := s.SaveDay(w.day, w.from); err != nil || out.Beside {
			t.Fatalf("seed %d: %+v, %v", seed, out, err)
		}
		if diff := cmp.Diff(w.day.Jobs, reopen(t, s).Day.Jobs, nearly); diff != "" {
			now, _ := os.ReadFile(filepath.Join(s.Dir, dayFile))
			t.Fatalf("seed %d (-want +got):\n%s\n%s", seed, diff, now)
		}
		if _, err := s.SaveDay(s.Day, nil); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		holds(t, filepath.Join(s.Dir, dayFile), text)
	}
	if kept < 50 {
		t.Errorf("%d layouts are too few to tell", kept)
	}
}

// TestFormKeepsChosen: a form keeps the layout chosen unless it changes what the layout
// follows from; a copy is a job that no search has seen.
func TestFormKeepsChosen(t *testing.T) {
	s := read(t, files(withLayout(`chosen_slits = ["2 x 30", "3 x 40"]`, "chosen_shift = 1.5")))
	j := &s.Day.Jobs[0]
	for key, text := range map[string]string{"id": "B", "length_m": "900", "speed": "30", "due": "11:00", "state": "running", "fixed": "1", "slits": "3 x 40; 2 x 30,0"} {
		f := s.Typed(j)
		f[key] = text
		if got, problems := s.ReadJob(f, s.Day, 0); len(problems) > 0 || got.Chosen != j.Chosen {
			t.Errorf("%s %s: %+v, %v", key, text, got.Chosen, problems)
		}
	}
	for key, text := range map[string]string{"material": "felt", "web": "251", "trim": "4", "shift": "centred", "arrange": "entries", "slits": "2 x 30; 3 x 40"} {
		f := s.Typed(j)
		f[key] = text
		if got, _ := s.ReadJob(f, s.Day, 0); got.Chosen != nil {
			t.Errorf("%s %s: kept", key, text)
		}
	}
	f := s.Typed(j)
	f["id"] = "B"
	if got, problems := s.ReadJob(f, s.Day, 1); len(problems) > 0 || got.Chosen != nil {
		t.Errorf("a copy: %+v, %v", got.Chosen, problems)
	}
}

// TestIdleIsPassedOver: holders that can't be those left idle are told, and the layout
// stays.
func TestIdleIsPassedOver(t *testing.T) {
	for _, c := range []struct{ lines, words string }{
		{"chosen_idle = [\"1-4\", \"12\"]\nchosen_moves = 3\nchosen_s = 60", "holder 12 is named, and the beam has 11"},
		{"chosen_idle = [\"1-4\"]\nchosen_moves = 3\nchosen_s = 60", "7 of 11 holders are left to cut, and the layout has 6 cuts"},
		{"chosen_idle = [\"1-4\", \"5 on its cut\"]\nchosen_moves = 3\nchosen_s = 60", "7 of 11 holders are left to cut"},
		{"chosen_idle = [\"1-4\", \"5 at 400.1\"]\nchosen_moves = 3\nchosen_s = 60", "holder 5 is to go off the rail"},
		{"chosen_idle = [\"1-5\"]\nchosen_s = 60", "chosen_moves or chosen_s is missing"},
		{"chosen_idle = [\"1-5\"]\nchosen_moves = 3", "chosen_moves or chosen_s is missing"},
	} {
		of := withLayout("chosen_shift = 1", c.lines)
		of[beamFile] = strings.Replace(smallBeam, "holders      = 5", "holders      = 11", 1)
		s := read(t, files(of))
		if got := s.Day.Jobs[0].Chosen; got == nil || got.Shift != plan.Millimetre || got.Idle != nil || !strings.Contains(strings.Join(s.Notes, "\n"), c.words) {
			t.Errorf("%q: %+v, notes:\n%s", c.lines, got, strings.Join(s.Notes, "\n"))
		}
	}
}

// TestStaleKeysGo: a job whose layout leaves nothing to choose is saved with its idle
// holders, and keys that were passed over give way.
func TestStaleKeysGo(t *testing.T) {
	of := withLayout("chosen_slits = [\"5 x 38\"]", "chosen_shift = 2")
	of[beamFile] = strings.Replace(smallBeam, "holders      = 5", "holders      = 11", 1)
	of[dayFile] = strings.NewReplacer("\"free\"", "\"centred\"", "\"any\"", "\"listed\"").Replace(of[dayFile])
	s := folder(t, of)
	w := dayOf(s)
	if w.day.Jobs[0].Chosen != nil {
		t.Fatal("the layout chosen isn't passed over")
	}
	idle := &plan.Idle{Holders: []plan.Rest{{Number: 1}, {Number: 2}, {Number: 3}, {Number: 4}, {Number: 5}}, Moves: 3, Setup: time.Minute}
	w.day.Jobs[0].Chosen = &plan.Chosen{Slits: w.day.Jobs[0].Slits(), Idle: idle}
	if out, err := s.SaveDay(w.day, w.from); err != nil || out.Beside {
		t.Fatalf("%+v, %v", out, err)
	}
	text, _ := os.ReadFile(filepath.Join(s.Dir, dayFile))
	want := "arrange  = \"listed\"\nchosen_idle = [\"1-5\"]\nchosen_moves = 3\nchosen_s = 60\nlength_m = 1000\n"
	if !strings.Contains(string(text), want) || strings.Contains(string(text), chosenSlits) {
		t.Errorf("the file holds\n%s", text)
	}
}

// Two entries may be finished differently and cut alike: each slit is written as finished,
// and as often as it is listed.
func TestRunsOfSlitsCutAlike(t *testing.T) {
	of := []plan.Entry{{Count: 1, Finished: 10, Width: 11}, {Count: 2, Finished: 12, Width: 11}, {Count: 1, Finished: 20, Width: 20}}
	got := runsOf(of, []plan.Length{11, 20, 11, 11})
	want := []plan.Entry{{Count: 1, Finished: 10}, {Count: 1, Finished: 20}, {Count: 2, Finished: 12}}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
