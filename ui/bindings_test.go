package ui

import (
	"bide/ui/draw"
	"strings"
	"testing"
)

// In each scope a key does one thing, and every key that does something is told in
// the help or in the footer.
func TestBindingsAreClear(t *testing.T) {
	for in := onDay; in < scopes; in <<= 1 {
		seen := map[string]string{}
		for _, b := range bindings {
			if b.where&in == 0 {
				continue
			}
			for _, k := range b.keys {
				if other, twice := seen[k]; twice {
					t.Errorf("scope %b: %q does two things: %q and %q", in, k, other, b.does)
				}
				seen[k] = b.does
			}
			if b.act == nothing && b.word == "" || b.act != nothing && len(b.keys) == 0 {
				t.Errorf("scope %b: %q has no use", in, b.show)
			}
		}
		for _, k := range []string{"ctrl+c"} {
			if newKeyTable(false).actionOf(k, in) != abort {
				t.Errorf("scope %b: %q doesn't leave at once", in, k)
			}
		}
	}
}

// The footer of each pane names four to eight keys, help and quit last.
func TestFooters(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		k := testLook(noColours, false, ascii)
		for _, in := range []scope{onDay, onBeam, onMoves, onTracks, onHolders, onSmall} {
			named := 0
			for _, b := range bindings {
				if b.where&in != 0 && b.word != "" {
					named++
				}
			}
			text := textOf(footer(k, newKeyTable(ascii), in, 80))
			if named < 4 || named > 8 || !strings.HasSuffix(strings.TrimSpace(text), "? help  q quit") {
				t.Errorf("scope %b: %d keys: %q", in, named, text)
			}
			if got := strings.TrimSpace(textOf(footer(k, newKeyTable(ascii), in, 15))); got != "? help  q quit" {
				t.Errorf("scope %b: what is left in 15 cells is %q", in, got)
			}
		}
	}
}

// textOf is a line without its sequences.
func textOf(l draw.Line) string {
	var b strings.Builder
	for _, s := range l.Spans {
		b.WriteString(s.Text)
	}
	return b.String()
}
