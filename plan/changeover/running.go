package changeover

import (
	"fmt"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// A job that runs is laid out as the holders are. Where its slits may change places no
// file says in which order it was set up, but the holders do.

// mostOrders bounds the steps of a look for an order of slits; a beam that a job of the
// day runs on fits after some hundreds.
const mostOrders = 10_000

// running is the layout of a job that runs: the one chosen or as Best has it where nothing
// moves for that, else the order of slits, and the shift, for which every holder stands
// right. It is not ok where there is none.
func (p *Planner) running(at []plan.Length, j *plan.Job) (l plan.Layout, c plan.Changeover, ok bool) {
	if len(layouts.Faults(p.Beam, j)) > 0 || len(at) != len(p.Beam.Holders) {
		return l, c, false
	}
	return p.found(at, j)
}

// found looks for a layout that the job allows and that is set up as the holders stand.
func (p *Planner) found(at []plan.Length, j *plan.Job) (l plan.Layout, c plan.Changeover, ok bool) {
	set := func(slits []plan.Length, shift plan.Length) bool {
		if !layouts.Allows(p.Beam, j, &plan.Chosen{Slits: slits, Shift: shift}) {
			return false
		}
		l = p.Beam.Lay(j, slits, shift)
		var faults []plan.Fault
		c, faults = p.Changeover(at, l)
		return len(faults) == 0 && c.Repositions == 0
	}
	if j.Chosen != nil && set(j.Chosen.Slits, j.Chosen.Shift) {
		return l, c, true
	}
	if best, none, faults := p.Best(at, j); len(faults) == 0 && none.Repositions == 0 {
		return best, none, true
	}
	f := finder{beam: p.Beam, at: at, set: set, total: len(j.Slits()), trim: j.Web > plan.Sum(j.Slits())}
	f.parts(j)
	from, to := p.Beam.Window(j)
	first := p.Beam.Lay(j, j.Slits(), 0)
	for _, shift := range f.shifts(first.Web.From+first.Trim[0], from, to) {
		f.shift, f.dead = shift, map[string]bool{}
		if f.from(first.Web.From+first.Trim[0]+shift, nil) {
			return l, c, true
		}
	}
	return plan.Layout{}, plan.Changeover{}, false
}

// finder puts a job's slits side by side so that there is a holder at every cut.
type finder struct {
	beam  *plan.Beam
	at    []plan.Length
	set   func(slits []plan.Length, shift plan.Length) bool // whether a whole order is set up as it stands
	kinds []plan.Entry                                      // that stay side by side, each kind once
	left  []int                                             // of each kind
	total int
	trim  bool
	shift plan.Length
	dead  map[string]bool // what is left where nothing was found: it fixes the place too
	tried int
}

// parts lists what may change places.
func (f *finder) parts(j *plan.Job) {
	for _, e := range j.Entries {
		kind, n := plan.Entry{Count: e.Count, Width: e.Width}, 1
		if j.Arrange == plan.AnyArrange {
			kind.Count, n = 1, e.Count
		}
		i := 0
		for i < len(f.kinds) && f.kinds[i] != kind {
			i++
		}
		if i == len(f.kinds) {
			f.kinds, f.left = append(f.kinds, kind), append(f.left, 0)
		}
		f.left[i] += n
	}
}

// shifts are those of the window that put the first cut on a holder, if the job has one at
// its trim.
func (f *finder) shifts(edge, from, to plan.Length) (out []plan.Length) {
	if from == to || !f.trim {
		return []plan.Length{from}
	}
	for _, x := range f.at {
		if by := x - edge; from <= by && by <= to {
			out = append(out, by)
		}
	}
	return out
}

// held reports whether a holder that may cut stands at a place, or near enough to serve it.
func (f *finder) held(x plan.Length) bool {
	for i, at := range f.at { // places are few: a beam has some hundred holders
		if (at-x).Abs() <= f.beam.PositionTolerance && f.beam.Holders[i].Cuts() {
			return true
		}
	}
	return false
}

// from goes on from an edge, with some slits laid.
func (f *finder) from(edge plan.Length, slits []plan.Length) bool {
	last := len(slits) == f.total
	if (f.trim || len(slits) > 0 && !last) && !f.held(edge) {
		return false
	}
	if last {
		return f.set(append([]plan.Length{}, slits...), f.shift)
	}
	key := fmt.Sprint(f.left)
	if f.dead[key] || f.tried >= mostOrders {
		return false
	}
	f.tried++
	for k, kind := range f.kinds {
		if f.left[k] == 0 {
			continue
		}
		f.left[k]--
		ok := f.lay(kind, edge, slits)
		f.left[k]++
		if ok {
			return true
		}
	}
	f.dead[key] = true
	return false
}

// lay lays the slits of one kind from an edge, and goes on behind them.
func (f *finder) lay(kind plan.Entry, edge plan.Length, slits []plan.Length) bool {
	for n := range kind.Count {
		edge += kind.Width
		slits = append(slits, kind.Width)
		if n < kind.Count-1 && !f.held(edge) {
			return false
		}
	}
	return f.from(edge, slits)
}
