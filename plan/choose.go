package plan

import (
	"cmp"
	"slices"
)

// Choosing a layout for one turn: the arrangement and the shift that put most cuts
// where holders stand now, and where the next job wants them too.

// wish is a place that a cut had better be at, and how much so.
type wish struct {
	at     Length
	weight int
}

// The weights of a cut where a holder stands now, and where the next job has one.
const (
	standsThere = 2
	wantedNext  = 1
)

// mostTried is how many shifts are counted exactly, of those that promise most.
const mostTried = 8

// wishes lists the places that a job's cuts had better be at, ascending.
func (k *seeker) wishes(t *tour, turn int) []wish {
	k.wish = k.wish[:0]
	for _, x := range t.stands[turn].At {
		k.wish = append(k.wish, wish{x, standsThere})
	}
	if turn+1 < len(t.order) {
		for _, c := range t.choices[t.order[turn+1]].cuts {
			k.wish = append(k.wish, wish{c, wantedNext})
		}
	}
	slices.SortFunc(k.wish, func(a, b wish) int { return cmp.Compare(a.at, b.at) })
	return k.wish
}

// choose picks a layout for the job of the turn anew. Chance shakes the choice, so
// that the search gets to see others than the one that looks best from here.
func (k *seeker) choose(t *tour, turn int) choice {
	j := t.order[turn]
	job, now := k.jobs[j], t.choices[j]
	wishes := k.wishes(t, turn)
	best := choice{slits: now.slits, entries: now.entries}
	if job.Arrange != AsListed {
		best = k.arrange(job, now, wishes)
	}
	l := k.p.beam.Lay(job, best.slits, 0)
	k.p.set(t.stands[turn].At, l.Web, l.Cuts)
	k.p.shifts.cuts = append(k.p.shifts.cuts[:0], l.Cuts...)
	most := -1 << 30
	for _, s := range k.promising(l.Cuts, k.windows[j], wishes, now.shift) {
		k.p.shift(s.shift)
		stays, ok := k.p.count()
		if !ok {
			continue
		}
		value := 16*stays + 12*common(k.p.now.cuts, k.next(t, turn)) + k.chance.IntN(8)
		if value > most {
			best.shift, most = s.shift, value
		}
	}
	if most == -1<<30 { // nothing fits: keep what is known to
		return now
	}
	best.cuts = make([]Length, len(l.Cuts))
	for m, c := range l.Cuts {
		best.cuts[m] = c + best.shift
	}
	return best
}

// next is the cuts of the turn after this one.
func (k *seeker) next(t *tour, turn int) []Length {
	if turn+1 < len(t.order) {
		return t.choices[t.order[turn+1]].cuts
	}
	return nil
}

// promising lists the shifts in the window that put most weight of wishes on cuts
// of the layout, and beside them centred and the shift at present. Here the bound
// of each is that weight.
func (k *seeker) promising(cuts []Length, window Span, wishes []wish, present Length) []bounded {
	k.shifts = append(k.shifts[:0], bounded{shift: 0})
	if window.Length() == 0 {
		return k.shifts
	}
	k.meets = k.meets[:0]
	from := 0
	for _, c := range cuts {
		for from < len(wishes) && wishes[from].at < c+window.From {
			from++
		}
		for _, w := range wishes[from:] {
			if w.at > c+window.To {
				break
			}
			k.meets = append(k.meets, bounded{w.at - c, w.weight})
		}
	}
	slices.SortFunc(k.meets, func(a, b bounded) int { return cmp.Compare(a.shift, b.shift) })
	n := 0 // k.meets[:n] are the shifts, each once with its weights summed
	for _, m := range k.meets {
		if n > 0 && k.meets[n-1].shift == m.shift {
			k.meets[n-1].stays += m.stays
			continue
		}
		k.meets[n] = m
		n++
	}
	k.meets = k.meets[:n]
	slices.SortFunc(k.meets, func(a, b bounded) int {
		return cmp.Or(cmp.Compare(b.stays, a.stays), cmp.Compare(a.shift, b.shift))
	})
	k.shifts = append(k.shifts, k.meets[:min(n, mostTried)]...)
	return append(k.shifts, bounded{shift: present})
}

// common counts the places that two ascending lists have in common.
func common(a, b []Length) int {
	n, j := 0, 0
	for _, x := range a {
		for j < len(b) && b[j] < x {
			j++
		}
		if j < len(b) && b[j] == x {
			n++
		}
	}
	return n
}
