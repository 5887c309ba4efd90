package shop

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// Whatever stands in a file, reading ends with problems that are safe to print, or
// with a shop that can be planned.

func FuzzBeamFile(f *testing.F)      { fuzzFile(f, beamFile) }
func FuzzDayFile(f *testing.F)       { fuzzFile(f, dayFile) }
func FuzzPositionsFile(f *testing.F) { fuzzFile(f, positionsFile) }
func FuzzMaterialsFile(f *testing.F) { fuzzFile(f, materialsFile) }

func fuzzFile(f *testing.F, file string) {
	seeds, err := filepath.Glob("../../testdata/*/" + file)
	if err != nil {
		f.Fatal(err)
	}
	bad, _ := filepath.Glob("../../testdata/bad/*/" + file)
	for _, seed := range append(seeds, bad...) {
		text, err := os.ReadFile(seed)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add("\xff") // the parser says that it stands before the text
	f.Fuzz(func(t *testing.T, text string) {
		s, problems := Read(files(map[string]string{file: text}))
		for _, p := range problems {
			checkProblem(t, p)
		}
		if len(problems) > 0 == (s != nil) {
			t.Fatalf("%d problems and the shop %v", len(problems), s)
		}
		if s != nil {
			checkShop(t, s)
		}
	})
}

func checkProblem(t *testing.T, p toml.Problem) {
	if p.File == "" || p.What == "" || p.Remedy == "" {
		t.Errorf("not all is told: %s", p)
	}
	if strings.ContainsFunc(p.String(), words.Harmful) || len(p.String()) > 2000 {
		t.Errorf("not fit to print: %q", p.String())
	}
}

// checkShop holds a shop against what the planner takes for granted.
func checkShop(t *testing.T, s *Shop) {
	if _, err := changeover.NewPlanner(s.Beam); err != nil {
		t.Errorf("the beam can't be planned: %v", err)
	}
	pitch := s.Beam.Pitch()
	for i, x := range s.Positions.At {
		if x < s.Beam.Rail.From || x > s.Beam.Rail.To || i > 0 && x-s.Positions.At[i-1] < pitch {
			t.Errorf("holder %d stands at %d of %v", i+1, x, s.Positions.At)
		}
	}
	if len(s.Positions.At) != len(s.Beam.Holders) {
		t.Errorf("%d holders, %d places", len(s.Beam.Holders), len(s.Positions.At))
	}
	for _, j := range s.Day.Jobs {
		checkJob(t, j)
	}
	s.JobProblems()
}

func checkJob(t *testing.T, j plan.Job) {
	slits := j.Slits()
	if j.ID == "" || j.Web <= 0 || j.Metres <= 0 || j.Speed <= 0 || len(slits) == 0 || len(slits) > plan.MaxCount || !j.Blade.Known() || j.SetBar <= 0 && j.Uncut == "" {
		t.Errorf("job %+v", j)
	}
	for _, w := range slits {
		if w <= 0 {
			t.Errorf("job %s: a slit of %d nm", j.ID, w)
		}
	}
}
