package session

import (
	"bide/plan/session/workday"
	"bide/plan/words"
	"strings"
)

// Loses reports whether leaving would lose something.
func (d *Session) Loses() bool { return d.Journal.Busy() || len(d.losing()) > 0 }

// losing names what leaving would lose.
func (d *Session) losing() (all []string) {
	told := d.Journal.Owing()
	if told == "" && d.Journal.Fault() != "" {
		told = "what was entered at the beam"
	}
	if told != "" {
		all = append(all, told)
	}
	switch {
	case !d.Changed():
	case d.Journal.Writes():
		all = append(all, "the changes to the day (Ctrl-S saves them)")
	default:
		all = append(all, "the changes to the day")
	}
	if text := d.Viewer.Unfinished(); text != "" {
		all = append(all, text)
	}
	switch {
	case d.Search.Busy():
		all = append(all, "what the search has found so far")
	case d.Offer != nil:
		all = append(all, "the order that a search found ("+d.Viewer.KeyOf(workday.ToCompare)+" shows it)")
	}
	return all
}

// Question asks whether to quit, and says what would be lost, and why.
func (d *Session) Question() string {
	if d.Journal.Busy() {
		return "The last entry is still being saved. Quit anyway?"
	}
	text, why := "Not saved: "+strings.Join(d.losing(), "; ")+". ", words.Join("; ", d.Journal.Fault(), d.Journal.Why())
	if d.Changed() || d.Journal.Fault() != "" || d.Journal.Owing() != "" {
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
