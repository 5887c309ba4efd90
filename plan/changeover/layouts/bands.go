package layouts

import (
	"cmp"
	"iter"
	"slices"

	"bide/plan"
)

// Damaged bands of the anvil. A blade presses on the anvil wherever it cuts, so no
// cut may lie in a band, its ends included, and a holder that serves a cut from
// beside it (position_tolerance) may not stand in one either. Idle holders are lifted and
// stand where they like.
//
// As a layout slides, a cut at c is in the band [f, t] at the shifts from f-c to
// t-c. What is left of the window is a list of stretches, each ending at the window
// or a nanometre from a band. Whatever is linear in the shift between two critical
// shifts is still so on what is left between them, and best at one of its ends; so
// a search over shifts is exact that looks at the ends of the stretches too.

// Shifts lists the shifts at which a job that has no fault but damaged bands may be
// laid out with its slits in the order given: the stretches of its window, ascending
// and apart, at which no cut lies in a band. None is left when it is empty. With no
// bands it is the window. O(kn log kn) for k cuts and n bands.
//
// The shifts that put a cut in a band are a stretch for each cut and band. Passing
// over these by their first shift, whatever lies between the furthest one passed
// and the next is covered by none.
func Shifts(b *plan.Beam, j *plan.Job, slits []plan.Length) []plan.Span {
	from, to := b.Window(j)
	return AppendShifts(b, nil, b.Lay(j, slits, 0).Cuts, plan.Span{From: from, To: to})
}

// AppendShifts appends to out the shifts in the window at which the cuts keep out of the
// bands.
func AppendShifts(b *plan.Beam, out []plan.Span, cuts []plan.Length, window plan.Span) []plan.Span {
	if len(b.Bad) == 0 {
		return append(out, window)
	}
	var blocked []plan.Span
	for _, c := range cuts {
		for _, s := range b.Bad {
			if s.From-c <= window.To && s.To-c >= window.From {
				blocked = append(blocked, plan.Span{From: s.From - c, To: s.To - c})
			}
		}
	}
	slices.SortFunc(blocked, func(a, b plan.Span) int { return cmp.Compare(a.From, b.From) })
	next := window.From
	for _, s := range blocked {
		if s.From > next {
			out = append(out, plan.Span{From: next, To: s.From - 1})
		}
		next = max(next, s.To+1)
	}
	if next <= window.To {
		out = append(out, plan.Span{From: next, To: window.To})
	}
	return out
}

// Order is the order in which a job's slits are laid out unless something better
// is looked for: as listed, or where that puts a cut in a damaged band at every
// shift, the first order tried that doesn't. It is not ok when none was found; an
// order that the job must keep is then proven to have none.
func Order(b *plan.Beam, j *plan.Job) (slits []plan.Length, ok bool) {
	slits = j.Slits()
	if len(b.Bad) == 0 || len(Shifts(b, j, slits)) > 0 {
		return slits, true
	}
	for other := range ordersOf(b, j) {
		if len(Shifts(b, j, other)) > 0 {
			return other, true
		}
	}
	return slits, false
}

// How many shifts and how many exchanges are tried to find an order of slits that
// keeps out of the bands.
const (
	shiftsTried    = 64
	exchangesTried = 2000
)

// ordersOf visits orders that the job allows and that are likely to keep out of the
// bands: at shifts spread over the window, those nearest to centred first, the ones
// with the fewest cuts in bands, exactly; where there are too many for that, the one
// listed with two parts exchanged.
func ordersOf(b *plan.Beam, j *plan.Job) iter.Seq[[]plan.Length] {
	return func(yield func([]plan.Length) bool) {
		switch {
		case j.Arrange == plan.AsListed:
		case j.Arrange == plan.ByEntries && len(j.Entries) > MostEntries || j.Arrange == plan.AnyArrange && Vectors(j.Entries) > MostVectors:
			exchanged(j, yield)
		default:
			for _, shift := range evenShifts(b, j) {
				l := b.Lay(j, j.Slits(), shift)
				if !yield(bestOrder(j, l.Web.From+l.Trim[0], l.Trim[0] > 0, nil, b.Bad)) {
					return
				}
			}
		}
	}
}

// evenShifts are shifts spread evenly over the job's window, nearest to centred
// first.
func evenShifts(b *plan.Beam, j *plan.Job) []plan.Length {
	from, to := b.Window(j)
	out := []plan.Length{0}
	for n := range plan.Length(shiftsTried) {
		out = append(out, from+(to-from)/(shiftsTried-1)*n)
	}
	slices.SortFunc(out, Nearer)
	return slices.Compact(out)
}

// exchanged visits the listed order with two entries, or two slits, exchanged.
func exchanged(j *plan.Job, yield func([]plan.Length) bool) {
	parts := j.Entries
	if j.Arrange == plan.AnyArrange {
		parts = nil
		for _, s := range j.Slits() {
			parts = append(parts, plan.Entry{Count: 1, Width: s})
		}
	}
	order, tried := make([]int, len(parts)), 0
	for i := range order {
		order[i] = i
	}
	for a := range order {
		for z := a + 1; z < len(order); z++ {
			if parts[a].Width == parts[z].Width && parts[a].Count == parts[z].Count {
				continue
			}
			order[a], order[z] = order[z], order[a]
			if tried++; tried > exchangesTried || !yield(plan.Laid(parts, order)) {
				return
			}
			order[a], order[z] = order[z], order[a]
		}
	}
}

// Nearer compares shifts: the one nearer to centred comes first, of two as near the one to
// the operator side.
func Nearer(a, b plan.Length) int {
	return cmp.Or(cmp.Compare(a.Abs(), b.Abs()), cmp.Compare(a, b))
}
