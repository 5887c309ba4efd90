package shop

import (
	"fmt"
	"strings"
)

// usual is a key that may be left out and what is then taken for it.
type usual struct{ key, value string }

// granted notes which keys of the table aren't written, with what is taken for
// each. Only keys that change a plan's numbers are worth it.
func (t *table) granted(all ...usual) {
	var taken []string
	for _, u := range all {
		if !t.has(u.key) {
			taken = append(taken, u.key+" "+u.value)
		}
	}
	if len(taken) > 0 {
		t.doc.notes = append(t.doc.notes, fmt.Sprintf("%s, %s: taken, since not written: %s", t.doc.file, t.place, strings.Join(taken, ", ")))
	}
}

// note notes what is odd at a key of the table.
func (t *table) note(key, format string, args ...any) {
	t.doc.notes = append(t.doc.notes, t.doc.file+", "+t.at(key)+": "+fmt.Sprintf(format, args...))
}
