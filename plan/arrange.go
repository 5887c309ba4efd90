package plan

import (
	"slices"
)

// Arranging the slits of a job so that its cuts fall where they are wished. Where
// a cut falls depends only on which slits lie before it, not on their order, so
// the best arrangement is a best path over what has been laid: sets of entries, or
// for any order, how many of each width.

// arrange picks an arrangement of the job's slits: often the one that suits the
// wishes best at the present shift, else the present one with two parts exchanged.
func (k *seeker) arrange(j *Job, now choice, wishes []wish) choice {
	l := k.p.beam.Lay(j, now.slits, now.shift)
	first, edge := l.Web.From+l.Trim[0], l.Trim[0] > 0
	suit := k.chance.IntN(3) > 0
	if j.Arrange == ByEntries {
		order := slices.Clone(now.entries)
		if suit && len(order) <= mostEntries {
			order = arrangeEntries(j.Entries, first, edge, wishes, k.p.beam.Bad)
		} else {
			k.swapTwo(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
		}
		return choice{slits: laid(j.Entries, order), entries: order}
	}
	if suit && vectors(j.Entries) <= mostVectors {
		return choice{slits: arrangeAny(j.Entries, first, edge, wishes, k.p.beam.Bad)}
	}
	slits := slices.Clone(now.slits)
	k.swapTwo(len(slits), func(a, b int) { slits[a], slits[b] = slits[b], slits[a] })
	return choice{slits: slits}
}

// swapTwo lets two of n things, drawn by chance, change places.
func (k *seeker) swapTwo(n int, swap func(a, b int)) { swap(k.chance.IntN(n), k.chance.IntN(n)) }
