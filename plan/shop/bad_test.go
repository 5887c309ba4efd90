package shop

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan/shop/toml"
	"bide/plan/words"
)

// want is one problem that a bad shop must be told: where it stands, and words
// that its message or remedy must hold.
type want struct {
	where, place string
	words        []string
}

// TestBadShops reads every shop of the folder of bad ones. Each want.txt was
// written by hand from the rules of the files: one problem a line, in any order,
// as FILE:LINE | PLACE | WORDS | WORDS ...
func TestBadShops(t *testing.T) {
	const bad = "../../testdata/bad"
	folders, err := os.ReadDir(bad)
	if err != nil || len(folders) == 0 {
		t.Fatalf("no bad shops: %v", err)
	}
	for _, folder := range folders {
		t.Run(folder.Name(), func(t *testing.T) {
			dir := filepath.Join(bad, folder.Name())
			shop, problems := Open(dir)
			if shop != nil {
				t.Error("the shop was read all the same")
			}
			compare(t, readWants(t, filepath.Join(dir, "want.txt")), problems)
		})
	}
}

func readWants(t *testing.T, file string) (wants []want) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		if strings.HasPrefix(line, "#") {
			continue
		}
		parts := strings.Split(line, "|")
		for i := range parts {
			parts[i] = strings.TrimSpace(parts[i])
		}
		wants = append(wants, want{parts[0], parts[1], parts[2:]})
	}
	return wants
}

func compare(t *testing.T, wants []want, problems toml.Problems) {
	t.Helper()
	told := make([]bool, len(problems))
	for _, w := range wants {
		found := false
		for i, p := range problems {
			if !told[i] && w.means(p) {
				told[i], found = true, true
				break
			}
		}
		if !found {
			t.Errorf("not told: %s | %s | %q", w.where, w.place, w.words)
		}
	}
	for i, p := range problems {
		if !told[i] {
			t.Errorf("not wanted: %s", p)
		}
		if p.What == "" || p.Remedy == "" {
			t.Errorf("without what or remedy: %s", p)
		}
		if strings.ContainsFunc(p.String(), words.Harmful) {
			t.Errorf("unsafe to print: %q", p.String())
		}
	}
}

func (w want) means(p toml.Problem) bool {
	where := p.File
	if p.Line > 0 {
		where = fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	if where != w.where || p.Place != w.place {
		return false
	}
	for _, words := range w.words {
		if !strings.Contains(p.What+" "+p.Remedy, words) {
			return false
		}
	}
	return true
}
