package sheet

import (
	"cmp"
	"strings"

	"bide/plan"
)

// finest is the step to which the sheet prints places, a hundredth of a millimetre
// or a ten-thousandth of an inch. What is finer stands in the CSV and the JSON.
var finest = [...]plan.Length{plan.Millimetres: plan.Millimetre / 100, plan.Inches: plan.Inch / 10_000}

// printed is the length as the sheet prints it, half a step going away from nought.
func printed(l plan.Length, u plan.Unit) plan.Length {
	half := finest[u] / 2
	if l < 0 {
		half = -half
	}
	return (l + half) / finest[u] * finest[u]
}

// between is the way from one place to another as the sheet prints both, so that
// its rows add up. A way too short to be seen keeps its direction: it is a
// nanometre, which prints as nought.
func between(from, to plan.Length, u plan.Unit) plan.Length {
	if by := printed(to, u) - printed(from, u); by != 0 {
		return by
	}
	return plan.Length(cmp.Compare(to, from))
}

// ruler writes the lengths of one column alike: in one unit, with as many decimals
// as the finest of them needs and all equally wide, so that the points stand in a
// line.
type ruler struct {
	unit     plan.Unit
	decimals int
	width    int
}

// newRuler makes the ruler for a column of lengths, at least as wide as its head.
func newRuler(u plan.Unit, head string, lengths ...plan.Length) ruler {
	r := ruler{unit: u}
	for _, l := range lengths {
		_, part, _ := strings.Cut(u.Number(printed(l, u)), ".")
		r.decimals = max(r.decimals, len(part))
	}
	r.width = len(head)
	for _, l := range lengths {
		r.width = max(r.width, len(r.number(l)))
	}
	return r
}

// number is the length with all decimals of the column.
func (r ruler) number(l plan.Length) string {
	whole, part, _ := strings.Cut(r.unit.Number(printed(l, r.unit)), ".")
	if r.decimals == 0 {
		return whole
	}
	return whole + "." + part + strings.Repeat("0", r.decimals-len(part))
}

// place is the length in the width of the column, to the right.
func (r ruler) place(l plan.Length) string { return r.head(r.number(l)) }

// signed is the length with its sign, + to the drive side. A way too short to be shown
// keeps its sign.
func (r ruler) signed(l plan.Length) string {
	text := r.number(l)
	switch {
	case l > 0:
		return "+" + text
	case l < 0 && text[0] != '-':
		return "-" + text
	}
	return text
}

// way is the length with its sign in one column more.
func (r ruler) way(l plan.Length) string {
	text := r.signed(l)
	return strings.Repeat(" ", max(0, r.width+1-len(text))) + text
}

// head is a text in the width of the column, to the right.
func (r ruler) head(text string) string {
	return strings.Repeat(" ", max(0, r.width-len(text))) + text
}

// both is a length in the shop's unit and behind it in the other, where that tells
// something: always the millimetres of inches, the inches of millimetres where
// they are a whole number of 64ths.
func both(l plan.Length, u plan.Unit) string {
	fraction, whole := l.Fraction()
	switch {
	case u == plan.Inches && whole:
		return fraction + " in (" + plan.Millimetres.Show(l) + ")"
	case u == plan.Inches:
		return u.Show(l) + " (" + plan.Millimetres.Show(l) + ")"
	case whole && l != 0:
		return u.Show(l) + " (" + fraction + " in)"
	}
	return u.Show(l)
}
