package words

import (
	"cmp"
	"strings"

	"bide/plan"
)

// finest is the step to which columns of lengths show places, a hundredth of a millimetre
// or a ten-thousandth of an inch. What is finer stands in the CSV and the JSON.
var finest = [...]plan.Length{plan.Millimetres: plan.Millimetre / 100, plan.Inches: plan.Inch / 10_000}

// Shown is the length as a column shows it, half a step going away from zero.
func Shown(l plan.Length, u plan.Unit) plan.Length {
	half := finest[u] / 2
	if l < 0 {
		half = -half
	}
	return (l + half) / finest[u] * finest[u]
}

// Between is the way from one place to another as a column shows both, so that its rows
// add up. A way too short to be seen keeps its direction: it is a nanometre, which shows
// as zero.
func Between(from, to plan.Length, u plan.Unit) plan.Length {
	if by := Shown(to, u) - Shown(from, u); by != 0 {
		return by
	}
	return plan.Length(cmp.Compare(to, from))
}

// Ruler writes the lengths of one column alike: in one unit, with as many decimals as
// the finest of them needs and all equally wide, so that their points stand in a line.
type Ruler struct {
	Width    int // of the column
	unit     plan.Unit
	exact    bool
	decimals int
}

// NewRuler makes the ruler for a column of lengths, at least as wide as its head.
func NewRuler(u plan.Unit, head string, lengths ...plan.Length) Ruler {
	return Ruler{Width: len(head), unit: u}.fitted(lengths)
}

// ExactRuler is a ruler for a few lengths that are shown as they are, to the nanometre.
func ExactRuler(u plan.Unit, lengths ...plan.Length) Ruler {
	return Ruler{unit: u, exact: true}.fitted(lengths)
}

func (r Ruler) fitted(lengths []plan.Length) Ruler {
	for _, l := range lengths {
		_, part, _ := strings.Cut(r.text(l), ".")
		r.decimals = max(r.decimals, len(part))
	}
	for _, l := range lengths {
		r.Width = max(r.Width, len(r.Number(l)))
	}
	return r
}

func (r Ruler) text(l plan.Length) string {
	if !r.exact {
		l = Shown(l, r.unit)
	}
	return r.unit.Number(l)
}

// Number is the length with all decimals of the column.
func (r Ruler) Number(l plan.Length) string {
	whole, part, _ := strings.Cut(r.text(l), ".")
	if r.decimals == 0 {
		return whole
	}
	return whole + "." + part + strings.Repeat("0", max(r.decimals-len(part), 0))
}

// Signed is the length with its sign, + to the drive side. A way too short to be shown
// keeps its sign.
func (r Ruler) Signed(l plan.Length) string {
	text := r.Number(l)
	switch {
	case l > 0:
		return "+" + text
	case l < 0 && text[0] != '-':
		return "-" + text
	}
	return text
}

// Place is the length in the width of the column, to the right.
func (r Ruler) Place(l plan.Length) string { return r.Head(r.Number(l)) }

// Way is the length with its sign in one column more.
func (r Ruler) Way(l plan.Length) string {
	text := r.Signed(l)
	return strings.Repeat(" ", max(0, r.Width+1-len(text))) + text
}

// Head is a text in the width of the column, to the right.
func (r Ruler) Head(text string) string {
	return strings.Repeat(" ", max(0, r.Width-len(text))) + text
}
