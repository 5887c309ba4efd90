package changeover

import (
	"cmp"
	"slices"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// A free shift. As a layout slides, its best plan changes only where a cut comes
// to a whole number of pitches (0 included) from something that stands still:
// a holder's place, a rail end, a park edge or a web edge. Between two such
// shifts the ways to set the layout stay the same and travel changes linearly for
// each, so the best of them is reached at an end. Hence the critical shifts, the
// ends of the window and centred are all that need be looked at for repositions,
// parked, travel and nearness to centred alike; and where the anvil has damaged
// bands, the ends of what these leave of the window: see bands.go.

// shifts is the memory of the search over shifts.
type shifts struct {
	cuts []plan.Length // of the centred layout
	open plan.Spans    // what damaged bands leave of the window
	list []bounded
	ties []plan.Length
}

// bounded is a shift with a bound on the stays it allows.
type bounded struct {
	shift plan.Length
	stays int
}

// Best plans the changeover to a job over all shifts it allows, its slits as
// listed, or in another order that the job allows where these can't keep out of the
// anvil's damaged bands: exactly the fewest repositions, then the fewest parked, the least
// travel, nearest to centred, and of two as near the one to the operator side.
// The faults say why the job can't be run from these positions.
func (p *Planner) Best(now []plan.Length, j *plan.Job) (plan.Layout, plan.Changeover, []plan.Fault) {
	return p.search(now, j, slider.best)
}

// Nearest plans the changeover to a job at the allowed shift nearest to centred
// that can be set at all.
func (p *Planner) Nearest(now []plan.Length, j *plan.Job) (plan.Layout, plan.Changeover, []plan.Fault) {
	return p.search(now, j, slider.nearest)
}

// search plans a job at the shift that pick finds in the window.
func (p *Planner) search(now []plan.Length, j *plan.Job, pick func(s slider, window plan.Span) (plan.Length, bool)) (plan.Layout, plan.Changeover, []plan.Fault) {
	if faults := layouts.Faults(p.Beam, j); len(faults) > 0 {
		return plan.Layout{}, plan.Changeover{}, faults
	}
	if faults := p.wrongPositions(now); len(faults) > 0 {
		return plan.Layout{}, plan.Changeover{}, faults
	}
	slits, _ := layouts.Order(p.Beam, j)
	centred := p.Beam.Lay(j, slits, 0)
	from, to := p.Beam.Window(j)
	p.Set(now, centred.Web, centred.Cuts)
	s := slider{p}
	s.slides(centred.Cuts, plan.Span{From: from, To: to})
	shift, ok := pick(s, plan.Span{From: from, To: to})
	if !ok {
		return plan.Layout{}, plan.Changeover{}, diagnosis{p}.refusal(centred, plan.Span{From: from, To: to})
	}
	l := p.Beam.Lay(j, slits, shift)
	c, faults := p.Changeover(now, l)
	return l, c, faults
}

// slider is a planner whose layout slides along the beam.
type slider struct{ *Planner }

// slides sets the cuts that slide in a window.
func (p slider) slides(cuts []plan.Length, window plan.Span) {
	f := &p.shifts
	f.cuts = append(f.cuts[:0], cuts...)
	f.open = layouts.AppendShifts(p.Beam, f.open[:0], cuts, window)
}

// shift slides p.Scene to a shift from centred.
func (p slider) shift(by plan.Length) {
	for m, c := range p.shifts.cuts {
		p.Scene.cuts[m] = c + by
	}
	p.Scene.look()
}

// best is the best shift in the window.
func (p slider) best(window plan.Span) (plan.Length, bool) {
	f := &p.shifts
	most := -1 // stays of the best shifts so far, which are f.ties
	f.ties = f.ties[:0]
	p.ends(window)
	p.meet(window)
	most = p.try(most)
	// Without a holder on a cut every cut needs a reposition: other shifts are
	// worth a look only if nothing better has been found, or if a holder near a cut
	// will do.
	if most < 0 && p.Scene.tolerance == 0 && !p.fitsAnywhere(window) {
		return 0, false
	}
	if most <= len(p.Scene.At)-len(f.cuts) || p.Scene.tolerance > 0 {
		f.list = f.list[:0]
		p.critical(window)
		most = p.try(most)
	}
	if most < 0 {
		return 0, false
	}
	return p.bestOfTied(), true
}

// meet lists the shifts in the window at which a holder can serve a cut where it
// stands.
func (p slider) meet(window plan.Span) {
	for _, c := range p.shifts.cuts {
		i, _ := slices.BinarySearch(p.Scene.At, c+window.From-p.Scene.tolerance)
		for ; i < len(p.Scene.At) && p.Scene.At[i] <= c+window.To+p.Scene.tolerance; i++ {
			p.consider(p.Scene.At[i]-c, window)
			if p.Scene.tolerance > 0 {
				p.consider(p.Scene.At[i]-c-p.Scene.tolerance, window)
				p.consider(p.Scene.At[i]-c+p.Scene.tolerance, window)
			}
		}
	}
}

// critical lists all critical shifts in the window.
func (p slider) critical(window plan.Span) {
	p.fixed(window)
	for _, c := range p.shifts.cuts {
		for i, x := range p.Scene.At {
			if p.Scene.condition[i].Moves() {
				p.pitches(x-c, window)
			}
		}
	}
}

// fixed lists the critical shifts that come from what can't move.
func (p slider) fixed(window plan.Span) {
	s := &p.Scene
	edges := [4]plan.Length{s.Rail.From, s.Rail.To, s.web.From, s.web.To}
	if !s.anywhere {
		edges[2], edges[3] = s.idle.From, s.idle.To
	}
	for _, c := range p.shifts.cuts {
		for _, x := range edges {
			p.pitches(x-c, window)
		}
		for i, x := range s.At {
			if s.condition[i].Moves() {
				continue
			}
			p.pitches(x-c, window)
			if s.tolerance > 0 { // from here to there it can serve the cut
				p.consider(x-c-s.tolerance, window)
				p.consider(x-c+s.tolerance, window)
			}
		}
	}
}

// fitsAnywhere reports whether the layout can be set at any shift in the window,
// with position_tolerance 0. That depends on what can't move alone: rail ends, park
// edges, and holders that are stuck or out.
func (p slider) fitsAnywhere(window plan.Span) bool {
	f := &p.shifts
	p.ends(window)
	p.fixed(window)
	for _, b := range f.list {
		if p.shift(b.shift); p.fits() {
			return true
		}
	}
	return false
}

// pitches lists the shifts in the window that are whole pitches from one.
func (p slider) pitches(from plan.Length, window plan.Span) {
	first := from + (window.From-from)/p.Pitch*p.Pitch
	for by := first - p.Pitch; by <= window.To; by += p.Pitch {
		p.consider(by, window)
	}
}

// ends begins the list: centred, and the ends of what is left of the window.
func (p slider) ends(window plan.Span) {
	p.shifts.list = p.shifts.list[:0]
	p.consider(0, window)
	for _, s := range p.shifts.open {
		p.consider(s.From, window)
		p.consider(s.To, window)
	}
}

// consider lists a shift if it lies in the window and, where there are damaged
// bands, in what they leave of it.
func (p slider) consider(by plan.Length, window plan.Span) {
	if by >= window.From && by <= window.To && (len(p.Scene.bad) == 0 || p.shifts.open.Hold(by)) {
		p.shifts.list = append(p.shifts.list, bounded{shift: by})
	}
}

// try counts the listed shifts, most promising first, and keeps in f.ties those
// that reach the most stays found so far, which it returns.
func (p slider) try(most int) int {
	f := &p.shifts
	slices.SortFunc(f.list, func(a, b bounded) int { return cmp.Compare(a.shift, b.shift) })
	f.list = slices.CompactFunc(f.list, func(a, b bounded) bool { return a.shift == b.shift })
	for i := range f.list {
		p.shift(f.list[i].shift)
		f.list[i].stays = p.Scene.mostStays()
	}
	slices.SortFunc(f.list, func(a, b bounded) int {
		return cmp.Or(cmp.Compare(b.stays, a.stays), cmp.Compare(a.shift, b.shift))
	})
	for _, b := range f.list {
		if b.stays < max(most, 0) {
			break
		}
		p.shift(b.shift)
		if !p.Scene.plain { // the bound of the chain is cheap beside the count
			if stays, ok := p.Stays.chain.longest(&p.Scene); !ok || stays < most {
				continue
			}
		}
		switch stays, ok := p.Stays.count(&p.Scene); {
		case !ok || stays < most:
		case stays > most:
			most = stays
			f.ties = append(f.ties[:0], b.shift)
		default:
			f.ties = append(f.ties, b.shift)
		}
	}
	return most
}

// bestOfTied is the best of the tied shifts by all that comes after repositions.
func (p slider) bestOfTied() plan.Length {
	pick, cost := plan.Length(0), int64(Unreachable)
	slices.SortFunc(p.shifts.ties, layouts.Nearer)
	for _, by := range slices.Compact(p.shifts.ties) {
		p.shift(by)
		if !p.Stays.Find(&p.Scene) {
			continue
		}
		if q := p.Places.Solve(&p.Scene, &p.Stays, nil); q >= 0 && p.Places.List[q].cost < cost {
			pick, cost = by, p.Places.List[q].cost
		}
	}
	return pick
}

// nearest is the shift nearest to centred at which the layout can be set.
func (p slider) nearest(window plan.Span) (plan.Length, bool) {
	f := &p.shifts
	if p.shift(0); p.fits() {
		return 0, true
	}
	p.ends(window)
	if p.fixed(window); p.Scene.tolerance > 0 { // one that serves off its cut leaves more room
		p.meet(window)
		p.critical(window)
	}
	slices.SortFunc(f.list, func(a, b bounded) int { return layouts.Nearer(a.shift, b.shift) })
	for _, b := range f.list {
		if p.shift(b.shift); p.fits() {
			return b.shift, true
		}
	}
	return 0, false
}

// fits reports whether p.Scene can be set at all.
func (p slider) fits() bool {
	_, ok := p.Stays.count(&p.Scene)
	return ok
}
