package toml

import (
	"strconv"
	"strings"
)

// outline is what a TOML text looks like before it is parsed: where its keys
// stand, and how deeply its values nest.
type outline struct {
	lines       map[string]int // by path, such as job[0].slits, counted from 1
	deepest     int            // brackets in brackets and parts of dotted keys
	deepestLine int
}

// outlineOf reads a TOML text in one pass without recursion. On a text that is
// correct it is exact; where the text is wrong, the parser says so.
func outlineOf(text string) outline {
	s := scanner{text: text, line: 1, counts: map[string]int{}}
	s.lines = map[string]int{}
	for s.skipBlank(); s.pos < len(s.text); s.skipBlank() {
		if s.text[s.pos] == '[' {
			s.header()
		} else {
			s.pair()
		}
	}
	return s.outline
}

// scanner walks over a TOML text.
type scanner struct {
	outline
	text   string
	pos    int
	line   int
	table  string         // path of the table that the pairs belong to
	counts map[string]int // elements of each array of tables so far
}

// skipBlank goes to the next header or pair.
func (s *scanner) skipBlank() {
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case '\n', '#':
			s.skipLine()
		case ' ', '\t', '\r':
			s.pos++
		default:
			return
		}
	}
}

// skipLine goes to the start of the next line.
func (s *scanner) skipLine() {
	end := strings.IndexByte(s.text[s.pos:], '\n')
	if end < 0 {
		s.pos = len(s.text)
		return
	}
	s.pos += end + 1
	s.line++
}

// header reads [table] or [[table]].
func (s *scanner) header() {
	array := strings.HasPrefix(s.text[s.pos:], "[[")
	s.pos++
	if array {
		s.pos++
	}
	path := ""
	parts := s.key()
	for i, part := range parts {
		path = Join(path, part)
		if array && i == len(parts)-1 {
			s.counts[path]++
		}
		if n := s.counts[path]; n > 0 {
			path += "[" + strconv.Itoa(n-1) + "]"
		}
	}
	s.table = path
	s.note(path)
	s.skipLine()
}

// pair reads key = value.
func (s *scanner) pair() {
	parts := s.key()
	if s.pos >= len(s.text) || s.text[s.pos] != '=' {
		s.skipLine()
		return
	}
	path := s.table
	for _, part := range parts {
		path = Join(path, part)
	}
	s.note(path)
	s.pos++
	s.value()
}

// note keeps the line of a path where it is met first.
func (s *scanner) note(path string) {
	if _, ok := s.lines[path]; !ok {
		s.lines[path] = s.line
	}
}

// deep keeps the deepest nesting seen.
func (s *scanner) deep(depth int) {
	if depth > s.deepest {
		s.deepest, s.deepestLine = depth, s.line
	}
}

// key reads a key with its dotted parts, up to what follows. Of a key too deep to
// be parsed it keeps the first parts.
func (s *scanner) key() (parts []string) {
	for n := 1; ; n++ {
		s.skip(" \t")
		start := s.pos
		if s.pos < len(s.text) && (s.text[s.pos] == '"' || s.text[s.pos] == '\'') {
			s.str()
		} else {
			s.until(" \t\r\n.=[]#\"'")
		}
		if n <= deepestNesting {
			parts = append(parts, strings.Trim(s.text[start:s.pos], `"'`))
		}
		s.deep(n)
		s.skip(" \t")
		if s.pos >= len(s.text) || s.text[s.pos] != '.' {
			return parts
		}
		s.pos++
	}
}

// skip goes past any of the bytes given.
func (s *scanner) skip(bytes string) {
	for s.pos < len(s.text) && strings.IndexByte(bytes, s.text[s.pos]) >= 0 {
		s.pos++
	}
}

// until goes to the first of the bytes given.
func (s *scanner) until(bytes string) {
	for s.pos < len(s.text) && strings.IndexByte(bytes, s.text[s.pos]) < 0 {
		s.pos++
	}
}

// value goes past a value, to the start of the line after it. Dots count too: an
// inline table may hold dotted keys.
func (s *scanner) value() {
	depth, dots := 0, 0
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case '"', '\'':
			s.str()
			continue
		case '#':
			s.until("\n")
			continue
		case '\n':
			s.line++
			if depth <= 0 {
				s.pos++
				return
			}
		case '[', '{':
			depth, dots = depth+1, 0
		case ']', '}':
			depth--
		case ',', '=':
			dots = 0
		case '.':
			dots++
		}
		s.deep(depth + dots)
		s.pos++
	}
}

// str goes past a string, of one line or of many.
func (s *scanner) str() {
	quote := s.text[s.pos : s.pos+1]
	mark := strings.Repeat(quote, 3)
	if !strings.HasPrefix(s.text[s.pos:], mark) {
		mark = quote
	}
	s.pos += len(mark)
	for s.pos < len(s.text) && !strings.HasPrefix(s.text[s.pos:], mark) {
		switch {
		case s.text[s.pos] == '\n' && mark == quote:
			return // never closed: the parser says so
		case s.text[s.pos] == '\n':
			s.line++
		case s.text[s.pos] == '\\' && quote == `"` && !strings.HasPrefix(s.text[s.pos:], "\\\n"):
			s.pos++
		}
		s.pos++
	}
	s.pos = min(s.pos+len(mark), len(s.text))
	if len(mark) == 3 {
		s.skip(quote) // up to two quotes may belong to the string's end
	}
}

// Join is the path of a key in a table.
func Join(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}
