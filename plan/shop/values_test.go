package shop

import (
	"fmt"
	"strings"
	"testing"

	"bide/plan/plantest"
	"bide/plan/shop/start"
)

// values are what may stand in a value's place, by right or not.
var values = []string{
	"nan", "-inf", "true", "0", "-1", "1", "2", "1e300", "-1e-300", "9223372036854775807", "0.1",
	`""`, `" "`, `"1-1/2"`, `"24 x 1/2"`, `"mm"`, `"in"`, `"\u001b[2J\u202e"`, `"` + strings.Repeat("x", 200) + `"`,
	"[]", "[1]", "[2, 1]", "[1, 2]", `["a", 1]`, "[[]]", "{}", "{a = 1}", "[{}]",
	"2026-11-25", "07:00:00", "2026-11-25T07:00:00", "2026-11-25T07:00:00Z", "9999-12-31T23:59:59",
}

// TestEveryValue puts each of the values in the place of each value of a shop's
// files, and takes each line out: reading ends with problems that are fit to
// print, or with a shop that can be planned.
func TestEveryValue(t *testing.T) {
	whole := startFS(t)
	for file, text := range whole {
		lines := strings.Split(text, "\n")
		for i, line := range lines {
			key, _, ok := strings.Cut(line, "=")
			alike := file == positionsFile && i > 15 && i < len(lines)-10 // one holder's entry is as good as another's
			if !ok || strings.HasPrefix(line, "#") || alike {
				continue
			}
			checkChanged(t, whole, file, lines, i, "")
			for k, value := range values {
				if !plantest.IsLong() && (i+k)%6 > 0 { // each line has some of them, each value some lines
					continue
				}
				checkChanged(t, whole, file, lines, i, key+"= "+value)
			}
		}
	}
}

// startFS is a new shop's files with positions and every table written out.
func startFS(t *testing.T) map[string]string {
	whole := map[string]string{}
	for _, file := range start.Names {
		text, err := start.Files.ReadFile("files/" + file)
		if err != nil {
			t.Fatal(err)
		}
		whole[file] = string(text)
	}
	whole[beamFile] += "\n[[anvil.bad]]\nfrom = 610.0\nto = 618.0\n[[holder]]\nnumber = 17\ncondition = \"no cut\"\n"
	whole[dayFile] += "due = 2026-11-25T11:00:00\nafter = [\"J-1\"]\nstate = \"waiting\"\nturn = -1\n"
	whole[positionsFile] = "units = \"mm\"\nrecorded = 2026-11-25T05:41:00\njob = \"J-0\"\nmaterial = \"felt\"\nweb = 1000.0\nset_bar = 2.9\n"
	for n := range 40 {
		whole[positionsFile] += fmt.Sprintf("[[holder]]\nnumber = %d\nat = %d\n", n+1, -200+40*n)
	}
	whole[positionsFile] += "bevel = 45\ntip = 0.15\nmetres = 100\n"
	return whole
}

func checkChanged(t *testing.T, whole map[string]string, file string, lines []string, i int, line string) {
	t.Helper()
	changed := map[string]string{}
	for f, text := range whole {
		changed[f] = text
	}
	changed[file] = strings.Join(lines[:i], "\n") + "\n" + line + "\n" + strings.Join(lines[i+1:], "\n")
	s, problems := Read(files(changed))
	for _, p := range problems {
		checkProblem(t, p)
	}
	switch {
	case len(problems) > 0 == (s != nil):
		t.Errorf("%s: %d problems and the shop %v", line, len(problems), s)
	case s != nil:
		checkShop(t, s)
	}
	if t.Failed() {
		t.Fatalf("with %q for line %d of %s, %q", line, i+1, file, lines[i])
	}
}
