package shop

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"bide/plan"
)

// twoDays is the small day over two shifts with a break in each.
var twoDays = strings.Replace(smallDay, "start = 2026-11-25T06:00:00\n", `zone = "Europe/Berlin"
# the early shift
[[shift]]
from = 2026-11-25T06:00:00
to   = 2026-11-25T14:00:00
[[shift]]
from = 2026-11-26T06:00:00
to   = 2026-11-26T14:00:00
[[pause]]
from = 2026-11-25T09:00:00
to   = 2026-11-25T09:15:00
why  = "break"
runs = true
`, 1)

// Shifts and pauses are read, in the file's zone: six in the morning in Berlin in November
// is five in universal time.
func TestReadHours(t *testing.T) {
	d := read(t, files(map[string]string{dayFile: twoDays})).Day
	utc := func(day, hour, minute int) time.Time { return time.Date(2026, 11, day, hour, minute, 0, 0, time.UTC) }
	if d.Calendar == nil || len(d.Calendar.Shifts) != 2 || len(d.Calendar.Pauses) != 1 {
		t.Fatalf("%+v", d.Calendar)
	}
	p := d.Calendar.Pauses[0]
	if !d.Start.Equal(utc(25, 5, 0)) || !d.End.Equal(utc(26, 13, 0)) || !p.From.Equal(utc(25, 8, 0)) || !p.To.Equal(utc(25, 8, 15)) || p.Why != "break" || !p.Runs {
		t.Errorf("%v to %v, %+v", d.Start, d.End, p)
	}
	if text := d.Start.Format("15:04"); text != "06:00" {
		t.Errorf("it shows %s", text)
	}
	if one := read(t, files(nil)).Day; one.Calendar != nil || one.Zone != "" {
		t.Errorf("one shift without a pause: %+v", one)
	}
	late := strings.Replace(twoDays, "zone =", "start = 2026-11-25T07:30:00\nzone =", 1)
	if d := read(t, files(map[string]string{dayFile: late})).Day; !d.Start.Equal(utc(25, 6, 30)) {
		t.Errorf("a start in the shift: %v", d.Start)
	}
}

// What is wrong with hours is said with the key and a remedy, all at once.
func TestBadHours(t *testing.T) {
	for name, c := range map[string]struct{ old, new, want string }{
		"zone":          {`"Europe/Berlin"`, `"Europe/Berlon"`, `zone: there is no time zone "Europe/Berlon"`},
		"shift's end":   {"to   = 2026-11-25T14", "to   = 2026-11-25T05", "shift 1, to: it is not after from"},
		"order":         {"from = 2026-11-26T06", "from = 2026-11-25T13", "shift 2, from: it begins before the shift above it ends"},
		"pause outside": {"2026-11-25T09:", "2026-11-25T19:", "pause 1, from: it is in no shift"},
		"end too":       {"# the early", "end = 2026-11-26T14:00:00\n# the early", "end: the end is that of the last shift"},
		"late start":    {"# the early", "start = 2026-11-26T14:00:00\n# the early", "start: the start is not before the last shift's end"},
		"no such time":  {"2026-11-25T06:00:00", "2026-03-29T02:30:00", "there is no 02:30 that day in Europe/Berlin"},
		"unknown key":   {"runs = true", "run = true", `unknown key "run"`},
		"ended":         {"length_m", "began = 2026-11-25T08:00:00\nended = 2026-11-25T07:00:00\nlength_m", "ended: it ended before it began"},
	} {
		text := strings.ReplaceAll(twoDays, c.old, c.new)
		if text == twoDays {
			t.Fatalf("%s: nothing is changed", name)
		}
		_, problems := Read(files(map[string]string{dayFile: text}))
		found := false
		for _, p := range problems {
			found = found || strings.Contains(p.String(), c.want) && p.Line > 0
		}
		if !found {
			t.Errorf("%s: %v", name, problems)
		}
	}
}

// Of two moments at which clocks show the same, the first is meant.
func TestClocksGoBack(t *testing.T) {
	text := strings.Replace(smallDay, "start = 2026-11-25T06:00:00", "zone = \"Europe/Berlin\"\nstart = 2026-10-25T02:30:00", 1)
	if d := read(t, files(map[string]string{dayFile: text})).Day; !d.Start.Equal(time.Date(2026, 10, 25, 0, 30, 0, 0, time.UTC)) {
		t.Errorf("%v", d.Start.UTC())
	}
}

// A job's state is saved without touching the hours above the jobs or behind them, and a
// day written anew has them too.
func TestHoursAreKept(t *testing.T) {
	began := time.Date(2026, 11, 25, 7, 12, 0, 0, time.UTC)
	behind := "\n# the second break\n[[pause]]\nfrom = 2026-11-26T09:00:00\nto = 2026-11-26T09:15:00\n"
	s := folder(t, map[string]string{dayFile: twoDays + behind})
	d := *s.Day
	d.Aim = plan.AimMoves
	d.Jobs = append([]plan.Job{}, d.Jobs...)
	d.Jobs[0].State, d.Jobs[0].Began = plan.Running, began
	if _, err := s.SaveDay(&d, []string{"A"}); err != nil {
		t.Fatal(err)
	}
	text, _ := os.ReadFile(filepath.Join(s.Dir, dayFile))
	head, _, _ := strings.Cut(twoDays, "[[shift]]")
	if got := string(text); !strings.HasPrefix(got, strings.TrimSuffix(head, "# the early shift\n")) || !strings.HasSuffix(got, behind) ||
		!strings.Contains(got, "began    = 2026-11-25T08:12:00") || strings.Index(got, "aim = ") > strings.Index(got, "[[shift]]") || strings.Count(got, "[[pause]]") != 2 {
		t.Errorf("saved:\n%s", got)
	}
	again, problems := Open(s.Dir)
	if len(problems) > 0 || !sameHours(again.Day, &d) || !again.Day.Jobs[0].Began.Equal(began) {
		t.Errorf("%v", problems)
	}
	whole, wrong := wholeDay(&s.Equipment, plan.Millimetres, &d)
	if len(wrong) > 0 || strings.Count(whole, "[[shift]]") != 2 || !strings.Contains(whole, `zone = "Europe/Berlin"`) {
		t.Errorf("written anew: %v\n%s", wrong, whole)
	}
}
