package shop

import "strings"

// statement is one header or one pair of a TOML text, by byte offsets. It takes
// whole lines: what stands between two statements is blank lines and comments.
type statement struct {
	header   bool
	path     string // of a header, such as job[2]
	key      string // of a pair; of a dotted one the parts with points
	line     int    // start of its first line
	start    int    // of the key, behind an indent
	equals   int    // the = of a pair
	value    int    // start of a pair's value
	valueEnd int
	end      int // start of the next line
}

// statementsOf lists the statements of a text in order, in one pass. On a wrong
// text they are wrong too, but still in order and apart.
func statementsOf(text string) []statement {
	s := scanner{text: text, line: 1, counts: map[string]int{}}
	s.lines = map[string]int{}
	var out []statement
	for s.skipBlank(); s.pos < len(s.text); s.skipBlank() {
		st := statement{start: s.pos, line: 1 + strings.LastIndexByte(text[:s.pos], '\n')}
		if s.text[s.pos] == '[' {
			s.header()
			st.header, st.path = true, s.table
		} else {
			s.statement(&st)
		}
		st.end = s.pos
		out = append(out, st)
	}
	return out
}

// statement reads a pair, which may be no pair at all in a wrong text.
func (s *scanner) statement(st *statement) {
	st.key = strings.Join(s.key(), ".")
	st.equals, st.value, st.valueEnd = s.pos, s.pos, s.pos
	if s.pos >= len(s.text) || s.text[s.pos] != '=' {
		s.skipLine()
		return
	}
	s.pos++
	s.skip(" \t")
	st.value = s.pos
	s.value()
	st.valueEnd = st.value + len(bare(s.text[st.value:s.pos]))
}

// bare is a value without the comment and the blanks behind it.
func bare(value string) string {
	end, _ := readBare(value)
	return strings.TrimRight(value[:end], " \t\r\n")
}

// readBare finds where a value ends, and the comments inside it: a list may take
// many lines.
func readBare(value string) (end int, comments []string) {
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
