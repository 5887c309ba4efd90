package sequence

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// chooser chooses layouts for one turn by chance: the arrangement and the shift that put
// most cuts where holders may be, and where the next jobs want them too. It draws, rather
// than take the best, so that a search gets to see others than the one that looks best
// from where it is.
type chooser struct {
	*instance
	chance          *rand.Rand
	targets, merged []layouts.Target // memory for those of one turn, and for the next
}

// The weights of a cut where a holder may have been kept, where the next job has
// one, and where the job after that has one. The first saves a move at once; the others save
// one only if the holder is still there by then, the last less often.
var targetWeights = [...]int{4, 3, 1}

// mostTried is how many shifts are drawn, at most, to take the best of.
const mostTried = 8

// add adds ascending places to the targets.
func (c *chooser) add(places []plan.Length, weight int) {
	out, m := c.merged[:0], 0
	for _, t := range c.targets {
		for ; m < len(places) && places[m] < t.At; m++ {
			out = append(out, layouts.Target{At: places[m], Weight: weight})
		}
		out = append(out, t)
	}
	for ; m < len(places); m++ {
		out = append(out, layouts.Target{At: places[m], Weight: weight})
	}
	c.targets, c.merged = out, c.targets
}

// choose picks a layout for job j that meets the targets, and not always the most of them.
func (c *chooser) choose(j int, now choice) choice {
	job, best := c.jobs[j], now
	if !c.free(j) {
		return now
	}
	if job.Arrange != plan.AsListed {
		best = c.arrange(job, now)
		best.shift = now.shift
	}
	cuts := c.beam.Lay(job, best.slits, 0).Cuts
	if c.windows[j].Length() > 0 && len(cuts) > 0 {
		best.shift = c.drawShift(cuts, c.windows[j], best.shift)
	}
	if !c.beam.Bad.Miss(cuts, best.shift) {
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

// drawShift draws some shifts that each put a cut on a target, and takes the one that
// meets most, about: the more targets a shift meets, the likelier it is drawn. Where
// none is drawn, or none but such as put a cut in a damaged band, the present one
// stays.
func (c *chooser) drawShift(cuts []plan.Length, window plan.Span, present plan.Length) plan.Length {
	targets := c.targets
	reach := func(at plan.Length) int {
		i, _ := slices.BinarySearchFunc(targets, at, func(t layouts.Target, at plan.Length) int { return cmp.Compare(t.At, at) })
		return i
	}
	best, most := present, -1
	for range 1 + c.chance.IntN(mostTried) {
		cut := cuts[c.chance.IntN(len(cuts))]
		from, to := reach(cut+window.From), reach(cut+window.To+1)
		if from == to {
			continue
		}
		shift := targets[from+c.chance.IntN(to-from)].At - cut
		if !c.beam.Bad.Miss(cuts, shift) {
			continue
		}
		if v := 4*met(cuts, targets, shift) + c.chance.IntN(8); v > most {
			best, most = shift, v
		}
	}
	return best
}

// met is the weight of the targets at the shifted cuts.
func met(cuts []plan.Length, targets []layouts.Target, shift plan.Length) (sum int) {
	w := 0
	for _, c := range cuts {
		for w < len(targets) && targets[w].At < c+shift {
			w++
		}
		for ; w < len(targets) && targets[w].At == c+shift; w++ {
			sum += targets[w].Weight
		}
	}
	return sum
}

// arrange picks an arrangement of the job's slits: often the one that suits the
// targets best at the present shift, else the present one with two parts exchanged.
func (c *chooser) arrange(j *plan.Job, now choice) choice {
	l := c.beam.Lay(j, now.slits, now.shift)
	first, edge := l.Web.From+l.Trim[0], l.Trim[0] > 0
	suit := c.chance.IntN(3) > 0
	if j.Arrange == plan.ByEntries {
		order := slices.Clone(now.entries)
		if suit && len(order) <= layouts.MostEntries {
			order = layouts.ArrangeEntries(j.Entries, first, edge, c.targets, c.beam.Bad)
		} else {
			c.swapTwo(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
		}
		return choice{slits: plan.Laid(j.Entries, order), entries: order}
	}
	if suit && layouts.Vectors(j.Entries) <= layouts.MostVectors {
		return choice{slits: layouts.ArrangeAny(j.Entries, first, edge, c.targets, c.beam.Bad)}
	}
	slits := slices.Clone(now.slits)
	c.swapTwo(len(slits), func(a, b int) { slits[a], slits[b] = slits[b], slits[a] })
	return choice{slits: slits}
}

// swapTwo lets two of n things, drawn by chance, change places.
func (c *chooser) swapTwo(n int, swap func(a, b int)) { swap(c.chance.IntN(n), c.chance.IntN(n)) }

// suited is the turn, of three drawn by chance, of the job that has most cuts in
// common with job j at the best of their shifts.
func (c *chooser) suited(order []int, j int) int {
	best := c.chance.IntN(len(order))
	for range 2 {
		if t := c.chance.IntN(len(order)); c.common[order[t]][j] > c.common[order[best]][j] {
			best = t
		}
	}
	return best
}

// worse draws how much worse a day may be at a temperature and still be kept.
func (c *chooser) worse(temperature float64) int64 {
	return int64(temperature * exponential[c.chance.IntN(len(exponential))])
}

// exponential holds the quantiles of the exponential distribution.
var exponential = func() (out [1024]float64) {
	for i := range out {
		out[i] = -math.Log((float64(i) + 0.5) / float64(len(out)))
	}
	return out
}()
