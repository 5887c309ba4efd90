package sequence

import (
	"bide/plan"
	"bide/plan/changeover"
	"cmp"
	"slices"
)

// Choosing a layout for one turn: the arrangement and the shift that put most cuts
// where holders may be, and where the next jobs want them too.

// The weights of a cut where a holder may have been kept, where the next job has
// one, and where the job after that has one.
var wishWeights = [...]int{4, 3, 1}

// mostTried is how many shifts are drawn, at most, to take the best of.
const mostTried = 8

// wishes lists the places that the cuts of a turn had better be at, ascending; the
// turns before it have been sketched.
func (k *seeker) wishes(t *tour, turn int) []changeover.Wish {
	k.wish = k.wish[:0]
	for _, p := range k.rough.kept {
		k.wish = append(k.wish, changeover.Wish{At: p.at, Weight: wishWeights[0]})
	}
	for n := 1; n < len(wishWeights) && turn+n < len(t.order); n++ {
		k.wishFor(t.choices[t.order[turn+n]].cuts, wishWeights[n])
	}
	return k.wish
}

// wishFor merges ascending places into the wishes.
func (k *seeker) wishFor(places []plan.Length, weight int) {
	out, m := k.merged[:0], 0
	for _, w := range k.wish {
		for ; m < len(places) && places[m] < w.At; m++ {
			out = append(out, changeover.Wish{At: places[m], Weight: weight})
		}
		out = append(out, w)
	}
	for ; m < len(places); m++ {
		out = append(out, changeover.Wish{At: places[m], Weight: weight})
	}
	k.wish, k.merged = out, k.wish
}

// choose picks a layout for the job of the turn anew.
func (k *seeker) choose(t *tour, turn int) choice {
	j := t.order[turn]
	return k.suit(j, t.choices[j], k.wishes(t, turn))
}

// suit picks a layout for job j that meets wishes, and not always the most of them,
// so that a search gets to see others than the one that looks best from here.
func (k *seeker) suit(j int, now choice, wishes []changeover.Wish) choice {
	job, best := k.jobs[j], now
	if !k.free(j) {
		return now
	}
	if job.Arrange != plan.AsListed {
		best = k.arrange(job, now, wishes)
		best.shift = now.shift
	}
	cuts := k.p.Beam.Lay(job, best.slits, 0).Cuts
	if k.windows[j].Length() > 0 && len(cuts) > 0 {
		best.shift = k.drawShift(cuts, k.windows[j], wishes, best.shift)
	}
	if !plan.ClearOf(k.p.Beam.Bad, cuts, best.shift) {
		return now
	}
	best.cuts = shifted(cuts, best.shift)
	return best
}

// shifted are the places shifted by a length, in memory of their own.
func shifted(places []plan.Length, by plan.Length) []plan.Length {
	out := make([]plan.Length, len(places))
	for i, x := range places {
		out[i] = x + by
	}
	return out
}

// drawShift draws some shifts that each put a cut on a wish, and takes the one that
// meets most, about: the more wishes a shift meets, the likelier it is drawn. Where
// none is drawn, or none but such as put a cut in a damaged band, the present one
// stays.
func (k *seeker) drawShift(cuts []plan.Length, window plan.Span, wishes []changeover.Wish, present plan.Length) plan.Length {
	reach := func(at plan.Length) int {
		i, _ := slices.BinarySearchFunc(wishes, at, func(w changeover.Wish, at plan.Length) int { return cmp.Compare(w.At, at) })
		return i
	}
	best, most := present, -1
	for range 1 + k.chance.IntN(mostTried) {
		c := cuts[k.chance.IntN(len(cuts))]
		from, to := reach(c+window.From), reach(c+window.To+1)
		if from == to {
			continue
		}
		shift := wishes[from+k.chance.IntN(to-from)].At - c
		if !plan.ClearOf(k.p.Beam.Bad, cuts, shift) {
			continue
		}
		if v := 4*met(cuts, wishes, shift) + k.chance.IntN(8); v > most {
			best, most = shift, v
		}
	}
	return best
}

// met is the weight of the wishes at the shifted cuts.
func met(cuts []plan.Length, wishes []changeover.Wish, shift plan.Length) (sum int) {
	w := 0
	for _, c := range cuts {
		for w < len(wishes) && wishes[w].At < c+shift {
			w++
		}
		for ; w < len(wishes) && wishes[w].At == c+shift; w++ {
			sum += wishes[w].Weight
		}
	}
	return sum
}

// slide shifts the layouts of the turns that slide with the one before them, as far
// as their jobs allow.
func (k *seeker) slide(t *tour, from int, by plan.Length) {
	for turn := from; turn < k.slid; turn++ {
		j := t.order[turn]
		c := t.choices[j]
		if c.shift+by >= k.windows[j].From && c.shift+by <= k.windows[j].To && plan.ClearOf(k.p.Beam.Bad, c.cuts, by) {
			c.shift, c.cuts = c.shift+by, shifted(c.cuts, by)
			t.choices[j] = c
		}
	}
}
