package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"slices"
)

// Arranging the slits of a job so that its cuts fall where they are wished. Where
// a cut falls depends only on which slits lie before it, not on their order, so
// the best arrangement is a best path over what has been laid: sets of entries, or
// for any order, how many of each width.

// arrange picks an arrangement of the job's slits: often the one that suits the
// wishes best at the present shift, else the present one with two parts exchanged.
func (k *seeker) arrange(j *plan.Job, now choice, wishes []changeover.Wish) choice {
	l := k.p.Beam.Lay(j, now.slits, now.shift)
	first, edge := l.Web.From+l.Trim[0], l.Trim[0] > 0
	suit := k.chance.IntN(3) > 0
	if j.Arrange == plan.ByEntries {
		order := slices.Clone(now.entries)
		if suit && len(order) <= changeover.MostEntries {
			order = changeover.ArrangeEntries(j.Entries, first, edge, wishes, k.p.Beam.Bad)
		} else {
			k.swapTwo(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
		}
		return choice{slits: plan.Laid(j.Entries, order), entries: order}
	}
	if suit && changeover.Vectors(j.Entries) <= changeover.MostVectors {
		return choice{slits: changeover.ArrangeAny(j.Entries, first, edge, wishes, k.p.Beam.Bad)}
	}
	slits := slices.Clone(now.slits)
	k.swapTwo(len(slits), func(a, b int) { slits[a], slits[b] = slits[b], slits[a] })
	return choice{slits: slits}
}

// swapTwo lets two of n things, drawn by chance, change places.
func (k *seeker) swapTwo(n int, swap func(a, b int)) { swap(k.chance.IntN(n), k.chance.IntN(n)) }
