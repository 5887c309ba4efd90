package help

import (
	"io"
	"strings"
	"testing"

	"bide/ui/draw"
	"bide/ui/keys"

	"github.com/charmbracelet/lipgloss"
)

// theme draws without colours, and with nothing but ASCII.
func theme() *draw.Theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(3)
	return draw.NewTheme(r, false, true)
}

// On a narrow screen too there is a blank between a key and what it does.
func TestHelpPartsKeysFromWords(t *testing.T) {
	p := &Page{Theme: theme(), Table: keys.NewTable(true)}
	for _, key := range []string{"a", "ab", "abc"} {
		if got := p.entry(key, "the words", 40)[0].Text(); !strings.Contains(got, key+" ") {
			t.Errorf("%q", got)
		}
	}
}

// Every mark that ASCII threads are drawn with is in the help.
func TestASCIIMarksAreShown(t *testing.T) {
	var shown strings.Builder
	for _, m := range marks(theme()) {
		shown.WriteString(m[0])
	}
	for _, s := range draw.Strokes {
		for _, r := range s {
			if r != ' ' && !strings.ContainsRune(shown.String(), r) {
				t.Errorf("the help doesn't show %q", r)
			}
		}
	}
}

// Every key of the table is in the help, once in the chapter of each place where it works;
// every line fits the screen.
func TestHelpHasAllKeys(t *testing.T) {
	table := keys.NewTable(true)
	p := &Page{Theme: theme(), Table: table, Notes: func() []string { return []string{"a web is taken to be 1450 mm"} }}
	for _, w := range []int{20, 49, 50, 80, 120} {
		var all []string
		for _, l := range p.lines(w) {
			if l.Width > w {
				t.Errorf("%d wide: %q is cut", w, l.Text())
			}
			all = append(all, strings.Fields(l.Text())...)
		}
		text := strings.Join(all, " ")
		for _, b := range table.All {
			if does := strings.Join(strings.Fields(theme().Safe(b.Does)), " "); !strings.Contains(text, does) {
				t.Errorf("%d wide: no %q", w, b.Does)
			}
		}
		if !strings.Contains(text, "a web is taken to be 1450 mm") {
			t.Errorf("%d wide: what was taken for granted isn't there", w)
		}
	}
}
