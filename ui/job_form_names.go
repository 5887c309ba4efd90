package ui

import (
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"fmt"
	"slices"
	"strings"

	"bide/plan/words"
)

// nameList is the list of materials below their field in a form: all that the shop and
// the built-in table have, narrowed as one types until it is one of them.
type nameList struct {
	at int // the picked name; -1 while none is, and keys go to the form
}

// naming reports whether the field is one with a list of names.
func (f *jobForm) naming() bool { return f.key() == "material" }

// open reports whether the arrows go into the list: a name that is known is passed by.
func (f *jobForm) open(m *model) bool {
	return f.naming() && !slices.Contains(m.shop.Materials.Names(), f.value())
}

// matches are the names that have all words typed, in any case and order; those that
// begin with them first, and the shop's own before the built-in ones.
func (f *jobForm) matches(m *model) []string {
	names := m.shop.Materials.Names()
	if !f.open(m) {
		return names
	}
	words := list.Filter{Text: f.value()}
	names = slices.DeleteFunc(names, func(name string) bool { return !words.Lets(name) })
	begins := func(name string) bool {
		return strings.HasPrefix(strings.ToLower(name), strings.ToLower(strings.TrimSpace(f.value())))
	}
	slices.SortStableFunc(names, func(a, b string) int {
		switch x, y := begins(a), begins(b); {
		case x && !y:
			return -1
		case y && !x:
			return 1
		}
		return 0
	})
	return names
}

// narrow follows what is typed: the first name that matches is picked.
func (f *jobForm) narrow(m *model) {
	f.list.at = -1
	if strings.TrimSpace(f.value()) != "" && f.open(m) && len(f.matches(m)) > 0 {
		f.list.at = 0
	}
}

// handle goes through the list, takes the picked name or leaves it; false when the key
// is the form's.
func (n *nameList) handle(a keys.Action, f *jobForm, m *model) bool {
	if !f.open(m) {
		return false
	}
	names := f.matches(m)
	switch {
	case a == keys.Down && n.at+1 < len(names):
		n.at++
	case a == keys.Up && n.at >= 0:
		n.at--
	case (a == keys.Choose || a == keys.NextPane) && n.at >= 0:
		f.Open().Set(names[n.at])
		f.check(m)
		f.to(f.At + 1)
	case a == keys.Back && n.at >= 0:
		n.at = -1
	default:
		return false
	}
	return true
}

// mostNames is how many names are shown below their field, where there is room.
const mostNames = 8

// lines are the names around the picked one, with where each comes from.
func (n *nameList) lines(m *model, f *jobForm, s draw.Size) (out []draw.Line) {
	names := f.matches(m)
	shown := min(len(names), s.H, mostNames)
	at := n.at
	if !f.open(m) {
		at = slices.Index(names, f.value())
	}
	wide := 0
	for _, name := range names {
		wide = max(wide, draw.CellWidth(m.Safe(name)))
	}
	from := draw.Window(max(at, 0), len(names), shown)
	for i := from; i < from+shown; i++ {
		l := m.Line()
		l.To(4)
		l.Left(draw.Picked, map[bool]string{true: m.Cursor}[i == n.at], 2)
		l.Left(pick(i == n.at, draw.Plain), names[i], min(wide, max(s.W-l.Width-1, 0)))
		l.Add(draw.Faint, "  "+m.madeOf(names[i]))
		out = append(out, l)
	}
	if len(names) == 0 && s.H > 0 {
		l := m.Line()
		l.To(4)
		l.Add(draw.Faint, "no material has all of these words")
		out = append(out, l)
	}
	return out
}

// madeOf tells where a material's values come from.
func (d *desk) madeOf(name string) string {
	for _, own := range d.shop.Materials {
		if own.Name == name {
			return words.Join(", ", own.Group, fmt.Sprintf("%g mm", own.ThicknessMM), "adhesive "+string(own.Adhesive))
		}
	}
	return "built-in group"
}

// count tells how many names there are.
func (n *nameList) count(m *model, f *jobForm) string {
	return fmt.Sprintf("%d of %s", len(f.matches(m)), words.Count(len(m.shop.Materials.Names()), "material"))
}
