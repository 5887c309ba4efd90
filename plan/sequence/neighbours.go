package sequence

import "slices"

// The neighbours of a candidate that a search goes to: another order, other layouts, or
// both. Each way makes next, which is a copy of it, into a
// neighbour, with a and b two turns drawn by chance; it marks the layouts to be
// chosen anew, and returns the first turn that changes and the first from which all
// is alike again. It is not ok when it changes nothing.

// A change of order alone seldom gains: the layouts were chosen for the old neighbours. So
// what changes its number in the sequence gets a new layout in the same step, and what lies
// behind it slides along or is chosen anew now and then.

// neighbour makes one kind of neighbour.
type neighbour func(k *annealer, next *candidate, a, b int) (from, alike int, ok bool)

// neighbours are drawn from evenly; what is here twice is drawn twice as often. The
// last of them leave the order alone.
var neighbours = [...]neighbour{
	(*annealer).exchange, (*annealer).exchange, (*annealer).moveJob, (*annealer).moveJob, (*annealer).moveRun, (*annealer).moveRun,
	(*annealer).reverseRun, (*annealer).slideRun, (*annealer).slideRun, (*annealer).relay, (*annealer).relay, (*annealer).relay,
}

const reordering = 7 // neighbours that change the order

// propose makes next a neighbour of now; ok is false when it breaks a rule or is
// none.
func (k *annealer) propose(now, next *candidate) (from, alike int, ok bool) {
	n := len(now.order)
	a, b := k.chance.IntN(n), k.chance.IntN(n)
	next.take(now)
	k.still()
	among := neighbours[:]
	if k.inOrder {
		among = neighbours[reordering:]
	}
	from, alike, ok = among[k.chance.IntN(len(among))](k, next, a, b)
	return from, alike, ok && k.rules.Kept(next.order)
}

// exchange lets two jobs change turns.
func (k *annealer) exchange(next *candidate, a, b int) (from, alike int, ok bool) {
	order := next.order
	order[a], order[b] = order[b], order[a]
	k.anew[order[a]], k.anew[order[b]] = true, true
	return min(a, b), max(a, b) + 1, a != b
}

// moveJob gives one job another turn, behind a job that it suits or anywhere.
func (k *annealer) moveJob(next *candidate, a, b int) (from, alike int, ok bool) {
	j := next.order[a]
	rest := slices.Delete(next.order, a, a+1)
	if len(rest) > 0 && k.chance.IntN(4) > 0 {
		b = 1 + k.suited(rest, j)
	}
	next.order = slices.Insert(rest, b, j)
	k.anew[j] = true
	return min(a, b), max(a, b) + 1, a != b
}

// moveRun gives a run of jobs other turns, behind a job that the first suits.
func (k *annealer) moveRun(next *candidate, a, b int) (from, alike int, ok bool) {
	n := len(next.order)
	a = min(a, b)
	run := slices.Clone(next.order[a : a+1+k.chance.IntN(min(4, n-a))])
	rest := slices.Delete(next.order, a, a+len(run))
	if len(rest) == 0 {
		return 0, 0, false
	}
	to := 1 + k.suited(rest, run[0])
	next.order = slices.Insert(rest, to, run...)
	from, alike = min(a, to), max(a, to)+len(run)
	k.anew[run[0]] = k.chance.IntN(2) == 0
	if alike < n { // the job behind may want another layout now
		k.anew[next.order[alike]] = k.chance.IntN(2) == 0
		alike++
	}
	return from, alike, a != to
}

// reverseRun reverses a run of jobs.
func (k *annealer) reverseRun(next *candidate, a, b int) (from, alike int, ok bool) {
	from, alike = min(a, b), max(a, b)+1
	slices.Reverse(next.order[from:alike])
	for _, j := range next.order[from:alike] {
		k.anew[j] = true
	}
	return from, alike, a != b
}

// slideRun chooses one layout anew and lets those of some turns after it slide
// along the beam with it.
func (k *annealer) slideRun(next *candidate, a, _ int) (from, alike int, ok bool) {
	alike = min(a+1+k.chance.IntN(5), len(next.order))
	k.anew[next.order[a]], k.slid = true, alike
	return a, alike, k.free(next.order[a])
}

// relay chooses the layouts of one turn or two anew.
func (k *annealer) relay(next *candidate, a, _ int) (from, alike int, ok bool) {
	alike = min(a+1+k.chance.IntN(2), len(next.order))
	for _, j := range next.order[a:alike] {
		k.anew[j] = true
	}
	return a, alike, k.free(next.order[a]) || k.free(next.order[alike-1])
}
