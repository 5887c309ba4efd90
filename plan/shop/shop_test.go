package shop

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"bide/material"
	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/shop/toml"

	"github.com/google/go-cmp/cmp"
)

// A small shop whose values the tests know.
const (
	smallBeam = `
name  = "Five"
units = "mm"
[beam]
holders      = 5
holder_width = 12.0
clearance    = 0.3
rail         = [-100.0, 400.0]
web          = [0.0, 300.0]
[drive]
[setup]
[cylinder]
pistons    = 2
margin_bar = 0.5
`
	smallDay = `
units = "mm"
start = 2026-11-25T06:00:00
[[job]]
id       = "A"
material = "felt"
web      = 250.0
slits    = ["3 x 80"]
length_m = 1000.0
`
)

// files is a shop in memory, the small one with some files put in or changed.
func files(changed map[string]string) fstest.MapFS {
	out := fstest.MapFS{beamFile: {Data: []byte(smallBeam)}, dayFile: {Data: []byte(smallDay)}}
	for file, text := range changed {
		out[file] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}

func read(t *testing.T, fsys fs.FS) *Shop {
	t.Helper()
	s, problems := Read(fsys)
	if len(problems) > 0 {
		t.Fatalf("problems:\n%v", problems)
	}
	return s
}

func TestReadFillsIn(t *testing.T) {
	s := read(t, files(nil))
	want := plan.Job{
		ID: "A", Material: "felt", Web: 250 * plan.Millimetre, Metres: 1000,
		Entries: []plan.Entry{{Count: 3, Finished: 80 * plan.Millimetre, Width: 80 * plan.Millimetre}},
		Trim:    3 * plan.Millimetre,                                       // the default of a job without trim
		Blade:   plan.Blade{Bevel: 60, Tip: 0.25}, Speed: 40, SetBar: 6.19, // 295.6 N on 2 * 260 mm2 are 5.685 bar, 0.5 more, up
		Run: plan.Run{Web: 25 * time.Minute, Legs: 1},
	}
	if diff := cmp.Diff(want, s.Day.Jobs[0]); diff != "" {
		t.Errorf("job (-want +got):\n%s", diff)
	}
	if s.Beam.Drive.Home != s.Beam.Rail.From || s.Beam.Drive.Speed != 400*plan.Millimetre || !s.Beam.RestOverWeb {
		t.Errorf("beam %+v", s.Beam)
	}
	if s.Anvil != nil || !s.Positions.Assumed || s.Unit != plan.Millimetres {
		t.Errorf("shop %+v", s)
	}
	if notes := strings.Join(s.Notes, "\n"); !strings.Contains(notes, "evenly spaced") || !strings.Contains(notes, "last ran") {
		t.Errorf("notes %q", notes)
	}
}

func TestReadInches(t *testing.T) {
	s := read(t, files(map[string]string{dayFile: `
units = "in"
start = 2026-11-25T06:00:00
end   = 2026-11-25T14:00:00.5
[[job]]
id       = "A"
material = "Stretchy"
web      = 10
slits    = ["2 x 1-1/2", 2.5, "50 mm", "1/2"]
trim     = "0,25"
shift    = "free"
arrange  = "any"
length_m = 1000
speed    = 500
due      = 2026-11-25T11:00:00
state    = "hold"
fixed    = -1
`, materialsFile: `
[[material]]
name                = "Stretchy"
group               = "soft film tape"
thickness_mm        = 0.1
adhesive            = "acrylic"
silicone_free       = true
width_allowance_pct = 1.1
`}))
	j := s.Day.Jobs[0]
	// 1-1/2 in is 38.1 mm, a fraction on a day in inches too; 1.1 % more is
	// 38.5191 mm. 2.5 in: 63.5 and 64.1985; 50 and 50.55; 12.7 and 12.8397.
	want := []plan.Entry{
		{Count: 2, Finished: 38_100_000, Width: 38_519_100}, {Count: 1, Finished: 63_500_000, Width: 64_198_500},
		{Count: 1, Finished: 50_000_000, Width: 50_550_000}, {Count: 1, Finished: 12_700_000, Width: 12_839_700},
	}
	if diff := cmp.Diff(want, j.Entries); diff != "" {
		t.Errorf("entries (-want +got):\n%s", diff)
	}
	if j.Web != 254*plan.Millimetre || j.Trim != 6_350_000 {
		t.Errorf("web %d, trim %d", j.Web, j.Trim)
	}
	if j.Shift != plan.Free || j.Arrange != plan.AnyArrange || j.State != plan.OnHold || j.Fixed != -1 || !j.SiliconeFree {
		t.Errorf("job %+v", j)
	}
	if diff := j.Speed - 152.4; diff > 1e-9 || diff < -1e-9 { // 500 ft/min at 0.3048 m exactly
		t.Errorf("speed %v m/min", j.Speed)
	}
	if want := time.Date(2026, 11, 25, 11, 0, 0, 0, time.UTC); !j.Due.Equal(want) || j.Due.Location() != time.UTC {
		t.Errorf("due %v, want the clock's own fields", j.Due)
	}
	if want := time.Date(2026, 11, 25, 14, 0, 0, 5e8, time.UTC); !s.Day.End.Equal(want) {
		t.Errorf("end %v", s.Day.End)
	}
}

func TestReadStanding(t *testing.T) {
	s := read(t, files(map[string]string{positionsFile: `
units    = "mm"
recorded = 2026-11-25T05:41:00
job      = "Z"
material = "Clean"
web      = 240.0
set_bar  = 2.9
holder   = [
  { number = 5, at = 400.0 }, { number = 4, at = 12.3, bevel = 45, tip = 0.15, metres = 1200 },
  { number = 3, at = 0.0 }, { number = 2, at = "-1/2 in" }, { number = 1, at = -100 },
]
`, materialsFile: `
[[material]]
name          = "Clean"
group         = "foil"
thickness_mm  = 0.1
adhesive      = "acrylic"
silicone_free = true
`}))
	want := &plan.Positions{
		At:     []plan.Length{-100_000_000, -12_700_000, 0, 12_300_000, 400_000_000},
		Blades: []plan.Blade{3: {Bevel: 45, Tip: 0.15}, 4: {}}, Metres: []float64{3: 1200, 4: 0},
		Recorded: time.Date(2026, 11, 25, 5, 41, 0, 0, time.UTC),
		Job:      "Z", Material: "Clean", Web: 240_000_000, SetBar: 2.9, SiliconeFree: true, Wick: "a wick on each holder, water-based, proven free of silicone",
	}
	if diff := cmp.Diff(want, s.Positions); diff != "" {
		t.Errorf("standing (-want +got):\n%s", diff)
	}
}

// TestOwnMaterialOverrides: a shop's entry with a built-in group's name comes first.
func TestOwnMaterialOverrides(t *testing.T) {
	s := read(t, files(map[string]string{materialsFile: `
[[material]]
name         = "felt"
group        = "felt"
thickness_mm = 3.0
adhesive     = "none"
bevel        = 70
`}))
	if got, want := s.Day.Jobs[0].Blade, (plan.Blade{Bevel: 70, Tip: 0.25}); got != want {
		t.Errorf("blade %v, want %v: what isn't overridden is the group's", got, want)
	}
}

// What a file may say of a material, the knife can be worked out for.
func TestMaterialsTakenHaveSettings(t *testing.T) {
	for _, key := range []string{"thickness_mm", "cut_through_bar", "bevel", "tip", "speed_max"} {
		taken, refused := 0, 0
		for value := 1e-4; value < 1e6; value *= 1.5 {
			text := fmt.Sprintf("[[material]]\nname = \"felt\"\ngroup = \"felt\"\nadhesive = \"none\"\n%s = %f\n", key, value)
			if key != "thickness_mm" {
				text += "thickness_mm = 3\n"
			}
			s, problems := Read(files(map[string]string{materialsFile: text}))
			if len(problems) > 0 {
				refused++
				continue
			}
			taken++
			m, _ := s.Materials.Lookup("felt")
			if _, err := material.SettingsFor(m, material.Machine{Cylinder: material.Cylinder{AreaMM2: 260, Pistons: 1, SupplyBar: 6, MarginBar: 0.8}, AnvilMM: 150}, material.Run{Speed: 10}); err != nil {
				t.Errorf("%s = %v is taken, and then %v", key, value, err)
			}
		}
		if min(taken, refused) < 3 {
			t.Errorf("%s: %d values taken, %d refused: too few to tell", key, taken, refused)
		}
	}
}

// TestJobProblems: a job that the beam can't run is no fault of the file, but is
// told with file, line, job and key.
func TestJobProblems(t *testing.T) {
	s := read(t, files(map[string]string{dayFile: strings.Replace(smallDay, "3 x 80", "9 x 12", 1) + `
[[job]]
id       = "B"
material = "felt"
web      = 310.0
slits    = ["3 x 80"]
length_m = 1000.0
[[job]]
id       = "C"
material = "felt"
web      = 310.0
slits    = ["3 x 80"]
length_m = 1000.0
state    = "done"
`}))
	// 12 mm is below the pitch of 12.3 mm; ten cuts are too many for five holders;
	// job B's web of 310 mm is wider than 300 mm; C is done with.
	compare(t, []want{
		{"day.toml:8", "job 1 (A), slits", []string{"12 mm", "12.3 mm"}},
		{"day.toml:8", "job 1 (A), slits", []string{"10 cuts", "5"}},
		{"day.toml:14", "job 2 (B), web", []string{"310 mm", "300 mm"}},
	}, s.JobProblems())
}

// TestMissingMaterialsFileHidesNothing: a materials.toml that can't be read is the
// one problem; the day's materials are not told as unknown on top of it.
func TestMissingMaterialsFileHidesNothing(t *testing.T) {
	day := strings.Replace(smallDay, `"felt"`, `"Own"`, 1)
	_, problems := Read(files(map[string]string{dayFile: day, materialsFile: "x"}))
	if len(problems) != 1 || problems[0].File != materialsFile {
		t.Errorf("problems:\n%v", problems)
	}
	_, problems = Read(files(map[string]string{dayFile: day}))
	if len(problems) != 1 || problems[0].Place != "job 1 (A), material" {
		t.Errorf("problems:\n%v", problems)
	}
}

// A holder as narrow as no holder is refused, be it a nanometre.
func TestHoldersAsNarrowAsNoneAre(t *testing.T) {
	for _, width := range []string{"0.000001", "0.000002", "0.01"} {
		_, problems := Read(files(map[string]string{beamFile: strings.Replace(smallBeam, "holder_width = 12.0", "holder_width = "+width, 1)}))
		if len(problems) == 0 || !strings.Contains(problems.Error(), "holder_width") {
			t.Errorf("%s mm: %v", width, problems)
		}
	}
}

// A file without [beam] says that it is missing, and nothing of what would be in it.
func TestBeamIsMissing(t *testing.T) {
	_, problems := Read(files(map[string]string{beamFile: "units = \"mm\"\n"}))
	if len(problems) != 1 || problems[0].File != beamFile || !strings.Contains(problems.Error(), "beam is missing") {
		t.Errorf("problems:\n%v", problems)
	}
}

func TestOpenRefuses(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(dir, "shop")
	if err := os.MkdirAll(filepath.Join(folder, beamFile), 0o700); err != nil { // a folder in a file's place
		t.Fatal(err)
	}
	for path, words := range map[string]string{
		filepath.Join(dir, "nowhere"): "no such folder", file: "no folder", folder: "no regular file",
	} {
		s, problems := Open(path)
		if s != nil || !strings.Contains(problems.Error(), words) {
			t.Errorf("Open(%s): %v, want %q", path, problems, words)
		}
	}
}

func TestTooLargeAFile(t *testing.T) {
	_, problems := Read(files(map[string]string{materialsFile: strings.Repeat("#", toml.LargestFile+1)}))
	if len(problems) != 1 || !strings.Contains(problems.Error(), "larger than 1024 KiB") {
		t.Errorf("problems:\n%v", problems)
	}
	read(t, files(map[string]string{materialsFile: strings.Repeat("#", toml.LargestFile)}))
}

func TestByteOrderMark(t *testing.T) {
	read(t, files(map[string]string{dayFile: "\ufeff" + strings.ReplaceAll(smallDay, "\n", "\r\n")}))
	_, problems := Read(files(map[string]string{dayFile: "\xff\xfeu\x00n\x00"}))
	if len(problems) != 1 || !strings.Contains(problems.Error(), "UTF-16") {
		t.Errorf("problems:\n%v", problems)
	}
}

// TestHostileFilesEndSoon: small files made to cost time or the stack. The largest that is read
// takes a quarter of a second at most; with -long they are that large, else an eighth of it.
func TestHostileFilesEndSoon(t *testing.T) {
	n := plantest.Worlds(toml.LargestFile/8, toml.LargestFile) - 10
	hostile := map[string]string{
		"brackets":        "a = " + strings.Repeat("[", n),
		"inline tables":   "a = " + strings.Repeat("{a=", n/3),
		"a dotted key":    strings.Repeat("a.", n/2) + "a = 1",
		"a dotted table":  "[" + strings.Repeat("a.", n/2) + "a]",
		"dots inside":     "a = {" + strings.Repeat("a.", n/2) + "a = 1}",
		"an open string":  `a = "` + strings.Repeat("x", n),
		"a long text":     `name = """` + strings.Repeat("x\n", n/2-10) + `"""`,
		"many jobs":       strings.Repeat("[[job]]\n", n/8),
		"many keys":       keysOf(n),
		"many afters":     aftersOf(150, 90),
		"a long after":    aftersOf(1, 15_000),
		"many slits":      smallDay + "\nturn = [" + strings.Repeat("1,", n/2-300) + "]",
		"quotes":          strings.Repeat(`'`, n),
		"noughts":         "a = 1" + strings.Repeat("0", n),
		"a long exponent": "a = 1e" + strings.Repeat("9", n),
	}
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			plantest.Within(t, time.Duration(plantest.Worlds(1, 5))*time.Second, func() {
				s, problems := Read(files(map[string]string{dayFile: text, beamFile: text}))
				if s != nil || len(problems) == 0 || len(problems) > toml.MostProblems+1 {
					t.Errorf("shop %v, %d problems", s, len(problems))
				}
				if text := problems.Error(); len(text) > 1<<18 {
					t.Errorf("%d bytes of problems", len(text))
				}
			})
		})
	}
}

// aftersOf is a day in which each of that many jobs waits for jobs that aren't there.
func aftersOf(jobs, afters int) string {
	var b strings.Builder
	b.WriteString("units = 'mm'\nstart = 2026-11-25T06:00:00\n")
	for i := range jobs {
		fmt.Fprintf(&b, "[[job]]\nid = 'a job with a rather long number %d'\nafter = [", i)
		for k := range afters {
			fmt.Fprintf(&b, "'a job with a very long number %d',", 1000*i+k)
		}
		b.WriteString("]\n")
	}
	return b.String()
}

// TestOutOfAllReason: values that no machine has, such as lengths in metres, are
// problems of the file, not of the sums.
func TestOutOfAllReason(t *testing.T) {
	for _, c := range []struct{ file, from, to, words string }{
		{beamFile, "= 12.0", "= 0.012", "is it in metres"},
		{beamFile, "[drive]", "[drive]\nspeed = 0.000001", "below the 0.1 mm/s"},
		{beamFile, "[drive]", "[drive]\nhand_s = 3601", "from 0 to 3600"},
		{beamFile, "[setup]", "[setup]\nevery_min = 1441", "from 0 to 1440"},
		{dayFile, "1000.0", "1000.0\nspeed = 0.009", "from 0.1"},
		{dayFile, "1000.0", "1e6\nspeed = 1", "longer than a week"},
		{dayFile, "1000.0", "1000.0\nafter = [" + strings.Repeat("'x',", mostAfter+1) + "]", "more than the 100"},
	} {
		text := map[string]string{beamFile: smallBeam, dayFile: smallDay}[c.file]
		_, problems := Read(files(map[string]string{c.file: strings.Replace(text, c.from, c.to, 1)}))
		if len(problems) != 1 || !strings.Contains(problems.Error(), c.words) {
			t.Errorf("%s: %v, want %q", c.to, problems, c.words)
		}
	}
}

// keysOf is a text of about n bytes in which every line has another key.
func keysOf(n int) string {
	var b strings.Builder
	for i := 0; b.Len() < n-40; i++ {
		b.WriteString("k")
		for x := i; x > 0; x /= 10 {
			b.WriteByte(byte('0' + x%10))
		}
		b.WriteString("=1\n")
	}
	return b.String()
}

// TestNoTrim: trim doesn't apply to a job slit from edge to edge, so nought may be
// written there; where there is trim, the least of it must be above nought.
func TestNoTrim(t *testing.T) {
	edge := strings.Replace(smallDay, "web      = 250.0", "trim = 0\nweb = 240", 1)
	if ps := read(t, files(map[string]string{dayFile: edge})).JobProblems(); len(ps) > 0 {
		t.Errorf("edge to edge:\n%v", ps)
	}
	trimmed := strings.Replace(smallDay, "web      = 250.0", "web = 250\ntrim = 0", 1)
	compare(t, []want{{"day.toml:8", "job 1 (A), trim", []string{"0 mm", "10 mm", "above 0"}}},
		read(t, files(map[string]string{dayFile: trimmed})).JobProblems())
}

// TestLongList: of very many names a message gives some.
func TestLongList(t *testing.T) {
	day := strings.Replace(smallDay, "length_m", "after = [\"nowhere at all\"]\nlength_m", 1)
	for i := range 400 {
		day += strings.ReplaceAll("\n[[job]]\nid = 'N'\nmaterial = 'felt'\nweb = 250\nslits = [240]\nlength_m = 10\n", "N", "number-"+string(rune('A'+i%26))+strings.Repeat("i", i/26))
	}
	_, problems := Read(files(map[string]string{dayFile: day}))
	if len(problems) != 1 {
		t.Fatalf("problems:\n%v", problems)
	}
	checkProblem(t, problems[0])
}

// TestTwoRun: that two jobs run is told even where they have the same id.
func TestTwoRun(t *testing.T) {
	entry := smallDay[strings.Index(smallDay, "[[job]]"):] + "state = \"running\"\n"
	day := smallDay + "state = \"running\"\n"
	_, problems := Read(files(map[string]string{dayFile: day + strings.Replace(entry, `"A"`, `"B"`, 1) + entry}))
	compare(t, []want{
		{"day.toml:17", "job 2 (B), state", []string{"job 1 (A) is running already", "only one job", `"waiting" or "done"`}},
		{"day.toml:19", "job 3 (A), id", []string{"job 1", "same id"}},
		{"day.toml:24", "job 3 (A), state", []string{"running already"}},
	}, problems)
}
