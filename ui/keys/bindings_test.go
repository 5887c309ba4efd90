package keys

import (
	"io"
	"strings"
	"testing"

	"bide/ui/draw"

	"github.com/charmbracelet/lipgloss"
)

// In each scope a key does one thing, and every key that does something is told in
// the help or in the footer.
func TestBindingsAreClear(t *testing.T) {
	for in := OnDay; in < Scopes; in <<= 1 {
		seen := map[string]string{}
		for _, b := range bindings {
			if b.Where&in == 0 {
				continue
			}
			for _, k := range b.Keys {
				if other, twice := seen[k]; twice {
					t.Errorf("scope %b: %q does two things: %q and %q", in, k, other, b.Does)
				}
				seen[k] = b.Does
			}
			if b.Act == None && b.Word == "" || b.Act != None && len(b.Keys) == 0 {
				t.Errorf("scope %b: %q has no use", in, b.Does)
			}
		}
		for _, k := range []string{"ctrl+c"} {
			if NewTable(false).ActionOf(k, in) != Abort {
				t.Errorf("scope %b: %q doesn't leave at once", in, k)
			}
		}
	}
}

// The footer of each pane names four to eight keys, help and quit last.
func TestFooters(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		k := draw.NewTheme(lipgloss.NewRenderer(io.Discard), false, ascii)
		for _, in := range []Scope{OnDay, OnBeam, OnMoves, OnDayMap, OnHolders, OnSmall} {
			named := 0
			for _, b := range bindings {
				if b.Where&in != 0 && b.Word != "" {
					named++
				}
			}
			text := Footer(k, NewTable(ascii), in, 80).Text()
			if named < 4 || named > 8 || !strings.HasSuffix(strings.TrimSpace(text), "? help  q quit") {
				t.Errorf("scope %b: %d keys: %q", in, named, text)
			}
			if got := strings.TrimSpace(Footer(k, NewTable(ascii), in, 15).Text()); got != "? help  q quit" {
				t.Errorf("scope %b: what is left in 15 cells is %q", in, got)
			}
		}
	}
}
