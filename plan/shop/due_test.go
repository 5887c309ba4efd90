package shop

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"
)

// A due time in another year is a slip of the pen, and told.
func TestDueInAnotherYear(t *testing.T) {
	text := func(name string) []byte {
		data, err := os.ReadFile("../../testdata/demo/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	day := strings.Replace(string(text("day.toml")), "due      = 2026-11-25T08:30:00", "due      = 2006-11-25T08:30:00", 1)
	if day == string(text("day.toml")) {
		t.Fatal("the demo has no such due time")
	}
	_, problems := Read(fstest.MapFS{
		"beam.toml": {Data: text("beam.toml")}, "day.toml": {Data: []byte(day)},
		"positions.toml": {Data: text("positions.toml")}, "materials.toml": {Data: text("materials.toml")},
	})
	if len(problems) != 1 || !strings.Contains(problems.Error(), "due 2006-11-25 is more than 366 days from the day's start, 2026-11-25") {
		t.Errorf("told %v", problems)
	}
}
