package shop

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/material"
	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/shop/record"
	"bide/plan/shop/start"
	"bide/plan/verify"

	parser "github.com/BurntSushi/toml"
)

// TestNewReads: a new shop reads without problems, and all of its jobs can run.
func TestNewReads(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shops", "new")
	if err := start.New(dir); err != nil {
		t.Fatal(err)
	}
	s, problems := Open(dir)
	if problems != nil {
		t.Fatalf("problems:\n%v", problems)
	}
	if ps := s.JobProblems(); len(ps) > 0 {
		t.Errorf("jobs:\n%v", ps)
	}
	mustPlan(t, s)
}

// TestNewTellsAllKeys: a new shop names every key that its files may have, at
// least in a comment, and every built-in group.
func TestNewTellsAllKeys(t *testing.T) {
	var all strings.Builder
	for _, file := range start.Names {
		text, err := start.Files.ReadFile("files/" + file)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	text := all.String()
	only := map[string]bool{"at": true, "metres": true, "recorded": true, "set_bar": true, "why": true, "moved": true} // keys of positions.toml
	for key := range examples {
		name := key[strings.LastIndex(key, ".")+1:]
		if !only[name] && !strings.Contains(text, name) {
			t.Errorf("the key %s is not told", name)
		}
	}
	text = strings.ReplaceAll(text, "\n# ", " ")
	for _, g := range material.Groups() {
		if !strings.Contains(text, g.Name) {
			t.Errorf("the group %s is not told", g.Name)
		}
	}
}

// TestNewOverwritesNothing: whichever file is there, nothing is written.
func TestNewOverwritesNothing(t *testing.T) {
	for _, file := range []string{beamFile, dayFile, materialsFile, positionsFile, record.File} {
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, file), []byte("mine"), 0o600); err != nil {
			t.Fatal(err)
		}
		err := start.New(dir)
		if err == nil || !strings.Contains(err.Error(), file) || !strings.Contains(err.Error(), "already") {
			t.Errorf("%s: %v", file, err)
		}
		entries, _ := os.ReadDir(dir)
		text, _ := os.ReadFile(filepath.Join(dir, file))
		if len(entries) != 1 || string(text) != "mine" {
			t.Errorf("%s: now %v, %q", file, entries, text)
		}
	}
}

func TestNewWhereNoFolderCanBe(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := start.New(file); err == nil || !strings.Contains(err.Error(), "can't be made") {
		t.Errorf("New over a file: %v", err)
	}
}

// TestDemo: the built-in demo is the day it is meant to be.
func TestDemo(t *testing.T) {
	s, problems := Open("../../testdata/demo")
	if problems != nil {
		t.Fatalf("problems:\n%v", problems)
	}
	if n := len(s.Beam.Holders); n < 80 || n > 100 {
		t.Errorf("%d holders", n)
	}
	if n := len(s.Day.Jobs); n < 12 || n > 16 {
		t.Errorf("%d jobs", n)
	}
	noCut := 0
	for _, c := range s.Beam.Holders {
		if c == plan.NoCut {
			noCut++
		}
	}
	if noCut != 1 || len(s.Notes) != 0 {
		t.Errorf("%d holders may not cut; notes %q", noCut, s.Notes)
	}
	mustPlan(t, s)
}

// mustPlan plans the day and verifies the plan; no job may be refused.
func mustPlan(t *testing.T, s *Shop) {
	t.Helper()
	d, err := sequence.PlanDay(s.Beam, s.Positions, s.Day)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range d.Refused() {
		for _, f := range r.Faults {
			t.Errorf("refused: %s", s.ProblemOf(r.Job, f))
		}
	}
	if len(d.Steps()) != len(s.Day.Jobs) {
		t.Errorf("%d of %d jobs planned", len(d.Steps()), len(s.Day.Jobs))
	}
	if err := verify.DayOf(d, s.Day); err != nil {
		t.Error(err)
	}
}

// TestExamplesAreTOML: the remedies can be pasted into a file.
func TestExamplesAreTOML(t *testing.T) {
	for key, example := range maps.All(examples) {
		if strings.HasPrefix(example, "[") {
			continue
		}
		var tree map[string]any
		if _, err := parser.Decode(example, &tree); err != nil {
			t.Errorf("example of %s: %v", key, err)
		}
		if _, ok := tree[key[strings.LastIndex(key, ".")+1:]]; !ok {
			t.Errorf("example of %s: %s", key, example)
		}
	}
}
