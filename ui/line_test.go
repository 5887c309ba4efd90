package ui

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
	unicodes, ascii := testLook(noColours, false, false), testLook(noColours, false, true)
	f.Fuzz(func(t *testing.T, text string, w int) {
		w = ((w % 300) + 300) % 300
		for _, k := range []*look{unicodes, ascii} {
			l := k.line()
			l.add(plain, text)
			l.add(plain, " ")
			l.left(moved, text, w)
			l.add(plain, " ")
			l.right(moved, text, w)
			for _, n := range []int{0, 1, w, l.width} {
				fitted := l.fit(n)
				out := textOf(fitted)
				if cells(out) != n || fitted.width != n {
					t.Fatalf("%q in %d cells takes %d, counted as %d", out, n, cells(out), fitted.width)
				}
				if i := strings.IndexFunc(out, func(r rune) bool {
					return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || k.ascii && r > '~'
				}); i >= 0 {
					t.Fatalf("%q holds %q", out, out[i:])
				}
			}
			for _, row := range k.wrap(text, max(w, 2)) {
				if cells(row) > max(w, 2) {
					t.Fatalf("%q is wider than %d", row, w)
				}
			}
		}
	})
}

func TestShort(t *testing.T) {
	unicodes, ascii := testLook(noColours, false, false), testLook(noColours, false, true)
	for _, c := range []struct {
		k    *look
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
		if got := c.k.short(c.text, c.w); got != c.want {
			t.Errorf("%q in %d cells is %q, want %q", c.text, c.w, got, c.want)
		}
	}
}
