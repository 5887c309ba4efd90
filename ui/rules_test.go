package ui

import (
	"bytes"
	"encoding/csv"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/sheet"
)

// Turns are counted on the screen as on the sheet and as a job's fixed turn counts them:
// jobs that are done first, those that are refused not at all.
func TestTurnsAreTheSheets(t *testing.T) {
	s := oddShop(t)
	sc := newScreen(t, s, testLook(noColours, false, true), 120, 36).settle()
	day := &plan.Day{Start: s.Day.Start}
	for _, j := range sc.Now.All {
		day.Jobs = append(day.Jobs, *j)
	}
	planned, err := sequence.PlanDay(s.Beam, s.Positions, day)
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := sheet.CSV(&text, planned, sheet.Options{Day: day}); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&text).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	turn, job := slices.Index(rows[0], "number"), slices.Index(rows[0], "job")
	want := map[string]string{}
	for _, r := range rows[1:] {
		want[r[job]] = r[turn]
	}
	refused := 0
	for n, j := range sc.Jobs() {
		got := sc.NumberText(n)
		if got != want[j.ID] {
			t.Errorf("%s has turn %q on the screen, %q on the sheet", j.ID, got, want[j.ID])
		}
		if got == "" {
			refused++
		}
	}
	if refused == 0 || planned.Done != 1 || sc.NumberText(0) != "2" {
		t.Errorf("%d are refused, %d done, the first has turn %s", refused, planned.Done, sc.NumberText(0))
	}
}
