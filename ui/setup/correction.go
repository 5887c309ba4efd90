package setup

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/form"
	"bide/ui/keys"
	"bide/ui/pane"

	tea "github.com/charmbracelet/bubbletea"
)

// correction takes what is found at the beam, field by field: where holders really are,
// or what is wrong with one.
type correction struct {
	form.Form
	title  string
	places map[int]plan.Length // found so far, by holder; nil in the form for a fault
	said   string              // why the last Enter did nothing
}

// The fields of both forms, and of the one for a fault.
const (
	FieldHolder = iota
	FieldPlace
	fieldWhat
	fieldWhy
)

// newPositionForm corrects where holders are, first that of a move or any.
func newPositionForm(m *plan.Move) *correction {
	f := &correction{title: "Correct a position", places: map[int]plan.Length{}}
	return f.with("holder", "its number", "is at", "as measured").about(m)
}

// newFaultForm is about the holder of a move, or about any.
func newFaultForm(m *plan.Move) *correction {
	f := &correction{title: "A holder has a fault"}
	return f.with("holder", "its number", "is at", "empty: where the screen shows it",
		"fault", "s stuck, n no cut, o out of service, g good", "why", "optional").about(m)
}

// with gives the form fields: the label and the hint of each.
func (f *correction) with(texts ...string) *correction {
	for i := 0; i < len(texts); i += 2 {
		in := form.New(texts[i], "", longestField)
		in.Label, in.Hint = texts[i], texts[i+1]
		f.Fields = append(f.Fields, in)
	}
	return f
}

// about proposes the holder of a move as the one that is meant.
func (f *correction) about(m *plan.Move) *correction {
	if m != nil {
		in := &f.Fields[FieldHolder]
		in.Set(strconv.Itoa(m.Holder))
		in.Proposed = true
	}
	return f
}

// text is what a field has, without blanks around it.
func (f *correction) text(field int) string { return strings.TrimSpace(f.Fields[field].Value()) }

// longestField bounds what is typed into a field, in characters.
const longestField = 60

// Type takes keys as text for the open field.
func (w *Page) Type(msg tea.KeyMsg, d *pane.Shared) bool {
	f := w.Form
	if f == nil || w.Ending != nil {
		return false
	}
	taken, whole := f.Open().Type(msg)
	if taken {
		f.said, d.Notice = "", workday.Notice{}
	}
	if !whole {
		f.said = fmt.Sprintf("a field has room for %d characters: the rest is left out", longestField)
	}
	return taken
}

// answer deals with the other keys of a form.
func (w *Page) answer(a keys.Action, d *pane.Shared) {
	f := w.Form
	switch a {
	case keys.NextPane:
		f.Go(f.At + 1)
	case keys.LastPane:
		f.Go(f.At - 1)
	case keys.Back:
		w.Form = nil
		d.Say("nothing was changed")
	case keys.Accept:
		w.accept(d)
	}
}

// accept takes the field, or all of the form where that was the last.
func (w *Page) accept(d *pane.Shared) {
	f := w.Form
	if f.places != nil && f.At == FieldHolder && f.text(FieldHolder) == "" && len(f.places) > 0 {
		w.found(d)
		return
	}
	if _, _, wrong := f.read(d); wrong != "" && f.At != fieldWhy {
		f.said = wrong
		return
	}
	if f.At+1 < len(f.Fields) {
		f.Go(f.At + 1)
		return
	}
	if f.places == nil {
		w.marked(d)
		return
	}
	number, _ := f.number(d)
	at, _ := f.place(d, number)
	f.places[number] = at
	f.Fields[FieldHolder].Set("")
	f.Fields[FieldPlace].Set("")
	f.Go(FieldHolder)
}

// found takes the corrected positions.
func (w *Page) found(d *pane.Shared) {
	f := w.Form
	if faults := changeover.Misplaced(d.Forecast.Beam, f.positions(d)); len(faults) > 0 {
		f.said = faults[0].Why(d.Shop.Unit)
		return
	}
	what := fmt.Sprint(len(f.places)) // holders, or the one
	reported := make([]string, 0, len(f.places))
	for _, n := range slices.Sorted(maps.Keys(f.places)) {
		reported = append(reported, fmt.Sprintf("%d at %s", n, d.Shop.Unit.Show(f.places[n])))
		if len(f.places) == 1 {
			what = fmt.Sprint(n)
		}
	}
	w.report(f.places, nil, what+" corrected", "position corrected: "+strings.Join(reported, ", "))
}

// marked takes the fault.
func (w *Page) marked(d *pane.Shared) {
	f := w.Form
	for f.At = range f.Fields { // the first that is wrong
		if _, _, wrong := f.read(d); wrong != "" {
			f.said = wrong
			return
		}
	}
	number, _ := f.number(d)
	at, _ := f.place(d, number)
	places := map[int]plan.Length{number: at}
	mark := shop.Mark{Condition: conditions[f.letter()], Reason: f.text(fieldWhy)}
	w.report(places, map[int]shop.Mark{number: mark}, fmt.Sprintf("%d is %s", number, mark.Condition), fmt.Sprintf("holder %d is recorded as %s", number, mark.Condition))
}

// report reports what the form has. Where it is asked first what became of the job that
// ran before, the form stays until that is answered.
func (w *Page) report(places map[int]plan.Length, marks map[int]shop.Mark, what, says string) {
	if w.Correct(places, marks, what, says); w.Ending == nil {
		w.Form = nil
	}
}

// conditions are those that a holder may have, by their letters.
var conditions = map[string]plan.Condition{"s": plan.Stuck, "n": plan.NoCut, "o": plan.Out, "g": plan.Good}

// letter is the one of the condition.
func (f *correction) letter() string {
	text := strings.ToLower(f.text(fieldWhat))
	return text[:min(len(text), 1)]
}

// number reads the holder's number.
func (f *correction) number(d *pane.Shared) (n int, wrong string) {
	text := f.text(FieldHolder)
	most := len(d.Actual.Positions.At)
	n, err := strconv.Atoi(text)
	switch {
	case text == "":
		return 0, "type the holder's number"
	case err != nil || n < 1 || n > most:
		return 0, fmt.Sprintf("there is no holder %s: they are numbered 1 to %d", text, most)
	}
	return n, ""
}

// place reads where the holder is; empty in the form for a fault is where it is shown.
func (f *correction) place(d *pane.Shared, number int) (at plan.Length, wrong string) {
	text := f.text(FieldPlace)
	if text == "" && f.places == nil && number > 0 {
		return d.Actual.Positions.At[number-1], ""
	}
	if text == "" {
		return 0, "type its position, in " + d.Shop.Unit.String() + " or with a unit: 412.5, 16-1/4, 16.25 in, 412 mm"
	}
	at, err := plan.ParseLength(text, d.Shop.Unit)
	if err != nil {
		return 0, err.Error()
	}
	if rail := d.Shop.Beam.Rail; at < rail.From || at > rail.To {
		u := d.Shop.Unit
		return 0, fmt.Sprintf("%s is off the rail, which runs from %s to %s", u.Show(at), u.Show(rail.From), u.Show(rail.To))
	}
	return at, ""
}

// positions are where the holders are, as the form corrects it.
func (f *correction) positions(d *pane.Shared) []plan.Length {
	at := slices.Clone(d.Actual.Positions.At)
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
func (f *correction) read(d *pane.Shared) (says string, warns bool, wrong string) {
	u := d.Shop.Unit
	number, wrong := f.number(d)
	if f.At == FieldHolder {
		if wrong == "" {
			says = fmt.Sprintf("holder %d is shown at %s", number, words.Both(d.Actual.Positions.At[number-1], u))
		}
		return says, false, wrong
	}
	switch f.At {
	case FieldPlace:
		at, wrong := f.place(d, number)
		if wrong != "" || number == 0 {
			return "", false, wrong
		}
		if faults := changeover.Misplaced(d.Forecast.Beam, f.positions(d)); len(faults) > 0 {
			if why := faults[0].Why(u); f.places == nil {
				return "", false, why + "; if so, press Esc and first correct the other holder, with " + d.KeyFor(keys.Correct)
			} else {
				return why + "; if so, correct the other one too", true, ""
			}
		}
		way := at - d.Actual.Positions.At[number-1]
		if way == 0 {
			return words.Both(at, u) + ", where the screen shows it", false, ""
		}
		return fmt.Sprintf("%s, %s to the %s of where it was shown", words.Both(at, u), u.Show(max(way, -way)), words.Towards(way)), false, ""
	case fieldWhat:
		c, known := conditions[f.letter()]
		if !known {
			return "", false, "type s, n, o or g: " + f.Fields[fieldWhat].Hint
		}
		return c.String(), false, ""
	}
	return "", false, ""
}
