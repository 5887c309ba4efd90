package plan

import "slices"

// Floor is a proven lower bound: no plan of the day can need fewer repositions.
type Floor struct {
	Repositions int
	By          string // what proves it
}

// What proves a floor.
const (
	ByKeeping  = "cuts that no holder can have kept from an earlier job"
	ByPairs    = "what neighbouring jobs have in common"
	ByDistinct = "places that some job cuts and no holder stands at"
)

// needs is what a job asks of the beam whatever layout it takes. Damaged bands of the
// anvil are left out: they only take layouts away, so what bounds all from below
// bounds those that are left.
type needs struct {
	cuts    int      // how many holders it takes
	fixed   []Length // places of its cuts where every allowed layout has them; nil when it may shift or be arranged anew
	web     Span
	centred []Length // its cuts centred and as listed
	window  Span     // shifts it allows
	any     bool     // its slits may change places, so nothing is known of its cuts but their number
}

// needsOf is what the jobs need, in their order.
func (b *Beam) needsOf(jobs []*Job) []needs {
	out := make([]needs, len(jobs))
	for i, j := range jobs {
		l := b.Lay(j, j.Slits(), 0)
		n := needs{cuts: len(l.Cuts), web: l.Web, centred: l.Cuts}
		n.window.From, n.window.To = b.Window(j)
		n.any = j.Arrange == ByEntries && len(j.Entries) > 1 || j.Arrange == AnyArrange && len(widths(j.Entries)) > 1
		if !n.any && n.window.Length() == 0 {
			n.fixed = l.Cuts
		}
		out[i] = n
	}
	return out
}

// FloorOfOrder is a lower bound on the repositions of the jobs in their order,
// idle holders' moves counted; nil where none above nought is proven. With
// in_place above nought a place needn't be met exactly, and nothing is proven.
func (b *Beam) FloorOfOrder(start []Length, jobs []*Job) *Floor {
	if b.InPlace > 0 {
		return nil
	}
	n := b.needsOf(jobs)
	pairs := 0
	for i := range n {
		if i == 0 {
			pairs += b.fromStanding(start, jobs[0])
		} else {
			pairs += b.pair(&n[i-1], &n[i])
		}
	}
	return largest(Floor{b.keeping(start, n), ByKeeping}, Floor{pairs, ByPairs})
}

// FloorOfAnyOrder is a lower bound on the repositions of the jobs in whatever
// order; nil where none above nought is proven.
func (b *Beam) FloorOfAnyOrder(start []Length, jobs []*Job) *Floor {
	if b.InPlace > 0 {
		return nil
	}
	n := b.needsOf(jobs)
	places := map[Length]bool{}
	for i := range n {
		for _, c := range n[i].fixed {
			if _, stands := slices.BinarySearch(start, c); !stands {
				places[c] = true
			}
		}
	}
	pairs := 0
	for i := range n { // each job follows another one or the start
		least := b.fromStanding(start, jobs[i])
		for u := range n {
			if u != i && least > 0 {
				least = min(least, b.pair(&n[u], &n[i]))
			}
		}
		pairs += least
	}
	return largest(Floor{len(places), ByDistinct}, Floor{pairs, ByPairs})
}

// largest is the largest of the bounds, the first of equal ones, nil if none is
// above nought.
func largest(floors ...Floor) *Floor {
	best := Floor{}
	for _, f := range floors {
		if f.Repositions > best.Repositions {
			best = f
		}
	}
	if best.Repositions == 0 {
		return nil
	}
	return &best
}

// fromStanding is the fewest repositions of a job that comes first, exactly; where
// its slits may change places nothing is proven.
func (b *Beam) fromStanding(start []Length, j *Job) int {
	p, err := NewPlanner(b)
	if err != nil || b.needsOf([]*Job{j})[0].any {
		return 0
	}
	_, c, faults := p.Best(start, j)
	if len(faults) > 0 {
		return 0
	}
	return c.Repositions
}

// pair bounds the repositions of the changeover from one job to the next, whatever
// came before. Of the next job's cuts only those need no reposition that a holder
// stood at: on a cut of the job before, of which no more coincide than at the best
// of all shifts, or idle, of which there are no more than the beam has to spare.
func (b *Beam) pair(before, next *needs) int {
	if before.any || next.any {
		return 0
	}
	spare := len(b.Holders) - before.cuts
	return max(0, next.cuts-spare-meeting(before, next))
}

// meeting is the most cuts that the layouts of two jobs have in common at any
// shifts that they allow.
func meeting(a, b *needs) int {
	lo, hi := a.window.From-b.window.To, a.window.To-b.window.From // shift of a less shift of b
	var differ []Length
	for _, x := range a.centred {
		for _, y := range b.centred {
			if d := y - x; d >= lo && d <= hi {
				differ = append(differ, d)
			}
		}
	}
	slices.Sort(differ)
	most, run := 0, 0
	for i, d := range differ {
		if i > 0 && d == differ[i-1] {
			run++
		} else {
			run = 1
		}
		most = max(most, run)
	}
	return most
}

// keeping counts the arrivals that fixed cuts need when each holder is kept where
// a later job soonest needs it. A place that one job cuts and a later one cuts
// again can be held in between only while no cut comes nearer than the pitch and
// idle holders may stand there, and only by holders that the jobs in between leave
// free. As many such intervals as can be are held: passing along the day and
// giving up the one needed last whenever too few holders are free is optimal
// (Belady 1966, IBM Systems Journal 5:78, for paging; the intervals of one place
// form a matrix with consecutive ones, so the exchange holds for any capacities).
// Whatever is not held takes a reposition of its own.
func (b *Beam) keeping(start []Length, n []needs) int {
	free := make([]int, len(n))
	total := 0
	for i := range n {
		free[i] = len(b.Holders)
		if n[i].fixed != nil || n[i].cuts == 0 { // else a holder kept for later may cut this job too
			free[i] -= n[i].cuts
		}
		total += len(n[i].fixed)
	}
	return total - held(b.intervals(start, n), free)
}

// interval is a place that can be held from one use to the next: through the jobs
// from to until, the last not included, in none of which it is cut.
type interval struct{ from, until int }

// intervals lists, for each use of a fixed cut, the interval from the use before
// it, where it can be held through all that lies between.
func (b *Beam) intervals(start []Length, n []needs) []interval {
	last := map[Length]int{} // turn of the last use, -1 for the start, of places that can still be held
	for _, x := range start {
		last[x] = -1
	}
	var out []interval
	for i := range n {
		for _, c := range n[i].fixed {
			if use, ok := last[c]; ok {
				out = append(out, interval{use + 1, i})
			}
		}
		for place := range last {
			if !b.holds(place, &n[i]) {
				delete(last, place)
			}
		}
		for _, c := range n[i].fixed {
			last[c] = i
		}
	}
	return out
}

// holds reports whether a holder can be held at a place through a job, as far as is
// known: idle, or cutting where the job's layout isn't fixed and may have a cut
// there.
func (b *Beam) holds(place Length, n *needs) bool {
	gap, cuts := max(b.StoreGap, Nanometre), n.fixed == nil && n.cuts > 0 && place >= n.web.From && place <= n.web.To
	if !b.RestOverWeb && !cuts && place > n.web.From-gap && place < n.web.To+gap {
		return false
	}
	for _, c := range n.fixed {
		if abs(c-place) < b.Pitch() {
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
