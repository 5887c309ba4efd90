package words

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Clean makes text from a file safe to print: each control character (C0, DEL,
// C1), line or paragraph separator, bidirectional control, byte-order mark, code point
// that is no letter and byte that isn't UTF-8 becomes a question mark. A terminal would obey some of
// them (CWE-150), and some hide or reorder what a person reads.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		if Harmful(r) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(text, "?"))
}

// Harmful reports whether a letter is one of those that Clean replaces.
func Harmful(r rune) bool {
	return unicode.In(r, unicode.Cc, unicode.Zl, unicode.Zp, unicode.Bidi_Control, unicode.Noncharacter_Code_Point) ||
		r == '\ufeff' || r == utf8.RuneError
}

// Quoted shows text from a file in a message: clean, and cut when it is long.
func Quoted(text string) string {
	const most = 40
	text = Clean(text)
	if runes := []rune(text); len(runes) > most {
		text = string(runes[:most]) + "..."
	}
	return strconv.Quote(text)
}
