package sheet_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"bide/plan/sheet"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// The sheets of a small day made by hand, to be looked at when they change.
func TestGoldenSheets(t *testing.T) {
	for ending, write := range map[string]writer{"txt": sheet.Text, "csv": sheet.CSV, "json": sheet.JSON, "html": sheet.HTML} {
		name := "../../testdata/golden/sheet_beside." + ending
		got := written(t, write, besideDay())
		if *update {
			if err := os.WriteFile(name, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")); diff != "" {
			t.Errorf("%s differs (-update writes it anew):\n%s", name, diff)
		}
	}
}
