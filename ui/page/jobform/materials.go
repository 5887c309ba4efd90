package jobform

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
)

// The list of materials below their field has all that the shop and the built-in table have,
// narrowed as one types until it is one of them.

// naming reports whether the field is one with a list of names.
func (f *jobForm) naming() bool { return f.Open().Key == "material" }

// listed reports whether the arrows go into the list: a name that is known is passed by.
func (f *jobForm) listed() bool {
	return f.naming() && !slices.Contains(f.shop.Materials.Names(), f.Open().Value())
}

// matches are the names that have all words typed, in any case and order; those that
// begin with them first, and the shop's own before the built-in ones.
func (f *jobForm) matches() []string {
	names := f.shop.Materials.Names()
	if !f.listed() {
		return names
	}
	words := list.Filter{Text: f.Open().Value()}
	names = slices.DeleteFunc(names, func(name string) bool { return !words.Lets(name) })
	begins := func(name string) bool {
		return strings.HasPrefix(strings.ToLower(name), strings.ToLower(strings.TrimSpace(f.Open().Value())))
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
func (f *jobForm) narrow() {
	f.picked = -1
	if strings.TrimSpace(f.Open().Value()) != "" && f.listed() && len(f.matches()) > 0 {
		f.picked = 0
	}
}

// inList goes through the list, takes the picked name or leaves it; false when the key
// is the form's.
func (f *jobForm) inList(a keys.Action) bool {
	if !f.listed() {
		return false
	}
	names := f.matches()
	switch {
	case a == keys.Down && f.picked+1 < len(names):
		f.picked++
	case a == keys.Up && f.picked >= 0:
		f.picked--
	case (a == keys.Choose || a == keys.NextPane) && f.picked >= 0:
		f.Open().Set(names[f.picked])
		f.check()
		f.to(f.At + 1)
	case a == keys.Back && f.picked >= 0:
		f.picked = -1
	default:
		return false
	}
	return true
}

// mostNames is how many names are shown below their field, where there is room.
const mostNames = 8

// names are the names around the picked one, with where each comes from.
func (f *jobForm) names(k *draw.Theme, s draw.Size) (out []draw.Line) {
	names := f.matches()
	shown := min(len(names), s.H, mostNames)
	at := f.picked
	if !f.listed() {
		at = slices.Index(names, f.Open().Value())
	}
	wide := 0
	for _, name := range names {
		wide = max(wide, draw.CellWidth(k.Safe(name)))
	}
	from := draw.Window(max(at, 0), len(names), shown)
	for i := from; i < from+shown; i++ {
		l, cursor, ink := k.Line(), "", draw.Plain
		if i == f.picked {
			cursor, ink = k.Cursor, draw.Picked
		}
		l.To(4)
		l.Left(draw.Picked, cursor, 2)
		l.Left(ink, names[i], min(wide, max(s.W-l.Width-1, 0)))
		l.Add(draw.Faint, "  "+f.madeOf(names[i]))
		out = append(out, l)
	}
	if len(names) == 0 && s.H > 0 {
		l := k.Line()
		l.To(4)
		l.Add(draw.Faint, "no material matches")
		out = append(out, l)
	}
	return out
}

// madeOf tells where a material's values come from.
func (f *jobForm) madeOf(name string) string {
	for _, own := range f.shop.Materials {
		if own.Name == name {
			return words.Join(", ", own.Group, fmt.Sprintf("%g mm", own.ThicknessMM), "adhesive "+string(own.Adhesive))
		}
	}
	return "built-in group"
}

// count tells how many names there are.
func (f *jobForm) count() string {
	return fmt.Sprintf("%d of %s", len(f.matches()), words.Count(len(f.shop.Materials.Names()), "material"))
}
