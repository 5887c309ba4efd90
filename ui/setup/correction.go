package setup

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"bide/plan"
	"bide/plan/session"
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
	title     string
	positions map[int]plan.Length // found so far, by holder; nil in the form for a fault
	said      string              // why the last Enter did nothing
}

// The fields of both forms, and of the one for a fault.
const (
	fieldHolder = iota
	fieldPosition
	fieldWhat
	fieldWhy
)

// newPositionForm corrects where holders are, first that of a move or any.
func newPositionForm(m *plan.Move) *correction {
	f := &correction{title: "Correct a position", positions: map[int]plan.Length{}}
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
		in := &f.Fields[fieldHolder]
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
func (w *Page) Type(msg tea.KeyMsg, _ *pane.Shared) (taken bool, want pane.Want) {
	f := w.form
	if f == nil || w.Ending != nil {
		return false, nil
	}
	taken, whole := f.Open().Type(msg)
	if taken {
		f.said, want = "", pane.Say("")
	}
	if !whole {
		f.said = fmt.Sprintf("a field has room for %d characters: the rest is left out", longestField)
	}
	return taken, want
}

// answer deals with the other keys of a form.
func (w *Page) answer(a keys.Action, d *pane.Shared) pane.Want {
	f := w.form
	switch a {
	case keys.NextPane:
		f.Go(f.At + 1)
	case keys.LastPane:
		f.Go(f.At - 1)
	case keys.Back:
		w.form = nil
		return pane.Say("nothing was changed")
	case keys.Accept:
		return w.accept(d)
	}
	return nil
}

// accept takes the field, or all of the form where that was the last.
func (w *Page) accept(d *pane.Shared) pane.Want {
	f := w.form
	if f.positions != nil && f.At == fieldHolder && f.text(fieldHolder) == "" && len(f.positions) > 0 {
		return w.found(d)
	}
	if _, _, wrong := f.read(d); wrong != "" && f.At != fieldWhy {
		f.said = wrong
		return nil
	}
	if f.At+1 < len(f.Fields) {
		f.Go(f.At + 1)
		return nil
	}
	if f.positions == nil {
		return w.marked(d)
	}
	number, _ := f.number(d)
	at, _ := f.position(d, number)
	f.positions[number] = at
	f.Fields[fieldHolder].Set("")
	f.Fields[fieldPosition].Set("")
	f.Go(fieldHolder)
	return nil
}

// found takes the corrected positions.
func (w *Page) found(d *pane.Shared) pane.Want {
	f := w.form
	if f.said = d.Misplaced(f.corrected(d)); f.said != "" {
		return nil
	}
	what := fmt.Sprint(len(f.positions)) // holders, or the one
	reported := make([]string, 0, len(f.positions))
	for _, n := range slices.Sorted(maps.Keys(f.positions)) {
		reported = append(reported, fmt.Sprintf("%d at %s", n, d.Shop.Unit.Show(f.positions[n])))
		if len(f.positions) == 1 {
			what = fmt.Sprint(n)
		}
	}
	return w.report(f.positions, nil, what+" corrected", "position corrected: "+strings.Join(reported, ", "))
}

// marked takes the fault.
func (w *Page) marked(d *pane.Shared) pane.Want {
	f := w.form
	for f.At = range f.Fields { // the first that is wrong
		if _, _, wrong := f.read(d); wrong != "" {
			f.said = wrong
			return nil
		}
	}
	number, _ := f.number(d)
	at, _ := f.position(d, number)
	positions := map[int]plan.Length{number: at}
	mark := shop.Mark{Condition: conditions[f.letter()], Reason: f.text(fieldWhy)}
	return w.report(positions, map[int]shop.Mark{number: mark}, fmt.Sprintf("%d is %s", number, mark.Condition), fmt.Sprintf("holder %d is recorded as %s", number, mark.Condition))
}

// report wants recorded what the form has. Where it is asked first what became of the job that
// ran before, the form stays until that is answered.
func (w *Page) report(positions map[int]plan.Length, marks map[int]shop.Mark, what, says string) pane.Want {
	return func(s *session.Session) {
		if s.Setup.Correct(positions, marks, what, says); s.Setup.Ending == nil {
			w.form = nil
		}
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
	text := f.text(fieldHolder)
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

// position reads where the holder is; empty in the form for a fault is where it is shown.
func (f *correction) position(d *pane.Shared, number int) (at plan.Length, wrong string) {
	text := f.text(fieldPosition)
	if text == "" && f.positions == nil && number > 0 {
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

// corrected are where the holders are, as the form has it.
func (f *correction) corrected(d *pane.Shared) []plan.Length {
	at := slices.Clone(d.Actual.Positions.At)
	for n, x := range f.positions {
		at[n-1] = x
	}
	if n, wrong := f.number(d); wrong == "" {
		if x, wrong := f.position(d, n); wrong == "" {
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
	if f.At == fieldHolder {
		if wrong == "" {
			says = fmt.Sprintf("holder %d is shown at %s", number, words.Both(d.Actual.Positions.At[number-1], u))
		}
		return says, false, wrong
	}
	switch f.At {
	case fieldPosition:
		at, wrong := f.position(d, number)
		if wrong != "" || number == 0 {
			return "", false, wrong
		}
		switch why := d.Misplaced(f.corrected(d)); {
		case why != "" && f.positions == nil:
			return "", false, why + "; if so, press Esc and first correct the other holder, with " + d.KeyFor(keys.Correct)
		case why != "":
			return why + "; if so, correct the other one too", true, ""
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
