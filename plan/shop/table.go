package shop

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// table is one table of a file. Each getter takes a key's value if it is there and
// right, else a default; what is wrong is noted, so that all of it is told at once.
type table struct {
	doc   *document
	path  string // in the file, such as job[2]; empty for the top
	place string // for people, such as job 3 (D-103)
	keys  map[string]any
	used  map[string]bool // keys asked for
}

// get looks a key up.
func (t *table) get(key string) (value any, ok bool) {
	t.used[key] = true
	value, ok = t.keys[key]
	return value, ok
}

// has reports whether a key is written.
func (t *table) has(key string) bool {
	t.used[key] = true
	_, ok := t.keys[key]
	return ok
}

// refuse notes a problem with a key's value. The remedy, when empty, is an example
// of the key.
func (t *table) refuse(key, remedy, format string, args ...any) {
	if remedy == "" {
		remedy = "write it like " + t.example(key)
	}
	t.doc.problem(join(t.path, key), t.at(key), fmt.Sprintf(format, args...), remedy)
}

// at is the place of a key for people.
func (t *table) at(key string) string {
	if t.place == "" {
		return key
	}
	return t.place + ", " + key
}

// asks begins the remedy for a key that is missing.
func (d *document) asks() string {
	if d.typed != nil {
		return "write it like "
	}
	return "add a line like "
}

// need notes each of the keys that is missing.
func (t *table) need(keys ...string) {
	for _, key := range keys {
		if !t.has(key) {
			t.doc.problem(join(t.path, key), t.place, key+" is missing", t.doc.asks()+t.example(key))
		}
	}
}

// wrong notes that a key's value is of another kind than wanted.
func (t *table) wrong(key, want string, value any) {
	t.refuse(key, "", "%s is no %s", kindOf(value), want)
}

// sub is the table of that key; an empty one when it is missing.
func (t *table) sub(key string) *table {
	s := &table{doc: t.doc, path: join(t.path, key), place: "[" + key + "]", keys: map[string]any{}, used: map[string]bool{}}
	value, ok := t.get(key)
	if !ok {
		return s
	}
	keys, ok := value.(map[string]any)
	if !ok {
		t.wrong(key, "table", value)
		return s
	}
	s.keys = keys
	return s
}

// list is the elements of an array of tables.
func (t *table) list(key string) []*table {
	value, ok := t.get(key)
	if !ok {
		return nil
	}
	var elements []any
	switch v := value.(type) {
	case []map[string]any:
		for _, keys := range v {
			elements = append(elements, keys)
		}
	case []any:
		elements = v
	default:
		t.wrong(key, "list of tables", value)
	}
	var out []*table
	for i, element := range elements {
		keys, ok := element.(map[string]any)
		if !ok {
			t.refuse(key, "", "element %d is %s, no table", i+1, kindOf(element))
			continue
		}
		path := fmt.Sprintf("%s[%d]", join(t.path, key), i)
		out = append(out, &table{t.doc, path, fmt.Sprintf("%s %d", key, i+1), keys, map[string]bool{}})
	}
	return out
}

// done notes the keys that nothing asked for.
func (t *table) done() {
	known := slices.Sorted(maps.Keys(t.used))
	for _, key := range slices.Sorted(maps.Keys(t.keys)) {
		if t.used[key] {
			continue
		}
		remedy := "known here: " + strings.Join(known, ", ")
		if near := Nearest(key, known); near != "" {
			remedy = "did you mean " + near + "?"
		}
		t.doc.problem(join(t.path, key), t.place, "unknown key "+quoted(key), remedy)
	}
}

// example shows how a key of the table is written: in a file the whole line, in a
// form the value alone.
func (t *table) example(key string) string {
	if t.doc.typed != nil {
		return typedValue(t.line(key))
	}
	return t.line(key)
}

// line is an example of a key's line in a file.
func (t *table) line(key string) string {
	table, file := strings.Split(t.path, "[")[0], strings.TrimSuffix(t.doc.file, ".toml")
	for _, name := range []string{table, file} {
		if e, ok := t.doc.examples[name+"."+key]; ok {
			return e
		}
	}
	return t.doc.examples[key]
}

// typedValue is the value of an example's line as a person types it.
func typedValue(line string) string {
	_, value, _ := strings.Cut(line, "= ")
	return strings.NewReplacer(`"`, "", "[", "", "]", "").Replace(value)
}

// called adds a name to the place of an entry.
func (t *table) called(name string) {
	if name != "" {
		t.place += " (" + name + ")"
	}
}

// plainly is a number without an exponent, unless it is huge or tiny.
func plainly(x float64) string {
	format := byte('f')
	if size := math.Abs(x); size != 0 && (size < 1e-6 || size > 1e12) {
		format = 'g'
	}
	text := strconv.FormatFloat(x, format, -1, 64)
	return strings.ToLower(strings.TrimPrefix(text, "+")) // nan and inf as in TOML
}

// kindOf names a value of a TOML file in a message.
func kindOf(value any) string {
	switch v := value.(type) {
	case string:
		return quoted(v)
	case float64:
		return plainly(v)
	case bool, int64:
		return fmt.Sprint(v)
	case map[string]any:
		return "a table"
	case []any, []map[string]any:
		return "a list"
	}
	return "a date or time"
}
