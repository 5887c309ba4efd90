package sheet_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"bide/plan/sheet"
)

// The command line, end to end: these tests build the program and run it.

var bide struct {
	once sync.Once
	path string
	err  error
}

func TestMain(m *testing.M) {
	status := m.Run()
	if bide.path != "" {
		os.RemoveAll(filepath.Dir(bide.path))
	}
	os.Exit(status)
}

// program builds the program once. It looks at the files that no test here imports,
// so that go test takes no old result for them.
func program(t testing.TB) string {
	t.Helper()
	bide.once.Do(func() {
		for _, files := range []string{"../../main.go", "../../ui/*.go", "../../ui/*/*.go"} {
			names, _ := filepath.Glob(files)
			for _, name := range names {
				os.Stat(name)
			}
		}
		dir, err := os.MkdirTemp("", "bide")
		if err != nil {
			bide.err = err
			return
		}
		bide.path = filepath.Join(dir, "bide.exe")
		if out, err := exec.Command("go", "build", "-o", bide.path, "bide").CombinedOutput(); err != nil {
			bide.err = errors.New(string(out))
		}
	})
	if bide.err != nil {
		t.Fatal(bide.err)
	}
	return bide.path
}

// result is what a run gave.
type result struct {
	out, err string
	status   int
}

// run runs the program with no terminal.
func run(t testing.TB, args ...string) result {
	t.Helper()
	var out, errs bytes.Buffer
	c := exec.Command(program(t), args...)
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil && c.ProcessState == nil {
		t.Fatal(err)
	}
	return result{out.String(), errs.String(), c.ProcessState.ExitCode()}
}

const demoDir = "../../testdata/demo"

// Every form of the command line that is right does what it says, flags before or
// after the folder, and says nothing on standard error.
func TestCommandLine(t *testing.T) {
	dir := copyOfDemo(t, firstTwo)
	text := run(t, "sheet", dir).out
	whole := demoSheet(t).out
	for _, c := range []struct {
		args  string
		wants string
	}{
		{"", whole}, // no terminal: the text sheet
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
		got := run(t, strings.Fields(c.args)...)
		if got.status != 0 || got.err != "" || !strings.Contains(got.out, c.wants) {
			t.Errorf("bide %s: exit %d, %q on standard error, and %d bytes on standard output without %.40q", c.args, got.status, got.err, len(got.out), c.wants)
		}
	}
}

// A day that lies beside day.toml is told on standard error, not on the sheet, and by
// check.
func TestCommandTellsFilesBeside(t *testing.T) {
	dir := copyOfDemo(t, firstTwo)
	sheet := run(t, "sheet", dir).out
	if err := os.WriteFile(filepath.Join(dir, "day.bide.toml"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	const note = "note: day.bide.toml holds a day"
	if got := run(t, "sheet", dir); got.status != 0 || got.out != sheet || !strings.HasPrefix(got.err, note) {
		t.Errorf("sheet: exit %d, %q on standard error, the sheet is the same: %v", got.status, got.err, got.out == sheet)
	}
	if got := run(t, "check", dir); got.status != 0 || !strings.HasPrefix(got.out, note) {
		t.Errorf("check: exit %d, %q", got.status, got.out)
	}
}

// Where no shop is named the demo is written, and says on every page and in the
// document that it is no shop of anyone's; a shop that is named says nothing of it.
func TestDemoIsSaidToBeOne(t *testing.T) {
	const note = "DEMO: an invented day, not your beam"
	for n, page := range pagesOf(demoSheet(t).out) {
		if !strings.Contains(page[2], note) {
			t.Errorf("page %d of the demo has the rule %q", n+1, page[2])
		}
	}
	day := demoDay(t)
	day.opts.Demo = true
	if got := string(written(t, sheet.JSON, day)); !strings.Contains(got, `"`+note+`"`) {
		t.Error("the document of the demo doesn't say so")
	}
	html := string(written(t, sheet.HTML, day))
	if parts := strings.Split(html, "<section")[1:]; len(parts) < 3 || strings.Count(html, note) != len(parts) {
		t.Errorf("the page of the demo says so %d times, in %d parts", strings.Count(html, note), len(parts))
	}
	for _, as := range []string{"text", "json", "html"} {
		if got := run(t, "sheet", "--as", as, copyOfDemo(t, firstTwo)).out; strings.Contains(got, note) {
			t.Errorf("a shop that is named is called a demo as %s", as)
		}
	}
}

// The panes as linear text need no terminal, and end with the day's problems told as
// those of the files are.
func TestPlainText(t *testing.T) {
	got := run(t, "--plain")
	for _, want := range []string{"DEMO, an invented day", "1 Day, ", "To D-101: ", "Holder 1 stands at ", "Never used today: "} {
		if got.status != 0 || !strings.Contains(got.out, want) {
			t.Errorf("exit %d, %q on standard error, no %q", got.status, got.err, want)
		}
	}
	if strings.Contains(got.out, "\x1b") {
		t.Error("there is an escape in it")
	}
	if got := run(t, "--plain", copyOfDemo(t, firstTwo)); got.status != 0 || strings.Contains(got.out, "DEMO") {
		t.Errorf("a shop that is named: exit %d, or it is called a demo", got.status)
	}
	if got := run(t, "--plain", "../../testdata/bad"); got.status != 1 || got.out != "" || got.err == "" {
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
		"sheet --ascii":                    "goes with the full screen",
		"new":                              "folder must be named",
	} {
		got := run(t, strings.Fields(args)...)
		if got.status != 2 || got.out != "" || !strings.Contains(got.err, wants) {
			t.Errorf("bide %s: exit %d, %q on standard error (want %q), %d bytes on standard output", args, got.status, got.err, wants, len(got.out))
		}
	}
	if got := run(t, "sheet", "--\x1b[31m"); strings.Contains(got.err, "\x1b") {
		t.Errorf("an escape goes through to the terminal: %q", got.err)
	}
}

// A shop that can't be read ends with 1, no document, and every problem named.
func TestShopThatCantBeRead(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	bad := copyOfDemo(t, func(name, text string) string {
		switch name {
		case "beam.toml":
			return strings.Replace(text, "holder_width", "holder_widht", 1)
		case "day.toml":
			return strings.Replace(text, `id       = "D-102"`, `id       = "D-101"`, 1)
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
			got := run(t, command, dir)
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

// demoSheet is the sheet of the built-in demo, whose whole day takes a while to settle.
func demoSheet(t testing.TB) result {
	t.Helper()
	demo.once.Do(func() { demo.result = run(t, "sheet") })
	return demo.result
}

var demo struct {
	once sync.Once
	result
}

// asItIs changes nothing of a copy.
func asItIs(_, text string) string { return text }

// firstTwo leaves it two jobs.
func firstTwo(_, text string) string {
	short, _, _ := strings.Cut(text, "\n# Inch goods")
	return short
}

// copyOfDemo is a folder with the demo's files, changed. It has the first four of its
// jobs alone: planning those takes a tenth of the time, and their document is still
// longer than a pipe holds.
func copyOfDemo(t testing.TB, change func(name, text string) string) string {
	t.Helper()
	dir := t.TempDir()
	files, err := os.ReadDir(demoDir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(filepath.Join(demoDir, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		short, _, _ := strings.Cut(string(text), "\n[[job]]\nid       = \"D-105\"")
		if err := os.WriteFile(filepath.Join(dir, f.Name()), []byte(change(f.Name(), short)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// A job that the beam can't run is refused, with its file and the numbers; the rest
// is planned and the document written, and the exit status is 1.
func TestRefusedJob(t *testing.T) {
	dir := copyOfDemo(t, func(name, text string) string {
		return strings.Replace(text, `"59 x 25"`, `"59 x 35"`, 1) // 2065 mm of slits in a web of 1500
	})
	for command, wants := range map[string]string{"sheet": "THE DAY", "sheet --as csv": ",refused,", "sheet --as json": `"id": "D-101"`, "check": ""} {
		got := run(t, append(strings.Fields(command), dir)...)
		if got.status != 1 || !strings.Contains(got.out, wants) {
			t.Errorf("bide %s: exit %d, and %.60q", command, got.status, got.out)
		}
		for _, want := range []string{"day.toml:", "D-101", "slits", "2065 mm", "1500 mm"} {
			if !strings.Contains(got.err, want) {
				t.Errorf("bide %s: %q isn't in %q", command, want, got.err)
			}
		}
	}
	if got := run(t, "sheet", "--job", "D-102", dir); got.status != 0 || got.err != "" {
		t.Errorf("another job than the refused one: exit %d, %q", got.status, got.err)
	}
	if got := run(t, "sheet", "--job", "D-101", dir); got.status != 1 || !strings.Contains(got.out, "REFUSED") {
		t.Errorf("the refused job alone: exit %d, %q", got.status, got.out)
	}
}

// A rule that the order of the file breaks is told, the document written all the
// same, and the exit status is 1.
func TestBrokenOrder(t *testing.T) {
	dir := copyOfDemo(t, func(name, text string) string {
		text = strings.Replace(text, `id       = "D-101"`, `id       = "D-101"`+"\nafter    = [\"D-104\"]", 1)
		return strings.Replace(text, `id       = "D-103"`, `id       = "D-103"`+"\nfixed    = 1", 1)
	})
	const after, turn = "job D-101 is to come after D-104 and comes before it", "job D-103 is fixed at number 1 in the sequence and comes at number "
	first := strings.Join(strings.Fields(strings.Join(pagesOf(run(t, "sheet", dir).out)[0], " ")), " ")
	notes := strings.Join(notesOf(t, run(t, "sheet", "--as", "json", dir).out), "\n")
	for _, rule := range []string{after, turn} {
		if !strings.Contains(first, "- "+rule) || !strings.Contains(notes, "broken: "+rule) {
			t.Errorf("%q isn't on the first page or in the notes:\n%s\n%s", rule, first, notes)
		}
	}
	for command, wants := range map[string]string{"sheet": "THE DAY", "check": ""} {
		got := run(t, command, dir)
		if got.status != 1 || !strings.Contains(got.out, wants) {
			t.Errorf("bide %s: exit %d, and %.60q", command, got.status, got.out)
		}
		for _, want := range []string{"(D-101), after", "D-104", "(D-103), fixed"} {
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
	if got := run(t, "new", dir); got.status != 0 || got.err != "" || !strings.Contains(got.out, "bide check") {
		t.Fatalf("bide new: %+v", got)
	}
	if got := run(t, "check", dir); got.status != 0 || !strings.Contains(got.out, "no problems") {
		t.Errorf("the new shop is checked: %+v", got)
	}
	if got := run(t, "new", dir); got.status != 1 || got.out != "" || !strings.Contains(got.err, "already") {
		t.Errorf("once more: %+v", got)
	}
}

// A full disk is an error, a reader that has gone is none.
func TestOutputThatCantBeWritten(t *testing.T) {
	if full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0); err == nil {
		var errs bytes.Buffer
		c := exec.Command(program(t), "sheet", copyOfDemo(t, asItIs))
		c.Stdout, c.Stderr = full, &errs
		c.Run()
		if c.ProcessState.ExitCode() != 1 || !strings.Contains(errs.String(), "can't be written") {
			t.Errorf("on a full disk: exit %d, %q", c.ProcessState.ExitCode(), errs.String())
		}
		full.Close()
	}
	if runtime.GOOS == "windows" {
		return
	}
	var errs bytes.Buffer
	c := exec.Command(program(t), "sheet", copyOfDemo(t, asItIs))
	c.Stderr = &errs
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
	dir := copyOfDemo(t, asItIs)
	for signal, want := range map[syscall.Signal]int{syscall.SIGINT: 130, syscall.SIGTERM: 143, syscall.SIGHUP: 129} {
		c, out := waiting(t, exec.Command(program(t), "sheet", "--as", "json", dir))
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
	c, out := waiting(t, exec.Command("sh", "-c", `trap "" HUP; exec "$0" sheet --as json "$1"`, program(t), copyOfDemo(t, asItIs)))
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
func waiting(t *testing.T, c *exec.Cmd) (*exec.Cmd, io.ReadCloser) {
	t.Helper()
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
	return c, out
}

// BenchmarkCommand is the sheet of the demo from start to end of the program.
func BenchmarkCommand(b *testing.B) {
	program(b)
	for b.Loop() {
		if got := run(b, "sheet"); got.status != 0 {
			b.Fatal(got.err)
		}
	}
}
