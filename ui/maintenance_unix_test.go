//go:build unix

package ui

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"bide/plan/plantest"
)

// A shift of maintenance, from the README's first command to the printed sheet: keys
// of one's own, the holders that the day never uses, a jam that is marked with its
// reason and what it costs, leaving, coming back to the same view, the mark taken
// back, and the sheets.
func TestStoryOfMaintenance(t *testing.T) {
	plantest.Long(t)
	t.Parallel()
	x := newTmux(t, "crowded", 120, 36)
	program, dir := x.file("bide"), x.file("our beam")
	if out, err := exec.Command("go", "build", "-o", program, "bide").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	config := filepath.Join(x.dir, "config", "bide")
	if err := os.MkdirAll(config, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(config, "config.toml"), []byte("[keys]\ncondition = \"C\"\nundo = \"q\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	x.typed("export PATH=\"" + x.dir + ":$PATH\"")
	x.typed("cp -r '" + x.file("shop") + "' '" + dir + "' && bide check '" + dir + "'")
	x.until("no problems: ")
	x.typed("clear; bide '" + dir + "'; echo \"stat\"\"us=$?\"")
	x.until("planned from now, ", "ends ") // the day is long past; what is wrong with the keys is said from the next key on
	x.press("5")
	x.until("▸Holders", "never used today: ", "C condition", "config.toml, line 3: undo: q is taken by quit")
	x.press("/")
	x.until("show only rows with")
	x.run("send-keys", "-l", "never")
	x.press("Enter")
	x.until("/never 1 of 88") // as `bide sheet --as json` has it: holder 6 alone cuts in no job
	x.press("/", "Escape")
	x.until("1-24 of 88 by number", "▸   6 n no cut", "? help  q quit") // the one found stays picked
	x.press("Home")
	x.until("Holder 1 is at")
	for range 17 {
		x.press("Down")
	}
	x.until("Holder 18 is at")
	x.press("C")
	x.until("New condition: ")
	x.press("o")
	x.until("why is holder 18 out?")
	x.run("send-keys", "-l", "air line torn")
	x.press("Enter")
	x.until("holder 18 is recorded as out", "reason: air line torn")
	text, err := os.ReadFile(filepath.Join(dir, "positions.toml"))
	if err != nil || !strings.Contains(string(text), "condition = \"out\"\nwhy = \"air line torn\"") {
		t.Errorf("the mark isn't in positions.toml (%v):\n%s", err, text)
	}
	x.press("q")
	x.ended()
	x.typed("clear; bide '" + dir + "'; echo \"stat\"\"us=$?\"")
	x.until("▸Holders", "Holder 18 is at", "reason: air line torn", "ends ")
	x.press("C")
	x.until("New condition: ")
	x.press("b")
	x.until("holder 18 is recorded as good: ")
	x.press("q")
	x.ended()
	x.typed("clear; bide sheet '" + dir + "' | grep -c 'D-1'; echo \"pri\"\"nted\"")
	x.until("printed")
	x.typed("clear; bide --plain '" + dir + "' | grep 'Holder 18 from'")
	x.until("Holder 18 from 125.5")
}
