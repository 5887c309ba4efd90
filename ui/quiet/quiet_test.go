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

// deps are a package and all that it imports, also indirectly.
func deps(t *testing.T, of string) []string {
	t.Helper()
	out, err := exec.Command("go", "list", "-deps", of).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return strings.Fields(string(out))
}

// This package comes before Bubble Tea in every program that has both: it needs
// nothing that Bubble Tea doesn't need too, its path sorts first, and whoever
// imports Bubble Tea here has it. (Go specification, Program initialization.)
func TestComesBeforeBubbleTea(t *testing.T) {
	if self >= asks {
		t.Errorf("%s sorts after %s", self, asks)
	}
	needed := deps(t, asks)
	for _, p := range deps(t, self) {
		if p != self && !slices.Contains(needed, p) {
			t.Errorf("%s needs %s, which Bubble Tea doesn't wait for", self, p)
		}
	}
	if screen := deps(t, "bide/ui"); !slices.Contains(screen, self) || !slices.Contains(screen, asks) {
		t.Errorf("bide/ui imports not both %s and %s", self, asks)
	}
	for _, p := range deps(t, "bide") {
		if needed := deps(t, p); strings.HasPrefix(p, "bide") && slices.Contains(needed, asks) && !slices.Contains(needed, self) {
			t.Errorf("%s imports %s without %s", p, asks, self)
		}
	}
}

func TestNothingIsAsked(t *testing.T) {
	if !lipgloss.HasDarkBackground() {
		t.Error("the background was asked for, or told otherwise")
	}
}
