package words

import (
	"testing"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	tests := map[string]string{
		"Crepe paper, 25 µm": "Crepe paper, 25 µm",
		"Größe 12″":          "Größe 12″",
		"\x1b[2J":            "?[2J",   // C0: clears a screen
		"a\tb\nc\x00":        "a?b?c?", // C0
		"\x7f":               "?",      // DEL
		"\u009b31m":          "?31m",   // C1: starts a sequence in one character
		"a\u202eb\u2066c":    "a?b?c",  // bidirectional controls
		"a\u2028b\u2029c":    "a?b?c",  // line and paragraph separators
		"a\xffb":             "a?b",    // no UTF-8
		"\ufeffa":            "?a",     // byte-order mark
		"\ufffd":             "?",      // what others put for broken text
	}
	for text, want := range tests {
		if got := Clean(text); got != want {
			t.Errorf("Clean(%q) = %q, want %q", text, got, want)
		}
	}
}

func FuzzClean(f *testing.F) {
	f.Add("a\x1b[2J\xff\u202e")
	f.Fuzz(func(t *testing.T, text string) {
		got := Clean(text)
		if !utf8.ValidString(got) || Clean(got) != got {
			t.Errorf("Clean(%q) = %q", text, got)
		}
		for _, r := range got {
			if r < ' ' || r >= 0x7f && r < 0xa0 {
				t.Errorf("Clean(%q) keeps %U", text, r)
			}
		}
	})
}

func TestNearest(t *testing.T) {
	keys := []string{"holders", "holder_width", "clearance", "rail", "web"}
	for word, want := range map[string]string{
		"holder_widht": "holder_width", "holder": "holders", "clearence": "clearance", "wb": "web", "x": "", "temperature": "", "": "",
	} {
		if got := Nearest(word, keys); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
}

// TestEditDistance: the classic pair (Levenshtein; from memory) and edges.
func TestEditDistance(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"abc", "", 3}, {"abc", "abc", 0}, {"ab", "ba", 2}} {
		if got := editDistance([]rune(test.a), []rune(test.b)); got != test.want {
			t.Errorf("from %q to %q: %d, want %d", test.a, test.b, got, test.want)
		}
	}
}
