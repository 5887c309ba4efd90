package toml

import (
	"fmt"
	"strings"
)

// Usual is a key that may be left out and what is then taken for it.
type Usual struct{ Key, Value string }

// Granted notes which keys of the table aren't written, with what is taken for
// each. Only keys that change a plan's numbers are worth it.
func (t *Table) Granted(all ...Usual) {
	var taken []string
	for _, u := range all {
		if !t.Has(u.Key) {
			taken = append(taken, u.Key+" "+u.Value)
		}
	}
	if len(taken) > 0 {
		t.Doc.Notes = append(t.Doc.Notes, fmt.Sprintf("%s, %s: not given, assumed: %s", t.Doc.File, t.Place, strings.Join(taken, ", ")))
	}
}

// Note notes what is odd at a key of the table.
func (t *Table) Note(key, format string, args ...any) {
	t.Doc.Notes = append(t.Doc.Notes, t.Doc.File+", "+t.at(key)+": "+fmt.Sprintf(format, args...))
}
