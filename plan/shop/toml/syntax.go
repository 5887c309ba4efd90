package toml

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"bide/plan/words"

	parser "github.com/BurntSushi/toml"
)

// syntax notes why a text can't be parsed: wrongly encoded, or what the parser
// says. Of a line that ends too early the parser gives the next one; the start of
// what it read is on the right one.
func (d *Document) syntax(text string, err error) {
	p := Problem{File: d.File, What: words.Clean(err.Error()), Remedy: "correct this line: key = value, text in quotes, lists as [a, b]"}
	var at parser.ParseError
	if errors.As(err, &at) {
		start := max(0, min(at.Position.Start, len(text)))
		p.Line = min(at.Position.Line, 1+strings.Count(text[:start], "\n"))
		p.What, p.Remedy = parserWords(at.Message, p.Remedy)
	}
	p = p.encoded(text)
	if len(p.What) > 200 {
		p.What = words.Clean(p.What[:200]) + "..."
	}
	d.Failed++
	*d.problems = append(*d.problems, p)
}

// encoded is the problem, or where the text is wrongly encoded that in its place: nothing
// else about it is worth saying then.
func (p Problem) encoded(text string) Problem {
	if i, what := wrongByte(text); i >= 0 {
		p.Line, p.What, p.Remedy = 1+strings.Count(text[:i], "\n"), what, "save it as UTF-8"
	}
	return p
}

var (
	doubled = regexp.MustCompile(`(?s)^Key '(.*)' has already been defined`)
	both    = regexp.MustCompile(`(?s)^Key '(.*)' was already created and cannot be used as an array`)
)

// parserWords turns a message of the parser into ours where one can be mended in a
// way of its own.
func parserWords(message, otherwise string) (what, remedy string) {
	if m := doubled.FindStringSubmatch(message); m != nil {
		return words.Quoted(m[1]) + " is there already", "remove one of them"
	}
	if m := both.FindStringSubmatch(message); m != nil {
		return words.Quoted(m[1]) + " is there already, and no list of tables", "write it in single brackets, or each of them in double ones"
	}
	return words.Clean(message), otherwise
}

// wrongByte is where a text stops being UTF-8, and how; -1 when it is all UTF-8.
func wrongByte(text string) (at int, what string) {
	if i := strings.IndexByte(text, 0); i >= 0 {
		return i, "the file holds NUL bytes, as text in UTF-16 does"
	}
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		if r == utf8.RuneError && size == 1 {
			return i, fmt.Sprintf("the byte 0x%02x is no UTF-8; the file may be in Latin-1 or another old encoding", text[i])
		}
		i += size
	}
	return -1, ""
}
