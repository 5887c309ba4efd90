package toml

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"bide/plan/words"
)

// Table is one table of a file. Each getter takes a key's value if it is there and
// right, else a default; what is wrong is noted, so that all of it is reported at once.
type Table struct {
	Doc   *Document
	Path  string // in the file, such as job[2]; empty for the top
	Place string // for people, such as job 3 (D-103)
	Keys  map[string]any
	used  map[string]bool // keys asked for
}

// Get looks a key up.
func (t *Table) Get(key string) (value any, ok bool) {
	t.used[key] = true
	value, ok = t.Keys[key]
	return value, ok
}

// Has reports whether a key is written.
func (t *Table) Has(key string) bool {
	t.used[key] = true
	_, ok := t.Keys[key]
	return ok
}

// Refuse notes a problem with a key's value. The remedy, when empty, is an example
// of the key.
func (t *Table) Refuse(key, remedy, format string, args ...any) {
	if remedy == "" {
		remedy = "write it like " + t.Example(key)
	}
	t.Doc.Problem(Join(t.Path, key), t.at(key), fmt.Sprintf(format, args...), remedy)
}

// at is the place of a key for people.
func (t *Table) at(key string) string {
	if t.Place == "" {
		return key
	}
	return t.Place + ", " + key
}

// asks begins the remedy for a key that is missing.
func (d *Document) asks() string {
	if d.typed != nil {
		return "write it like "
	}
	return "add a line like "
}

// Need notes each of the keys that is missing.
func (t *Table) Need(keys ...string) {
	for _, key := range keys {
		if !t.Has(key) {
			t.Doc.Problem(Join(t.Path, key), t.Place, key+" is missing", t.Doc.asks()+t.Example(key))
		}
	}
}

// Wrong notes that a key's value is of another kind than wanted.
func (t *Table) Wrong(key, want string, value any) {
	t.Refuse(key, "", "%s is no %s", KindOf(value), want)
}

// Sub is the table of that key; an empty one when it is missing.
func (t *Table) Sub(key string) *Table {
	s := &Table{Doc: t.Doc, Path: Join(t.Path, key), Place: "[" + key + "]", Keys: map[string]any{}, used: map[string]bool{}}
	value, ok := t.Get(key)
	if !ok {
		return s
	}
	keys, ok := value.(map[string]any)
	if !ok {
		t.Wrong(key, "table", value)
		return s
	}
	s.Keys = keys
	return s
}

// List is the elements of an array of tables.
func (t *Table) List(key string) []*Table {
	value, ok := t.Get(key)
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
		t.Wrong(key, "list of tables", value)
	}
	var out []*Table
	for i, element := range elements {
		keys, ok := element.(map[string]any)
		if !ok {
			t.Refuse(key, "", "element %d is %s, no table", i+1, KindOf(element))
			continue
		}
		path := fmt.Sprintf("%s[%d]", Join(t.Path, key), i)
		out = append(out, &Table{t.Doc, path, fmt.Sprintf("%s %d", key, i+1), keys, map[string]bool{}})
	}
	return out
}

// Done notes the keys that nothing asked for.
func (t *Table) Done() {
	known := slices.Sorted(maps.Keys(t.used))
	for _, key := range slices.Sorted(maps.Keys(t.Keys)) {
		if t.used[key] {
			continue
		}
		remedy := "known here: " + strings.Join(known, ", ")
		if near := words.Nearest(key, known); near != "" {
			remedy = "did you mean " + near + "?"
		}
		t.Doc.Problem(Join(t.Path, key), t.Place, "unknown key "+words.Quoted(key), remedy)
	}
}

// Example shows how a key of the table is written: in a file the whole line, in a
// form the value alone.
func (t *Table) Example(key string) string {
	if t.Doc.typed != nil {
		return typedValue(t.line(key))
	}
	return t.line(key)
}

// line is an example of a key's line in a file.
func (t *Table) line(key string) string {
	table, file := strings.Split(t.Path, "[")[0], strings.TrimSuffix(t.Doc.File, ".toml")
	for _, name := range []string{table, file} {
		if e, ok := t.Doc.examples[name+"."+key]; ok {
			return e
		}
	}
	return t.Doc.examples[key]
}

// typedValue is the value of an example's line as a person types it.
func typedValue(line string) string {
	_, value, _ := strings.Cut(line, "= ")
	return strings.NewReplacer(`"`, "", "[", "", "]", "").Replace(value)
}

// Called adds a name to the place of an entry.
func (t *Table) Called(name string) {
	if name != "" {
		t.Place += " (" + name + ")"
	}
}

// Plainly is a number without an exponent, unless it is huge or tiny.
func Plainly(x float64) string {
	format := byte('f')
	if size := math.Abs(x); size != 0 && (size < 1e-6 || size > 1e12) {
		format = 'g'
	}
	text := strconv.FormatFloat(x, format, -1, 64)
	return strings.ToLower(strings.TrimPrefix(text, "+")) // nan and inf as in TOML
}

// KindOf names a value of a TOML file in a message.
func KindOf(value any) string {
	switch v := value.(type) {
	case string:
		return words.Quoted(v)
	case float64:
		return Plainly(v)
	case bool, int64:
		return fmt.Sprint(v)
	case map[string]any:
		return "a table"
	case []any, []map[string]any:
		return "a list"
	}
	return "a date or time"
}
