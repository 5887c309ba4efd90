package program

import (
	"bytes"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"bide/plan/plantest"
)

// The command line, end to end: these tests start this binary again as the program.

// TestMain runs the tests, or what the program is asked for. Its demo is the small day: what
// becomes of a demo doesn't depend on how large it is.
func TestMain(m *testing.M) {
	if os.Getenv("BIDE_TEST_PROGRAM") != "" {
		os.Exit(Run(os.Args[1:], os.Stdout, os.Stderr, os.DirFS(longerDay)))
	}
	os.Exit(m.Run())
}

// bide is the program with its arguments, no terminal, and what it says.
func bide(args ...string) (c *exec.Cmd, out, errs *bytes.Buffer) {
	c = exec.Command(os.Args[0], args...)
	c.Env = append(os.Environ(), "BIDE_TEST_PROGRAM=yes")
	out, errs = new(bytes.Buffer), new(bytes.Buffer)
	c.Stdout, c.Stderr = out, errs
	return c, out, errs
}

// result is what a run gave.
type result struct {
	out, err string
	status   int
}

// ran runs the program with no terminal.
func ran(t testing.TB, args ...string) result {
	t.Helper()
	c, out, errs := bide(args...)
	if err := c.Run(); err != nil && c.ProcessState == nil {
		t.Fatal(err)
	}
	return result{out.String(), errs.String(), c.ProcessState.ExitCode()}
}

const (
	demoDir   = "../../testdata/demo"
	longerDay = "../../testdata/small" // its document is longer than a pipe holds
)

// Every form of the command line that is right does what it says, flags before or
// after the folder, and says nothing on standard error.
func TestCommandLine(t *testing.T) {
	dir := small(t, asItIs)
	text := ran(t, "sheet", dir).out
	for _, c := range []struct {
		args  string
		wants string
	}{
		{dir, text},
		{"sheet " + dir, text},
		{"sheet --as text --sequence listed --aim minutes " + dir, text},
		{"sheet " + dir + " --as=text --rounds 5 --seed 7", text},
		{"--ascii " + dir, text},
		{"sheet -- " + dir, text},
		{"check", "no problems"},
		{"check " + dir, "no problems"},
		{"sheet --as csv " + dir, "number,job,"},
		{"sheet " + dir + " --as json", `"format": "bide-plan"`},
		{"sheet --as json --aim moves " + dir, `"aim": "moves"`},
		{"sheet --as html " + dir, "<!DOCTYPE html>"},
		{"sheet --as html --sequence best --rounds 20 --job D-102 " + dir, "D-102</h2>"},
		{"sheet --job D-102 --as json " + dir, `"only": "D-102"`},
		{"sheet --sequence best --rounds 20 " + dir, "Saved "},
		{"sheet --sequence best --rounds 20 --aim moves --as json " + dir, `"sequence": "best"`},
		{"help", "bide sheet [flags] [SHOP]"},
		{"--help", "bide sheet [flags] [SHOP]"},
		{"sheet -h", "bide sheet [flags] [SHOP]"},
		{"--version", "bide "},
	} {
		got := ran(t, strings.Fields(c.args)...)
		if got.status != 0 || got.err != "" || !strings.Contains(got.out, c.wants) {
			t.Errorf("bide %s: exit %d, %q on standard error, and %d bytes on standard output without %.40q", c.args, got.status, got.err, len(got.out), c.wants)
		}
	}
}

// A day that lies beside day.toml is told on standard error, not on the sheet, and by
// check.
func TestCommandTellsFilesBeside(t *testing.T) {
	dir := small(t, asItIs)
	sheet := ran(t, "sheet", dir).out
	if err := os.WriteFile(filepath.Join(dir, "day.bide.toml"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	const note = "note: day.bide.toml holds a day"
	if got := ran(t, "sheet", dir); got.status != 0 || got.out != sheet || !strings.HasPrefix(got.err, note) {
		t.Errorf("sheet: exit %d, %q on standard error, the sheet is the same: %v", got.status, got.err, got.out == sheet)
	}
	if got := ran(t, "check", dir); got.status != 0 || !strings.HasPrefix(got.out, note) {
		t.Errorf("check: exit %d, %q", got.status, got.out)
	}
}

// What is left is carried into the folder named; with a date that can't be, nothing is.
func TestCarry(t *testing.T) {
	dir := small(t, asItIs)
	if got := ran(t, "carry", "--to", "2026-11-26", dir); got.status != 0 || got.err != "" || !strings.HasPrefix(got.out, "3 jobs carried to Thu 2026-11-26 06:00; the old day.toml is kept as day-2026-11-25.toml") {
		t.Errorf("%+v", got)
	}
	if got := ran(t, "carry", dir, "--to", "2026-11-26"); got.status != 1 || got.out != "" || !strings.Contains(got.err, "the day begins on 2026-11-26") {
		t.Errorf("%+v", got)
	}
	if got := ran(t, "check", dir); got.status != 0 {
		t.Errorf("the day carried: %+v", got)
	}
}

// pagesOf are the lines of a text sheet by page.
func pagesOf(text string) (pages [][]string) {
	for _, p := range strings.Split(text, "\f\n") {
		pages = append(pages, strings.Split(strings.TrimSuffix(p, "\n"), "\n"))
	}
	return pages
}

// Where no shop is named the demo is written, and says on every page that it is no shop
// of anyone's; a shop that is named says nothing of it.
func TestDemoIsSaidToBeOne(t *testing.T) {
	const note = "DEMO: an invented day, not your beam"
	got := ran(t) // no terminal: the text sheet
	if got.status != 0 || got.err != "" || !strings.Contains(got.out, "THE DAY") {
		t.Errorf("exit %d, %q on standard error, and %d bytes that are no text sheet", got.status, got.err, len(got.out))
	}
	for n, page := range pagesOf(got.out) {
		if !strings.Contains(page[2], note) {
			t.Errorf("page %d of the demo has the rule %q", n+1, page[2])
		}
	}
	for _, as := range []string{"text", "json", "html"} {
		if got := ran(t, "sheet", "--as", as, small(t, asItIs)).out; strings.Contains(got, note) {
			t.Errorf("a shop that is named is called a demo as %s", as)
		}
	}
}

// The panes as linear text need no terminal, and end with the day's problems told as
// those of the files are.
func TestPlainText(t *testing.T) {
	got := ran(t, "--plain", small(t, asItIs))
	for _, want := range []string{"Day, ", "To D-101: ", "Holder 1 from ", "Never used today: "} {
		if got.status != 0 || !strings.Contains(got.out, want) {
			t.Errorf("exit %d, %q on standard error, no %q", got.status, got.err, want)
		}
	}
	if strings.Contains(got.out, "\x1b") || strings.Contains(got.out, "DEMO") {
		t.Error("there is an escape in it, or a shop that is named is called a demo")
	}
	if plantest.IsLong() {
		if got := ran(t, "--plain"); got.status != 0 || !strings.Contains(got.out, "DEMO, an invented day") {
			t.Errorf("the demo: exit %d, %q on standard error, or it isn't called one", got.status, got.err)
		}
	}
	if got := ran(t, "--plain", "../../testdata/bad"); got.status != 1 || got.out != "" || got.err == "" {
		t.Errorf("no shop: exit %d, %d bytes on standard output, %q on standard error", got.status, len(got.out), got.err)
	}
}

// Wrong usage is told with what was likely meant, ends with 2 and prints nothing.
func TestWrongUsage(t *testing.T) {
	for args, wants := range map[string]string{
		"chek":                             "did you mean check?",
		"sheeet " + demoDir:                "did you mean sheet?",
		demoDir + " " + demoDir:            "no command",
		"sheet " + demoDir + " " + demoDir: "one folder",
		"sheet --jop D-101":                "did you mean --job?",
		"sheet --as jsn":                   "did you mean json?",
		"sheet --as":                       "--as",
		"sheet --rounds many":              "whole number",
		"sheet --rounds -1":                "0 or more",
		"sheet --seed 1.5":                 "whole number",
		"sheet --job D-999":                "D-999",
		"--light --dark":                   "only one of them",
		"sheet --plain":                    "goes with the full screen",
		"--as csv":                         "goes with bide sheet",
		"check --job D-101":                "goes with bide sheet",
		"carry":                            "folder must be named",
		"carry --seed 2 " + demoDir:        "goes with bide sheet",
		"sheet --to 2026-11-26":            "goes with bide carry",
		"sheet --ascii":                    "goes with the full screen",
		"new":                              "folder must be named",
	} {
		got := ran(t, strings.Fields(args)...)
		if got.status != 2 || got.out != "" || !strings.Contains(got.err, wants) {
			t.Errorf("bide %s: exit %d, %q on standard error (want %q), %d bytes on standard output", args, got.status, got.err, wants, len(got.out))
		}
	}
	if got := ran(t, "sheet", "--\x1b[31m"); strings.Contains(got.err, "\x1b") {
		t.Errorf("an escape goes through to the terminal: %q", got.err)
	}
}

// A shop that can't be read ends with 1, no document, and every problem named.
func TestShopThatCantBeRead(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	bad := small(t, func(name, text string) string {
		switch name {
		case "beam.toml":
			return strings.Replace(text, "holder_width", "holder_widht", 1)
		case "day.toml":
			return strings.Replace(text, `id = "D-102"`, `id = "D-101"`, 1)
		}
		return text
	})
	for dir, wants := range map[string][]string{
		filepath.Join(t.TempDir(), "none"): {"none", "no such folder"},
		file:                               {"file", "no folder"},
		t.TempDir():                        {"beam.toml", "day.toml"},
		bad:                                {"beam.toml:", "holder_widht", "day.toml:", "D-101"},
	} {
		for _, command := range []string{"sheet", "check"} {
			got := ran(t, command, dir)
			if got.status != 1 || got.out != "" {
				t.Errorf("bide %s %s: exit %d, %d bytes on standard output", command, dir, got.status, len(got.out))
			}
			for _, want := range wants {
				if !strings.Contains(got.err, want) {
					t.Errorf("bide %s %s: %q isn't in %q", command, dir, want, got.err)
				}
			}
		}
	}
}

// small is a folder with a shop of twelve holders and three jobs, changed.
func small(t testing.TB, change func(name, text string) string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"beam.toml": smallBeam, "day.toml": smallDay} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(change(name, text)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

const smallBeam = `name = "Small beam"
units = "mm"
[beam]
holders = 12
holder_width = 12.0
clearance = 0.3
rail = [-100.0, 700.0]
web = [0.0, 600.0]
rest_over_web = true
[drive]
kind = "shuttle"
speed = 400.0
acceleration = 800.0
[setup]
every_min = 6.0
`

const smallDay = `units = "mm"
start = 2026-11-25T06:00:00
[[job]]
id = "D-101"
material = "paper tape"
web = 500.0
slits = ["5 x 90"]
length_m = 1000.0
speed = 100.0
shift = "free"
[[job]]
id = "D-102"
material = "paper tape"
web = 500.0
slits = ["8 x 55"]
length_m = 1000.0
speed = 100.0
[[job]]
id = "D-103"
material = "paper tape"
web = 500.0
slits = ["4 x 110"]
length_m = 1000.0
speed = 100.0
`

// asItIs changes nothing of a copy.
func asItIs(_, text string) string { return text }

// A job that the beam can't run is refused, with its file and the numbers; the rest
// is planned and the document written, and the exit status is 1.
func TestRefusedJob(t *testing.T) {
	dir := small(t, func(name, text string) string {
		return strings.Replace(text, `"5 x 90"`, `"5 x 110"`, 1) // 550 mm of slits in a web of 500
	})
	for command, wants := range map[string]string{"sheet": "THE DAY", "sheet --as csv": ",refused,", "sheet --as json": `"id": "D-101"`, "check": ""} {
		got := ran(t, append(strings.Fields(command), dir)...)
		if got.status != 1 || !strings.Contains(got.out, wants) {
			t.Errorf("bide %s: exit %d, and %.60q", command, got.status, got.out)
		}
		for _, want := range []string{"day.toml:", "D-101", "slits", "550 mm", "500 mm"} {
			if !strings.Contains(got.err, want) {
				t.Errorf("bide %s: %q isn't in %q", command, want, got.err)
			}
		}
	}
	if got := ran(t, "sheet", "--job", "D-102", dir); got.status != 0 || got.err != "" {
		t.Errorf("another job than the refused one: exit %d, %q", got.status, got.err)
	}
	if got := ran(t, "sheet", "--job", "D-101", dir); got.status != 1 || !strings.Contains(got.out, "REFUSED") {
		t.Errorf("the refused job alone: exit %d, %q", got.status, got.out)
	}
}

// A rule that the order of the file breaks is told, the document written all the
// same, and the exit status is 1.
func TestBrokenOrder(t *testing.T) {
	dir := small(t, func(name, text string) string {
		text = strings.Replace(text, `id = "D-101"`, `id = "D-101"`+"\nafter = [\"D-102\"]", 1)
		return strings.Replace(text, `id = "D-103"`, `id = "D-103"`+"\nfixed = 1", 1)
	})
	const after, fixed = "job D-101 is to come after D-102 and comes before it", "job D-103 is fixed at number 1 in the sequence and comes at number 3"
	first := strings.Join(strings.Fields(strings.Join(pagesOf(ran(t, "sheet", dir).out)[0], " ")), " ")
	notes := strings.Join(notesOf(t, ran(t, "sheet", "--as", "json", dir).out), "\n")
	for _, rule := range []string{after, fixed} {
		if !strings.Contains(first, "- "+rule) || !strings.Contains(notes, "rule broken: "+rule) {
			t.Errorf("%q isn't on the first page or in the notes:\n%s\n%s", rule, first, notes)
		}
	}
	for command, wants := range map[string]string{"sheet": "THE DAY", "check": ""} {
		got := ran(t, command, dir)
		if got.status != 1 || !strings.Contains(got.out, wants) {
			t.Errorf("bide %s: exit %d, and %.60q", command, got.status, got.out)
		}
		for _, want := range []string{"(D-101), after", "D-102", "(D-103), fixed"} {
			if !strings.Contains(got.err, want) {
				t.Errorf("bide %s: %q isn't in %q", command, want, got.err)
			}
		}
	}
}

// notesOf are the notes of a plan document.
func notesOf(t *testing.T, document string) []string {
	t.Helper()
	var doc struct{ Notes []string }
	if err := json.Unmarshal([]byte(document), &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Notes
}

// bide new makes a shop that has no problems, and never overwrites one.
func TestNewShop(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shop")
	if got := ran(t, "new", dir); got.status != 0 || got.err != "" || !strings.Contains(got.out, "bide check") {
		t.Fatalf("bide new: %+v", got)
	}
	if got := ran(t, "check", dir); got.status != 0 || !strings.Contains(got.out, "no problems") {
		t.Errorf("the new shop is checked: %+v", got)
	}
	if got := ran(t, "new", dir); got.status != 1 || got.out != "" || !strings.Contains(got.err, "already") {
		t.Errorf("once more: %+v", got)
	}
}

// A full disk is an error, a reader that has gone is none.
func TestOutputThatCantBeWritten(t *testing.T) {
	if full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0); err == nil {
		c, _, errs := bide("sheet", longerDay)
		c.Stdout = full
		c.Run()
		if c.ProcessState.ExitCode() != 1 || !strings.Contains(errs.String(), "can't be written") {
			t.Errorf("on a full disk: exit %d, %q", c.ProcessState.ExitCode(), errs.String())
		}
		full.Close()
	}
	if runtime.GOOS == "windows" {
		return
	}
	c, _, errs := bide("sheet", longerDay)
	c.Stdout = nil
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	out.Close() // long before the sheet is written, or while it is
	c.Wait()
	if c.ProcessState.ExitCode() != 0 || errs.Len() > 0 {
		t.Errorf("with the reader gone: %v, %q", c.ProcessState, errs.String())
	}
}

// In batch a signal ends the program with 128 and its number. The document is
// longer than a pipe holds, so once a byte has come the program waits for the rest
// to be read.
func TestSignals(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no such signals")
	}
	for signal, want := range map[syscall.Signal]int{syscall.SIGINT: 130, syscall.SIGTERM: 143, syscall.SIGHUP: 129} {
		c, _, _ := bide("sheet", "--as", "html", longerDay)
		out := waiting(t, c)
		if err := c.Process.Signal(signal); err != nil {
			t.Fatal(err)
		}
		c.Wait() // its error says no more than the status
		out.Close()
		if got := c.ProcessState.ExitCode(); got != want {
			t.Errorf("%v: exit %d, want %d", signal, got, want)
		}
	}
}

// Under nohup a hang-up doesn't end it.
func TestIgnoredHangup(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no such signals")
	}
	c, _, _ := bide("sheet", "--as", "html", longerDay)
	c.Path, c.Args = "/bin/sh", append([]string{"sh", "-c", `trap "" HUP; exec "$0" "$@"`}, c.Args...)
	out := waiting(t, c)
	if err := c.Process.Signal(syscall.SIGHUP); err != nil {
		t.Fatal(err)
	}
	time.Sleep(200 * time.Millisecond) // time for it to end, if it were to
	if _, err := io.Copy(io.Discard, out); err != nil {
		t.Fatal(err)
	}
	if err := c.Wait(); err != nil {
		t.Errorf("it ended with %v", err)
	}
}

// waiting starts a program and reads the first byte that it writes.
func waiting(t *testing.T, c *exec.Cmd) io.ReadCloser {
	t.Helper()
	c.Stdout = nil
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	if _, err := io.ReadFull(out, make([]byte, 1)); err != nil {
		t.Fatal(err)
	}
	return out
}

// BenchmarkCommand is the sheet of the demo from start to end of the program.
func BenchmarkCommand(b *testing.B) {
	for b.Loop() {
		if got := ran(b, "sheet"); got.status != 0 {
			b.Fatal(got.err)
		}
	}
}
