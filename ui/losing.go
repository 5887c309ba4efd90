package ui

import (
	"bide/plan/words"
	"strings"
)

// loses reports whether leaving would lose something.
func (d *session) loses() bool { return d.journal.Busy() || len(d.losing()) > 0 }

// losing names what leaving would lose.
func (d *session) losing() (all []string) {
	told := d.journal.Owing()
	if told == "" && d.journal.Fault() != "" {
		told = "what was entered at the beam"
	}
	if told != "" {
		all = append(all, told)
	}
	switch {
	case !d.changed():
	case d.journal.Writes():
		all = append(all, "the changes to the day (Ctrl-S saves them)")
	default:
		all = append(all, "the changes to the day")
	}
	if text := d.viewer.unfinished(); text != "" {
		all = append(all, text)
	}
	switch {
	case d.search.Busy():
		all = append(all, "what the search has found so far")
	case d.offer != nil:
		all = append(all, "the order that a search found ("+d.viewer.keyOf(toCompare)+" shows it)")
	}
	return all
}

// question asks whether to quit, and says what would be lost, and why.
func (d *session) question() string {
	if d.journal.Busy() {
		return "The last entry is still being saved. Quit anyway?"
	}
	text, why := "Not saved: "+strings.Join(d.losing(), "; ")+". ", words.Join("; ", d.journal.Fault(), d.journal.Why())
	if d.changed() || d.journal.Fault() != "" || d.journal.Owing() != "" {
		text += capital(why)
	}
	return text + "Quit anyway?"
}

// capital is a text as a sentence before another; nothing stays nothing.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + ". "
}
