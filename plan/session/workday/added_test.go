package workday

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/session/draft"
)

// view is of a day with these jobs, of which nothing is planned.
func view(ids string) *View {
	var all []*plan.Job
	for _, id := range strings.Fields(ids) {
		all = append(all, &plan.Job{ID: id})
	}
	now := draft.New(all, plan.AimMinutes)
	return &View{Now: &now}
}

// An id is proposed in the pattern of the job copied, else of the day, and is nobody's.
func TestNextID(t *testing.T) {
	for _, c := range []struct{ ids, like, want string }{
		{"J-1 J-2 J-3", "J-1", "J-4"},
		{"A7 B09 B08", "B08", "B10"},
		{"hot A7", "hot", "A8"},
		{"hot newb", "hot", "newc"},
		{"N99999999999", "N99999999999", "newb"}, // no count of jobs
		{"hot A7 A9", "", "A10"},
	} {
		d := view(c.ids)
		if got := d.NextID(d.Now.Find(c.like)); got != c.want {
			t.Errorf("%s: proposed beside %s is %q, want %q", c.ids, c.like, got, c.want)
		}
	}
}

// What is free is no job's, also where all of a kind are taken.
func TestFreeID(t *testing.T) {
	const all = "bcdefghijklmnopqrstuvwxyz"
	if got := view("J Jb Jc").FreeID("J"); got != "Jd" {
		t.Errorf("%q", got)
	}
	ids := "J"
	for _, tail := range all {
		ids += " J" + string(tail)
	}
	if got := view(ids).FreeID("J"); got != "Jzb" {
		t.Errorf("with all taken: %q", got)
	}
}
