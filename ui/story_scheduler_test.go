//go:build unix

package ui

import (
	"encoding/json"
	"os/exec"
	"slices"
	"testing"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/shop"

	"github.com/google/go-cmp/cmp"
)

// bideIn builds the program for the terminal, and tells where it is.
func (x *tmux) bideIn() string {
	x.t.Helper()
	file := x.file("bide")
	if out, err := exec.Command("go", "build", "-o", file, "..").CombinedOutput(); err != nil {
		x.t.Fatalf("go build: %v\n%s", err, out)
	}
	return file
}

// A scheduler's morning: the demo, then a shop of one's own; the day map and the
// schedule, a hot job moved to the front, a job fixed there, one added, an order
// searched for and accepted, the day saved with the layouts found, opened again, and the
// sheet printed in that order.
func TestStoryOfTheScheduler(t *testing.T) {
	plantest.Long(t)
	t.Parallel()
	x := newTmux(t, "demo", 120, 36)
	bide := x.bideIn()
	x.typed("export HOME=" + x.dir + " XDG_CONFIG_HOME=" + x.file("config") + " XDG_STATE_HOME=" + x.file("state"))
	x.typed(bide + `; echo "le""ft=1"`)
	x.until("DEMO", "ends ")
	x.press("q")
	x.until("left=1\nready$")
	x.typed(bide + " " + x.file("shop") + `; echo "le""ft=2"`)
	x.until("bide  Beam 2", "Day ", "ends ")
	x.press("4")
	x.until("Day map", "#1")
	x.press("7")
	x.until("Schedule", "shift ends")
	x.press("1", "Down", "Down", "Down", "g")
	x.until("Move D-104 to", "~ estimate", "where it is now, the day has")
	x.press("Home")
	x.until("the day then has ")
	x.press("Enter")
	x.until("D-104 moved to number 1", "* not saved")
	x.press("t")
	x.until("D-104 is fixed at number 1", "1 f D-104")
	x.press("c")
	x.until("Add a copy of D-104", "no errors")
	x.press("h", "o", "t", "Enter")
	x.until("hot is added")
	x.press("s")
	x.until("best so far")
	x.untilLike(` [2-9]\d %`) // by then it has found something
	x.press("Escape")
	x.until("Two orders", "the order found")
	x.press("Enter")
	x.until("the best order found")
	x.press("C-s")
	x.until("saved in day.toml")
	x.press("q")
	x.until("left=2\nready$")
	s, problems := shop.Open(x.file("shop"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	kept := func(jobs []plan.Job) (out []*plan.Chosen) {
		for i := range jobs {
			out = append(out, jobs[i].Chosen)
		}
		return out
	}
	found := kept(s.Day.Jobs)
	x.typed(bide + " " + x.file("shop") + `; echo "le""ft=3"`)
	x.until("bide  Beam 2", "Day ", "ends ")
	x.press("Enter")
	x.until("layout from an accepted search")
	x.press("q")
	x.until("left=3\nready$")
	if diff := cmp.Diff(found, kept(read(t, x.file("shop")).Day.Jobs)); diff != "" {
		t.Errorf("opened again (-saved +opened):\n%s", diff)
	}
	if len(slices.DeleteFunc(slices.Clone(found), func(c *plan.Chosen) bool { return c == nil })) < 10 {
		t.Errorf("the file keeps the layouts %v", found)
	}
	if s.Day.Jobs[0].ID != "D-104" || s.Day.Jobs[0].Fixed != 1 {
		t.Errorf("first is %s, fixed to turn %d", s.Day.Jobs[0].ID, s.Day.Jobs[0].Fixed)
	}
	out, err := exec.Command(bide, "sheet", "--as", "json", x.file("shop")).Output()
	if err != nil {
		t.Fatalf("bide sheet: %v", err)
	}
	var sheet struct{ Jobs []struct{ ID string } }
	if err := json.Unmarshal(out, &sheet); err != nil {
		t.Fatal(err)
	}
	var printed, saved []string
	for _, j := range sheet.Jobs {
		printed = append(printed, j.ID)
	}
	for _, j := range s.Day.Jobs {
		saved = append(saved, j.ID)
	}
	if !slices.Equal(printed, saved) || !slices.Contains(printed, "hot") {
		t.Errorf("the sheet has %v, the file %v", printed, saved)
	}
}
