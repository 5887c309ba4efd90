package caution

import (
	"strings"
	"testing"

	"bide/ui/draw"
)

// Holders drop when air is lost or dumped, so they are secured before it is, and air is dumped
// only behind a lock (OSHA 1910.147(d)(5)(i): stored energy is relieved or restrained after the
// lock is on; that securing comes first follows from it and is common practice). In every length
// the steps come in that order, and a caution that leaves some out still begins with securing.
func TestHoldersAreSecuredFirst(t *testing.T) {
	all := ""
	for _, c := range All {
		all += c.Text + " "
	}
	inOrder := func(text string, steps ...string) {
		t.Helper()
		text, at := strings.ToLower(text), 0
		for _, step := range steps {
			i := strings.Index(text[at:], step)
			if i < 0 {
				t.Fatalf("no %q behind the step before it in %q", step, text)
			}
			at += i
		}
	}
	inOrder(all, "stop", "secure them against falling", "lock out", "dump stored air", "prove zero")
	inOrder(InShort(80), "stopped", "lifted and secured", "locked out", "air dumped", "zero proved")
	inOrder(InShort(40), "stopped", "lifted and secured", "locked out", "no air")
	for w := 18; w < 200; w++ {
		text := OnOneLine(w)
		inOrder(text, "secured", "lock")
		if draw.CellWidth(text) > w {
			t.Errorf("%d cells: %q", w, text)
		}
	}
}
