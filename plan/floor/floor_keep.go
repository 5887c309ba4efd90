package floor

import (
	"slices"

	"bide/plan"
)

// Keeping counts the arrivals that fixed cuts need when each holder is kept where
// a later job soonest needs it. A place that one job cuts and a later one cuts
// again can be held in between only while no cut comes nearer than the pitch and
// idle holders may stand there, and only by holders that the jobs in between leave
// free. As many such intervals as can be are held: passing along the day and
// giving up the one needed last whenever too few holders are free is optimal
// (Belady 1966, IBM Systems Journal 5:78, for paging; the intervals of one place
// form a matrix with consecutive ones, so the exchange holds for any capacities).
// Whatever is not held takes a reposition of its own.
func Keeping(b *plan.Beam, start []plan.Length, n []Needs) int {
	free := make([]int, len(n))
	total := 0
	for i := range n {
		free[i] = len(b.Holders)
		if n[i].Fixed != nil || n[i].Cuts == 0 { // else a holder kept for later may cut this job too
			free[i] -= n[i].Cuts
		}
		total += len(n[i].Fixed)
	}
	return total - held(intervals(b, start, n), free)
}

// keptSince is keeping for the jobs behind the first of some, wherever holders stand
// while that one runs: any place that a later job cuts may have a holder from before.
func keptSince(b *plan.Beam, n []Needs) int {
	var places []plan.Length
	for i := range n[1:] {
		places = append(places, n[i+1].Fixed...)
	}
	if len(places) == 0 {
		return 0
	}
	return Keeping(b, append(places, n[0].Fixed...), n)
}

// interval is a place that can be held from one use to the next: through the jobs
// from to until, the last not included, in none of which it is cut.
type interval struct{ from, until int }

// intervals lists, for each use of a fixed cut, the interval from the use before
// it, where it can be held through all that lies between.
func intervals(b *plan.Beam, start []plan.Length, n []Needs) []interval {
	last := map[plan.Length]int{} // turn of the last use, -1 for the start, of places that can still be held
	for _, x := range start {
		last[x] = -1
	}
	var out []interval
	for i := range n {
		for _, c := range n[i].Fixed {
			if use, ok := last[c]; ok {
				out = append(out, interval{use + 1, i})
			}
		}
		for place := range last {
			if !canHold(b, place, &n[i]) {
				delete(last, place)
			}
		}
		for _, c := range n[i].Fixed {
			last[c] = i
		}
	}
	return out
}

// canHold reports whether a holder can be held at a place through a job, as far as is
// known: idle, or cutting where the job's layout isn't fixed and may have a cut
// there.
func canHold(b *plan.Beam, place plan.Length, n *Needs) bool {
	gap, cuts := max(b.ParkClearance, plan.Nanometre), n.Fixed == nil && n.Cuts > 0 && place >= n.Web.From && place <= n.Web.To
	if !b.RestOverWeb && !cuts && place > n.Web.From-gap && place < n.Web.To+gap {
		return false
	}
	for _, c := range n.Fixed {
		if (c - place).Abs() < b.Pitch() {
			return false
		}
	}
	return true
}

// held is the most intervals that can be held when free[i] of them, at most, can
// run through job i.
func held(all []interval, free []int) int {
	count := len(all)
	starts := make([][]int, len(free)+1) // ends of the intervals that begin at each job
	for _, v := range all {
		if v.from < v.until {
			starts[v.from] = append(starts[v.from], v.until)
		}
	}
	var running []int // ends, ascending
	for i, room := range free {
		running = append(running, starts[i]...)
		slices.Sort(running)
		for len(running) > 0 && running[0] <= i {
			running = running[1:]
		}
		if drop := len(running) - max(room, 0); drop > 0 {
			running = running[:len(running)-drop]
			count -= drop
		}
	}
	return count
}
