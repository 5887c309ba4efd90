package floor

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover"
)

// How far two jobs are apart: the fewest holders that stand elsewhere in one than
// in the other, whatever their layouts and wherever idle holders stand. A holder
// that stands elsewhere has moved at least once, so no plan that runs the one job
// and later the other, with whatever in between, takes fewer repositions from the
// one to the other.

// Distances are the distances between any two of the jobs, and in the row behind the
// last from the positions at the start to each; 0 where nothing is proven, as with position_tolerance above
// 0.
func Distances(b *plan.Beam, start []plan.Length, jobs []*plan.Job, n []Needs) [][]int {
	apart := make([][]int, len(n)+1)
	for u := range apart {
		apart[u] = make([]int, len(n))
	}
	if b.PositionTolerance > 0 {
		return apart
	}
	for v := range n {
		apart[len(n)][v] = fromStanding(b, start, jobs[v])
		for u := range v {
			apart[u][v] = distance(b, &n[u], &n[v])
			apart[v][u] = apart[u][v]
		}
	}
	return apart
}

// fromStanding is the fewest repositions of a job that comes first, exactly; where
// its slits have too many orders nothing is proven.
func fromStanding(b *plan.Beam, start []plan.Length, j *plan.Job) int {
	p, err := changeover.NewPlanner(b)
	if err != nil {
		return 0
	}
	least := -1
	for _, slits := range allOrders(j) {
		listed := *j
		listed.Arrange, listed.Entries = plan.AsListed, nil
		for _, s := range slits {
			listed.Entries = append(listed.Entries, plan.Entry{Count: 1, Finished: s, Width: s})
		}
		if _, c, faults := p.Best(start, &listed); len(faults) == 0 && (least < 0 || c.Repositions < least) {
			least = c.Repositions
		}
	}
	return max(least, 0)
}

// distance is a lower bound on the holders that stand elsewhere in one of two jobs
// than in the other, over all layouts of both.
//
// Only the shift of one against the other matters. As that grows, the ways to stand
// in both at once change only where two cuts come to coincide or to a pitch from
// each other, and there they are at least those on either side; so the least is
// found there or at the ends of the window. O(k m (k + m)^2) for k and m cuts, and far
// less since few such shifts lie in the window and most are passed over early.
func distance(b *plan.Beam, one, other *Needs) int {
	if pairs := len(one.centred) * len(other.centred); pairs == 0 || pairs > mostPairs {
		return 0
	}
	a := nearest{pitch: b.Pitch(), holders: len(b.Holders), least: len(b.Holders)}
	if !b.RestOverWeb {
		a.one, a.other = idleOver(b, other, one), idleOver(b, one, other)
	}
	lo, hi := other.Window.From-one.Window.To, other.Window.To-one.Window.From
	for _, x := range one.centred {
		for _, y := range other.centred {
			for _, d := range meetings(x, y, b.Pitch(), plan.Span{From: lo, To: hi}) {
				a.try(x, y, d)
			}
		}
	}
	return a.least
}

// idleOver is where holders that cut for a job can't stand idle in another: the
// centred cuts between these are over the other's web at every shift.
func idleOver(b *plan.Beam, other, job *Needs) plan.Span {
	gap := max(b.ParkClearance, plan.Nanometre)
	return plan.Span{From: other.Web.From - gap - job.Window.From, To: other.Web.To + gap - job.Window.To}
}

// meetings are the shifts in a window at which a cut of y comes to one of x, or to a
// pitch from it, and the window's ends; ascending.
func meetings(x, y []plan.Length, pitch plan.Length, window plan.Span) []plan.Length {
	out := []plan.Length{window.From, window.To}
	for _, at := range x {
		for _, c := range y {
			for _, d := range [3]plan.Length{at - c - pitch, at - c, at - c + pitch} {
				if d > window.From && d < window.To {
					out = append(out, d)
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// nearest looks for the least distance over the shifts tried.
type nearest struct {
	pitch      plan.Length
	holders    int
	one, other plan.Span // centred cuts strictly between these can't be held idle in the other job
	least      int
	common     []stayer
}

// stayer is a holder that could stand on a cut of one or both of two jobs in both.
type stayer struct {
	before [2]int // cuts of each before it
	cuts   [2]int // cuts of each that it serves: 0 or 1
	moved  int    // fewest holders before it that stand elsewhere
}

// try looks at one shift of y against x. Those that stand at the same place in both
// jobs, on a cut of one of them, stand on a cut of the other too or a pitch clear of all of
// them. Between two such neighbours the holders that stand elsewhere are at least as
// many as the cuts there of either job, so the least is a shortest path; and the
// holders that don't cut in the one job are all that can wait idle for the other's
// cuts.
func (a *nearest) try(x, y []plan.Length, d plan.Length) {
	shared, conflicts := a.stayers(x, y, d)
	if max(conflicts[0], conflicts[1]) >= a.least {
		return
	}
	for v := 1; v < len(a.common); v++ {
		s := &a.common[v]
		s.moved = a.holders
		for u := range v {
			p := &a.common[u]
			gap := max(s.before[0]-p.before[0]-p.cuts[0], s.before[1]-p.before[1]-p.cuts[1])
			s.moved = min(s.moved, p.moved+gap)
		}
	}
	short := len(x) + len(y) - shared - a.holders
	a.least = min(a.least, max(a.common[len(a.common)-1].moved, short))
}

// stayers lists who could stand on a cut in both jobs, from one that stands before
// all to one behind all, and counts the cuts that the jobs share and those of each
// that can't be held in the other.
func (a *nearest) stayers(x, y []plan.Length, d plan.Length) (shared int, conflicts [2]int) {
	a.common = append(a.common[:0], stayer{})
	i, j := 0, 0
	for i < len(x) || j < len(y) {
		s := stayer{before: [2]int{i, j}}
		switch {
		case i < len(x) && j < len(y) && x[i] == y[j]+d:
			s.cuts = [2]int{1, 1}
			shared++
		case j == len(y) || i < len(x) && x[i] < y[j]+d:
			s.cuts[0] = 1
			if within(a.one, x[i]) || near(y, j, x[i]-d, a.pitch) {
				conflicts[0]++
				i++
				continue
			}
		default:
			s.cuts[1] = 1
			if within(a.other, y[j]) || near(x, i, y[j]+d, a.pitch) {
				conflicts[1]++
				j++
				continue
			}
		}
		a.common = append(a.common, s)
		i, j = i+s.cuts[0], j+s.cuts[1]
	}
	a.common = append(a.common, stayer{before: [2]int{len(x), len(y)}})
	return shared, conflicts
}

// near reports whether one of the two cuts around a place is nearer to it than the
// pitch; the next is the one at or behind it.
func near(cuts []plan.Length, next int, at, pitch plan.Length) bool {
	return next > 0 && at-cuts[next-1] < pitch || next < len(cuts) && cuts[next]-at < pitch
}

// within reports whether a place lies strictly between the ends.
func within(s plan.Span, at plan.Length) bool { return at > s.From && at < s.To }
