package toml

import "strings"

// Statement is one header or one pair of a TOML text, by byte offsets. It takes
// whole lines: what stands between two statements is blank lines and comments.
type Statement struct {
	Header   bool
	Path     string // of a header, such as job[2]
	Key      string // of a pair; of a dotted one the parts with points
	Line     int    // start of its first line
	Start    int    // of the key, behind an indent
	Equals   int    // the = of a pair
	Value    int    // start of a pair's value
	ValueEnd int
	End      int // start of the next line
}

// StatementsOf lists the statements of a text in order, in one pass. On a wrong
// text they are wrong too, but still in order and apart.
func StatementsOf(text string) []Statement {
	s := scanner{text: text, line: 1, counts: map[string]int{}}
	s.lines = map[string]int{}
	var out []Statement
	for s.skipBlank(); s.pos < len(s.text); s.skipBlank() {
		st := Statement{Start: s.pos, Line: 1 + strings.LastIndexByte(text[:s.pos], '\n')}
		if s.text[s.pos] == '[' {
			s.header()
			st.Header, st.Path = true, s.table
		} else {
			s.statement(&st)
		}
		st.End = s.pos
		out = append(out, st)
	}
	return out
}

// statement reads a pair, which may be no pair at all in a wrong text.
func (s *scanner) statement(st *Statement) {
	st.Key = strings.Join(s.key(), ".")
	st.Equals, st.Value, st.ValueEnd = s.pos, s.pos, s.pos
	if s.pos >= len(s.text) || s.text[s.pos] != '=' {
		s.skipLine()
		return
	}
	s.pos++
	s.skip(" \t")
	st.Value = s.pos
	s.value()
	st.ValueEnd = st.Value + len(bare(s.text[st.Value:s.pos]))
}

// bare is a value without the comment and the blanks behind it.
func bare(value string) string {
	end, _ := ReadBare(value)
	return strings.TrimRight(value[:end], " \t\r\n")
}

// ReadBare finds where a value ends, and the comments inside it: a list may take
// many lines.
func ReadBare(value string) (end int, comments []string) {
	s := scanner{text: value}
	for depth := 0; s.pos < len(value); {
		switch value[s.pos] {
		case '"', '\'':
			s.str()
			continue
		case '#':
			if depth <= 0 {
				return s.pos, comments
			}
			from := s.pos
			s.until("\n")
			comments = append(comments, strings.TrimRight(value[from:s.pos], " \t\r"))
			continue
		case '[', '{':
			depth++
		case ']', '}':
			depth--
		}
		s.pos++
	}
	return len(value), comments
}
