package quiet

import (
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
)

const (
	self = "bide/ui/quiet"
	asks = "github.com/charmbracelet/bubbletea"
)

// deps are, for each package of the program, all that it imports, also indirectly.
func deps(t *testing.T) map[string][]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-deps", "-f", "{{.ImportPath}} {{join .Deps \" \"}}", "bide").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	all := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		names := strings.Fields(line)
		all[names[0]] = names[1:]
	}
	return all
}

// This package comes before Bubble Tea in every program that has both: it needs
// nothing that Bubble Tea doesn't need too, its path sorts first, and whoever
// imports Bubble Tea here has it. (Go specification, Program initialization.)
func TestComesBeforeBubbleTea(t *testing.T) {
	if self >= asks {
		t.Errorf("%s sorts after %s", self, asks)
	}
	all := deps(t)
	needed := all[asks]
	if len(needed) == 0 {
		t.Fatalf("the program has no %s", asks)
	}
	for _, p := range all[self] {
		if !slices.Contains(needed, p) {
			t.Errorf("%s needs %s, which Bubble Tea doesn't wait for", self, p)
		}
	}
	if screen := all["bide/ui"]; !slices.Contains(screen, self) || !slices.Contains(screen, asks) {
		t.Errorf("bide/ui imports not both %s and %s", self, asks)
	}
	for p, needed := range all {
		if strings.HasPrefix(p, "bide") && slices.Contains(needed, asks) && !slices.Contains(needed, self) {
			t.Errorf("%s imports %s without %s", p, asks, self)
		}
	}
}

func TestNothingIsAsked(t *testing.T) {
	if !lipgloss.HasDarkBackground() {
		t.Error("the background was asked for, or told otherwise")
	}
}
