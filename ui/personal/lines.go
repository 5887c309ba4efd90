package personal

import "strings"

// lines says on which line of a text each key is first set, by its path. It knows
// what such files hold: one key a line, tables in brackets. What it doesn't find has
// line 0.
type lines map[string]int

func linesOf(text string) lines {
	out, path := lines{}, ""
	for i, row := range strings.Split(text, "\n") {
		row = strings.TrimSpace(row)
		if name, ok := strings.CutPrefix(row, "["); ok {
			name, _, _ = strings.Cut(name, "]")
			path = unquoted(name) + "."
			out.set(strings.TrimSuffix(path, "."), i+1)
			continue
		}
		if key, _, ok := strings.Cut(row, "="); ok && !strings.HasPrefix(row, "#") {
			out.set(path+unquoted(key), i+1)
		}
	}
	return out
}

// set keeps the first line of a key.
func (l lines) set(path string, line int) {
	if l[path] == 0 {
		l[path] = line
	}
}

// unquoted is a key without blanks and quotes around it.
func unquoted(key string) string { return strings.Trim(strings.TrimSpace(key), `"'`) }
