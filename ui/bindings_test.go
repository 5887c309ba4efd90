package ui

import (
	"strings"
	"testing"

	"bide/ui/draw"
	"bide/ui/keys"
)

// In each scope a key does one thing, and every key that does something is told in
// the help or in the footer.
func TestBindingsAreClear(t *testing.T) {
	for in := keys.OnDay; in < keys.Scopes; in <<= 1 {
		seen := map[string]string{}
		for _, b := range keys.Bindings {
			if b.Where&in == 0 {
				continue
			}
			for _, k := range b.Keys {
				if other, twice := seen[k]; twice {
					t.Errorf("scope %b: %q does two things: %q and %q", in, k, other, b.Does)
				}
				seen[k] = b.Does
			}
			if b.Act == keys.None && b.Word == "" || b.Act != keys.None && len(b.Keys) == 0 {
				t.Errorf("scope %b: %q has no use", in, b.Show)
			}
		}
		for _, k := range []string{"ctrl+c"} {
			if keys.NewTable(false).ActionOf(k, in) != keys.Abort {
				t.Errorf("scope %b: %q doesn't leave at once", in, k)
			}
		}
	}
}

// The footer of each pane names four to eight keys, help and quit last.
func TestFooters(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		k := testLook(noColours, false, ascii)
		for _, in := range []keys.Scope{keys.OnDay, keys.OnBeam, keys.OnMoves, keys.OnDayMap, keys.OnHolders, keys.OnSmall} {
			named := 0
			for _, b := range keys.Bindings {
				if b.Where&in != 0 && b.Word != "" {
					named++
				}
			}
			text := textOf(keys.Footer(k, keys.NewTable(ascii), in, 80))
			if named < 4 || named > 8 || !strings.HasSuffix(strings.TrimSpace(text), "? help  q quit") {
				t.Errorf("scope %b: %d keys: %q", in, named, text)
			}
			if got := strings.TrimSpace(textOf(keys.Footer(k, keys.NewTable(ascii), in, 15))); got != "? help  q quit" {
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
