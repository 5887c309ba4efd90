package workday

import (
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/shop"
)

// A job of 1000 m at 100 m/min has run since 07:00: its run takes 10 min.
func TestEnded(t *testing.T) {
	start := time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)
	minute := func(n int) time.Time { return start.Add(time.Duration(n) * time.Minute) }
	j := &plan.Job{ID: "A", Metres: 1000, Speed: 100, State: plan.Running, Began: minute(60)}
	for now, want := range map[int]string{
		63: "07:03, 300", // 3 of 10 min
		70: "07:10, 1000",
		95: "07:35, 1000",
		60: "07:10, 1000", // an invented day, whose clock stands
	} {
		d := editor(start, minute(now))
		if got, ok := d.Ended(j); got != want || !ok {
			t.Errorf("now %v: %q, want %q", minute(now), got, want)
		}
	}
	d := editor(start, minute(80))
	for typed, want := range map[string]string{
		"06:50, 100":            "it began to run at 07:00",
		"07:05":                 "with a comma between",
		"07:05, many":           `"many" are no metres`,
		"soon, 100":             "soon",
		"2026-11-25 07:05, 100": "",
		"07:05, 99.5 m":         "",
	} {
		_, _, err := d.ended(j, typed)
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", typed, err)
		}
	}
	if at, metres, _ := d.ended(j, "07:05, 99.5 m"); !at.Equal(minute(65)) || metres != 99.5 {
		t.Errorf("%v, %v m", at, metres)
	}
}

// editor edits a day with that start, at a time.
func editor(start, now time.Time) Editor {
	r := planning.Result{Start: planning.Outcome{Positions: &plan.Positions{}, Clock: plan.Clock{At: now}}}
	s := &shop.Shop{Day: &plan.Day{Start: start}}
	return Editor{Day: &Day{View: View{Shop: s, Result: &r}}}
}
