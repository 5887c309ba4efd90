package ui

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"bide/plan"
	"bide/plan/shop"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// form takes what is found at the beam, field by field: where holders really stand,
// or what is wrong with one.
type form struct {
	title  string
	fields []field
	at     int                 // the field that is typed in
	places map[int]plan.Length // found so far, by holder; nil when trouble is told
	said   string              // why the last Enter did nothing
	offers bool                // the open field's text is only offered: what is typed takes its place
}

// field is one line of a form.
type field struct{ label, text, hint string }

// The fields of both forms, and of the one for trouble.
const (
	fieldHolder = iota
	fieldPlace
	fieldWhat
	fieldWhy
)

// newFoundForm tells where holders stand, first that of a move or any.
func newFoundForm(m *plan.Move) *form {
	f := &form{title: "A holder stands elsewhere", places: map[int]plan.Length{}, fields: []field{
		{"holder", "", "its number"}, {"stands at", "", "measured"},
	}}
	return f.about(m)
}

// newTroubleForm is about the holder of a move, or about any.
func newTroubleForm(m *plan.Move) *form {
	f := &form{title: "A holder has trouble", fields: []field{
		{"holder", "", "its number"}, {"stands at", "", "empty: where it is thought to stand"},
		{"trouble", "", "s stuck, a no air (can't cut), o out of service, g good again"}, {"why", "", "may stay empty"},
	}}
	return f.about(m)
}

// about offers the holder of a move as the one that is meant.
func (f *form) about(m *plan.Move) *form {
	if m != nil {
		f.fields[fieldHolder].text, f.offers = strconv.Itoa(m.Holder), true
	}
	return f
}

// longestField bounds what is typed into a field, in characters.
const longestField = 60

// Type takes keys as text for the open field.
func (w *walk) Type(msg tea.KeyMsg, m *model) bool {
	f := w.form
	if f == nil || w.ending != nil {
		return false
	}
	in := &f.fields[f.at]
	offered := f.offers
	switch {
	case msg.Type == tea.KeyRunes && !msg.Alt, msg.Type == tea.KeySpace:
		if offered {
			in.text = ""
		}
		text := []rune(in.text + strings.ReplaceAll(shop.Clean(string(msg.Runes)), "\n", " "))
		in.text = string(text[:min(len(text), longestField)])
	case msg.Type == tea.KeyBackspace:
		text := []rune(in.text)
		in.text = string(text[:max(len(text)-1, 0)])
	case msg.Type == tea.KeyCtrlU:
		in.text = ""
	default:
		return false
	}
	f.said, f.offers, m.news = "", false, news{}
	return true
}

// answer deals with the other keys of a form.
func (w *walk) answer(a keys.Action, m *model) tea.Cmd {
	f := w.form
	f.offers = false
	switch a {
	case keys.NextPane:
		f.at = (f.at + 1) % len(f.fields)
	case keys.LastPane:
		f.at = (f.at + len(f.fields) - 1) % len(f.fields)
	case keys.Back:
		w.form = nil
		m.say("nothing was changed")
	case keys.Accept:
		return w.accept(m)
	}
	return nil
}

// accept takes the field, or all of the form where that was the last.
func (w *walk) accept(m *model) tea.Cmd {
	f := w.form
	if f.places != nil && f.at == fieldHolder && f.fields[fieldHolder].text == "" && len(f.places) > 0 {
		return w.found(m)
	}
	if _, _, wrong := f.read(m.desk); wrong != "" && f.at != fieldWhy {
		f.said = wrong
		return nil
	}
	if f.at++; f.at < len(f.fields) {
		return nil
	}
	f.at = len(f.fields) - 1
	if f.places == nil {
		return w.marked(m)
	}
	number, _ := f.number(m.desk)
	at, _ := f.place(m.desk, number)
	f.places[number] = at
	f.fields[fieldHolder].text, f.fields[fieldPlace].text, f.at = "", "", fieldHolder
	return nil
}

// found takes the places found.
func (w *walk) found(m *model) tea.Cmd {
	f := w.form
	if faults := m.forecast.beam.Misplaced(f.standing(m.desk)); len(faults) > 0 {
		f.said = faults[0].Why(m.shop.Unit)
		return nil
	}
	what := fmt.Sprint(len(f.places)) // holders, or the one
	told := make([]string, 0, len(f.places))
	for _, n := range slices.Sorted(maps.Keys(f.places)) {
		told = append(told, fmt.Sprintf("%d at %s", n, m.shop.Unit.Show(f.places[n])))
		if len(f.places) == 1 {
			what = fmt.Sprint(n)
		}
	}
	return w.correct(m, f.places, nil, what+" found elsewhere", "found: "+strings.Join(told, ", "))
}

// marked takes the trouble told.
func (w *walk) marked(m *model) tea.Cmd {
	f := w.form
	for f.at = range f.fields { // the first that is wrong
		if _, _, wrong := f.read(m.desk); wrong != "" {
			f.said = wrong
			return nil
		}
	}
	number, _ := f.number(m.desk)
	at, _ := f.place(m.desk, number)
	places := map[int]plan.Length{number: at}
	mark := shop.Mark{Condition: troubles[f.letter()], Reason: strings.TrimSpace(f.fields[fieldWhy].text)}
	return w.correct(m, places, map[int]shop.Mark{number: mark}, fmt.Sprintf("%d marked %s", number, mark.Condition), fmt.Sprintf("holder %d is marked %s", number, mark.Condition))
}

// troubles are the conditions by the letters that tell them.
var troubles = map[string]plan.Condition{"s": plan.Stuck, "a": plan.NoCut, "o": plan.Out, "g": plan.Good}

// letter is the one that tells what is wrong.
func (f *form) letter() string {
	text := strings.ToLower(strings.TrimSpace(f.fields[fieldWhat].text))
	return text[:min(len(text), 1)]
}

// number reads the holder's number.
func (f *form) number(d *desk) (n int, wrong string) {
	text := strings.TrimSpace(f.fields[fieldHolder].text)
	most := len(d.truth.stands.At)
	n, err := strconv.Atoi(text)
	switch {
	case text == "":
		return 0, "type the holder's number"
	case err != nil || n < 1 || n > most:
		return 0, fmt.Sprintf("there is no holder %s: they are numbered 1 to %d", text, most)
	}
	return n, ""
}

// place reads where the holder stands; empty in the form for trouble is where it is
// thought to.
func (f *form) place(d *desk, number int) (at plan.Length, wrong string) {
	text := strings.TrimSpace(f.fields[fieldPlace].text)
	if text == "" && f.places == nil && number > 0 {
		return d.truth.stands.At[number-1], ""
	}
	if text == "" {
		return 0, "type where it stands, in " + d.shop.Unit.String() + " or with a unit: 412.5, 16-1/4, 16.25 in, 412 mm"
	}
	at, err := plan.ParseLength(text, d.shop.Unit)
	if err != nil {
		return 0, err.Error()
	}
	if rail := d.shop.Beam.Rail; at < rail.From || at > rail.To {
		u := d.shop.Unit
		return 0, fmt.Sprintf("%s is off the rail, which runs from %s to %s", u.Show(at), u.Show(rail.From), u.Show(rail.To))
	}
	return at, ""
}

// standing is what stands with what the form tells.
func (f *form) standing(d *desk) []plan.Length {
	at := slices.Clone(d.truth.stands.At)
	for n, x := range f.places {
		at[n-1] = x
	}
	if n, wrong := f.number(d); wrong == "" {
		if x, wrong := f.place(d, n); wrong == "" {
			at[n-1] = x
		}
	}
	return at
}

// read reads the open field: what there is to say about it, whether that is a
// warning, and what keeps it from being taken.
func (f *form) read(d *desk) (says string, warns bool, wrong string) {
	u := d.shop.Unit
	number, wrong := f.number(d)
	if f.at == fieldHolder {
		if wrong == "" {
			says = fmt.Sprintf("holder %d is thought to stand at %s", number, both(d.truth.stands.At[number-1], u))
		}
		return says, false, wrong
	}
	switch f.at {
	case fieldPlace:
		at, wrong := f.place(d, number)
		if wrong != "" || number == 0 {
			return "", false, wrong
		}
		if faults := d.forecast.beam.Misplaced(f.standing(d)); len(faults) > 0 {
			if why := faults[0].Why(u); f.places == nil {
				return "", false, why + "; if that is so, leave this (Esc) and tell first where the other one stands, with " + d.KeyFor(keys.Correct)
			} else {
				return why + "; if that is so, tell the other one too", true, ""
			}
		}
		way := at - d.truth.stands.At[number-1]
		if way == 0 {
			return both(at, u) + ", where it was thought to stand", false, ""
		}
		return fmt.Sprintf("%s, %s to the %s of where it was thought", both(at, u), u.Show(max(way, -way)), towards(way)), false, ""
	case fieldWhat:
		c, known := troubles[f.letter()]
		if !known {
			return "", false, "type s, a, o or g: " + f.fields[fieldWhat].hint
		}
		return c.String(), false, ""
	}
	return "", false, ""
}

// both is a length in both units, the shop's first.
func both(l plan.Length, u plan.Unit) string {
	return fmt.Sprintf("%s (%s)", u.Show(l), other(u).Show(l))
}
