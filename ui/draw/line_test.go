package draw

import (
	"strings"
	"testing"
	"unicode"
)

// Whatever a text holds, nothing of it is obeyed by a terminal, and in ASCII
// nothing else is left.
func FuzzSafe(f *testing.F) {
	for _, text := range []string{"", "plain", "\x1b[2J", "a\tb\nc", "\u202eabc", "東京", "e\u0301", "\xff\xfe", "\u009b31m", "\u2028"} {
		f.Add(text, 7)
	}
	unicodes, ascii := bareLook(false), bareLook(true)
	f.Fuzz(func(t *testing.T, text string, w int) {
		w = ((w % 300) + 300) % 300
		for _, k := range []*Theme{unicodes, ascii} {
			l := k.Line()
			l.Add(Plain, text)
			l.Add(Plain, " ")
			l.Left(Moved, text, w)
			l.Add(Plain, " ")
			l.Right(Moved, text, w)
			for _, n := range []int{0, 1, w, l.Width} {
				fitted := l.Fit(n)
				out := fitted.Text()
				if CellWidth(out) != n || fitted.Width != n {
					t.Fatalf("%q in %d cells takes %d, counted as %d", out, n, CellWidth(out), fitted.Width)
				}
				if i := strings.IndexFunc(out, func(r rune) bool {
					return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || k.ASCII && r > '~'
				}); i >= 0 {
					t.Fatalf("%q holds %q", out, out[i:])
				}
			}
			for _, row := range k.Wrap(text, max(w, 2)) {
				if CellWidth(row) > max(w, 2) {
					t.Fatalf("%q is wider than %d", row, w)
				}
			}
		}
	})
}

func TestShort(t *testing.T) {
	unicodes, ascii := bareLook(false), bareLook(true)
	for _, c := range []struct {
		k    *Theme
		text string
		w    int
		want string
	}{
		{unicodes, "holder", 6, "holder"},
		{unicodes, "holder", 5, "hold…"},
		{ascii, "holder", 5, "hol.."},
		{ascii, "holder", 1, "h"},
		{unicodes, "東京都", 5, "東京…"},
		{unicodes, "東京都", 4, "東…"},
		{unicodes, "x", 0, ""},
	} {
		if got := c.k.Short(c.text, c.w); got != c.want {
			t.Errorf("%q in %d cells is %q, want %q", c.text, c.w, got, c.want)
		}
	}
}

// A number is never shown in part: a part of it would be read as another one.
func TestNumbersAreWhole(t *testing.T) {
	k := bareLook(false)
	l := k.Line()
	l.Add(Plain, "to 1397.5 by -182.3 mm")
	for w, want := range map[int]string{7: "to …   ", 8: "to …    ", 9: "to 1397.5", 14: "to 1397.5 by …", 21: "to 1397.5 by -182.3 …", 19: "to 1397.5 by -182.3"} {
		if got := l.Fit(w).Text(); got != want {
			t.Errorf("in %d cells %q, want %q", w, got, want)
		}
	}
	r := k.Line()
	if r.Right(Plain, "-182.3", 5); r.Text() != "    …" {
		t.Errorf("too long for its column it is %q", r.Text())
	}
	if got := k.Short("web 610.2362 in", 9); got != "web …" {
		t.Errorf("cut short it is %q", got)
	}
	columns := ColumnsFor([]Column[int]{{Width: 6}, {Width: 6, Rank: 1}, {Width: 6, Rank: 1}}, 15)
	if len(columns) != 2 {
		t.Errorf("%d columns of 6 in 15 cells, want 2", len(columns))
	}
}
